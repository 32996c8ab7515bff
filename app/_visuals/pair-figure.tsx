/** A pair as ordered, for pages that only show it: from above and from below, true to scale. */
import { type BuildCatalog, blendById, type PairSpec } from "#engine/configuration";
import { mountLineMm, shapeAtLength } from "#engine/geometry";
import { type SkiGraphic, SkiPair } from "./ski-drawing";
import { type WoodStrip, woodStrips } from "./ski-wood";

/** From this density up a wood is drawn dark: the dense strips that hold the screws. */
const denseKgM3 = 500;

/** The graphic of a spec as the drawing wants it; pictures are at `pictureBase`, a slash and their id. */
export function drawnGraphic(spec: PairSpec, build: BuildCatalog, pictureBase: string): SkiGraphic {
  const { graphic } = spec;
  const isOwn = graphic.kind === "own";
  const { artwork, placement } = graphic;
  return {
    layout: graphic.layout,
    splitGapMm: build.rules.print.pairGapMm,
    house: isOwn ? undefined : build.houseGraphics.find((each) => each.id === graphic.house),
    artwork:
      isOwn && artwork && placement
        ? { url: `${pictureBase}/${artwork.id}`, widthPx: artwork.widthPx, heightPx: artwork.heightPx, placement }
        : undefined,
    text: graphic.text,
    windows: graphic.windows,
  };
}

/** The core's strips of a spec, for windows. */
export function drawnWood(spec: PairSpec, build: BuildCatalog): readonly WoodStrip[] {
  const model = build.models.find((each) => each.id === spec.model);
  const blend = blendById(build, spec.core);
  if (!model || !blend.ok) return [];
  const dense = (id: string) => (build.materials.woods.find((each) => each.id === id)?.densityKgM3 ?? 0) > denseKgM3;
  const { C, I, M, O } = blend.value.strips;
  return woodStrips(model.core.stripWidthMm, { C: dense(C), I: dense(I), M: dense(M), O: dense(O) });
}

export function drawnBase(spec: PairSpec, build: BuildCatalog): { readonly left: string; readonly right: string } {
  const hex = (id: string) => build.baseColours.find((each) => each.id === id)?.hex ?? "#23262a";
  return { left: hex(spec.base.left), right: hex(spec.base.right) };
}

export function PairFigure({
  spec,
  build,
  pictureBase,
}: {
  readonly spec: PairSpec;
  readonly build: BuildCatalog;
  readonly pictureBase: string;
}) {
  const model = build.models.find((each) => each.id === spec.model);
  if (!model) return null;
  const shape = shapeAtLength(model.shape, spec.lengthCm);
  const top = {
    shape,
    graphic: drawnGraphic(spec, build, pictureBase),
    wood: drawnWood(spec, build),
    marks: { mountMm: mountLineMm(shape, spec.mount.offsetMm) },
  };
  const base = { shape, view: "base", baseColours: drawnBase(spec, build) } as const;
  const name = `${model.name}, ${spec.lengthCm} cm`;
  return (
    <figure>
      <div className="grid gap-4 max-md:hidden">
        <SkiPair
          {...top}
          orientation="lying"
          className="w-full"
          description={`${name}, from above, tips to the left`}
        />
        <SkiPair {...base} orientation="lying" className="w-full" description={`${name}, from below`} />
      </div>
      <div className="flex justify-center gap-10 md:hidden">
        <SkiPair {...top} orientation="upright" className="h-[30rem]" description={`${name}, from above, tips up`} />
        <SkiPair {...base} orientation="upright" className="h-[30rem]" description={`${name}, from below`} />
      </div>
      <figcaption className="mt-2 text-sm text-pencil">
        From above and from below, to scale. The line across is the mount line.
      </figcaption>
    </figure>
  );
}

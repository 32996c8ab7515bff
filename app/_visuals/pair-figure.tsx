/** A pair as ordered, for pages that only show it: from above, from below and from the side, true to scale. */
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import { pairLook } from "#engine/scene";
import { SkiPair, SkiSideView } from "./ski-drawing";

export function PairFigure({
  spec,
  build,
  pictureBase,
}: {
  readonly spec: PairSpec;
  readonly build: BuildCatalog;
  /** Absent where no skier's own picture may be shown. */
  readonly pictureBase?: string;
}) {
  const look = pairLook(spec, build);
  const model = build.models.find((each) => each.id === spec.model);
  if (!look || !model) return null;
  const name = `${model.name}, ${spec.lengthCm} cm`;
  const drawn = { look, pictureBase };
  return (
    <figure>
      <div className="grid gap-4 max-md:hidden">
        <SkiPair
          {...drawn}
          orientation="lying"
          className="w-full"
          description={`${name}, from above, tips to the left`}
        />
        <SkiSideView look={look} orientation="lying" className="w-full" description={`${name}, from the side`} />
        <SkiPair {...drawn} view="below" orientation="lying" className="w-full" description={`${name}, from below`} />
      </div>
      <div className="flex justify-center gap-6 md:hidden">
        <SkiPair {...drawn} orientation="upright" className="h-[30rem]" description={`${name}, from above, tips up`} />
        <SkiSideView look={look} orientation="upright" className="h-[30rem]" description={`${name}, from the side`} />
        <SkiPair
          {...drawn}
          view="below"
          orientation="upright"
          className="h-[30rem]"
          description={`${name}, from below`}
        />
      </div>
      <figcaption className="mt-2 text-sm text-pencil">
        From above, from the side and from below, to scale. The ticks at the edges are the mount line.
      </figcaption>
    </figure>
  );
}

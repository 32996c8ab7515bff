/** What can be seen of a pair, gathered once from its specification: shape, materials, colours, picture, letters. */
import {
  type BuildCatalog,
  blendById,
  type CoreStrips,
  completeSpec,
  designedProfile,
  type GraphicLayout,
  type GraphicSpec,
  type HouseGraphic,
  letterRow,
  lookDefaults,
  type Model,
  type PairArt,
  type PairSpec,
  type PictureCopies,
  type PictureField,
  type PicturePart,
  pairArt,
  pictureCopies,
  stripSides,
} from "#engine/configuration";
import { stripWidthLeftMm } from "#engine/flex";
import { edgeSpanMm, mountLineMm, type SidewallBevel, type SkiShape, shapeAtLength } from "#engine/geometry";
import { fabricById } from "#engine/materials";
import { type WoodLook, woodLook } from "./wood-look";

/** A strip of the core on the skier's right of the centre line; the left side is its mirror image. */
export interface SeenStrip {
  readonly position: keyof CoreStrips;
  /** Id of its wood. */
  readonly wood: string;
  readonly innerMm: number;
  readonly outerMm: number;
  readonly look: WoodLook;
}

export interface SeenWindow {
  readonly fromXMm: number;
  readonly toXMm: number;
  readonly halfWidthMm: number;
}

/** A skier's own picture as it is laid out. */
export interface SeenArtwork extends PictureCopies {
  readonly id: string;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Under it; absent = the plain sheet. */
  readonly ground?: `#${string}` | undefined;
  readonly unmirrored?: PicturePart | undefined;
}

export interface SeenGraphic {
  readonly layout: GraphicLayout;
  /** How picture or house graphic lie on the two skis. */
  readonly art: PairArt;
  readonly house?: HouseGraphic | undefined;
  readonly artwork?: SeenArtwork | undefined;
  readonly text?: { readonly text: string; readonly xMm: number; readonly capHeightMm: number } | undefined;
  readonly windows: readonly SeenWindow[];
}

export interface SeenBase {
  readonly left: `#${string}`;
  readonly right: `#${string}`;
  /** Letters cut from one colour and set into the other. */
  readonly letters?: {
    readonly text: string;
    readonly fromXMm: number;
    readonly toXMm: number;
    readonly capHeightMm: number;
  };
}

/** Thickness of base, of what lies between it and the core, of what lies above the core, and of the topsheet. */
export interface SeenLayers {
  readonly baseMm: number;
  readonly belowMm: number;
  readonly aboveMm: number;
  readonly topsheetMm: number;
}

/** Thickness of the ski at a station, base to topsheet. */
export interface SeenThickness {
  readonly xMm: number;
  readonly thicknessMm: number;
}

export interface PairLook {
  readonly shape: SkiShape;
  readonly graphic: SeenGraphic;
  readonly strips: readonly SeenStrip[];
  readonly base: SeenBase;
  readonly edge: {
    readonly widthMm: number;
    readonly heightMm: number;
    readonly fromMm: number;
    readonly toMm: number;
  };
  readonly wall: SidewallBevel;
  /** Width of each sidewall beside the core. */
  readonly wallMm: number;
  /** Where the wood begins behind the tip's spacer and ends before the tail's. */
  readonly woodMm: { readonly fromMm: number; readonly toMm: number };
  /** The model's own lay-up about its core. */
  readonly layers: SeenLayers;
  readonly thickness: readonly SeenThickness[];
  readonly mountMm: number;
  readonly bindingHalfMm: number;
}

/** How the drawing's walls lean above the steel; a shop's own bevel is on its papers. Common practice, no source. */
const usualWall: SidewallBevel = { bevelDeg: 10, uprightMm: 2.5 };

/** A specification as it is seen; null for a model that this catalogue does not hold. */
export function pairLook(spec: PairSpec, build: BuildCatalog): PairLook | null {
  const model = build.models.find((each) => each.id === spec.model);
  if (!model) return null;
  const shape = shapeAtLength(model.shape, spec.lengthCm);
  const { rules } = build;
  const layers = seenLayers(model, build);
  const span = shape.edgeWrap === "full" ? { fromMm: 2, toMm: shape.lengthMm - 2 } : edgeSpanMm(shape, rules.edge);
  return {
    shape,
    graphic: seenGraphic(spec, shape, build),
    strips: seenStrips(spec, model, build),
    base: seenBase(spec, shape, build),
    edge: { widthMm: rules.edge.widthMm, heightMm: rules.edge.heightMm, ...span },
    wall: usualWall,
    wallMm: rules.sidewall.widthMm,
    woodMm: { fromMm: rules.spacers.tipMm, toMm: shape.lengthMm - rules.spacers.tailMm },
    layers,
    thickness: designedProfile(model, shape, rules).stations.map(({ xMm, thicknessMm }) => ({
      xMm,
      thicknessMm: thicknessMm + layers.baseMm + layers.belowMm + layers.aboveMm + layers.topsheetMm,
    })),
    mountMm: mountLineMm(shape, spec.mount.offsetMm),
    bindingHalfMm: rules.print.bindingZoneMm / 2,
  };
}

/** A model as the shop would build it for nobody in particular. */
export function modelLook(model: Model, build: BuildCatalog, lengthCm = model.shape.refLengthCm): PairLook | null {
  const spec = completeSpec({}, lookDefaults(model.id, lengthCm), build);
  return spec.ok ? pairLook(spec.value, build) : null;
}

/** What is printed on the topsheet. */
export function seenGraphic(
  { graphic, mount }: Pick<PairSpec, "graphic" | "mount">,
  shape: SkiShape,
  build: BuildCatalog,
): SeenGraphic {
  const { layout, text, windows } = graphic;
  const isOwn = graphic.kind === "own";
  return {
    layout,
    art: pairArt(layout, shape, build.rules.print),
    house: isOwn ? undefined : build.houseGraphics.find(({ id }) => id === graphic.house),
    artwork: isOwn ? seenArtwork(graphic, { shape, mountOffsetMm: mount.offsetMm }, build) : undefined,
    text,
    windows,
  };
}

function seenArtwork(graphic: GraphicSpec, field: PictureField, { rules }: BuildCatalog): SeenArtwork | undefined {
  const { artwork, ground, unmirrored } = graphic;
  if (artwork === undefined) return undefined;
  const { id, widthPx, heightPx } = artwork;
  return {
    ...pictureCopies(artwork, graphic, field, rules.print),
    id,
    widthPx,
    heightPx,
    ground: ground as `#${string}` | undefined,
    unmirrored,
  };
}

function seenStrips(spec: PairSpec, model: Model, build: BuildCatalog): readonly SeenStrip[] {
  const blend = blendById(build, spec.core);
  if (!blend.ok) return [];
  const sides = stripSides(model.core.stripWidthMm);
  // The outermost strip is made as wide as the ski needs; no ski is wider than one strip more.
  const widestMm = model.core.stripWidthMm * (sides.length + 0.5);
  return sides.map(({ position, innerMm }, index) => ({
    position,
    wood: blend.value.strips[position],
    innerMm,
    outerMm: innerMm + stripWidthLeftMm(sides, index, widestMm),
    look: woodLook(build.materials.woods.find(({ id }) => id === blend.value.strips[position])),
  }));
}

function seenBase({ base }: PairSpec, shape: SkiShape, build: BuildCatalog): SeenBase {
  const hex = (id: string): `#${string}` =>
    (build.baseColours.find((each) => each.id === id)?.hex ?? "#23262a") as `#${string}`;
  const { baseLetters, edge } = build.rules;
  const text = base.inlay === "counterchange" ? base.inlayText : undefined;
  const row = text && baseLetters ? letterRow(text, shape, edge.widthMm, baseLetters) : null;
  return {
    left: hex(base.left),
    right: hex(base.right),
    ...(text && row ? { letters: { text, fromXMm: row.fromXMm, toXMm: row.toXMm, capHeightMm: row.capHeightMm } } : {}),
  };
}

function seenLayers({ layup }: Model, { materials }: BuildCatalog): SeenLayers {
  const coreAt = layup.findIndex(({ role }) => role === "core");
  const thicknessOf = (layer: Model["layup"][number]): number => {
    if (layer.role === "core") return 0;
    if (layer.role === "fabric") return fabricById(materials, layer.material).thicknessMm;
    return layer.thicknessMm;
  };
  const sum = (layers: Model["layup"]) => layers.reduce((mm, layer) => mm + thicknessOf(layer), 0);
  const isSkin = ({ role }: Model["layup"][number]) => role === "base" || role === "topsheet";
  return {
    baseMm: sum(layup.filter(({ role }) => role === "base")),
    belowMm: sum(layup.slice(0, coreAt).filter((layer) => !isSkin(layer))),
    aboveMm: sum(layup.slice(coreAt + 1).filter((layer) => !isSkin(layer))),
    topsheetMm: sum(layup.filter(({ role }) => role === "topsheet")),
  };
}

/** The same pair with the thickness that was solved for it. */
export function withThickness(look: PairLook, stations: readonly SeenThickness[] | undefined): PairLook {
  return stations && stations.length > 1
    ? { ...look, thickness: stations.map(({ xMm, thicknessMm }) => ({ xMm, thicknessMm })) }
    : look;
}

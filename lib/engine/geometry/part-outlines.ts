/** Outlines of the parts cut to a ski: its own, its base, its core, its printed topsheet and the line that type stays inside. */
import { machineOutline } from "./machine-outline";
import { offsetOutline } from "./offset";
import { halfWidthAt } from "./outline";
import type { OutlinePoint, SkiShape } from "./types";

export interface PartOutlineOptions {
  readonly edgeWidthMm: number;
  /** Edge steel of a partial wrap beyond shoulder and heel together. */
  readonly edgeBeyondSidecutMm: number;
  readonly sidewallWidthMm: number;
  readonly coreFromMm: number;
  readonly coreToMm: number;
  /** Topsheet and print beyond the ski, all round. */
  readonly bleedMm: number;
  /** Type and thin borders stay this far inside the ski. */
  readonly safeMm: number;
}

export interface PartOutlines {
  readonly ski: readonly OutlinePoint[];
  readonly base: readonly OutlinePoint[];
  readonly core: readonly OutlinePoint[];
  readonly topsheet: readonly OutlinePoint[];
  readonly safe: readonly OutlinePoint[];
}

/**
 * All outlines of one ski, each a half outline from tip to tail in the ski's own axes (the topsheet starts before x = 0).
 *
 * @throws RangeError when an inset leaves nothing
 */
export function partOutlines(shape: SkiShape, options: PartOutlineOptions): PartOutlines {
  const ski = machineOutline(shape);
  return {
    ski,
    base: baseOutline(shape, ski, options),
    core: clippedOutline(offsetOutline(ski, -options.sidewallWidthMm), options.coreFromMm, options.coreToMm),
    topsheet: offsetOutline(ski, options.bleedMm),
    safe: offsetOutline(ski, -options.safeMm),
  };
}

/** The base lies inside the edge all round a full wrap; on a partial wrap it steps out to the ski's own line past the edge. */
function baseOutline(
  shape: SkiShape,
  ski: readonly OutlinePoint[],
  { edgeWidthMm, edgeBeyondSidecutMm }: PartOutlineOptions,
): readonly OutlinePoint[] {
  const inset = offsetOutline(ski, -edgeWidthMm);
  if (shape.edgeWrap === "full") return inset;
  const { fromMm, toMm } = edgeSpanMm(shape, edgeBeyondSidecutMm);
  const whole = (xMm: number): OutlinePoint => ({ xMm, halfWidthMm: halfWidthAt(shape, xMm) });
  return [
    ...ski.filter((p) => p.xMm < fromMm),
    whole(fromMm),
    ...clippedOutline(inset, fromMm, toMm),
    whole(toMm),
    ...ski.filter((p) => p.xMm > toMm),
  ];
}

/** Where the steel of a partial wrap begins and ends: half of the surplus beyond shoulder and heel each. */
export function edgeSpanMm(
  shape: SkiShape,
  edgeBeyondSidecutMm: number,
): { readonly fromMm: number; readonly toMm: number } {
  const heelMm = shape.lengthMm - shape.tailLengthMm;
  return { fromMm: shape.tipLengthMm - edgeBeyondSidecutMm / 2, toMm: heelMm + edgeBeyondSidecutMm / 2 };
}

/** The part of an outline between two stations, with square ends. */
export function clippedOutline(
  outline: readonly OutlinePoint[],
  fromMm: number,
  toMm: number,
): readonly OutlinePoint[] {
  const at = (xMm: number): OutlinePoint => ({ xMm, halfWidthMm: widthOn(outline, xMm) });
  return [at(fromMm), ...outline.filter((p) => p.xMm > fromMm && p.xMm < toMm), at(toMm)];
}

function widthOn(outline: readonly OutlinePoint[], xMm: number): number {
  let last: OutlinePoint | undefined;
  for (const point of outline) {
    if (last && last.xMm <= xMm && point.xMm >= xMm) {
      const share = point.xMm === last.xMm ? 0 : (xMm - last.xMm) / (point.xMm - last.xMm);
      return last.halfWidthMm + share * (point.halfWidthMm - last.halfWidthMm);
    }
    last = point;
  }
  throw new RangeError(`xMm: ${xMm} is outside the outline`);
}

/** What the mill leaves of the core's strips, which run straight while the outline is cut into them. */
import { halfWidthAt } from "#engine/geometry";
import type { SkiBuild, StripColumn } from "./types";

/** Half width of the wood between the sidewalls, mm. */
export function woodHalfWidthMm({ shape, sidewall }: Pick<SkiBuild, "shape" | "sidewall">, xMm: number): number {
  return Math.max(0, halfWidthAt(shape, xMm) - sidewall.widthMm);
}

/** The sides of a strip as it was glued, from the centre line. */
export type StripSides = Pick<StripColumn, "innerMm" | "outerMm">;

/**
 * Width that the mill leaves of a strip on one side of the centre line, mm; the centre strip lies on both. The outermost strip
 * is made as wide as the ski needs.
 *
 * @param strips   from the centre line out
 * @param woodHalfMm half width of the wood where it is asked for
 * @param fromHalfMm what lies nearer to the centre line is not counted: half the width of a pocket
 */
export function stripWidthLeftMm(
  strips: readonly StripSides[],
  index: number,
  woodHalfMm: number,
  fromHalfMm = 0,
): number {
  const strip = strips[index];
  if (strip === undefined) return 0;
  const outerMm = index === strips.length - 1 ? woodHalfMm : Math.min(strip.outerMm, woodHalfMm);
  return Math.max(0, outerMm - Math.max(strip.innerMm, fromHalfMm));
}

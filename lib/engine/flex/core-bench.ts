/**
 * What hand and bench ask of a core beyond its stiffness: never thinner under the boot than its floor, never thicker again
 * towards an end, ends as thick as a sheet that is sold. Common practice, no source; the values are the shop's settings.
 */
import { thicknessAt } from "./profile";
import type { CoreBench, CoreLimits, CoreZone, ThicknessProfile } from "./types";

/** One knot of the core being solved. */
export interface Knot {
  readonly xMm: number;
  readonly thicknessMm: number;
  /** What its thickness may not go below, mm. */
  readonly leastMm: number;
}

/**
 * Floor of the programme at each place, mm. A floor holds wherever a straight piece of the core beside the place touches its
 * stretch, so that the core keeps it between knots too, and falls from there no steeper than the mill follows.
 *
 * @param offsetMm built thickness minus programmed
 */
export function floorsAt(
  xs: readonly number[],
  { minMm, maxSlope, bench }: Pick<CoreLimits, "minMm" | "maxSlope" | "bench">,
  offsetMm: number,
): number[] {
  const floors = xs.map((x, i) => {
    const [from, to] = [xs[i - 1] ?? x, xs[i + 1] ?? x];
    const here = (bench?.floors ?? []).filter((floor) => floor.toMm > from && floor.fromMm < to);
    return Math.max(minMm, ...here.map((floor) => floor.leastMm - offsetMm));
  });
  const falling = (list: readonly number[], at: readonly number[]): number[] => {
    let last = Number.NEGATIVE_INFINITY;
    return list.map((floor, i) => {
      last = Math.max(floor, last - maxSlope * Math.abs((at[i] ?? 0) - (at[i - 1] ?? at[i] ?? 0)));
      return last;
    });
  };
  if (!bench) return floors;
  return falling(falling(floors, xs).reverse(), xs.toReversed()).reverse();
}

/** From the boot outwards no knot is thicker than the one before it: what would rise is lowered. */
export function withoutRise(knots: readonly Knot[], { fromMm, toMm }: CoreZone): Knot[] {
  const outward = (list: readonly Knot[], isInZone: (x: number) => boolean): Knot[] => {
    let most = Number.POSITIVE_INFINITY;
    return list.map((knot) => {
      const thicknessMm = isInZone(knot.xMm) ? knot.thicknessMm : Math.min(most, knot.thicknessMm);
      most = thicknessMm;
      return { ...knot, thicknessMm };
    });
  };
  const toTail = outward(knots, (x) => x <= toMm);
  return outward(toTail.toReversed(), (x) => x >= fromMm).toReversed();
}

/**
 * Both ends in the nearest thickness of `sheetsMm`, and nothing between an end and the boot thinner than its spacer, so that
 * core and spacer meet flush.
 */
export function withEndSheets(knots: readonly Knot[], { bootZone, endSheetsMm }: CoreBench): Knot[] {
  const [first, last] = [knots[0], knots.at(-1)];
  if (!first || !last) return [];
  const sheets = { tip: nearest(endSheetsMm, first.thicknessMm), tail: nearest(endSheetsMm, last.thicknessMm) };
  const middle = (bootZone.fromMm + bootZone.toMm) / 2;
  return knots.map((knot) => {
    const sheetMm = knot.xMm < middle ? sheets.tip : sheets.tail;
    if (knot === first || knot === last) return { ...knot, thicknessMm: sheetMm, leastMm: sheetMm };
    return {
      ...knot,
      thicknessMm: Math.max(knot.thicknessMm, sheetMm),
      leastMm: Math.max(knot.leastMm, sheetMm),
    };
  });
}

/** @throws RangeError without sheets */
function nearest(sheetsMm: readonly number[], wantedMm: number): number {
  const [best] = sheetsMm.toSorted((a, b) => Math.abs(a - wantedMm) - Math.abs(b - wantedMm));
  if (best === undefined) throw new RangeError("limits.bench.endSheetsMm: there is none");
  return best;
}

/** Whether the built core is nowhere thinner than the bench's floors. */
export function keepsFloors(profile: ThicknessProfile, bench: CoreBench, offsetMm = 0): boolean {
  const knots = profile.stations.map((station) => station.xMm);
  return bench.floors.every(({ fromMm, toMm, leastMm }) => {
    const places = [fromMm, ...knots.filter((x) => x > fromMm && x < toMm), toMm];
    return places.every((x) => thicknessAt(profile, x) + offsetMm >= leastMm - 1e-6);
  });
}

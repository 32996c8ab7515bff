/** A flex class as the bench reads it: with plate and mat in, in newtons per millimetre. */
import type { CoreSolution, SkiFlex } from "#engine/flex";
import type { FlexClass } from "./types";

export interface BenchClass {
  readonly fromNPerMm: number;
  readonly belowNPerMm: number;
}

/**
 * The centre springs at the edges of a class: the bare ski's spring scales with the flex ratio, plate and mat add what they
 * add at the solved one.
 *
 * @param withinPercent a spring this near to its own target reads as the ordered class too, so that a good ski ordered at the
 *   edge of a class does not read its neighbour half the time; absent = by the edges alone
 */
export function benchClass(
  { from, below }: FlexClass,
  solved: { readonly core: CoreSolution; readonly flex: SkiFlex; readonly flexWithPlate: SkiFlex },
  withinPercent?: number,
): BenchClass {
  const bare = solved.flex.springCentreNPerMm;
  const added = solved.flexWithPlate.springCentreNPerMm - bare;
  const at = (ratio: number) => (ratio / solved.core.achievedRatio) * bare + added;
  const edges = { fromNPerMm: at(from), belowNPerMm: at(below) };
  if (withinPercent === undefined) return edges;
  const target = solved.flexWithPlate.springCentreNPerMm;
  return {
    fromNPerMm: Math.min(edges.fromNPerMm, target * (1 - withinPercent / 100)),
    belowNPerMm: Math.max(edges.belowNPerMm, target * (1 + withinPercent / 100)),
  };
}

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
 */
export function benchClass(
  { from, below }: FlexClass,
  solved: { readonly core: CoreSolution; readonly flex: SkiFlex; readonly flexWithPlate: SkiFlex },
): BenchClass {
  const bare = solved.flex.springCentreNPerMm;
  const added = solved.flexWithPlate.springCentreNPerMm - bare;
  const at = (ratio: number) => (ratio / solved.core.achievedRatio) * bare + added;
  return { fromNPerMm: at(from), belowNPerMm: at(below) };
}

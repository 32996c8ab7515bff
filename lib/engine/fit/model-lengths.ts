/** The lengths a model is built in. */
import type { FitModel } from "./types";

/** From shortest to longest. @throws RangeError when the model has no length */
export function offeredLengths(model: FitModel): readonly number[] {
  const lengths = model.lengths.map((each) => each.lengthCm).toSorted((a, b) => a - b);
  if (lengths.length === 0) throw new RangeError(`model ${model.id} has no offered length`);
  return lengths;
}

/** The step between its two shortest lengths; 0 with one length. */
export function stepCm(model: FitModel): number {
  const [first, second] = offeredLengths(model);
  return first === undefined || second === undefined ? 0 : second - first;
}

/** How far a length lies outside the offered ones, cm; 0 inside. */
export function outsideOfferedCm(wantedCm: number, model: FitModel): number {
  const offered = offeredLengths(model);
  return Math.max(0, Math.min(...offered) - wantedCm, wantedCm - Math.max(...offered));
}

/** Springs as people compare them: newtons per centimetre, each beside the length it is read over. */
import { springTestOf } from "./spring-test";
import type { SkiBuild } from "./types";

const MM_PER_CM = 10;

/** N/mm, as the engine reckons, in the bench's N/cm. */
export function newtonsPerCm(springNPerMm: number): number {
  return springNPerMm * MM_PER_CM;
}

/** Between the supports for the centre spring; from the clamp to the load for the two ends, mm. */
export interface SpringSpans {
  readonly centreMm: number;
  readonly forebodyMm: number;
  readonly afterbodyMm: number;
}

/** Two springs compare only where these are alike: stiffness falls with the cube of the length. */
export function springSpans(build: SkiBuild): SpringSpans {
  const { frontSupportMm, rearSupportMm, loadMm } = springTestOf(build);
  return {
    centreMm: rearSupportMm - frontSupportMm,
    forebodyMm: loadMm - frontSupportMm,
    afterbodyMm: rearSupportMm - loadMm,
  };
}

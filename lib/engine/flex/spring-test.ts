/** Where the bench holds and presses a ski. */
import type { SkiBuild, SpringTest } from "./types";

/** The build's own setting, or supports at shoulder and heel and the load at the mount line. */
export function springTestOf({ shape, mountFromTipMm, springTest }: SkiBuild): SpringTest {
  if (springTest) return springTest;
  return {
    frontSupportMm: shape.tipLengthMm,
    rearSupportMm: shape.lengthMm - shape.tailLengthMm,
    loadMm: mountFromTipMm,
  };
}

/** Bending moment under a unit load where the bench presses, mm. */
export function benchMomentMm(build: SkiBuild, xMm: number): number {
  const { frontSupportMm: front, rearSupportMm: rear, loadMm: load } = springTestOf(build);
  if (xMm <= front || xMm >= rear) return 0;
  const span = rear - front;
  return xMm <= load ? ((rear - load) * (xMm - front)) / span : ((load - front) * (rear - xMm)) / span;
}

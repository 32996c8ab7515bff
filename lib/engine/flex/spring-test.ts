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

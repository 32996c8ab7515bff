/**
 * The short code by which somebody signs in on a device of the floor: six figures, good only there and only for what is done
 * on the floor. It is weak by nature; what protects it is the enrolled device and the few tries.
 */
import type { Refusal } from "#engine/units";

const floorCodeLength = 6;

const isRun = (code: string) => "0123456789012345".includes(code) || "9876543210987654".includes(code);

/** Why a code is refused, or null when it is taken: six figures, no run, nothing repeated ("121212", "454545", "777777"). */
export function weakFloorCode(code: string, path = "passcode"): Refusal | null {
  if (!/^\d{6}$/.test(code)) return { code: "floor-code-form", path, figures: floorCodeLength };
  return isRun(code) || /^(\d{1,3})\1+$/.test(code) ? { code: "floor-code-guessable", path } : null;
}

/**
 * What the sidecut does on edge. Snow is taken as hard and flat; penetration and skidding make the real radius differ. Only
 * checks use it: it holds radius and side camber of the geometry room against Howe, Skiing Mechanics, and Jentschura &
 * Fahrbach, Can. J. Phys. 82 (2004) 249–261.
 */
import type { Radians } from "#engine/units";

/**
 * Radius of a carved turn at this edge angle, R·cos θ (Howe, Skiing Mechanics; Jentschura & Fahrbach, Can. J. Phys. 82
 * (2004) 249–261).
 *
 * @throws RangeError unless the edge angle is from 0 up to, not including, a right angle
 */
export function carvedRadiusM(sidecutRadiusM: number, edgeAngle: Radians): number {
  checkAngle(edgeAngle);
  return sidecutRadiusM * Math.cos(edgeAngle);
}

/**
 * How far the waist must come down, normal to the ski, until the whole edge touches: d·tan θ with d the side camber, mm
 * (own derivation: the gap d in the ski's plane, tilted by θ).
 */
export function edgeContactBendMm(sideCamberMm: number, edgeAngle: Radians): number {
  checkAngle(edgeAngle);
  return sideCamberMm * Math.tan(edgeAngle);
}

function checkAngle(edgeAngle: Radians): void {
  if (!(edgeAngle >= 0 && edgeAngle < Math.PI / 2)) {
    throw new RangeError(`edgeAngle: ${edgeAngle} rad must be from 0 to below π/2`);
  }
}

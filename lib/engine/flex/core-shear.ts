/**
 * How much a core's shear adds to bending: negligible for wood, not for foam. A ski's springs are told its share and count it
 * from 1 % on (springs.ts).
 */

/**
 * Shear stiffness of a sandwich core between its faces, N: S = G·b·d²/c (H. G. Allen, Analysis and Design of Structural
 * Sandwich Panels, 1969, from memory).
 *
 * @param shearWidthNPerMm G·b, summed over what lies side by side in the core
 * @param faceDistanceMm   d, between the mid-planes of the faces
 */
export function coreShearStiffnessN(shearWidthNPerMm: number, faceDistanceMm: number, coreMm: number): number {
  return (shearWidthNPerMm * faceDistanceMm ** 2) / coreMm;
}

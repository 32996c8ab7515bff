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

/**
 * Deflection from shear of a sandwich core under a centre load, mm: F·L/4S (Allen, as above).
 *
 * @param faceDistanceMm d, between the mid-planes of the faces
 */
export function coreShearDeflectionMm(load: {
  readonly forceN: number;
  readonly spanMm: number;
  readonly widthMm: number;
  readonly coreMm: number;
  readonly faceDistanceMm: number;
  readonly coreShearMpa: number;
}): number {
  for (const [name, value] of Object.entries(load)) {
    if (!(value > 0)) throw new RangeError(`${name}: ${value} is not above 0`);
  }
  const shearStiffnessN = coreShearStiffnessN(load.coreShearMpa * load.widthMm, load.faceDistanceMm, load.coreMm);
  return (load.forceN * load.spanMm) / (4 * shearStiffnessN);
}

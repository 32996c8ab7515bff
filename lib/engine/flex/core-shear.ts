/** How much a core's shear adds to bending: negligible for wood, not for foam, so the beam leaves it out. */

/**
 * Deflection from shear of a sandwich core under a centre load, mm: F·L/4S, S = G·b·d²/c (H. G. Allen, Analysis and Design
 * of Structural Sandwich Panels, 1969, from memory).
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
  const shearStiffnessN = (load.coreShearMpa * load.widthMm * load.faceDistanceMm ** 2) / load.coreMm;
  return (load.forceN * load.spanMm) / (4 * shearStiffnessN);
}

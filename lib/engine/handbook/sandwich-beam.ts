/**
 * A sandwich beam's shear under a centre load. Only checks use it: it holds the core's shear stiffness of the flex room against
 * H. G. Allen, Analysis and Design of Structural Sandwich Panels, 1969 (from memory).
 */
import { coreShearStiffnessN } from "#engine/flex";

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

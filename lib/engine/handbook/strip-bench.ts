/**
 * The strip bench: a core strip on two supports, pressed in the middle. mm, N, MPa. Only checks use it: it holds what the shop
 * reads off its bench against the centre-load form of ASTM D143, D198 and D4761 (from memory).
 */

export interface StripReading {
  readonly forceN: number;
  readonly spanMm: number;
  readonly widthMm: number;
  /** Enters cubed: 1 % of it is 3 % of the modulus. */
  readonly heightMm: number;
  readonly deflectionMm: number;
}

/**
 * Apparent modulus E = P·L³/(4·b·h³·δ) (centre-load form of ASTM D143, D198 and D4761, from memory; equal to PL³/48Iδ).
 *
 * @throws RangeError naming a reading that is not above 0
 */
export function benchModulusMpa(reading: StripReading): number {
  for (const [name, value] of Object.entries(reading)) {
    if (!(value > 0 && Number.isFinite(value))) throw new RangeError(`${name}: ${value} is not above 0`);
  }
  const { forceN, spanMm, widthMm, heightMm, deflectionMm } = reading;
  return (forceN * spanMm ** 3) / (4 * widthMm * heightMm ** 3 * deflectionMm);
}

/**
 * True over apparent modulus of a rectangular strip under a centre load: 1 + 1.2·(E/G)·(h/L)² (own derivation). 1.098 at
 * span/depth 14, the handbook's specimen; under 1 % on a 1,200 mm bench, whose readings are used as they are.
 */
export function shearCorrection(spanToDepth: number, modulusToShearRatio: number): number {
  if (!(spanToDepth > 0)) throw new RangeError(`spanToDepth: ${spanToDepth} is not above 0`);
  if (!(modulusToShearRatio >= 0)) throw new RangeError(`modulusToShearRatio: ${modulusToShearRatio} is below 0`);
  return 1 + (1.2 * modulusToShearRatio) / spanToDepth ** 2;
}

/** Scatter of a core of independent strips side by side: its stiffness is their mean, so it falls with √n. */
export function coreVariation(stripVariation: number, strips: number): number {
  if (!(stripVariation >= 0)) throw new RangeError(`stripVariation: ${stripVariation} is below 0`);
  if (!(Number.isInteger(strips) && strips >= 1))
    throw new RangeError(`strips: ${strips} is not a whole number above 0`);
  return stripVariation / Math.sqrt(strips);
}

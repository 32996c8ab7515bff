/**
 * Free bending of a uniform cantilever. Dynamics, so metres, kilograms and newtons inside. Only checks use it: it holds
 * stiffness and mass of a ski against the Euler–Bernoulli beam.
 */

/** First root of cos βL·cosh βL = −1. */
const FIRST_CANTILEVER_ROOT = 1.8751040687119611;

/**
 * First frequency, Hz: (βL)²/2π·√(EI/mL⁴) (Euler–Bernoulli).
 *
 * @param lengthMm free length in front of the clamp
 */
export function cantileverFrequencyHz(bendingStiffnessNmm2: number, massKgPerM: number, lengthMm: number): number {
  const values = { bendingStiffnessNmm2, massKgPerM, lengthMm };
  for (const [name, value] of Object.entries(values)) {
    if (!(value > 0)) throw new RangeError(`${name}: ${value} is not above 0`);
  }
  const stiffnessNm2 = bendingStiffnessNmm2 / 1e6;
  return (FIRST_CANTILEVER_ROOT ** 2 / (2 * Math.PI)) * Math.sqrt(stiffnessNm2 / (massKgPerM * (lengthMm / 1e3) ** 4));
}

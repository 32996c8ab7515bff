/**
 * Similarity: what must change in a ski when the skier's mass or the ski's length changes and the ski is to feel the same.
 * Own derivation from beam theory, by the way of Galilei (Discorsi, 1638: bodies of one shape grow weaker as they grow) and
 * Buckingham (Phys. Rev. 4, 1914: two systems behave alike when their dimensionless numbers agree; both from memory). The
 * two numbers are
 *   bending  δ/L = F L²/(48 EI), F ∝ m  →  EI ∝ m L² and spring constant k = 48 EI/L³ ∝ m/L
 *   twist    θ = (F b/2) L/GJ           →  GJ ∝ m b L
 * Limits: small deflections, one shape of EI(x), the weight carried in the same places. Nobody has shown that skiers want
 * constant relative deflection; a shop tempers the mass exponent (fit coefficients, `massExponent`).
 */

/** Standard gravity, m/s², exact by definition (3rd CGPM, 1901). */
export const STANDARD_GRAVITY = 9.80665;

/** A skier with all that is carried, on a ski of a length. */
export interface Rider {
  readonly massKg: number;
  readonly lengthMm: number;
}

export interface SimilarityExponents {
  /** 1 keeps the relative deflection; less makes the heavier skier's ski relatively softer. */
  readonly mass: number;
  /** 2 keeps the relative deflection, and is what a core is solved for. */
  readonly length: number;
}

const SAME_DEFLECTION: SimilarityExponents = { mass: 1, length: 2 };

/** EI over the reference rider's EI for the same feel: (m/m0)^p · (L/L0)^q, see the head of this file. */
export function bendingForSameFeel(now: Rider, reference: Rider, exponents = SAME_DEFLECTION): number {
  const { mass, length } = exponents;
  return (now.massKg / reference.massKg) ** mass * (now.lengthMm / reference.lengthMm) ** length;
}

/** Centre spring constant over the reference rider's: k = 48 EI/L³, so m/L where relative deflection is kept. */
export function springForSameFeel(now: Rider, reference: Rider, exponents = SAME_DEFLECTION): number {
  return bendingForSameFeel(now, reference, exponents) / (now.lengthMm / reference.lengthMm) ** 3;
}

/** GJ over the reference rider's GJ for the same twist: m·b·L over m0·b0·L0, with b the width that the edge moment acts on. */
export function torsionForSameTwist(
  now: Rider & { readonly widthMm: number },
  reference: Rider & { readonly widthMm: number },
): number {
  const product = ({ massKg, widthMm, lengthMm }: typeof now) => massKg * widthMm * lengthMm;
  return product(now) / product(reference);
}

/** Deflection at the load over the span, δ/L = F/(k L); for an even beam F L²/(48 EI). Newton, N/mm, mm. */
export function relativeDeflection(forceN: number, springNPerMm: number, spanMm: number): number {
  return forceN / (springNPerMm * spanMm);
}

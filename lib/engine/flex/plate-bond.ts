/**
 * A plate on a soft foil takes only part of the load it would take if glued down: the foil shears, and at the plate's ends
 * nothing is carried at all. Partial interaction of two layers under a constant moment (N. M. Newmark, C. P. Siess &
 * I. M. Viest, Proc. Soc. Exp. Stress Analysis 9 (1951) 75–92, from memory; own derivation for free ends):
 *   EI = EI0 + (EIbonded − EI0)(1 − cosh ωd / cosh ωℓ/2),  ω² = K(1/EAp + 1/EAs)·EIbonded/EI0
 * with K = G·w/t of the foil, EI0 the stiffness of plate and ski side by side, d from the plate's middle. Screws, which tie
 * the plate down too, are not counted.
 */
import type { StackMoments } from "./stack-sum";

/** A plate within a section. */
export interface PlateShare {
  /** E·A of the plate, N. */
  readonly axialN: number;
  /** Its mid-height over the bottom of the stack above the solid core, mm. */
  readonly heightMm: number;
  /** Shear stiffness of the foil per length, N/mm². */
  readonly foilNPerMm2: number;
  readonly fromMiddleMm: number;
  readonly halfLengthMm: number;
}

/**
 * Bending stiffness with the plate partly bonded, N·mm².
 *
 * @param moments of the whole section, plate included, about z = 0
 * @param plateZMm mid-height of the plate in the same axis
 */
export function partlyBonded({ a, s, i }: StackMoments, plate: PlateShare, plateZMm: number): number {
  const bonded = i - (s * s) / a;
  const restA = a - plate.axialN;
  const restS = s - plate.axialN * plateZMm;
  // Each about its own axis; the plate's own part stays in i.
  const apart = i - plate.axialN * plateZMm ** 2 - (restS * restS) / restA;
  const omega = Math.sqrt(plate.foilNPerMm2 * (1 / plate.axialN + 1 / restA) * (bonded / apart));
  // cosh x / cosh y without overflow for a stiff foil.
  const [x, y] = [omega * plate.fromMiddleMm, omega * plate.halfLengthMm];
  const slip = (Math.exp(x - y) + Math.exp(-x - y)) / (1 + Math.exp(-2 * y));
  return apart + (bonded - apart) * (1 - slip);
}

/**
 * Compliance and invariants of one lamina. Only checks use them: they hold the stiffnesses of the laminate room against Jones,
 * Mechanics of Composite Materials, 2nd ed. 1999, and Tsai & Hahn, Introduction to Composite Materials, 1980.
 */
import { type Lamina, reducedStiffness, type Stiffness } from "#engine/laminate";

/** Compliance S of a lamina in its own axes, 1/MPa (Jones eq. 2.62). @throws RangeError for an impossible lamina. */
export function compliance(lamina: Lamina): Stiffness {
  // Refuses what is no lamina.
  reducedStiffness(lamina);
  const { e1Mpa, e2Mpa, g12Mpa, nu12 } = lamina;
  return [1 / e1Mpa, -nu12 / e1Mpa, 0, 1 / e2Mpa, 0, 1 / g12Mpa];
}

/** Invariants U1, U4, U5 of a lamina, MPa: a quasi-isotropic stack has Q11 = U1, Q12 = U4, Q66 = U5 (Tsai & Hahn 1980). */
export function laminaInvariants(lamina: Lamina): {
  readonly u1Mpa: number;
  readonly u4Mpa: number;
  readonly u5Mpa: number;
} {
  const [q11, q12, , q22, , q66] = reducedStiffness(lamina);
  return {
    u1Mpa: (3 * q11 + 3 * q22 + 2 * q12 + 4 * q66) / 8,
    u4Mpa: (q11 + q22 + 6 * q12 - 4 * q66) / 8,
    u5Mpa: (q11 + q22 - 2 * q12 + 4 * q66) / 8,
  };
}

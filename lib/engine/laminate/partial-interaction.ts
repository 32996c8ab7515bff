/**
 * Stiff parts that a soft layer lets slip past each other: a rubber foil between glass and metal, a core between two skins.
 * Each part keeps its own stiffness; what holding them apart adds is a couple, and a couple needs shear through the joint.
 *
 * Complementary energy of n parts and n − 1 joints: couple = dᵀ·C⁻¹·d with d the distances between neighbouring parts and
 *   C(i,i) = 1/A(i) + 1/A(i+1) + s(i),  C(i,i+1) = −1/A(i+1)
 * A the stiffness of a part (EA in bending, GA in twist), s the slip compliance of a joint, 1/N. With s = 0 it is the bonded
 * section's ΣA(z − z̄)²; with s → ∞ nothing. For two parts it is A1·A2/(A1 + A2)·d²/(1 + s·A1·A2/(A1 + A2)), for three the
 * γ-method of EN 1995-1-1, annex B (both from memory; derivation own).
 *
 * Bending, s = π²/(K·L²): exact for a uniform beam under a moment of one half sine wave over L (N. M. Newmark, C. P. Siess &
 * I. M. Viest, Proc. Soc. Exp. Stress Analysis 9 (1951) 75–92, from memory). A point load bends the ski a little more within
 * 1/ω of itself (35 mm for the demo's foils); the spring constant stays within 1 %.
 * Twist: see torsionSlipCompliance.
 */

/** One stiff part: its stiffness (∫E dA or ∫G dA, N) and the height of its centroid. */
export interface StiffPart {
  readonly stiffnessN: number;
  readonly heightMm: number;
}

/**
 * What a stack of parts adds by standing apart, N·mm²; own stiffnesses of the parts come on top. In twist GJ takes 4 times
 * this value (GJ = 4b/d66).
 *
 * @param parts      from the bottom up, stiffness above 0
 * @param slipPerN   slip compliance of the joint over each part but the last, 1/N; 0 = bonded
 */
export function coupleStiffnessNmm2(parts: readonly StiffPart[], slipPerN: readonly number[]): number {
  // Thomas' algorithm on the tridiagonal C·F = d; the couple is d·F, summed from the eliminated right-hand side.
  let couple = 0;
  let pivot = 0;
  let carried = 0;
  for (let i = 0; i + 1 < parts.length; i++) {
    const lower = parts[i];
    const upper = parts[i + 1];
    if (!lower || !upper) break;
    const off = i === 0 ? 0 : -1 / lower.stiffnessN;
    const ratio = i === 0 ? 0 : off / pivot;
    pivot = 1 / lower.stiffnessN + 1 / upper.stiffnessN + (slipPerN[i] ?? 0) - ratio * off;
    carried = upper.heightMm - lower.heightMm - ratio * carried;
    couple += carried ** 2 / pivot;
  }
  return couple;
}

/**
 * Slip compliance of a foil in bending over one half wave, 1/N.
 *
 * @param foilNPerMm2 shear stiffness of the foil per length of ski, G·w/t
 */
export function bendingSlipCompliance(foilNPerMm2: number, halfWaveMm: number): number {
  return Math.PI ** 2 / (foilNPerMm2 * halfWaveMm ** 2);
}

/** A joint between two parts of a twisted strip. */
export interface TwistJoint {
  readonly lowerN: number;
  readonly upperN: number;
  readonly widthMm: number;
  /** Shear stiffness of the joint per area, G/t, N/mm³. */
  readonly jointNPerMm3: number;
  /** Of the wall that closes the section on each side, G·thickness/height, N/mm²; 0 = open. */
  readonly wallNPerMm2: number;
}

/**
 * Slip compliance of a joint in twist, 1/N. Two skins of shear stiffness S = ∫G dA/b joined by a layer of stiffness k per
 * area: the slip obeys s″ = s/λ², λ² = S1·S2/((S1 + S2)·k), and closes at the edges through the walls kw. The couple keeps
 *   1 − (2/b)·τ/(1/λ + kw·τ·(1/S1 + 1/S2)),  τ = tanh(b/2λ)
 * (thin skins, after E. Reissner's sandwich theory; own derivation). A stiff core gives the thin strip's 4b/d66, no core
 * gives R. Bredt's closed cell 4A²/Σ(s/Gt) for walls that resist by shear; between them it falls by a few percent on skis.
 */
export function torsionSlipCompliance(joint: TwistJoint): number {
  const { lowerN, upperN, widthMm, jointNPerMm3, wallNPerMm2 } = joint;
  const perN = 1 / lowerN + 1 / upperN;
  const softness = perN * widthMm;
  const waves = Math.sqrt(softness * jointNPerMm3);
  // Without a core the hyperbolic tangent tends to its argument: τ·λ → b/2.
  const reach = waves > 1e-9 ? Math.tanh((waves * widthMm) / 2) / waves : widthMm / 2;
  const lost = ((2 / widthMm) * reach) / (1 + wallNPerMm2 * softness * reach);
  return lost >= 1 ? Number.POSITIVE_INFINITY : perN * (lost / (1 - lost));
}

/**
 * Exact integrals over one piece of a beam on which both the moment and the stiffness are linear.
 * With u from 0 to 1, 1/EI = 1/(E0(1 + ru)), r = E1/E0 − 1, everything follows from J_k = ∫ u^k/(1 + ru) du:
 *   J0 = ln(1 + r)/r, J_k = (1/k − J_{k−1})/r   (own derivation; logarithmic piece integrals)
 */

/** Below this the recursion loses digits and the series J_k = Σ (−r)^n/(n + k + 1) is used. */
const SERIES_BELOW = 0.05;
const SERIES_TERMS = 13;

/** J0, J1, J2 for EI growing by the factor 1 + r over the piece, written into `into`. */
export function stiffnessMoments(r: number, into: Float64Array): void {
  if (Math.abs(r) < SERIES_BELOW) {
    let j0 = 0;
    let j1 = 0;
    let j2 = 0;
    for (let n = SERIES_TERMS; n >= 0; n--) {
      j0 = 1 / (n + 1) - r * j0;
      j1 = 1 / (n + 2) - r * j1;
      j2 = 1 / (n + 3) - r * j2;
    }
    into[0] = j0;
    into[1] = j1;
    into[2] = j2;
    return;
  }
  const j0 = Math.log1p(r) / r;
  const j1 = (1 - j0) / r;
  into[0] = j0;
  into[1] = j1;
  into[2] = (0.5 - j1) / r;
}

const j = new Float64Array(3);

/** ∫ M²/EI dx over a piece, N·mm: M from m0 to m1, EI from e0 to e1, length h. */
export function pieceEnergy(h: number, m0: number, m1: number, e0: number, e1: number): number {
  stiffnessMoments(e1 / e0 - 1, j);
  const dm = m1 - m0;
  const [j0 = 0, j1 = 0, j2 = 0] = j;
  return (h / e0) * (m0 * m0 * j0 + 2 * m0 * dm * j1 + dm * dm * j2);
}

/** Turn of the axis over a piece, ∫ M/EI dx, rad. */
export function pieceTurn(h: number, m0: number, m1: number, e0: number, e1: number): number {
  stiffnessMoments(e1 / e0 - 1, j);
  const [j0 = 0, j1 = 0] = j;
  return (h / e0) * (m0 * j0 + (m1 - m0) * j1);
}

/** Offset at the end of a piece from its starting tangent, ∫ (h − x)·M/EI dx, mm. */
export function pieceOffset(h: number, m0: number, m1: number, e0: number, e1: number): number {
  stiffnessMoments(e1 / e0 - 1, j);
  const [j0 = 0, j1 = 0, j2 = 0] = j;
  return ((h * h) / e0) * (m0 * (j0 - j1) + (m1 - m0) * (j1 - j2));
}

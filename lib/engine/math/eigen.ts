/** Eigenvalues of small symmetric matrices. */
import type { Matrix } from "./dense";

const SWEEPS = 40;

/**
 * All eigenvalues of a symmetric matrix, unsorted, by Jacobi's cyclic rotations (C. G. J. Jacobi 1846; W. H. Press et al.,
 * Numerical Recipes, § 11.1, from memory). Exact to rounding for the sizes met here, up to some tens of rows.
 */
export function jacobiEigenvalues(symmetric: Matrix): number[] {
  const a = symmetric.map((row) => Float64Array.from(row));
  const size = a.length;
  const get = (i: number, j: number) => a[i]?.[j] ?? 0;
  const scale = Math.sqrt(a.reduce((sum, row) => sum + row.reduce((s, v) => s + v * v, 0), 0));
  for (let sweep = 0; sweep < SWEEPS; sweep++) {
    let off = 0;
    for (let p = 0; p < size; p++) for (let q = p + 1; q < size; q++) off += get(p, q) ** 2;
    if (Math.sqrt(off) <= 1e-14 * scale) break;
    for (let p = 0; p < size; p++) for (let q = p + 1; q < size; q++) rotate(a, p, q);
  }
  return a.map((row, i) => row[i] ?? 0);
}

/** Turns rows and columns p and q so that a(p,q) vanishes. */
function rotate(a: readonly Float64Array[], p: number, q: number): void {
  const [rowP, rowQ] = [a[p], a[q]];
  if (!rowP || !rowQ) return;
  const apq = rowP[q] ?? 0;
  if (apq === 0) return;
  const theta = ((rowQ[q] ?? 0) - (rowP[p] ?? 0)) / (2 * apq);
  const t = Math.sign(theta || 1) / (Math.abs(theta) + Math.hypot(theta, 1));
  const c = 1 / Math.hypot(t, 1);
  const s = t * c;
  for (const row of a) {
    const [x, y] = [row[p] ?? 0, row[q] ?? 0];
    row[p] = c * x - s * y;
    row[q] = s * x + c * y;
  }
  for (let k = 0; k < a.length; k++) {
    const [x, y] = [rowP[k] ?? 0, rowQ[k] ?? 0];
    rowP[k] = c * x - s * y;
    rowQ[k] = s * x + c * y;
  }
}

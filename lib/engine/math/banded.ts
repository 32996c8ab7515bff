/** Symmetric banded equations by Cholesky's method without roots, K = L·D·Lᵀ; only +, −, × and ÷. */

/** A pivot below this share of its diagonal is a piece that nothing holds: its unknown stays 0. */
const LOOSE = 1e-12;

/**
 * Solves K·x = f in place for a symmetric K that is not negative. Pieces that move freely and unknowns without stiffness are
 * held at 0, which is right wherever f is balanced over each of them.
 *
 * @param band  row i holds K(i, i − width) … K(i, i), width + 1 values; overwritten by the factor
 * @param f     overwritten by the solution
 */
export function solveBanded(band: Float64Array, f: Float64Array, width: number): void {
  const size = f.length;
  const stride = width + 1;
  const inverse = new Float64Array(size);
  for (let i = 0; i < size; i++) {
    // Entry (i, j) stands at i·stride + width − i + j. While row i is worked on it holds L·D, afterwards L.
    const row = i * stride + width - i;
    const first = Math.max(0, i - width);
    const diagonal = band[row + i] ?? 0;
    let pivot = diagonal;
    let right = f[i] ?? 0;
    for (let j = first; j < i; j++) {
      const other = j * stride + width - j;
      let sum = band[row + j] ?? 0;
      for (let k = Math.max(first, j - width); k < j; k++) sum -= (band[row + k] ?? 0) * (band[other + k] ?? 0);
      band[row + j] = sum;
    }
    for (let j = first; j < i; j++) {
      const scaled = (band[row + j] ?? 0) * (inverse[j] ?? 0);
      pivot -= scaled * (band[row + j] ?? 0);
      right -= scaled * (f[j] ?? 0);
      band[row + j] = scaled;
    }
    inverse[i] = pivot > LOOSE * diagonal ? 1 / pivot : 0;
    f[i] = right;
  }
  for (let i = 0; i < size; i++) f[i] = (f[i] ?? 0) * (inverse[i] ?? 0);
  for (let i = size - 1; i >= 0; i--) {
    const row = i * stride + width - i;
    const x = f[i] ?? 0;
    for (let j = Math.max(0, i - width); j < i; j++) f[j] = (f[j] ?? 0) - (band[row + j] ?? 0) * x;
  }
}

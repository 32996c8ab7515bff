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
    let j = first;
    // Four columns a pass share what is read of row i; every sum is taken in the order that one column a pass would.
    for (; j + 3 < i; j += 4) {
      const at0 = j * stride + width - j;
      const at1 = at0 + width;
      const at2 = at1 + width;
      const at3 = at2 + width;
      let sum0 = band[row + j] ?? 0;
      let sum1 = band[row + j + 1] ?? 0;
      let sum2 = band[row + j + 2] ?? 0;
      let sum3 = band[row + j + 3] ?? 0;
      for (let k = first; k < j; k++) {
        const value = band[row + k] ?? 0;
        sum0 -= value * (band[at0 + k] ?? 0);
        sum1 -= value * (band[at1 + k] ?? 0);
        sum2 -= value * (band[at2 + k] ?? 0);
        sum3 -= value * (band[at3 + k] ?? 0);
      }
      sum1 -= sum0 * (band[at1 + j] ?? 0);
      sum2 -= sum0 * (band[at2 + j] ?? 0);
      sum2 -= sum1 * (band[at2 + j + 1] ?? 0);
      sum3 -= sum0 * (band[at3 + j] ?? 0);
      sum3 -= sum1 * (band[at3 + j + 1] ?? 0);
      sum3 -= sum2 * (band[at3 + j + 2] ?? 0);
      band[row + j] = sum0;
      band[row + j + 1] = sum1;
      band[row + j + 2] = sum2;
      band[row + j + 3] = sum3;
    }
    for (; j < i; j++) {
      const at = j * stride + width - j;
      let sum = band[row + j] ?? 0;
      for (let k = first; k < j; k++) sum -= (band[row + k] ?? 0) * (band[at + k] ?? 0);
      band[row + j] = sum;
    }
    for (let k = first; k < i; k++) {
      const scaled = (band[row + k] ?? 0) * (inverse[k] ?? 0);
      pivot -= scaled * (band[row + k] ?? 0);
      right -= scaled * (f[k] ?? 0);
      band[row + k] = scaled;
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

/**
 * Integration: exact for piecewise-linear data, composite Gauss–Legendre for smooth functions. Only checks use it: it holds
 * sums over stations against integrals (Abramowitz & Stegun 1964, table 25.4).
 */

/** Exact integral of the piecewise-linear function through (xs, ys) over its whole span. */
export function integratePiecewiseLinear(xs: ArrayLike<number>, ys: ArrayLike<number>): number {
  let sum = 0;
  for (let i = 0; i + 1 < xs.length; i++) {
    sum += (((xs[i + 1] ?? 0) - (xs[i] ?? 0)) * ((ys[i] ?? 0) + (ys[i + 1] ?? 0))) / 2;
  }
  return sum;
}

// Abramowitz & Stegun, Handbook of Mathematical Functions (1964), table 25.4, n = 5.
const GAUSS_NODES = [-0.906179845938664, -0.5384693101056831, 0, 0.5384693101056831, 0.906179845938664];
const GAUSS_WEIGHTS = [
  0.2369268850561891, 0.4786286704993665, 0.5688888888888889, 0.4786286704993665, 0.2369268850561891,
];

/**
 * Composite five-point Gauss–Legendre integral of `f` over [from, to]: exact for polynomials up to degree 9 in each piece.
 *
 * @param pieces equal parts of the span, at least 1; put breaks of `f` on their boundaries
 */
export function integrate(f: (x: number) => number, from: number, to: number, pieces = 1): number {
  if (!Number.isInteger(pieces) || pieces < 1) throw new RangeError(`integrate: pieces ${pieces} is not at least 1`);
  const half = (to - from) / pieces / 2;
  let sum = 0;
  for (let piece = 0; piece < pieces; piece++) {
    const middle = from + (2 * piece + 1) * half;
    for (let i = 0; i < GAUSS_NODES.length; i++) {
      sum += (GAUSS_WEIGHTS[i] ?? 0) * f(middle + half * (GAUSS_NODES[i] ?? 0));
    }
  }
  return sum * half;
}

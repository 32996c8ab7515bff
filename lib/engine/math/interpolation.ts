/** Piecewise-linear functions on sorted knots. Between knots straight lines, outside the end values hold. */

/**
 * Index i of the piece [xs[i], xs[i+1]] that holds x, clamped to the first and last piece.
 *
 * @param xs at least two knots, ascending (repeats allowed: a step)
 */
export function pieceIndex(xs: ArrayLike<number>, x: number): number {
  let low = 0;
  let high = xs.length - 2;
  while (low < high) {
    const middle = (low + high + 1) >> 1;
    if ((xs[middle] ?? Number.NaN) <= x) low = middle;
    else high = middle - 1;
  }
  return low;
}

/**
 * Value at x of the piecewise-linear function through (xs, ys); beyond the ends the end value.
 *
 * @throws RangeError when there is no knot or the two lists differ in length
 */
export function interpolate(xs: ArrayLike<number>, ys: ArrayLike<number>, x: number): number {
  const count = xs.length;
  if (count === 0 || ys.length !== count) {
    throw new RangeError(`interpolate: ${count} knots and ${ys.length} values, both must be the same and at least 1`);
  }
  const first = xs[0] ?? Number.NaN;
  const last = xs[count - 1] ?? Number.NaN;
  if (count === 1 || x <= first) return ys[0] ?? Number.NaN;
  if (x >= last) return ys[count - 1] ?? Number.NaN;
  const i = pieceIndex(xs, x);
  const x0 = xs[i] ?? Number.NaN;
  const x1 = xs[i + 1] ?? Number.NaN;
  const y0 = ys[i] ?? Number.NaN;
  const y1 = ys[i + 1] ?? Number.NaN;
  return x1 === x0 ? y1 : y0 + ((y1 - y0) * (x - x0)) / (x1 - x0);
}

/** Ascending copy of `values` in which neighbours closer than `apart` are merged into the first of them. */
export function sortedDistinct(values: readonly number[], apart = 0): number[] {
  const sorted = [...values].sort((a, b) => a - b);
  const kept: number[] = [];
  for (const value of sorted) {
    const previous = kept.at(-1);
    if (previous === undefined || value - previous > apart) kept.push(value);
  }
  return kept;
}

/** `pieces + 1` evenly spaced values from `from` to `to`, both included. */
export function evenlySpaced(from: number, to: number, pieces: number): number[] {
  if (!Number.isInteger(pieces) || pieces < 1) throw new RangeError(`evenlySpaced: pieces ${pieces} is not at least 1`);
  return Array.from({ length: pieces + 1 }, (_, i) => (i === pieces ? to : from + ((to - from) * i) / pieces));
}

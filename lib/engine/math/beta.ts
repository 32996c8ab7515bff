/** Quantiles of the beta distribution, for chances that were learnt from counts. */
import { portableExp, portableLog } from "./portable";

const pieces = 4000;
/** Densities below exp(−45) of the greatest are nothing beside it. */
const reach = 45;

/**
 * Quantiles of Beta(a, b) at ascending shares: where its distribution reaches each. With p = 1/(1 + exp(−t)) the density of t
 * is p^a·(1 − p)^b, smooth for every a and b; summed over a grid of t (trapezium sum, 4,000 pieces).
 *
 * @param a greater than 0
 * @param b greater than 0
 * @param shares strictly between 0 and 1, ascending
 * @throws RangeError outside these
 */
export function betaQuantiles(a: number, b: number, shares: readonly number[]): readonly number[] {
  if (!(a > 0 && b > 0)) throw new RangeError(`betaQuantiles: a ${a} and b ${b} are not both greater than 0`);
  if (shares.some((share, i) => !(share > (shares[i - 1] ?? 0) && share < 1)))
    throw new RangeError(`betaQuantiles: shares ${shares.join(", ")} do not ascend between 0 and 1`);
  const peak = portableLog(a / b);
  const logDensity = (t: number) => -a * logOnePlusExp(-t) - b * logOnePlusExp(t);
  const highest = logDensity(peak);
  const near = 12 * Math.sqrt(1 / a + 1 / b);
  const from = peak - Math.min(near + reach / a, 700);
  const to = peak + Math.min(near + reach / b, 700);
  const step = (to - from) / pieces;
  const heights = Float64Array.from({ length: pieces + 1 }, (_, i) =>
    portableExp(Math.max(-700, logDensity(from + i * step) - highest)),
  );
  const whole = heights.reduce((sum, height) => sum + height, 0) - ((heights[0] ?? 0) + (heights[pieces] ?? 0)) / 2;
  const found: number[] = [];
  let below = 0;
  for (let i = 0; i < pieces && found.length < shares.length; i++) {
    const piece = ((heights[i] as number) + (heights[i + 1] as number)) / 2;
    while (found.length < shares.length && below + piece >= (shares[found.length] as number) * whole) {
      const part = ((shares[found.length] as number) * whole - below) / piece;
      found.push(1 / (1 + portableExp(-Math.max(-700, Math.min(700, from + (i + part) * step)))));
    }
    below += piece;
  }
  while (found.length < shares.length) found.push(1);
  return found;
}

/** ln(1 + exp(t)) without overflow. */
function logOnePlusExp(t: number): number {
  return t > 0 ? t + portableLog(1 + portableExp(-Math.min(t, 700))) : portableLog(1 + portableExp(Math.max(t, -700)));
}

/** The binomial distribution where a share is judged: how far a count may be from its mean by chance alone. */
import { portableExp, portableLog } from "./portable";

export interface BinomialBand {
  readonly low: number;
  readonly high: number;
}

/**
 * Central acceptance band of a count of `n` independent trials of chance `p`: the least counts whose cumulative chance
 * reaches (1 − confidence)/2 and (1 + confidence)/2.
 *
 * @param n whole, at least 0
 * @param p from 0 to 1
 * @throws RangeError outside these
 */
export function binomialBand(n: number, p: number, confidence: number): BinomialBand {
  if (!Number.isInteger(n) || n < 0) throw new RangeError(`binomialBand: n ${n} is not a whole number of at least 0`);
  if (!(p >= 0 && p <= 1)) throw new RangeError(`binomialBand: p ${p} is not from 0 to 1`);
  if (p === 0 || n === 0) return { low: 0, high: 0 };
  if (p === 1) return { low: n, high: n };
  const tail = (1 - confidence) / 2;
  const odds = portableLog(p) - portableLog(1 - p);
  let logChance = n * portableLog(1 - p);
  let cumulative = 0;
  let low = -1;
  for (let count = 0; count <= n; count++) {
    cumulative += logChance < -700 ? 0 : portableExp(logChance);
    if (low < 0 && cumulative >= tail) low = count;
    if (cumulative >= 1 - tail) return { low, high: count };
    logChance += portableLog(n - count) - portableLog(count + 1) + odds;
  }
  // Rounding may leave the whole a little below 1.
  return { low, high: n };
}

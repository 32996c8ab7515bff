/**
 * Normal and lognormal quantiles that are bit-identical everywhere, as stored tables for sampling, and the sample quantile
 * that commutes with calendars.
 */
import { portableExp, portableLog } from "./portable";

// M. J. Wichura, Algorithm AS 241: The percentage points of the normal distribution, Applied Statistics 37 (1988) 477–484,
// routine PPND16 (about 1 part in 1e16); coefficients highest power first.
const CENTRE: Rational = [
  [
    2509.0809287301227, 33430.57558358813, 67265.7709270087, 45921.95393154987, 13731.69376550946, 1971.5909503065513,
    133.14166789178438, 3.3871328727963665,
  ],
  [
    5226.495278852546, 28729.085735721943, 39307.89580009271, 21213.794301586597, 5394.196021424751, 687.1870074920579,
    42.31333070160091, 1,
  ],
];
const MIDDLE: Rational = [
  [
    0.0007745450142783414, 0.022723844989269184, 0.2417807251774506, 1.2704582524523684, 3.6478483247632045,
    5.769497221460691, 4.630337846156546, 1.4234371107496835,
  ],
  [
    1.0507500716444169e-9, 0.0005475938084995345, 0.015198666563616457, 0.14810397642748008, 0.6897673349851,
    1.6763848301838038, 2.053191626637759, 1,
  ],
];
const TAIL: Rational = [
  [
    2.0103343992922881e-7, 2.7115555687434876e-5, 0.0012426609473880784, 0.026532189526576124, 0.29656057182850487,
    1.7848265399172913, 5.463784911164114, 6.657904643501103,
  ],
  [
    2.0442631033899397e-15, 1.421511758316446e-7, 1.8463183175100548e-5, 0.0007868691311456133, 0.014875361290850615,
    0.1369298809227358, 0.599832206555888, 1,
  ],
];

type Rational = readonly [readonly number[], readonly number[]];

function polynomial(coefficients: readonly number[], x: number): number {
  return coefficients.reduce((sum, coefficient) => sum * x + coefficient, 0);
}

const ratio = ([top, bottom]: Rational, x: number): number => polynomial(top, x) / polynomial(bottom, x);

/**
 * Standard normal quantile z(p).
 *
 * @param p strictly between 0 and 1
 * @throws RangeError otherwise
 */
export function normalQuantile(p: number): number {
  if (!(p > 0 && p < 1)) throw new RangeError(`normalQuantile: p ${p} is not strictly between 0 and 1`);
  const q = p - 0.5;
  if (Math.abs(q) <= 0.425) return q * ratio(CENTRE, 0.180625 - q * q);
  const r = Math.sqrt(-portableLog(q < 0 ? p : 1 - p));
  const z = r <= 5 ? ratio(MIDDLE, r - 1.6) : ratio(TAIL, r - 5);
  return q < 0 ? -z : z;
}

/** Entries of a sampling table; its index is the top twelve bits of a draw. */
export const TABLE_SIZE = 4096;
const TABLE_SHIFT = 20;

/** The lognormal with a given mean and standard deviation: exp(mu + sigma·z). */
export interface Lognormal {
  readonly mu: number;
  readonly sigma: number;
}

/**
 * Parameters by the moment identities: sigma² = ln(1 + (sd/mean)²), mu = ln mean − sigma²/2.
 *
 * @throws RangeError when the mean is not positive or the standard deviation is negative
 */
export function lognormalFromMoments(mean: number, standardDeviation: number): Lognormal {
  if (!(mean > 0)) throw new RangeError(`lognormalFromMoments: mean ${mean} is not positive`);
  if (!(standardDeviation >= 0)) {
    throw new RangeError(`lognormalFromMoments: standardDeviation ${standardDeviation} is negative`);
  }
  const variation = standardDeviation / mean;
  const variance = portableLog(1 + variation * variation);
  return { mu: portableLog(mean) - variance / 2, sigma: Math.sqrt(variance) };
}

let storedNormal: Float64Array | undefined;

/** The shared table of standard normal quantiles at (i + ½)/4096. Do not write to it. */
export function normalTable(): Float64Array {
  storedNormal ??= Float64Array.from({ length: TABLE_SIZE }, (_, i) => normalQuantile((i + 0.5) / TABLE_SIZE));
  return storedNormal;
}

/**
 * Lognormal quantiles at (i + ½)/4096, scaled so that the table's mean is `mean` exactly (the cut tails would lose up to
 * about 0.1 %). Build one per distinct pair of moments and keep it; sample with {@link sampleTable}.
 */
export function lognormalTable(mean: number, standardDeviation: number): Float64Array {
  const { mu, sigma } = lognormalFromMoments(mean, standardDeviation);
  const table = normalTable().map((z) => portableExp(mu + sigma * z));
  const correction = (mean * TABLE_SIZE) / table.reduce((sum, value) => sum + value, 0);
  return table.map((value) => value * correction);
}

/** Entry of a 4096-entry table that an unsigned 32-bit draw selects. */
export function sampleTable(table: Float64Array, u32: number): number {
  return table[u32 >>> TABLE_SHIFT] ?? Number.NaN;
}

/** Rank (1-based) of the type 1 quantile, the inverse of the empirical distribution: ceil(n·p). */
export function quantileRank(count: number, p: number): number {
  if (!(count >= 1)) throw new RangeError(`quantileRank: count ${count} is not at least 1`);
  if (!(p >= 0 && p <= 1)) throw new RangeError(`quantileRank: p ${p} is not from 0 to 1`);
  // n·p may land a rounding error above a whole number (200 × 0.95 must be rank 190).
  return Math.min(count, Math.max(1, Math.ceil(count * p - 1e-9)));
}

/**
 * Sample quantile of type 1 (Hyndman & Fan 1996): an order statistic, so it commutes with any non-decreasing map such as a
 * calendar.
 *
 * @param sorted ascending, at least one value
 */
export function orderStatistic(sorted: ArrayLike<number>, p: number): number {
  return sorted[quantileRank(sorted.length, p) - 1] ?? Number.NaN;
}

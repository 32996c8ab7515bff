/**
 * Regularised (Bayesian) linear least squares: the θ that minimises Σ w(r − J·θ)²/σ² + Σ((θ − 0)/σ0)², its covariance and
 * the leverage of each reading. The readings are taken to be independent given θ. Source: A. Tarantola, Inverse Problem
 * Theory (2005), ch. 3; without the prior, D. A. Belsley, E. Kuh & R. E. Welsch, Regression Diagnostics (1980) for readings
 * left out one at a time; P. J. Huber, Robust Estimation of a Location Parameter (1964) for the weights. All from memory.
 */
import { invert } from "#engine/math";

/** One reading: how far it is from computed, how that moves with each unknown, and its standard deviation. */
export interface Row {
  readonly residual: number;
  readonly slopes: readonly number[];
  readonly sd: number;
  /** 0 takes no part, 1 counts in full. */
  readonly weight: number;
}

export interface LinearFit {
  readonly values: readonly number[];
  /** (JᵀWJ + P)⁻¹. */
  readonly covariance: readonly (readonly number[])[];
}

/**
 * @param rows residuals at `around`
 * @param priorSd of each unknown, about 0
 * @param around where the problem was linearised; by default at 0
 * @returns values of the unknowns themselves, not steps
 */
export function fitLinear(
  rows: readonly Row[],
  priorSd: readonly number[],
  around: readonly number[] = priorSd.map(() => 0),
): LinearFit {
  const size = priorSd.length;
  const normal = priorSd.map((sd, i) => Array.from({ length: size }, (_, j) => (i === j ? 1 / sd ** 2 : 0)));
  const right = new Array<number>(size).fill(0);
  for (const { residual, slopes, sd, weight } of rows) {
    if (weight === 0) continue;
    const w = weight / sd ** 2;
    // The reading as it would stand at 0: what is left plus what `around` explains already.
    const whole = residual + dot(slopes, around);
    for (const [i, slope] of slopes.entries()) {
      if (slope === 0) continue;
      right[i] = (right[i] ?? 0) + w * slope * whole;
      const line = normal[i] ?? [];
      for (const [j, other] of slopes.entries()) line[j] = (line[j] ?? 0) + w * slope * other;
    }
  }
  const covariance = size === 0 ? [] : invert(normal);
  return { values: covariance.map((line) => dot(line, right)), covariance };
}

/** Huber's constant: 95 % as efficient as least squares where all is well. */
const HUBER = 1.345;
const ROUNDS = 30;

/**
 * The same fit with Huber's weights, so that one gross reading neither hides another nor drags sound ones into suspicion.
 *
 * @returns the fit and the weights it settled on, in the order of the rows
 */
export function fitRobust(
  rows: readonly Row[],
  priorSd: readonly number[],
  around: readonly number[],
): { readonly fit: LinearFit; readonly rows: readonly Row[] } {
  let weighted = rows;
  let fit = fitLinear(weighted, priorSd, around);
  for (let round = 0; round < ROUNDS; round++) {
    weighted = rows.map((row) => {
      const distance = Math.abs(residualAt(row, fit.values, around)) / row.sd;
      return distance > HUBER ? { ...row, weight: (row.weight * HUBER) / distance } : row;
    });
    fit = fitLinear(weighted, priorSd, around);
  }
  return { fit, rows: weighted };
}

/**
 * Distance of each reading from what all the others predict, in standard deviations of that distance. With leverage
 * h = w·jᵀCj/σ² the residual without the reading is r/(1 − h), and its variance σ² + jᵀC₋j, C₋ the covariance without it:
 * jᵀC₋j = jᵀCj/(1 − h) (Sherman–Morrison). A reading of weight 0 is compared with the fit as it is.
 */
export function studentised(row: Row, { values, covariance }: LinearFit, around: readonly number[]): number {
  const spread = dot(
    covariance.map((line) => dot(line, row.slopes)),
    row.slopes,
  );
  const others = 1 - (row.weight * spread) / row.sd ** 2;
  return residualAt(row, values, around) / others / Math.sqrt(row.sd ** 2 + spread / others);
}

function residualAt({ residual, slopes }: Row, values: readonly number[], around: readonly number[]): number {
  return slopes.reduce((rest, slope, i) => rest - slope * ((values[i] ?? 0) - (around[i] ?? 0)), residual);
}

function dot(a: readonly number[], b: readonly number[]): number {
  return a.reduce((sum, value, i) => sum + value * (b[i] ?? 0), 0);
}

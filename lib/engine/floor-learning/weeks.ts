/** How far all work of a week is slow or quick together: the variance component between weeks. */
import { normalQuantile } from "#engine/math";
import { minutesPerDay } from "#engine/routing";
import { intervalShares } from "./rates";
import type { StationResidual } from "./stations";
import type { FloorLearningSettings, WeekLearning } from "./types";

/**
 * Unbalanced one-way analysis of variance (S. R. Searle, G. Casella, C. E. McCulloch, Variance Components, 1992, section 3.6):
 * σ² between = (MSB − MSW)/n₀ with n₀ = (N − Σnᵢ²/N)/(k − 1), 0 where that is negative. Its interval takes MSB for a
 * chi-square over its degrees of freedom (Wilson and Hilferty's approximation).
 *
 * @param assumed the setting's standard deviation
 */
export function learnWeeks(
  residuals: readonly StationResidual[],
  assumed: number,
  settings: FloorLearningSettings,
): WeekLearning {
  const byWeek = new Map<number, number[]>();
  for (const { counted, logRatio } of residuals) {
    const week = weekOf(counted.visit.startMinute);
    byWeek.set(week, [...(byWeek.get(week) ?? []), logRatio]);
  }
  const groups = [...byWeek.values()];
  const [k, count] = [groups.length, residuals.length];
  const none = { weeks: k, visits: count, assumed, learnt: assumed, interval: { low: 0, high: assumed } };
  if (k < 2 || count <= k) return none;
  const mean = sum(residuals.map(({ logRatio }) => logRatio)) / count;
  const means = groups.map((group) => sum(group) / group.length);
  const between = sum(groups.map((group, i) => group.length * ((means[i] as number) - mean) ** 2)) / (k - 1);
  const within =
    sum(groups.map((group, i) => sum(group.map((each) => (each - (means[i] as number)) ** 2)))) / (count - k);
  const size = (count - sum(groups.map(({ length }) => length ** 2)) / count) / (k - 1);
  const component = (square: number) => Math.max(0, (square - within) / size);
  const weight = settings.prior.weeks;
  const shrunk = (variance: number) => Math.sqrt((k * variance + weight * assumed ** 2) / (k + weight));
  const [high, low] = intervalShares.map((share) => shrunk(component((between * (k - 1)) / chiSquare(k - 1, share))));
  return {
    weeks: k,
    visits: count,
    assumed,
    learnt: shrunk(component(between)),
    interval: { low: low as number, high: high as number },
  };
}

/** Weeks begin on Monday; day 0 was a Thursday. */
function weekOf(minute: number): number {
  return Math.floor((Math.floor(minute / minutesPerDay) + 3) / 7);
}

const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);

/** Quantile by E. B. Wilson and M. M. Hilferty (1931). */
function chiSquare(freedom: number, share: number): number {
  const part = 2 / (9 * freedom);
  return freedom * Math.max(1e-3, 1 - part + normalQuantile(share) * Math.sqrt(part)) ** 3;
}

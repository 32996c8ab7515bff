/** How many promises fail in the same future. A breakdown or an illness hits all at once, so each one's chance does not say it. */
import { orderStatistic } from "#engine/math";
import { workToEndOf } from "./promise";
import type { QueueRuns } from "./replications";

export interface FailTogether {
  readonly promises: number;
  readonly runs: number;
  /** Mean share of the promises that fail. */
  readonly mean: number;
  /** In one of twenty futures a larger share fails (type 1 quantile at 0.95), and in one of ten. */
  readonly oneOfTwenty: number;
  readonly oneOfTen: number;
  /** The same one of twenty, were every promise to fail by itself with its own chance. */
  readonly oneOfTwentyAlone: number;
  /** Runs by the share that fails, in steps of a tenth; a share of 1 is in the last. */
  readonly histogram: readonly number[];
}

const bins = 10;

/** Over the runs made so far; null without a promise or a run. */
export function failTogether(runs: QueueRuns): FailTogether | null {
  const limits = runs.pairs.flatMap(({ promise }, index) =>
    promise === null ? [] : [{ index, limit: workToEndOf(runs, promise.date) }],
  );
  const count = runs.replications.length;
  if (limits.length === 0 || count === 0) return null;
  const failures = limits.map(() => 0);
  const shares = Float64Array.from(runs.replications, ({ finishWorkMinutes }) => {
    let late = 0;
    limits.forEach(({ index, limit }, at) => {
      if ((finishWorkMinutes[index] as number) <= limit) return;
      late += 1;
      failures[at] = (failures[at] as number) + 1;
    });
    return late / limits.length;
  }).sort();
  const histogram = Array.from({ length: bins }, () => 0);
  for (const share of shares) {
    const bin = Math.min(bins - 1, Math.floor(share * bins + 1e-9));
    histogram[bin] = (histogram[bin] as number) + 1;
  }
  return {
    promises: limits.length,
    runs: count,
    mean: shares.reduce((sum, share) => sum + share, 0) / count,
    oneOfTwenty: orderStatistic(shares, 0.95),
    oneOfTen: orderStatistic(shares, 0.9),
    oneOfTwentyAlone: quantileAlone(
      failures.map((failed) => failed / count),
      0.95,
    ),
    histogram,
  };
}

/** Quantile of the share of independent events that happen: their count's distribution, one event folded in after another. */
function quantileAlone(chances: readonly number[], p: number): number {
  const distribution = new Float64Array(chances.length + 1);
  distribution[0] = 1;
  chances.forEach((chance, at) => {
    for (let count = at + 1; count >= 0; count--) {
      const less = count === 0 ? 0 : (distribution[count - 1] as number);
      distribution[count] = (distribution[count] as number) * (1 - chance) + less * chance;
    }
  });
  let below = 0;
  for (let count = 0; count <= chances.length; count++) {
    below += distribution[count] as number;
    if (below >= p - 1e-12) return count / chances.length;
  }
  return 1;
}

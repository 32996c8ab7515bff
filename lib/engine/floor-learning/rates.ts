/** Chances from counts: beta-binomial, the settings as so many trials seen before. */
import { betaQuantiles } from "#engine/math";
import type { RateLearning } from "./types";

/** Nine of ten lie between. */
export const intervalShares = [0.05, 0.95] as const;
/** Jeffreys' half a count, for the interval of a chance that nothing speaks for. */
const leastCount = 0.5;

/**
 * Posterior mean and central 90 % interval of a chance (A. Gelman et al., Bayesian Data Analysis, 3rd ed., section 2.4: the
 * beta prior is conjugate to the binomial).
 *
 * @param assumed the setting
 * @param weight the setting counts as so many trials
 */
export function learnRate(trials: number, failures: number, assumed: number, weight: number): RateLearning {
  const bad = failures + assumed * weight;
  const good = trials - failures + (1 - assumed) * weight;
  const [low = 0, high = 1] = betaQuantiles(Math.max(leastCount, bad), Math.max(leastCount, good), intervalShares);
  return {
    trials,
    failures,
    assumed,
    learnt: bad + good === 0 ? assumed : bad / (bad + good),
    interval: { low: bad === 0 ? 0 : low, high: good === 0 ? 1 : high },
  };
}

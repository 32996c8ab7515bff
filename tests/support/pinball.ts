/** What a told day costs beside the day it became: the pinball loss, whose mean is least at the quantile itself. */

export interface ToldAndTook {
  readonly toldDays: number;
  readonly tookDays: number;
}

/**
 * Mean pinball loss at a level, days (R. Koenker, G. Bassett, Regression Quantiles, Econometrica 46 (1978) 33–50): a day too
 * early costs the level, a day too late 1 − level.
 */
export function pinballLoss(
  orders: readonly ToldAndTook[],
  level: number,
  told = (order: ToldAndTook) => order.toldDays,
) {
  const losses = orders.map((order) => {
    const late = order.tookDays - told(order);
    return late > 0 ? level * late : (level - 1) * late;
  });
  return losses.reduce((sum, loss) => sum + loss, 0) / losses.length;
}

/** The least loss that one lead time for every order could have had, known afterwards (the rule of Hopp & Roof Sturgis 2000). */
export function bestConstantLoss(orders: readonly ToldAndTook[], level: number): number {
  const longest = Math.max(...orders.map(({ tookDays }) => tookDays));
  const losses = Array.from({ length: longest + 1 }, (_, lead) => pinballLoss(orders, level, () => lead));
  return Math.min(...losses);
}

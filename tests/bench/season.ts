/** Twenty simulated seasons beside the simplest rule that keeps as many promises: one lead time for every order. */
import { loadCatalog } from "#catalog";
import { workingDaysBetween } from "#engine/routing";
import { demoSeason, type SeasonOrder, season } from "../support/season";

export interface SeasonsReached {
  readonly seasons: number;
  readonly orders: number;
  /** Shares of the promises, and of the middle days, that were kept. */
  readonly kept: number;
  readonly byP50: number;
  /** The least and the greatest share that one season kept. */
  readonly leastKept: number;
  readonly mostKept: number;
  /** Mean working days from the order to the promised day. */
  readonly promisedLead: number;
  /** The least constant lead time, working days, that keeps at least as many (Hopp & Roof Sturgis 2000). */
  readonly constantLead: number;
}

export function seasonsReached(count = 20): SeasonsReached {
  const { floor } = loadCatalog();
  const seasons = Array.from({ length: count }, (_, index) => season(demoSeason(floor, index + 1)).orders);
  const orders = seasons.flat();
  const keptOf = (some: readonly SeasonOrder[]) => some.filter(({ isKept }) => isKept).length / some.length;
  const shares = seasons.map(keptOf);
  const kept = keptOf(orders);
  const leads = orders
    .map(({ cameOn, readyOn }) => workingDaysBetween(floor.hours, cameOn, readyOn))
    .sort((a, b) => a - b);
  const promised = orders.map(({ cameOn, promisedOn }) => workingDaysBetween(floor.hours, cameOn, promisedOn));
  return {
    seasons: count,
    orders: orders.length,
    kept,
    byP50: orders.filter(({ isByP50 }) => isByP50).length / orders.length,
    leastKept: Math.min(...shares),
    mostKept: Math.max(...shares),
    promisedLead: promised.reduce((sum, days) => sum + days, 0) / promised.length,
    constantLead: leads[Math.ceil(kept * leads.length) - 1] ?? Number.NaN,
  };
}

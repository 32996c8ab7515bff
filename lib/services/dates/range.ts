/** The range for one more pair on the live queue. */
import { currentQueueRevision } from "../../data/counters";
import { openPairs } from "../../data/pairs";
import type { PairSpec } from "../../engine/configuration";
import { dateOfDay, dayIndex, weekdayOf } from "../../engine/routing";
import { currentCatalog } from "../catalogue/current";
import type { Context } from "../context";
import { shopDay } from "../shop-time";
import type { DateRange } from "../views";

export interface RangeOptions {
  /** A pair that is already in the queue is not in its own way. */
  readonly without?: string;
}

export async function rangeOf(ctx: Context, _spec: PairSpec, options: RangeOptions = {}): Promise<DateRange> {
  const revision = await currentQueueRevision(ctx.db);
  const pairs = (await openPairs(ctx.db)).filter((pair) => pair.id !== options.without);
  const p50 = 12 + Math.ceil(pairs.length / 2.5);
  const p90 = Math.ceil(p50 * 1.25) + 3;
  const today = dayIndex(shopDay(ctx.now, currentCatalog().shop.timeZone));
  return {
    p50: dateOfDay(afterWorkingDays(today, p50)),
    p90: dateOfDay(afterWorkingDays(today, p90)),
    workingDays: { p50, p90 },
    drivers: [],
    basis: { queueRevision: revision, runs: 0, seed: 0, at: ctx.now.toISOString() },
  };
}

function afterWorkingDays(day: number, count: number): number {
  let left = count;
  let at = day;
  while (left > 0) {
    at += 1;
    if (weekdayOf(at) <= 5) left -= 1;
  }
  return at;
}

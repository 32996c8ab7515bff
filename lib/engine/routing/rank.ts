/** Who goes first: the promised day, else the day it would be promised by its place in the queue. */
import type { CompiledProblem } from "#engine/schedule";
import { minutesPerDay, shopMinute } from "./shop-time";
import type { PairOnFloor, ShopMinute } from "./types";

/** Without a promise a pair ranks as if promised this long after it took its place; a setting of the plan, no source. */
const usualLeadDays = 42;
const hardDateHeadStartDays = 7;

/** Rank of every operation (lower first), in minutes, so that days of pulling forward can be weighed against it. */
export function rankByPromise(
  problem: CompiledProblem,
  pairs: readonly PairOnFloor[],
  originMinute: ShopMinute,
): Float64Array {
  const byPair = pairs.map((pair) => pairRank(pair) - originMinute);
  return Float64Array.from(problem.jobOf, (job) => byPair[job] as number);
}

/** The minute a pair ranks by: its place by hand, else its place beside others of its mould, else its promise, else where it would be promised. */
export function pairRank(pair: PairOnFloor): ShopMinute {
  const rank = rankWithoutSlot(pair);
  // Whoever has a fixed press slot is served in time for it.
  return pair.frozenPressStart === undefined ? rank : Math.min(rank, pair.frozenPressStart.startMinute);
}

function rankWithoutSlot({ placeMinute, groupMinute, promise, queuedAtMinute }: PairOnFloor): ShopMinute {
  if (placeMinute !== undefined) return placeMinute;
  if (groupMinute !== undefined) return groupMinute;
  if (promise === null) return queuedAtMinute + usualLeadDays * minutesPerDay;
  const headStart = promise.class === "hard-date" ? hardDateHeadStartDays * minutesPerDay : 0;
  return shopMinute(promise.date, 0) - headStart;
}

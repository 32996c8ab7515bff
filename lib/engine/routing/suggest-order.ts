/** A better order of the queue: pairs are put before others near them while the plan gets better by it. */
import { planQueue } from "./plan-queue";
import { type GivenPlace, inQueueOrder, placesFor, withPlaces } from "./reorder";
import type { QueueSituation } from "./situation";
import type { PairOnFloor } from "./types";

export interface OrderCost {
  /** Minutes past the promised days, a hard date three times, and minutes of changing moulds. */
  readonly lateMinutes: number;
  readonly changeoverMinutes: number;
}

/** Goes on one trial at a time, so that the caller keeps the clock; deterministic for a number of trials. */
export interface OrderSearch {
  /** Tries one move; false when a whole round has found nothing better. */
  readonly tryNext: () => boolean;
  readonly best: () => {
    readonly places: readonly GivenPlace[];
    readonly before: OrderCost;
    readonly after: OrderCost;
  };
}

/** Places apart that are tried: what is further off is another week's work. */
const reach = 8;

/** @throws RangeError when the queue does not fit the floor */
export function searchOrder(situation: QueueSituation, movable: ReadonlySet<string>): OrderSearch {
  const before = costOf(situation);
  let after = before;
  let { pairs } = situation;
  let order = inQueueOrder(pairs);
  let trial = 0;
  let sinceBetter = 0;
  const trials = order.length * 2 * reach;

  const tryNext = (): boolean => {
    while (sinceBetter < trials) {
      const at = Math.floor(trial / (2 * reach)) % order.length;
      const step = trial % (2 * reach);
      const to = at + (step < reach ? -(step + 1) : step - reach + 2);
      trial += 1;
      sinceBetter += 1;
      const places = placesOf(pairs, order, at, to, movable);
      if (places === null) continue;
      const tried = withPlaces(pairs, places);
      const cost = costOf({ ...situation, pairs: tried });
      if (total(cost) < total(after)) {
        after = cost;
        pairs = tried;
        order = inQueueOrder(pairs);
        sinceBetter = 0;
      }
      return true;
    }
    return false;
  };

  const best = () => {
    const start = new Map(situation.pairs.map(({ pairId, placeMinute }) => [pairId, placeMinute] as const));
    const places = pairs.flatMap(({ pairId, placeMinute }): readonly GivenPlace[] =>
      placeMinute === undefined || placeMinute === start.get(pairId) ? [] : [{ pairId, placeMinute }],
    );
    return { places, before, after };
  };
  return { tryNext, best };
}

/** Null when it is no move, leads out of the queue, or would push a pair that must stay. */
function placesOf(
  pairs: readonly PairOnFloor[],
  order: readonly PairOnFloor[],
  at: number,
  to: number,
  movable: ReadonlySet<string>,
): readonly GivenPlace[] | null {
  const pair = order[at];
  if (pair === undefined || to < 0 || to > order.length || !movable.has(pair.pairId)) return null;
  const places = placesFor(pairs, pair.pairId, order[to]?.pairId ?? null);
  return places.every(({ pairId }) => movable.has(pairId)) ? places : null;
}

const total = ({ lateMinutes, changeoverMinutes }: OrderCost) => lateMinutes + changeoverMinutes;

function costOf(situation: QueueSituation): OrderCost {
  const plan = planQueue(situation);
  if (!plan.ok) throw new RangeError(`searchOrder: the queue does not fit the floor: ${plan.refusal.code}`);
  const { weightedLateMinutes, changeoverMinutes } = plan.value.totals;
  return { lateMinutes: weightedLateMinutes, changeoverMinutes };
}

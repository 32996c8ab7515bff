/** A pair put before another in the order of the queue: the places that this takes, disturbing as few as can be. */

import { pairRank } from "./rank";
import { minutesPerDay } from "./shop-time";
import type { PairOnFloor, ShopMinute } from "./types";

export interface GivenPlace {
  readonly pairId: string;
  readonly placeMinute: ShopMinute;
}

/** Pairs in the order in which the queue ranks them; equals keep their order. */
export function inQueueOrder<P extends PairOnFloor>(pairs: readonly P[]): readonly P[] {
  return [...pairs].sort((a, b) => pairRank(a) - pairRank(b));
}

/**
 * The places that bring `pairId` before `before`, or behind all when that is null: half way between its new neighbours, and
 * where there is no minute between them, the ones in front move up by as little as is needed.
 *
 * @throws RangeError when one of the two is not in the queue
 */
export function placesFor(pairs: readonly PairOnFloor[], pairId: string, before: string | null): readonly GivenPlace[] {
  const others = inQueueOrder(pairs).filter((pair) => pair.pairId !== pairId);
  if (others.length === pairs.length) throw new RangeError(`placesFor: pair "${pairId}" is not in the queue`);
  const at = before === null ? others.length : others.findIndex((pair) => pair.pairId === before);
  if (at < 0) throw new RangeError(`placesFor: pair "${before}" is not in the queue`);
  const rank = (index: number) => pairRank(others[index] as PairOnFloor);
  if (at === others.length) {
    return [{ pairId, placeMinute: others.length === 0 ? 0 : rank(at - 1) + minutesPerDay }];
  }
  if (at === 0) return [{ pairId, placeMinute: rank(0) - minutesPerDay }];
  const [low, high] = [rank(at - 1), rank(at)];
  if (high - low >= 2) return [{ pairId, placeMinute: low + Math.floor((high - low) / 2) }];
  const places: GivenPlace[] = [{ pairId, placeMinute: high - 1 }];
  let limit = high - 2;
  for (let index = at - 1; index >= 0 && rank(index) > limit; index--) {
    places.push({ pairId: (others[index] as PairOnFloor).pairId, placeMinute: limit });
    limit -= 1;
  }
  return places;
}

/** The pairs with these places; null takes a place by hand away. */
export function withPlaces(
  pairs: readonly PairOnFloor[],
  places: readonly { readonly pairId: string; readonly placeMinute: ShopMinute | null }[],
): readonly PairOnFloor[] {
  const given = new Map(places.map(({ pairId, placeMinute }) => [pairId, placeMinute] as const));
  return pairs.map((pair) => {
    const place = given.get(pair.pairId);
    if (place === undefined) return pair;
    const { placeMinute: _, ...byPromise } = pair;
    return place === null ? byPromise : { ...byPromise, placeMinute: place };
  });
}

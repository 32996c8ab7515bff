/** The queue as it stands: floor, what is different about it, open pairs, all in shop minutes. */
import type { Db } from "#data/client";
import { type FloorChangeRecord, floorChangeIn, floorChangesInForce } from "#data/floor-changes";
import { type FloorChange, floorWithChanges, type QueueSituation } from "#engine/routing";
import { floorCatalog } from "#shop/floor/recipe";
import { shopMinuteOf } from "#shop/time/shop-time";
import { pairOnFloor } from "./on-floor";
import { buildOf, openQueue, type PairInQueue, type QueuedPair } from "./queued-pairs";

/** @throws Error when a pair's catalogue release is not stored */
export async function liveSituation(db: Db, now: Date): Promise<QueueSituation> {
  const [pairs, changes] = await Promise.all([queuedPairs(db), floorChangesInForce(db, now)]);
  return situationOf(db, pairs, changes, now);
}

/** Open pairs that have a place in the queue: an order that has lost its slot is in nobody's way. */
export async function queuedPairs(db: Db): Promise<readonly QueuedPair[]> {
  return (await openQueue(db)).filter(({ order }) => order.slotLostAt === null);
}

export async function situationOf(
  db: Db,
  pairs: readonly PairInQueue[],
  changes: readonly FloorChangeRecord[],
  now: Date,
): Promise<QueueSituation> {
  const floor = floorCatalog();
  const { timeZone } = floor.hours;
  const onFloor = [];
  for (const pair of pairs) onFloor.push(pairOnFloor(pair, await buildOf(db, pair), floor, now));
  return withPressesThatAreGone({
    floor,
    changes: changes.map((change) => floorChangeOf(change, timeZone)),
    pairs: onFloor,
    now: shopMinuteOf(now, timeZone),
  });
}

/** Longer than any press cycle. */
const untilOpened = 240;

/**
 * A hired press that has been given back is not on the floor any more: what was pressed in it no longer says where, and what
 * is in it still keeps it until it is opened.
 */
function withPressesThatAreGone(situation: QueueSituation): QueueSituation {
  const known = new Set(floorWithChanges(situation.floor, situation.changes).presses.map(({ id }) => id));
  const isGone = (press: string | undefined): press is string => press !== undefined && !known.has(press);
  const kept = new Set<string>();
  const pairs = situation.pairs.map((pair) => {
    if (!pair.operations.some(({ press }) => isGone(press))) return pair;
    const operations = pair.operations.map((operation) => {
      const { press, ...rest } = operation;
      if (!isGone(press)) return operation;
      if (operation.state !== "running") return rest;
      kept.add(press);
      return operation;
    });
    return { ...pair, operations };
  });
  const { now } = situation;
  const still = [...kept].map((id): FloorChange => {
    const press = { id, label: id, kind: "heated" } as const;
    return { kind: "extra-press", press, fromMinute: now, toMinute: now + untilOpened };
  });
  return { ...situation, pairs, changes: [...situation.changes, ...still] };
}

/** The engine's change from a stored one: its data with its instants as shop minutes. */
export function floorChangeOf(record: FloorChangeRecord, timeZone: string): FloorChange {
  return floorChangeIn(record, (at) => shopMinuteOf(at, timeZone));
}

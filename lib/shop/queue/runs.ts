/**
 * The open queue run many times, once for each revision of the queue. Made in slices with a pause after each, so that no
 * request holds the event loop long; whoever asks meanwhile waits for the same runs.
 */
import { performance } from "node:perf_hooks";
import { setImmediate as pause } from "node:timers/promises";
import { sha256Of } from "#catalog";
import type { Db } from "#data/client";
import { currentQueueRevision } from "#data/counters";
import { type FloorChangeRecord, floorChangesInForce } from "#data/floor-changes";
import { openPairVersions } from "#data/pairs";
import {
  dayIndex,
  groupMoulds,
  type PairOnFloor,
  prepareRuns,
  type QueueRuns,
  type QueueSituation,
  runRange,
} from "#engine/routing";
import { floorBookInForce } from "#shop/catalogue/book-in-force";
import { floorCatalog } from "#shop/floor/recipe";
import { shopDay } from "#shop/time/shop-time";
import { liveSituation, queuedPairs, situationOf } from "./situation";

/** For a first look: P90 to some days. */
export const previewRuns = 200;
/** For a promise: P90 to about a day. */
export const promiseRuns = 600;
/**
 * Every day has futures of its own, told with the date so that it can be computed again: with one seed for ever all promises
 * would share one draw of shocks, and be wrong together. Within a day only what happens moves a date.
 */
const seedOn = (now: Date) => dayIndex(shopDay(now, floorCatalog().hours.timeZone));
/** The event loop is given back after this long; what is computed does not depend on it. */
const sliceMs = 12;
const kept = 6;

export interface LiveRuns {
  readonly revision: number;
  readonly madeAt: Date;
  readonly runs: QueueRuns;
}

const shelf = new WeakMap<Db, Map<string, Promise<LiveRuns>>>();

/** The runs of the queue as it stands now, without one pair if wanted. @throws Error when a pair does not fit the floor */
export async function liveRuns(db: Db, now: Date, without: string | null = null): Promise<LiveRuns> {
  return runsWith(db, now, without === null ? [] : [without], []);
}

/**
 * The same with pairs that are not in the queue yet behind the others, as one group.
 *
 * @param without pairs to be left out, the group's own rows among them
 */
export async function runsWith(
  db: Db,
  now: Date,
  without: readonly string[],
  group: readonly PairOnFloor[],
): Promise<LiveRuns> {
  const revision = await currentQueueRevision(db);
  const [open, changes] = await Promise.all([openPairVersions(db), floorChangesInForce(db, now)]);
  const versions = open.filter(({ id, order }) => order.slotLostAt === null && !without.includes(id));
  const key = sha256Of([
    revision,
    floorBookInForce()?.version ?? null,
    // The floor moves on while nobody ticks: an hour is as fine as a date needs.
    Math.floor(now.getTime() / 3_600_000),
    versions.map(({ id, version, specHash }) => [id, version, specHash]),
    changes.map((change) => change.id),
    group,
  ]);
  const known = shelf.get(db) ?? new Map<string, Promise<LiveRuns>>();
  shelf.set(db, known);
  const running = known.get(key);
  if (running !== undefined) return running;
  const made = makeRuns(db, without, changes, group, now).then((runs) => ({
    revision,
    madeAt: now,
    runs,
  }));
  known.set(key, made);
  made.catch(() => known.delete(key));
  for (const oldest of [...known.keys()].slice(0, Math.max(0, known.size - kept))) known.delete(oldest);
  return made;
}

async function makeRuns(
  db: Db,
  without: readonly string[],
  changes: readonly FloorChangeRecord[],
  group: readonly PairOnFloor[],
  now: Date,
): Promise<QueueRuns> {
  const pairs = (await queuedPairs(db)).filter(({ id }) => !without.includes(id));
  const situation = await situationOf(db, pairs, changes, now);
  const seed = seedOn(now);
  const steps = groupMoulds({ ...situation, pairs: [...situation.pairs, ...group] }, { runs: previewRuns, seed });
  const prepared = prepareRuns(await inTurns(steps), seed);
  if (!prepared.ok) throw new Error(`the queue does not fit the floor: ${JSON.stringify(prepared.refusal)}`);
  return prepared.value;
}

/** The queue as it stands now, each pair with the place beside others of its mould that the plan has given it. */
export async function plannedSituation(db: Db, now: Date): Promise<QueueSituation> {
  const [situation, { runs }] = await Promise.all([liveSituation(db, now), liveRuns(db, now)]);
  const minutes = new Map(runs.situation.pairs.map(({ pairId, groupMinute }) => [pairId, groupMinute] as const));
  const pairs = situation.pairs.map((pair) => {
    const groupMinute = minutes.get(pair.pairId);
    return groupMinute === undefined ? pair : { ...pair, groupMinute };
  });
  return { ...situation, pairs };
}

/** Makes sure that so many runs are there. Several may ask at once: each run is made by whoever comes first. */
export async function completeRuns(runs: QueueRuns, count: number): Promise<void> {
  await inSlices(count, (to) => runRange(runs, to));
}

/** Calls `work` for one more at a time until `count` are done, letting others have their turn. */
export async function inSlices(count: number, work: (to: number) => number): Promise<void> {
  let done = 0;
  while (done < count) {
    const until = performance.now() + sliceMs;
    while (done < count && performance.now() < until) done = work(done + 1);
    if (done < count) await pause();
  }
}

/** Goes through the steps to their result, letting others have their turn. */
async function inTurns<T>(steps: Generator<undefined, T, undefined>): Promise<T> {
  for (;;) {
    const until = performance.now() + sliceMs;
    while (performance.now() < until) {
      const step = steps.next();
      if (step.done === true) return step.value;
    }
    await pause();
  }
}

/**
 * The open queue run many times, once for each revision of the queue. Made in slices with a pause after each, so that no
 * request holds the event loop long; whoever asks meanwhile waits for the same runs.
 */
import { setImmediate as pause } from "node:timers/promises";
import type { Db } from "../../data/client";
import { currentQueueRevision } from "../../data/counters";
import { openPairs, type PairRecord } from "../../data/pairs";
import type { BuildCatalog } from "../../engine/configuration";
import { prepareRuns, type QueueRuns, runRange, type ShopMinute } from "../../engine/routing";
import { releasedCatalog } from "../catalogue/current";
import { hashOf } from "../hashing";
import { shopMinuteOf } from "../shop-time";
import { pairOnFloor } from "./on-floor";
import { floorCatalog } from "./recipe";

/** Enough for a P90 that moves by a day at most (500 runs for a sd of 5 days, queue.md part 3). */
export const runCount = 500;
export const runSeed = 1;
/** About as many pair-runs as take ten milliseconds. */
const pairRunsPerSlice = 600;
const kept = 6;

export interface LiveRuns {
  readonly revision: number;
  readonly madeAt: Date;
  readonly runs: QueueRuns;
}

const shelf = new WeakMap<Db, Map<string, Promise<LiveRuns>>>();

/** The runs of the queue as it stands now, without one pair if wanted. @throws Error when a pair does not fit the floor */
export async function liveRuns(db: Db, now: Date, without: string | null = null): Promise<LiveRuns> {
  const revision = await currentQueueRevision(db);
  const pairs = (await openPairs(db)).filter((pair) => pair.id !== without);
  const key = hashOf([
    revision,
    // The floor moves on while nobody ticks: an hour is as fine as a date needs.
    Math.floor(now.getTime() / 3_600_000),
    pairs.map((pair) => [pair.id, pair.version, pair.specHash]),
  ]);
  const known = shelf.get(db) ?? new Map<string, Promise<LiveRuns>>();
  shelf.set(db, known);
  const running = known.get(key);
  if (running !== undefined) return running;
  const made = makeRuns(db, pairs, now).then((runs) => ({ revision, madeAt: now, runs }));
  known.set(key, made);
  made.catch(() => known.delete(key));
  for (const oldest of [...known.keys()].slice(0, Math.max(0, known.size - kept))) known.delete(oldest);
  return made;
}

async function makeRuns(db: Db, pairs: readonly PairRecord[], now: Date): Promise<QueueRuns> {
  const floor = floorCatalog();
  const { timeZone } = floor.hours;
  const onFloor = [];
  for (const pair of pairs) onFloor.push(pairOnFloor(pair, await buildOf(db, pair), timeZone));
  const nowMinute: ShopMinute = shopMinuteOf(now, timeZone);
  const prepared = prepareRuns(floor, onFloor, nowMinute, runSeed);
  if (!prepared.ok) throw new Error(`the queue does not fit the floor: ${JSON.stringify(prepared.refusal)}`);
  const slice = Math.max(1, Math.floor(pairRunsPerSlice / (pairs.length + 1)));
  for (let to = slice; runRange(prepared.value, Math.min(to, runCount)) < runCount; to += slice) await pause();
  return prepared.value;
}

async function buildOf(db: Db, pair: PairRecord): Promise<BuildCatalog> {
  const released = await releasedCatalog(db, pair.releaseHash);
  if (released === null) throw new Error(`catalogue release ${pair.releaseHash} is not stored`);
  return released.build;
}

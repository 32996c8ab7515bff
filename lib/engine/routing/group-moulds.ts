/**
 * Pressings of one mould brought together, where the pairs have time in hand: a pair is put back beside the next of its mould,
 * or that one forward beside it. What each has in hand is told by runs of the queue, not by the plan, which is optimistic; and
 * the runs are asked again: an order in which a promise stands worse than before is not taken.
 */
import { workMinutesBefore } from "#engine/schedule";
import { standingOf } from "./compare-runs";
import { workingDayMinutes } from "./floor-problem";
import { planQueue } from "./plan-queue";
import { queueRanges } from "./promise";
import { pairRank } from "./rank";
import { inQueueOrder } from "./reorder";
import { prepareRuns, type QueueRuns, runRange } from "./replications";
import { minutesPerDay, shopMinute } from "./shop-time";
import type { QueueSituation } from "./situation";
import type { DateRange, PairOnFloor, PressSlot, QueuePlan } from "./types";

/** Pairs that are looked at, the first by rank: what is further off is another month's work. */
const front = 40;
/** Working days that stay in hand when a pair is put back or passed; a setting of the plan, no source. */
const spareWorkingDays = 1;
/** Orders that are tried when runs object to the first. */
const attempts = 4;

/** Pairs that change their place, and those that would be passed by it. */
interface Merge {
  readonly moved: readonly string[];
  readonly passed: readonly string[];
  /** Rank that the moved ones take. */
  readonly groupMinute: number;
}

export interface GroupingOptions {
  /** Replications that each order is asked for: as many as the dates shown are made of, so that the two agree. */
  readonly runs: number;
  readonly seed: number;
}

/**
 * Looks for the situation with `groupMinute` on the pairs that are better pressed with others of their mould, and gives the
 * situation itself where nothing is gained. Goes on one replication at a time, so that the caller keeps the clock.
 * Deterministic for a seed and a number of runs.
 */
export function* groupMoulds(
  situation: QueueSituation,
  options: GroupingOptions,
): Generator<undefined, QueueSituation, undefined> {
  const first = inQueueOrder(situation.pairs).slice(0, front);
  const ids = new Set(first.map(({ pairId }) => pairId));
  const ahead = { ...situation, pairs: situation.pairs.filter(({ pairId }) => ids.has(pairId)) };
  const plan = planQueue(ahead);
  if (!plan.ok || !hasMouldTwice(plan.value.pressPlan)) return situation;
  const before = yield* told(ahead, options);
  if (before === null) return situation;
  let merges = mergesOf(ahead.pairs, plan.value, before);
  for (let attempt = 0; attempt < attempts && merges.length > 0; attempt++) {
    const grouped = withMerges(ahead, merges);
    const changed = planQueue(grouped);
    if (!changed.ok || changed.value.totals.changeoverMinutes >= plan.value.totals.changeoverMinutes) return situation;
    const after = yield* told(grouped, options);
    if (after === null) return situation;
    const worse = worseStanding(ahead.pairs, before.ranges, after.ranges);
    if (worse.size === 0) return withMerges(situation, merges);
    const kept = merges.filter(({ moved, passed }) => ![...moved, ...passed].some((id) => worse.has(id)));
    // Who suffers is not always who is passed: then half of the merges, the later ones, are given up.
    merges = kept.length < merges.length ? kept : merges.slice(0, Math.floor(merges.length / 2));
  }
  return situation;
}

interface Told {
  readonly runs: QueueRuns;
  readonly ranges: ReadonlyMap<string, DateRange>;
}

function* told(situation: QueueSituation, options: GroupingOptions): Generator<undefined, Told | null, undefined> {
  const runs = prepareRuns(situation, options.seed);
  if (!runs.ok) return null;
  for (let done = 0; done < options.runs; done++) {
    runRange(runs.value, done + 1);
    yield;
  }
  return { runs: runs.value, ranges: queueRanges(runs.value) };
}

/** Whether a mould comes back after another. */
function hasMouldTwice(pressPlan: readonly PressSlot[]): boolean {
  const last = new Map<string, string>();
  const seen = new Set<string>();
  return pressPlan.some(({ press, mould }) => {
    const comesBack = seen.has(mould) && last.get(press) !== mould;
    last.set(press, mould);
    seen.add(mould);
    return comesBack;
  });
}

/** Pairs of which a nine-of-ten day has come nearer than a working day to its promise, or gone further past it. */
function worseStanding(
  pairs: readonly PairOnFloor[],
  before: ReadonlyMap<string, DateRange>,
  after: ReadonlyMap<string, DateRange>,
): ReadonlySet<string> {
  return new Set(
    pairs.flatMap(({ pairId, promise }) => {
      const was = before.get(pairId)?.dates;
      const will = after.get(pairId)?.dates;
      if (promise === null || was === undefined || will === undefined || will.p90 <= was.p90) return [];
      const isWorse = standingOf(promise, will) !== standingOf(promise, was) || standingOf(promise, was) !== "safe";
      return isWorse || will.p90 >= promise.date ? [pairId] : [];
    }),
  );
}

/** Same-mould neighbours in the press plan that stand apart, each brought to the other if all whom it costs have the time. */
function mergesOf(pairs: readonly PairOnFloor[], plan: QueuePlan, { runs, ranges }: Told): readonly Merge[] {
  const { floor, calendar, queue } = runs;
  const day = workingDayMinutes(floor);
  const work = (minute: number) => workMinutesBefore(calendar, Math.max(0, minute - queue.originMinute)) / day;
  const byId = new Map(pairs.map((pair) => [pair.pairId, pair] as const));
  const hand = new Map(
    pairs.map((pair) => {
      const { pairId, promise } = pair;
      const range = ranges.get(pairId);
      if (promise === null || range === undefined) return [pairId, Number.POSITIVE_INFINITY] as const;
      const days = work(shopMinute(promise.date, minutesPerDay)) - work(shopMinute(range.dates.p90, minutesPerDay));
      return [pairId, days - spareWorkingDays] as const;
    }),
  );
  const handOf = (pairId: string) => hand.get(pairId) ?? 0;
  const isMovable = ({ pairId }: PressSlot) => {
    const pair = byId.get(pairId);
    return (
      pair !== undefined && pair.placeMinute === undefined && pair.frozenPressStart === undefined && !moved.has(pairId)
    );
  };
  const readyAt = readyForPress(plan);
  const moved = new Set<string>();
  const slots = plan.pressPlan;
  const merges: Merge[] = [];
  const limit = floor.planning.mouldGroupingWorkingDays;
  slots.forEach((slot, at) => {
    const next = slots.findIndex((other, i) => i > at && other.mould === slot.mould);
    const between = slots.slice(at + 1, next);
    if (next < 0 || between.length === 0) return;
    const other = slots[next] as PressSlot;
    const apart = work(other.startMinute) - work(slot.startMinute);
    // The whole run that ends with this slot goes along.
    const run = [slot];
    for (let i = at - 1; i >= 0 && slots[i]?.mould === slot.mould; i--) run.unshift(slots[i] as PressSlot);
    if (apart <= limit && run.every((each) => isMovable(each) && handOf(each.pairId) >= apart)) {
      for (const { pairId } of run) moved.add(pairId);
      for (const { pairId } of run) hand.set(pairId, handOf(pairId) - apart);
      merges.push({
        moved: run.map(({ pairId }) => pairId),
        passed: [],
        groupMinute: pairRank(byId.get(other.pairId) as PairOnFloor),
      });
      return;
    }
    const cycle = (work(other.freeMinute) - work(other.startMinute)) * 1.5;
    const isThere = (readyAt.get(other.pairId) ?? Number.POSITIVE_INFINITY) <= slot.freeMinute;
    if (apart > limit || !isThere || !isMovable(other)) return;
    if (between.some(({ pairId }) => handOf(pairId) < cycle)) return;
    for (const { pairId } of between) hand.set(pairId, handOf(pairId) - cycle);
    moved.add(other.pairId);
    merges.push({
      moved: [other.pairId],
      passed: between.map(({ pairId }) => pairId),
      groupMinute: pairRank(byId.get(slot.pairId) as PairOnFloor),
    });
  });
  return merges;
}

/** When everything before the last two steps of the way into the press is over, by the plan. */
function readyForPress(plan: QueuePlan): ReadonlyMap<string, number> {
  const start = new Map(plan.pressPlan.map(({ pairId, startMinute }) => [pairId, startMinute] as const));
  const ready = new Map<string, number>();
  for (const { pairId, freeMinute } of plan.operations) {
    const pressed = start.get(pairId);
    if (pressed === undefined || freeMinute >= pressed) continue;
    ready.set(pairId, Math.max(ready.get(pairId) ?? 0, freeMinute));
  }
  return ready;
}

function withMerges(situation: QueueSituation, merges: readonly Merge[]): QueueSituation {
  const minutes = new Map(merges.flatMap(({ moved, groupMinute }) => moved.map((id) => [id, groupMinute] as const)));
  return {
    ...situation,
    pairs: situation.pairs.map((pair) => {
      const groupMinute = minutes.get(pair.pairId);
      return groupMinute === undefined ? pair : { ...pair, groupMinute };
    }),
  };
}

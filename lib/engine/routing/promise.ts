/**
 * Dates from replications: the range of every open pair and of one more. Quantiles are order statistics on the working-time
 * axis (type 1), mapped to days afterwards: that order commutes with the calendar, interpolating does not.
 */
import { orderStatistic } from "#engine/math";
import {
  clockMinuteOf,
  compileProblem,
  emptyPlacement,
  resourcesUsed,
  serialPlan,
  Timelines,
  workMinutesBefore,
} from "#engine/schedule";
import { accept, type IsoDate, type Outcome } from "#engine/units";
import { CauseTallies, usualDays } from "./drivers";
import { candidateProblem, type FloorRefusal, isPressWork, workingDayMinutes } from "./floor-problem";
import { type Insertion, insertPair } from "./insert-pair";
import { afterShocks, prepareRuns, type QueueRuns, type Replication, runRange } from "./replications";
import { FloorSampler, redoRules } from "./sampling";
import { dateOfDay, dateOfShopMinute, minutesPerDay, shopMinute } from "./shop-time";
import type { QueueSituation } from "./situation";
import type { CandidatePair, DateDriver, DateRange, RangeLevel } from "./types";

const levels: readonly (readonly [RangeLevel, number])[] = [
  ["p10", 0.1],
  ["p50", 0.5],
  ["p80", 0.8],
  ["p90", 0.9],
  ["p95", 0.95],
];
/** Entries that a candidate can add to one resource, redos included. */
const candidateEntries = 64;

/** A question about one more pair, answered run by run so that a server can pause in between. */
export interface CandidateRuns {
  readonly runs: QueueRuns;
  readonly insertion: Insertion;
  readonly finishWorkMinutes: number[];
  readonly causes: CauseTallies;
}

/**
 * Prepares the question on runs that are complete.
 *
 * @throws RangeError when no replication has been made
 */
export function prepareCandidate(runs: QueueRuns, candidate: CandidatePair): Outcome<CandidateRuns, FloorRefusal> {
  if (runs.replications.length === 0)
    throw new RangeError("prepareCandidate: the queue has 0 replications; run some first");
  const built = candidateProblem(runs.queue, candidate);
  if (!built.ok) return built;
  const { operations, problem: specified, nowMinute } = built.value;
  const problem = compileProblem(specified);
  const rules = redoRules(runs.floor, operations);
  const resources = resourcesUsed(problem);
  const timelines = Timelines.toLayOver(
    problem,
    resources,
    runs.replications.map((replication) => replication.timelines),
    candidateEntries,
  );
  const placement = emptyPlacement(problem, timelines);
  placement.minutes = problem.minutes.slice();
  placement.unattended = problem.unattended.slice();
  const insertion: Insertion = {
    problem,
    plan: serialPlan(problem),
    placement,
    operations,
    sampler: new FloorSampler(runs.floor, problem, operations, runs.seed, runs.calendar, nowMinute, rules),
    ruleOf: operations.map((_, index) => rules.find(({ operation }) => operation === index) ?? null),
    visits: new Int32Array(operations.length),
    waitingOn: candidate.waitingOn,
    calendar: runs.calendar,
    nowMinute,
    resources,
  };
  return accept({ runs, insertion, finishWorkMinutes: [], causes: new CauseTallies() });
}

/** Answers the runs that are still missing up to `to` (exclusive). Returns how many are answered. */
export function answerRange(candidate: CandidateRuns, to: number): number {
  const { runs, insertion, finishWorkMinutes, causes } = candidate;
  const before = workMinutesBefore(runs.calendar, insertion.nowMinute);
  const last = Math.min(to, runs.replications.length);
  for (let index = finishWorkMinutes.length; index < last; index++) {
    const replication = runs.replications[index];
    if (replication === undefined) break;
    const end = insertPair(insertion, replication, index, causes);
    const work = workMinutesBefore(runs.calendar, end) - before;
    const told = afterShocks(work, replication.shocks);
    causes.book("rework-and-shocks", told - work);
    causes.endRun();
    finishWorkMinutes.push(told);
  }
  return finishWorkMinutes.length;
}

/** The range of the candidate over the runs answered so far. @throws RangeError when there are none */
export function candidateRange(candidate: CandidateRuns): DateRange {
  const { runs, finishWorkMinutes, causes } = candidate;
  const { originMinute } = runs.queue;
  const drivers = causes.drivers(runs.floor, originMinute, (beforeMinute) =>
    usualDays(mouldStarts(candidate, beforeMinute), originMinute).map(dateOfDay),
  );
  return rangeOf(runs, finishWorkMinutes, drivers);
}

/** When the others have the candidate's mould in a press before a minute: one list for each run answered. */
function mouldStarts({ runs, insertion, finishWorkMinutes }: CandidateRuns, beforeMinute: number): number[][] {
  const { problem, operations } = insertion;
  const press = operations.findIndex(({ step }) => isPressWork(step));
  const family = problem.family[press] ?? -1;
  const presses = problem.usesOf[press]?.[0]?.members ?? Int32Array.of();
  const all: number[][] = [];
  for (let run = 0; run < finishWorkMinutes.length; run++) {
    const { timelines } = runs.replications[run] as Replication;
    all.push(Array.from(presses).flatMap((resource) => timelines.startsOfFamily(resource, family, beforeMinute)));
  }
  return all;
}

/** The range of every open pair, by pair id, from the replications made so far. */
export function queueRanges(runs: QueueRuns): ReadonlyMap<string, DateRange> {
  return new Map(
    runs.pairs.map((pair, index) => {
      const finishes = runs.replications.map(({ finishWorkMinutes }) => finishWorkMinutes[index] as number);
      return [pair.pairId, rangeOf(runs, finishes, [])] as const;
    }),
  );
}

/**
 * The range of several pairs together: ready when the last of them is, run by run, which is later than the latest of their own
 * ranges. @throws RangeError for a pair that is not in the queue, or without a pair or a run
 */
export function jointRange(runs: QueueRuns, pairIds: readonly string[]): DateRange {
  if (pairIds.length === 0) throw new RangeError("jointRange: 0 pairs; at least 1 is needed");
  const indexes = pairIds.map((id) => runs.pairs.findIndex(({ pairId }) => pairId === id));
  if (indexes.includes(-1)) throw new RangeError(`jointRange: ${pairIds[indexes.indexOf(-1)]} is not in the queue`);
  const finishes = runs.replications.map(({ finishWorkMinutes }) =>
    Math.max(...indexes.map((index) => finishWorkMinutes[index] as number)),
  );
  return rangeOf(runs, finishes, []);
}

/**
 * The range for one more pair behind the open ones, all in one call: prepare, run, answer. A server does the same in slices
 * and keeps the runs.
 */
export function promiseRuns(
  situation: QueueSituation,
  candidate: CandidatePair,
  options: { readonly runs: number; readonly seed: number },
): Outcome<DateRange, FloorRefusal> {
  if (!Number.isInteger(options.runs) || options.runs < 1) {
    throw new RangeError(`promiseRuns: runs ${options.runs} is not a whole number of at least 1`);
  }
  const runs = prepareRuns(situation, options.seed);
  if (!runs.ok) return runs;
  runRange(runs.value, options.runs);
  const asked = prepareCandidate(runs.value, candidate);
  if (!asked.ok) return asked;
  answerRange(asked.value, options.runs);
  return accept(candidateRange(asked.value));
}

function rangeOf(runs: QueueRuns, finishWorkMinutes: readonly number[], drivers: readonly DateDriver[]): DateRange {
  if (finishWorkMinutes.length === 0) throw new RangeError("rangeOf: a range needs at least 1 run");
  const sorted = Float64Array.from(finishWorkMinutes).sort();
  return { runs: finishWorkMinutes.length, seed: runs.seed, ...rangeLevelsOf(runs, sorted), drivers };
}

/** The levels of a sample of working minutes from now, sorted ascending: order statistics, then days. */
export function rangeLevelsOf(
  runs: QueueRuns,
  sorted: Float64Array,
): Pick<DateRange, "dates" | "shares" | "workingDays"> {
  const day = workingDayMinutes(runs.floor);
  const at = Object.fromEntries(levels.map(([level, p]) => [level, orderStatistic(sorted, p)])) as Record<
    RangeLevel,
    number
  >;
  const mapped = <T>(map: (workMinutes: number) => T) =>
    Object.fromEntries(levels.map(([level]) => [level, map(at[level])])) as Record<RangeLevel, T>;
  const dates = mapped((work) => dateAfter(runs, work));
  return {
    dates,
    shares: Object.fromEntries(levels.map(([level]) => [level, shareBy(runs, sorted, dates[level])])) as Record<
      RangeLevel,
      number
    >,
    workingDays: mapped((work) => Math.round((work / day) * 10) / 10),
  };
}

/** Working time from now to the close of a day. */
export function workToEndOf({ calendar, queue }: QueueRuns, date: IsoDate): number {
  const close = Math.max(0, shopMinute(date, minutesPerDay) - queue.originMinute);
  return workMinutesBefore(calendar, close) - workMinutesBefore(calendar, queue.nowMinute);
}

/** Share of working minutes from now, sorted ascending, that lie before the close of a day. */
export function shareBy(runs: QueueRuns, sorted: Float64Array, date: IsoDate): number {
  const limit = workToEndOf(runs, date);
  let [from, to] = [0, sorted.length];
  while (from < to) {
    const middle = (from + to) >> 1;
    if ((sorted[middle] as number) <= limit) from = middle + 1;
    else to = middle;
  }
  return from / sorted.length;
}

/** The day on which that much working time from now is done. */
function dateAfter(runs: QueueRuns, workMinutes: number): IsoDate {
  const { calendar, queue } = runs;
  const last = workMinutesBefore(calendar, queue.nowMinute) + Math.max(1, workMinutes) - 1;
  return dateOfShopMinute(queue.originMinute + clockMinuteOf(calendar, last));
}

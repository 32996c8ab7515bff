/** Two sets of runs of two situations, compared run by run: the same seed gives the same misfortunes to the same pair. */
import { orderStatistic } from "#engine/math";
import { clockMinuteOf, workMinutesBefore } from "#engine/schedule";
import type { IsoDate } from "#engine/units";
import type { PairEffect, PromiseStanding, SituationEffect } from "./effects";
import { workingDayMinutes } from "./floor-problem";
import { planQueue } from "./plan-queue";
import { answerRange, candidateRange, prepareCandidate, rangeLevelsOf, shareBy, workToEndOf } from "./promise";
import type { QueueRuns } from "./replications";
import type { CandidatePair, DateRange, PairOnFloor } from "./types";

/**
 * What the change from one situation to the other does to every pair that is open in both.
 *
 * @param oneMore an ordinary pair to ask about in both; it must fit both floors
 * @throws RangeError when the sets differ in seed or number of runs, or have none
 */
export function effectOf(before: QueueRuns, after: QueueRuns, oneMore?: CandidatePair): SituationEffect {
  const runs = before.replications.length;
  if (runs === 0 || runs !== after.replications.length || before.seed !== after.seed) {
    throw new RangeError(
      `effectOf: ${runs} runs of seed ${before.seed} do not compare with ${after.replications.length} of ${after.seed}`,
    );
  }
  const placeAfter = new Map(after.pairs.map(({ pairId }, index) => [pairId, index] as const));
  const pairs = before.pairs.flatMap((pair, index): readonly PairEffect[] => {
    const then = placeAfter.get(pair.pairId);
    return then === undefined ? [] : [pairEffect(before, index, after, then)];
  });
  return {
    runs,
    seed: before.seed,
    pairs,
    crossing: pairs.filter((pair) => rankOf(pair.standingAfter) > rankOf(pair.standingBefore)).map(idOf),
    rescued: pairs.filter((pair) => rankOf(pair.standingAfter) < rankOf(pair.standingBefore)).map(idOf),
    expectedLate: {
      before: pairs.reduce((sum, { keptBefore }) => sum + (keptBefore === null ? 0 : 1 - keptBefore), 0),
      after: pairs.reduce((sum, { keptAfter }) => sum + (keptAfter === null ? 0 : 1 - keptAfter), 0),
    },
    changeoverMinutes: { before: plannedChangeovers(before), after: plannedChangeovers(after) },
    oneMore:
      oneMore === undefined ? null : { before: rangeOfOneMore(before, oneMore), after: rangeOfOneMore(after, oneMore) },
  };
}

function plannedChangeovers({ situation }: QueueRuns): number {
  const plan = planQueue(situation);
  return plan.ok ? plan.value.totals.changeoverMinutes : 0;
}

const idOf = ({ pairId }: PairEffect) => pairId;

const standings: readonly PromiseStanding[] = ["open", "safe", "at-risk", "late"];
const rankOf = (standing: PromiseStanding) => Math.max(1, standings.indexOf(standing));

function pairEffect(before: QueueRuns, index: number, after: QueueRuns, then: number): PairEffect {
  const { pairId, promise } = before.pairs[index] as PairOnFloor;
  const first = finishes(before, index);
  const second = finishes(after, then);
  const was = rangeLevelsOf(before, first);
  const will = rangeLevelsOf(after, second);
  return {
    pairId,
    promise,
    before: was.dates,
    after: will.dates,
    shareAfter: { p50: will.shares.p50, p90: will.shares.p90 },
    movedWorkingDays: tenths(
      (workUntil(before, finishMinute(after, orderStatistic(second, 0.9))) - orderStatistic(first, 0.9)) /
        workingDayMinutes(before.floor),
    ),
    slackWorkingDays: promise === null ? null : slack(before, after, promise.date, second),
    keptBefore: promise === null ? null : shareBy(before, first, promise.date),
    keptAfter: promise === null ? null : shareBy(after, second, promise.date),
    standingBefore: standingOf(promise, was.dates),
    standingAfter: standingOf(promise, will.dates),
  };
}

/** Safe when nine of ten runs keep the day, late when not even half do. */
export function standingOf(
  promise: PairOnFloor["promise"],
  dates: Pick<DateRange["dates"], "p50" | "p90">,
): PromiseStanding {
  if (promise === null) return "open";
  if (dates.p90 <= promise.date) return "safe";
  return dates.p50 <= promise.date ? "at-risk" : "late";
}

/** Share of the runs in which the pair is ready on the day; null for a pair that is not in them. */
export function chanceKept(runs: QueueRuns, pairId: string, date: IsoDate): number | null {
  const index = runs.pairs.findIndex((pair) => pair.pairId === pairId);
  if (index < 0 || runs.replications.length === 0) return null;
  return shareBy(runs, finishes(runs, index), date);
}

/** Working minutes to the finish in every run, ascending. */
function finishes(runs: QueueRuns, index: number): Float64Array {
  return Float64Array.from(runs.replications, ({ finishWorkMinutes }) => finishWorkMinutes[index] as number).sort();
}

/** Problem minute at which so much working time from now is done. */
function finishMinute({ calendar, queue }: QueueRuns, workMinutes: number): number {
  return clockMinuteOf(calendar, workMinutesBefore(calendar, queue.nowMinute) + Math.max(1, workMinutes) - 1) + 1;
}

/** Working minutes from now to a problem minute, by the hours of these runs. */
function workUntil({ calendar, queue }: QueueRuns, minute: number): number {
  return workMinutesBefore(calendar, minute) - workMinutesBefore(calendar, queue.nowMinute);
}

/** Counted in the ordinary hours of the situation before, so that overtime does not lengthen a day. */
function slack(before: QueueRuns, after: QueueRuns, date: IsoDate, sorted: Float64Array): number {
  const ready = workUntil(before, finishMinute(after, orderStatistic(sorted, 0.9)));
  return tenths((workToEndOf(before, date) - ready) / workingDayMinutes(before.floor));
}

const tenths = (value: number) => Math.round(value * 10) / 10;

function rangeOfOneMore(runs: QueueRuns, candidate: CandidatePair): DateRange {
  const asked = prepareCandidate(runs, candidate);
  if (!asked.ok) throw new RangeError(`effectOf: one more pair does not fit the floor: ${asked.refusal.code}`);
  answerRange(asked.value, runs.replications.length);
  return candidateRange(asked.value);
}

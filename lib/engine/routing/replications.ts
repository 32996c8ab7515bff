/**
 * The open queue run many times. A replication keeps when every pair was finished (on the working-time axis) and what every
 * resource was doing, so that one more pair is answered from memory. Made in slices: the caller decides how many runs
 * to do before it lets others have their turn; keep the result as long as the queue's revision stands.
 */
import {
  type CompiledProblem,
  calendarNamed,
  compileProblem,
  Timelines,
  type WorkCalendar,
  workMinutesBefore,
} from "#engine/schedule";
import { DispatchRun, dispatchModel, storeTimelines } from "#engine/simulate";
import { accept, type Outcome } from "#engine/units";
import type { FloorCatalog } from "./floor";
import { calendarName, type FloorProblem, type FloorRefusal, openQueue } from "./floor-problem";
import { rankByPromise } from "./rank";
import { FloorSampler, outageDays, redoRules, type Shock, sharedShocks } from "./sampling";
import { minutesPerDay } from "./shop-time";
import type { QueueSituation } from "./situation";
import type { PairOnFloor } from "./types";

export interface Replication {
  /** Working minutes from now to each pair's finish, shocks included; in the order of the pairs. */
  readonly finishWorkMinutes: Float64Array;
  readonly timelines: Timelines;
  readonly shocks: readonly Shock[];
}

/** A queue ready to be run; `replications` grows as {@link runRange} is called. */
export interface QueueRuns {
  readonly situation: QueueSituation;
  /** The situation's floor with what is added to it. */
  readonly floor: FloorCatalog;
  readonly pairs: readonly PairOnFloor[];
  readonly queue: FloorProblem;
  readonly problem: CompiledProblem;
  readonly calendar: WorkCalendar;
  readonly seed: number;
  readonly replications: Replication[];
  /** No run for an empty queue. */
  readonly engine: { readonly run: DispatchRun | null; readonly sampler: FloorSampler; readonly working: Timelines };
}

/** A redo can put every operation on a resource three times. */
const roomForRedos = 4;
/** Each lost day can cut a stretch in two. */
const roomForOutages = 2 * outageDays;

/** Prepares a queue for running. Refused when a pair does not fit the floor. */
export function prepareRuns(situation: QueueSituation, seed: number): Outcome<QueueRuns, FloorRefusal> {
  const { pairs } = situation;
  const built = openQueue(situation);
  if (!built.ok) return built;
  const queue = built.value;
  const { floor } = queue;
  const problem = compileProblem(queue.problem);
  const calendar = calendarNamed(queue.problem, calendarName);
  const rules = redoRules(floor, queue.operations);
  const model = dispatchModel(problem, {
    rank: rankByPromise(problem, pairs, queue.originMinute),
    changeoverPenalty: floor.planning.mouldGroupingWorkingDays * minutesPerDay,
    startMinute: queue.nowMinute,
    redoRules: rules,
  });
  const sampler = new FloorSampler(floor, problem, queue.operations, seed, calendar, queue.nowMinute, rules);
  const working = Timelines.empty(problem, roomForRedos * (problem.operationCount + 1) + roomForOutages);
  const engine = { run: pairs.length === 0 ? null : new DispatchRun(model), sampler, working };
  return accept({ situation, floor, pairs, queue, problem, calendar, seed, replications: [], engine });
}

/** Does the replications that are still missing up to `to` (exclusive). Returns how many there are. */
export function runRange(runs: QueueRuns, to: number): number {
  for (let replication = runs.replications.length; replication < to; replication++) {
    runs.replications.push(replicate(runs, replication));
  }
  return runs.replications.length;
}

function replicate(runs: QueueRuns, replication: number): Replication {
  const { engine, problem, queue, calendar, floor, seed } = runs;
  const { sampler, working } = engine;
  const shocks = sharedShocks(floor, seed, replication);
  if (engine.run === null) {
    const nothing = { data: new Int32Array(0), length: 0 };
    sampler.replication = replication;
    const timelines = storeTimelines(problem, nothing, working, (resource) => sampler.outages(resource));
    return { finishWorkMinutes: new Float64Array(0), timelines, shocks };
  }
  sampler.replication = replication;
  engine.run.run(sampler);
  const before = workMinutesBefore(calendar, queue.nowMinute);
  const finishWorkMinutes = Float64Array.from(engine.run.jobEnd, (end) =>
    afterShocks(workMinutesBefore(calendar, end) - before, shocks),
  );
  return {
    finishWorkMinutes,
    timelines: storeTimelines(problem, engine.run.busy, working, (resource) => sampler.outages(resource)),
    shocks,
  };
}

/** What ends after a shock ends later by it, and may so meet the next one; a quick week brings nothing before its own time. */
export function afterShocks(workMinutes: number, shocks: readonly Shock[]): number {
  let end = workMinutes;
  for (const { afterWorkMinutes, delayWorkMinutes } of shocks)
    if (end > afterWorkMinutes) end = Math.max(afterWorkMinutes, end + delayWorkMinutes);
  return end;
}

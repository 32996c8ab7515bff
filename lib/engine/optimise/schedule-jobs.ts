import type { Schedule, ScheduledOperation, ScheduleProblem, SearchOptions } from "#engine/schedule";
import {
  type CompiledProblem,
  compileProblem,
  costsOf,
  decodeSerial,
  emptyPlacement,
  fixedConflicts,
  GapNeverKept,
  type ObjectiveWeights,
  objectiveWeights,
  type Placement,
  type ProblemRefusal,
  place,
  placeFixed,
  type SerialPlan,
  serialPlan,
  validateProblem,
} from "#engine/schedule";
import { DispatchRun, dispatchModel } from "#engine/simulate";
import { accept, type Outcome, refuse } from "#engine/units";
import { improve, type SearchResult } from "./annealing";
import { lowerBound } from "./bounds";
import { tails } from "./heads-tails";
import { improveJobShop } from "./improve-job-shop";
import { improveLine } from "./improve-line";
import { improveProject } from "./improve-project";
import { jobShopOf } from "./job-shop";
import { lineOf } from "./line";
import { mirroredProject } from "./project";

export interface ScheduleRefusal {
  readonly code: "fixed-overlap" | "fixed-before-predecessor" | "gap-not-kept" | "deadline-not-met";
  readonly path: string;
  readonly [parameter: string]: unknown;
}

/**
 * Schedules jobs on finite resources: a sound schedule at once from priority rules, then improved until the iterations are
 * used, the budget is spent or a lower bound proves it best.
 *
 * Refused: an unsound problem (with the path of what is wrong), fixed operations that overlap or stand before a predecessor,
 * a maximum gap that cannot be kept, a deadline that no schedule found meets.
 *
 * @throws RangeError when `budgetMs` is given without a clock
 */
export function scheduleJobs(
  problem: ScheduleProblem,
  options: SearchOptions,
): Outcome<Schedule, ProblemRefusal | ScheduleRefusal> {
  const checked = validateProblem(problem);
  if (!checked.ok) return checked;
  const compiled = compileProblem(problem);
  try {
    return scheduled(compiled, options);
  } catch (error) {
    if (error instanceof GapNeverKept) return refuse(gapNotKept(compiled, error.operation));
    throw error;
  }
}

function scheduled(compiled: CompiledProblem, options: SearchOptions): Outcome<Schedule, ScheduleRefusal> {
  const plan = serialPlan(compiled);
  const placement = emptyPlacement(compiled);
  const overlapping = fixedConflicts(plan, placement)[0];
  if (overlapping !== undefined) {
    return refuse({ code: "fixed-overlap", path: `${pathOf(compiled, overlapping)}.fixed` });
  }
  const weights = objectiveWeights(compiled.problem.objective);
  const bound = lowerBound(compiled, weights);
  const starts = startingLists(compiled, plan);
  const found = improved(plan, starts, weights, bound, options);
  if (found.start === undefined) decodeSerial(plan, found.list, placement);
  else placeAt(plan, placement, found.list, found.start, found.wanted ?? null);
  const refusal = refusalOf(placement);
  if (refusal !== null) return refuse(refusal);
  const costs = costsOf(placement, weights);
  return accept({
    operations: scheduledOperations(placement),
    makespanMinutes: costs.makespanMinutes,
    weightedTardinessMinutes: costs.weightedTardinessMinutes,
    changeoverMinutes: costs.changeoverMinutes,
    objectiveValue: costs.objectiveValue,
    lowerBound: bound,
    proven: costs.objectiveValue <= bound,
    stoppedBy: found.stoppedBy,
    iterations: found.iterations,
  });
}

/** The tabu list has an entry for every pair of operations. */
const largestJobShop = 3_000;

/** By the method that suits the problem's kind: tabu moves, sequences, a population of lists, or annealing for the rest. */
function improved(
  plan: SerialPlan,
  starts: readonly Int32Array[],
  weights: ObjectiveWeights,
  bound: number,
  options: SearchOptions,
): SearchResult {
  const shop = plan.problem.operationCount <= largestJobShop ? jobShopOf(plan.problem, weights) : null;
  if (shop !== null) return improveJobShop(shop, plan, starts, weights, bound, options);
  const line = lineOf(plan.problem);
  if (line !== null) return improveLine(line, plan, starts, weights, bound, options);
  const mirrored = mirroredProject(plan.problem, weights);
  if (mirrored !== null) return improveProject(plan, mirrored, starts, weights.makespan, bound, options);
  return improve(plan, starts, weights, bound, options);
}

/**
 * Lists to begin with: the problem's own order, and what a dispatch by each rule would start one after another (due date,
 * slack, most work remaining, weight over work).
 */
export function startingLists(problem: CompiledProblem, plan: SerialPlan): readonly Int32Array[] {
  const tail = tails(problem);
  const rules = [
    (operation: number) => problem.due[problem.jobOf[operation] as number] as number,
    (operation: number) =>
      (problem.due[problem.jobOf[operation] as number] as number) -
      (tail[operation] as number) -
      (problem.minutes[operation] as number),
    (operation: number) => -(tail[operation] as number) - (problem.minutes[operation] as number),
    (operation: number) =>
      ((tail[operation] as number) + (problem.minutes[operation] as number)) /
      Math.max(1e-9, problem.weight[problem.jobOf[operation] as number] as number),
  ];
  const lists = rules.flatMap((rule) => {
    const rank = Float64Array.from({ length: problem.operationCount }, (_, operation) => finite(rule(operation)));
    const list = dispatchedOrNull(problem, rank);
    return list === null ? [] : [list];
  });
  return [plan.problem.topological.slice(), ...lists];
}

/** Null where a dispatch, which looks only forward, finds no start that keeps a maximum gap. */
function dispatchedOrNull(problem: CompiledProblem, rank: Float64Array): Int32Array | null {
  try {
    return dispatchList(problem, rank);
  } catch (error) {
    if (error instanceof GapNeverKept) return null;
    throw error;
  }
}

function finite(value: number): number {
  return Number.isFinite(value) ? value : 2 ** 40;
}

/** The order in which a dispatch by rank starts the operations; predecessors come before what follows them. */
export function dispatchList(
  problem: CompiledProblem,
  rank: Float64Array,
  changeoverPenalty = 0,
  startMinute = 0,
): Int32Array {
  const run = new DispatchRun(dispatchModel(problem, { rank, changeoverPenalty, startMinute }));
  run.run(null);
  return orderedByStart(problem, run.start, run.end);
}

function orderedByStart(problem: CompiledProblem, start: Int32Array, end: Int32Array): Int32Array {
  const place = new Int32Array(problem.operationCount);
  problem.topological.forEach((operation, at) => {
    place[operation] = at;
  });
  return problem.topological
    .slice()
    .sort(
      (a, b) =>
        (start[a] as number) - (start[b] as number) ||
        (end[a] as number) - (end[b] as number) ||
        (place[a] as number) - (place[b] as number),
    );
}

/** The operations of a finished placement, in the order of the problem. */
export function scheduledOperations(placement: Placement): readonly ScheduledOperation[] {
  const { problem, chosen, chosenFrom } = placement;
  return problem.operations.map((operation, index) => ({
    job: problem.problem.jobs[problem.jobOf[index] as number]?.id ?? "",
    operation: operation.id,
    startMinute: placement.start[index] as number,
    workEndMinute: placement.workEnd[index] as number,
    endMinute: placement.end[index] as number,
    resources: Array.from(
      chosen.subarray(chosenFrom[index] as number, chosenFrom[index + 1] as number),
      (resource) => problem.problem.resources[resource]?.id ?? "",
    ),
  }));
}

/** Puts the operations where a search has found room for them: filling gaps anew could cost changeovers. */
function placeAt(
  plan: SerialPlan,
  placement: Placement,
  list: Int32Array,
  start: Int32Array,
  wanted: Int32Array | null,
): void {
  placeFixed(plan, placement);
  placement.wanted = wanted;
  for (const operation of list) {
    if (plan.problem.fixedStart[operation] === -1) place(placement, operation, start[operation] as number);
  }
}

function pathOf(problem: CompiledProblem, operation: number): string {
  const job = problem.jobOf[operation] as number;
  return `jobs.${job}.operations.${operation - (problem.firstOfJob[job] as number)}`;
}

function gapNotKept(problem: CompiledProblem, operation: number): ScheduleRefusal {
  const path = `${pathOf(problem, operation)}.maxGapMinutes`;
  return { code: "gap-not-kept", path, limitMinutes: problem.maxGap[operation] };
}

/** What a finished placement cannot keep although every operation has its place. */
function refusalOf(placement: Placement): ScheduleRefusal | null {
  const { problem, start, end } = placement;
  for (let operation = 0; operation < problem.operationCount; operation++) {
    const last = problem.predecessorsFrom[operation + 1] as number;
    let ready = Number.NEGATIVE_INFINITY;
    for (let i = problem.predecessorsFrom[operation] as number; i < last; i++) {
      ready = Math.max(ready, end[problem.predecessors[i] as number] as number);
    }
    const begins = start[operation] as number;
    if (begins < ready) {
      return {
        code: "fixed-before-predecessor",
        path: `${pathOf(problem, operation)}.fixed`,
        startMinute: begins,
        earliestMinute: ready,
      };
    }
    const gap = problem.maxGap[operation] as number;
    if (gap >= 0 && begins - ready > gap) {
      return { ...gapNotKept(problem, operation), gapMinutes: begins - ready };
    }
    const job = problem.jobOf[operation] as number;
    const deadline = problem.deadline[job] as number;
    if ((end[operation] as number) > deadline) {
      return {
        code: "deadline-not-met",
        path: `jobs.${job}.deadlineMinute`,
        deadlineMinute: deadline,
        endMinute: end[operation],
      };
    }
  }
  return null;
}

/**
 * Which problems are plain job shops: every operation on one machine that does one thing at a time, chains, no calendars, no
 * holds, gaps, changeovers or fixed starts, and the makespan to be shortened. For them a disjunctive graph says all.
 * Operations that take no time take no machine either: they are left out of the chains and stand alone.
 */
import type { CompiledProblem, ObjectiveWeights } from "#engine/schedule";

/** Operations numbered as in the problem; the job predecessor and successor of each, −1 at the ends. */
export interface JobShop {
  readonly operationCount: number;
  readonly machineCount: number;
  readonly machineOf: Int32Array;
  readonly minutes: Int32Array;
  readonly jobBefore: Int32Array;
  readonly jobBehind: Int32Array;
  /** Earliest start by release. */
  readonly release: Int32Array;
}

/** The job shop of a compiled problem, or null when the problem is of a richer kind. */
export function jobShopOf(problem: CompiledProblem, weights: ObjectiveWeights): JobShop | null {
  if (weights.makespan <= 0 || weights.weightedTardiness !== 0 || weights.changeover !== 0) return null;
  if (problem.deadline.some((deadline) => Number.isFinite(deadline))) return null;
  const count = problem.operationCount;
  const machineOf = new Int32Array(count);
  const jobBefore = new Int32Array(count).fill(-1);
  const jobBehind = new Int32Array(count).fill(-1);
  for (let operation = 0; operation < count; operation++) {
    const machine = plainMachine(problem, operation);
    const before = onlyOne(problem.predecessorsFrom, problem.predecessors, operation);
    const behind = onlyOne(problem.successorsFrom, problem.successors, operation);
    if (machine < 0 || before === null || behind === null) return null;
    machineOf[operation] = machine;
    jobBefore[operation] = before;
    jobBehind[operation] = behind;
  }
  let machineCount = problem.resourceCount;
  for (let operation = 0; operation < count; operation++) {
    if ((problem.minutes[operation] as number) > 0) continue;
    // A release of its own would have to be handed on.
    if ((problem.release[operation] as number) > earliestOfJob(problem, operation)) return null;
    const before = jobBefore[operation] as number;
    const behind = jobBehind[operation] as number;
    if (before >= 0) jobBehind[before] = behind;
    if (behind >= 0) jobBefore[behind] = before;
    jobBefore[operation] = -1;
    jobBehind[operation] = -1;
    machineOf[operation] = machineCount++;
  }
  return {
    operationCount: count,
    machineCount,
    machineOf,
    minutes: problem.minutes,
    jobBefore,
    jobBehind,
    release: problem.release,
  };
}

/** The least release in an operation's job. */
function earliestOfJob(problem: CompiledProblem, operation: number): number {
  const job = problem.jobOf[operation] as number;
  const from = problem.firstOfJob[job] as number;
  return problem.release
    .subarray(from, problem.firstOfJob[job + 1] as number)
    .reduce((least, each) => Math.min(least, each));
}

/** The machine of an operation that needs nothing else; −1 when it is not as plain as that. */
function plainMachine(problem: CompiledProblem, operation: number): number {
  const uses = problem.usesOf[operation] ?? [];
  const use = uses[0];
  if (uses.length !== 1 || use === undefined || use.members.length !== 1 || use.isPool) return -1;
  const machine = use.members[0] as number;
  const isPlain =
    problem.unattended[operation] === 0 &&
    problem.maxGap[operation] === -1 &&
    problem.fixedStart[operation] === -1 &&
    problem.calendarOf[operation] === null &&
    problem.changeover[machine] === null &&
    problem.unavailable[machine] === null;
  return isPlain ? machine : -1;
}

/** The single neighbour, −1 when there is none, null when there are several. */
function onlyOne(from: Int32Array, list: Int32Array, operation: number): number | null {
  const first = from[operation] as number;
  const count = (from[operation + 1] as number) - first;
  if (count > 1) return null;
  return count === 0 ? -1 : (list[first] as number);
}

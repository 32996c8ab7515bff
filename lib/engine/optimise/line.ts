/**
 * Which problems are plain lines: every job passes the same stages in the same order, each stage is one machine (with
 * changeovers or not) or several equal ones, and nothing else binds: no calendars, holds, gaps, deadlines or fixed starts.
 * One machine alone is the shortest line. For a line a sequence of the jobs says nearly all.
 */
import type { CompiledProblem, CompiledUse } from "#engine/schedule";

export interface Stage {
  /** Equal machines; 1 where there are changeovers. */
  readonly machines: number;
  readonly minutes: Int32Array;
  readonly release: Int32Array;
  /** Changeovers in front of each job: `table[from · familyCount + familyOf[job]]`; null: none. */
  readonly changeover: Int32Array | null;
  readonly familyOf: Int32Array;
  /** −1: nothing is mounted. */
  readonly initialFamily: number;
}

export interface Line {
  readonly jobCount: number;
  readonly stages: readonly Stage[];
  readonly familyCount: number;
  readonly due: Float64Array;
  readonly weight: Float64Array;
  readonly firstOfJob: Int32Array;
}

/** The line of a compiled problem, or null when the problem is of a richer kind. */
export function lineOf(problem: CompiledProblem): Line | null {
  const { jobCount, firstOfJob } = problem;
  const stageCount = firstOfJob[1] ?? 0;
  if (jobCount < 2 || !isPlain(problem)) return null;
  const stages: Stage[] = [];
  const taken = new Set<number>();
  for (let stage = 0; stage < stageCount; stage++) {
    const found = stageOf(problem, stage, stageCount);
    if (found === null) return null;
    const { members } = found.use;
    if (members.some((member) => taken.has(member))) return null;
    for (const member of members) taken.add(member);
    stages.push(found.stage);
  }
  if (firstOfJob[jobCount] !== jobCount * stageCount) return null;
  return { jobCount, stages, familyCount: problem.familyCount, due: problem.due, weight: problem.weight, firstOfJob };
}

/** Nothing outside a line's reach anywhere in the problem. */
function isPlain(problem: CompiledProblem): boolean {
  return (
    problem.unattended.every((minutes) => minutes === 0) &&
    problem.maxGap.every((gap) => gap === -1) &&
    problem.fixedStart.every((start) => start === -1) &&
    problem.calendarOf.every((calendar) => calendar === null) &&
    problem.resourceCalendar.every((calendar) => calendar === null) &&
    problem.unavailable.every((away) => away === null) &&
    problem.deadline.every((deadline) => !Number.isFinite(deadline))
  );
}

/** The stage that is every job's operation at this place, or null when jobs differ there. */
function stageOf(
  problem: CompiledProblem,
  place: number,
  stageCount: number,
): { readonly stage: Stage; readonly use: CompiledUse } | null {
  const operations = Array.from({ length: problem.jobCount }, (_, job) => job * stageCount + place);
  const use = problem.usesOf[place]?.[0];
  if (use === undefined) return null;
  const isSame = (operation: number) => {
    const uses = problem.usesOf[operation] ?? [];
    const mine = uses[0];
    if (uses.length !== 1 || mine === undefined || mine.units !== 1) return false;
    if (mine.members.length !== use.members.length) return false;
    return mine.members.every((member, i) => member === use.members[i]) && followsItsJob(problem, operation, place);
  };
  const first = use.members[0] as number;
  const machines = use.members.reduce((sum, member) => sum + (problem.capacity[member] as number), 0);
  const changeover = use.members.length === 1 ? (problem.changeover[first] ?? null) : null;
  const hasOtherTables = use.members.length > 1 && use.members.some((member) => problem.changeover[member] !== null);
  const familyOf = Int32Array.from(operations, (operation) => problem.family[operation] as number);
  if (hasOtherTables || !operations.every(isSame)) return null;
  if (changeover !== null && familyOf.some((family) => family < 0)) return null;
  return {
    use,
    stage: {
      machines,
      minutes: Int32Array.from(operations, (operation) => problem.minutes[operation] as number),
      release: Int32Array.from(operations, (operation) => problem.release[operation] as number),
      changeover,
      familyOf,
      initialFamily: problem.initialFamily[first] as number,
    },
  };
}

/** True when the operation is the `place`-th of its job and comes right after the one listed before it. */
function followsItsJob(problem: CompiledProblem, operation: number, place: number): boolean {
  const job = problem.jobOf[operation] as number;
  if (operation - (problem.firstOfJob[job] as number) !== place) return false;
  const from = problem.predecessorsFrom[operation] as number;
  const count = (problem.predecessorsFrom[operation + 1] as number) - from;
  return place === 0 ? count === 0 : count === 1 && problem.predecessors[from] === operation - 1;
}

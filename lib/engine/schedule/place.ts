/**
 * Placing operations: the earliest start that suits all resources and calendars at once, and clusters, which are operations
 * tied together by a maximum gap (wet lay-up → press) and are placed all or none.
 */
import { nextOpen, nextOpenRun, startForEnd, workEnd } from "./calendar";
import type { CompiledProblem } from "./compile";
import { Timelines } from "./timelines";

/** A partial schedule. Minutes are the problem's own, or one replication's sample. */
export interface Placement {
  readonly problem: CompiledProblem;
  minutes: Int32Array;
  unattended: Int32Array;
  /** No operation starts before this: its release, or later where a gap to its successor asks for it. */
  readonly lowest: Int32Array;
  readonly timelines: Timelines;
  readonly start: Int32Array;
  readonly workEnd: Int32Array;
  /** After cure or rest: successors may begin. */
  readonly end: Int32Array;
  readonly isPlaced: Uint8Array;
  /** Resources taken, one entry a unit of a group; `chosenFrom[operation]` is the first. */
  readonly chosenFrom: Int32Array;
  readonly chosen: Int32Array;
  /** Where a search has decided it: the member that an entry of {@link chosen} must take; −1: any. Null: nothing is decided. */
  wanted: Int32Array | null;
}

export function emptyPlacement(problem: CompiledProblem, timelines = Timelines.empty(problem)): Placement {
  const chosenFrom = new Int32Array(problem.operationCount + 1);
  problem.usesOf.forEach((uses, operation) => {
    const entries = uses.reduce((sum, use) => sum + (use.isPool ? 1 : use.units), 0);
    chosenFrom[operation + 1] = (chosenFrom[operation] as number) + entries;
  });
  return {
    problem,
    minutes: problem.minutes,
    unattended: problem.unattended,
    lowest: problem.release.slice(),
    timelines,
    start: new Int32Array(problem.operationCount),
    workEnd: new Int32Array(problem.operationCount),
    end: new Int32Array(problem.operationCount),
    isPlaced: new Uint8Array(problem.operationCount),
    chosenFrom,
    chosen: new Int32Array(chosenFrom[problem.operationCount] as number),
    wanted: null,
  };
}

/** Earliest start at or after `lowest` at which every resource and calendar suits. */
export function findStart(placement: Placement, operation: number, lowest: number): number {
  const { problem, timelines } = placement;
  const minutes = placement.minutes[operation] as number;
  const unattended = placement.unattended[operation] as number;
  const calendar = problem.calendarOf[operation] ?? null;
  const uses = problem.usesOf[operation] ?? [];
  const family = problem.family[operation] as number;
  const { wanted } = placement;
  const first = placement.chosenFrom[operation] as number;
  let start = lowest;
  for (;;) {
    start = openStart(placement, operation, start);
    const done = calendar === null ? start + minutes : workEnd(calendar, start, minutes);
    let later = start;
    let entry = first;
    for (let i = 0; i < uses.length && later === start; i++) {
      const use = uses[i] as (typeof uses)[number];
      const held = use.holds ? unattended : 0;
      const member = wanted === null ? -1 : (wanted[entry] as number);
      later =
        member < 0
          ? timelines.fits(use, start, done + held, family, minutes + held)
          : timelines.fitsMember(member, start, done + held, family, minutes + held);
      entry += use.isPool ? 1 : use.units;
    }
    if (later === start) return start;
    start = later;
  }
}

/** First minute at or after `lowest` at which the operation's calendars let it begin. */
export function openStart(placement: Placement, operation: number, lowest: number): number {
  const calendar = placement.problem.calendarOf[operation] ?? null;
  const minutes = placement.minutes[operation] as number;
  if (calendar === null || minutes === 0) return lowest;
  return placement.problem.isUninterrupted[operation] === 1
    ? nextOpenRun(calendar, lowest, minutes)
    : nextOpen(calendar, lowest);
}

/** Puts an operation at `start`, which {@link findStart} has found. */
export function place(placement: Placement, operation: number, start: number): void {
  const { problem, timelines, chosen } = placement;
  const minutes = placement.minutes[operation] as number;
  const calendar = problem.calendarOf[operation] ?? null;
  const done = calendar === null ? start + minutes : workEnd(calendar, start, minutes);
  const end = done + (placement.unattended[operation] as number);
  const family = problem.family[operation] as number;
  const uses = problem.usesOf[operation] ?? [];
  let at = placement.chosenFrom[operation] as number;
  for (let i = 0; i < uses.length; i++) {
    const use = uses[i] as (typeof uses)[number];
    const until = use.holds ? end : done;
    if (use.isPool) {
      const pool = use.members[0] as number;
      chosen[at] = pool;
      timelines.occupy(pool, start, until, use.units, family);
      at += 1;
      continue;
    }
    const member = placement.wanted === null ? -1 : (placement.wanted[at] as number);
    if (member < 0) timelines.choose(use, start, until, family, chosen, at);
    else chosen[at] = member;
    for (let unit = 0; unit < use.units; unit++) {
      timelines.occupy(chosen[at + unit] as number, start, until, 1, family);
    }
    at += use.units;
  }
  placement.start[operation] = start;
  placement.workEnd[operation] = done;
  placement.end[operation] = end;
  placement.isPlaced[operation] = 1;
}

/** Takes an operation off again. */
export function unplace(placement: Placement, operation: number): void {
  const { problem, timelines, chosen } = placement;
  const start = placement.start[operation] as number;
  const done = placement.workEnd[operation] as number;
  const end = placement.end[operation] as number;
  const uses = problem.usesOf[operation] ?? [];
  let at = placement.chosenFrom[operation] as number;
  for (const use of uses) {
    const until = use.holds ? end : done;
    const entries = use.isPool ? 1 : use.units;
    for (let unit = 0; unit < entries; unit++) {
      timelines.release(chosen[at + unit] as number, start, until, use.isPool ? use.units : 1);
    }
    at += entries;
  }
  placement.isPlaced[operation] = 0;
}

/** Latest of the release and the ends of all predecessors. */
export function earliestByPrecedence(placement: Placement, operation: number): number {
  const { problem, end } = placement;
  let earliest = placement.lowest[operation] as number;
  const last = problem.predecessorsFrom[operation + 1] as number;
  for (let i = problem.predecessorsFrom[operation] as number; i < last; i++) {
    const ready = end[problem.predecessors[i] as number] as number;
    if (ready > earliest) earliest = ready;
  }
  return earliest;
}

/** Later starts tried for a cluster. Each is the next that could do: in a week's pattern of hours that is years. */
export const maxClusterSteps = 600;

/** No start keeps the maximum gap in front of an operation, however late. */
export class GapNeverKept extends RangeError {
  constructor(
    problem: CompiledProblem,
    readonly operation: number,
  ) {
    super(`no start found that keeps the maximum gap before operation "${problem.operations[operation]?.id}"`);
  }
}

/**
 * Places a cluster: operations in precedence order, of which each but the first must begin at most its maximum gap after its
 * one predecessor, which stands before it in the cluster. A later member that comes too late pulls its predecessor later.
 *
 * @throws GapNeverKept when no start can be found
 */
export function placeCluster(placement: Placement, cluster: readonly number[]): void {
  const { problem } = placement;
  if (cluster.length === 1) {
    const only = cluster[0] as number;
    place(placement, only, findStart(placement, only, earliestByPrecedence(placement, only)));
    return;
  }
  const lowest = cluster.map((operation) => placement.lowest[operation] as number);
  let at = 0;
  for (let steps = 0; at < cluster.length; steps++) {
    const operation = cluster[at] as number;
    const start = findStart(
      placement,
      operation,
      Math.max(lowest[at] as number, earliestByPrecedence(placement, operation)),
    );
    const before =
      at === 0 ? -1 : cluster.indexOf(problem.predecessors[problem.predecessorsFrom[operation] as number] as number);
    const tooLate =
      before < 0
        ? 0
        : start - (problem.maxGap[operation] as number) - (placement.end[cluster[before] as number] as number);
    if (tooLate <= 0) {
      place(placement, operation, start);
      at += 1;
      continue;
    }
    if (steps > maxClusterSteps) throw new GapNeverKept(problem, operation);
    lowest[before] = laterStart(placement, cluster[before] as number, tooLate);
    while (at > before) {
      at -= 1;
      unplace(placement, cluster[at] as number);
    }
  }
}

/** The least later start of a placed operation that moves its end by at least `minutes`. */
export function laterStart(placement: Placement, operation: number, minutes: number): number {
  const { problem } = placement;
  const start = placement.start[operation] as number;
  const calendar = problem.calendarOf[operation] ?? null;
  if (calendar === null || (placement.minutes[operation] as number) === 0) return start + minutes;
  const wantedWorkEnd = (placement.workEnd[operation] as number) + minutes;
  return Math.max(start + 1, startForEnd(calendar, wantedWorkEnd, placement.minutes[operation] as number));
}

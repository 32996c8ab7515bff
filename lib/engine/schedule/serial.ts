/**
 * Serial schedule generation: operations in list order, each at its earliest feasible time, filling gaps that are left
 * (Kolisch 1996). Every schedule it makes is active; for a regular objective some list gives an optimum.
 */
import { workEnd } from "./calendar";
import type { CompiledProblem } from "./compile";
import { findStart, laterStart, type Placement, place, placeCluster } from "./place";

/** How a list is decoded: clusters tied by maximum gaps, fixed operations first. */
export interface SerialPlan {
  readonly problem: CompiledProblem;
  /** Cluster that an operation heads; null when it is placed with another's cluster or fixed. */
  readonly clusterOf: readonly (readonly number[] | null)[];
  readonly fixed: readonly number[];
  /** Operations with a maximum gap after several predecessors. */
  readonly joins: readonly number[];
}

/**
 * Groups operations for decoding. A maximum gap ties an operation to its predecessor when it has exactly one; after several
 * predecessors the gap counts from the last of them, which is known only after placing: see {@link decodeSerial}.
 */
export function serialPlan(problem: CompiledProblem): SerialPlan {
  const { operationCount, predecessorsFrom, successorsFrom, successors, fixedStart } = problem;
  const isTied = (operation: number) =>
    (problem.maxGap[operation] as number) >= 0 &&
    fixedStart[operation] === -1 &&
    (predecessorsFrom[operation + 1] as number) - (predecessorsFrom[operation] as number) === 1 &&
    fixedStart[problem.predecessors[predecessorsFrom[operation] as number] as number] === -1;
  const clusterOf = Array.from({ length: operationCount }, (_, head): number[] | null => {
    if (fixedStart[head] !== -1 || isTied(head)) return null;
    const cluster = [head];
    for (let at = 0; at < cluster.length; at++) {
      const operation = cluster[at] as number;
      const last = successorsFrom[operation + 1] as number;
      for (let i = successorsFrom[operation] as number; i < last; i++) {
        if (isTied(successors[i] as number)) cluster.push(successors[i] as number);
      }
    }
    return cluster;
  });
  const fixed = Array.from(problem.topological).filter((operation) => fixedStart[operation] !== -1);
  fixed.sort((a, b) => (fixedStart[a] as number) - (fixedStart[b] as number));
  const joins = Array.from(problem.topological).filter(
    (operation) => (problem.maxGap[operation] as number) >= 0 && !isTied(operation) && fixedStart[operation] === -1,
  );
  return { problem, clusterOf, fixed, joins };
}

/** Empties a placement and puts the fixed operations where they are. */
export function placeFixed(plan: SerialPlan, placement: Placement): void {
  placement.timelines.clear();
  placement.isPlaced.fill(0);
  for (const operation of plan.fixed) place(placement, operation, plan.problem.fixedStart[operation] as number);
  placement.timelines.occupyUnavailable();
}

const maxGapRepairs = 200;

/**
 * Decodes a list that respects precedence into a schedule, written to `placement`. Where an operation with a maximum gap
 * joins several predecessors and comes too late after the last of them, that predecessor is held back and the list decoded
 * again.
 *
 * @param list every operation once (fixed ones may stand anywhere)
 */
export function decodeSerial(plan: SerialPlan, list: Int32Array, placement: Placement): void {
  if (plan.joins.length > 0) placement.lowest.set(plan.problem.release);
  for (let repairs = 0; repairs <= maxGapRepairs; repairs++) {
    placeFixed(plan, placement);
    for (let i = 0; i < list.length; i++) {
      const cluster = plan.clusterOf[list[i] as number];
      if (cluster != null) placeCluster(placement, cluster);
    }
    if (!holdBackForJoins(plan, placement)) return;
  }
}

/** Raises the earliest start of the last predecessor of each join that begins too late; false when none does. */
function holdBackForJoins(plan: SerialPlan, placement: Placement): boolean {
  const { problem } = plan;
  let isHeldBack = false;
  for (const join of plan.joins) {
    let last = problem.predecessors[problem.predecessorsFrom[join] as number] as number;
    for (let i = problem.predecessorsFrom[join] as number; i < (problem.predecessorsFrom[join + 1] as number); i++) {
      const predecessor = problem.predecessors[i] as number;
      if ((placement.end[predecessor] as number) > (placement.end[last] as number)) last = predecessor;
    }
    const tooLate =
      (placement.start[join] as number) - (placement.end[last] as number) - (problem.maxGap[join] as number);
    if (tooLate <= 0 || problem.fixedStart[last] !== -1) continue;
    placement.lowest[last] = laterStart(placement, last, tooLate);
    isHeldBack = true;
  }
  return isHeldBack;
}

/** Fixed operations that overlap on a resource, as pairs of operation numbers; empty when they can all stand. */
export function fixedConflicts(plan: SerialPlan, placement: Placement): readonly number[] {
  placement.timelines.clear();
  const { problem } = plan;
  const conflicts: number[] = [];
  for (const operation of plan.fixed) {
    const start = problem.fixedStart[operation] as number;
    if (!fixedFits(placement, operation, start)) conflicts.push(operation);
    place(placement, operation, start);
  }
  return conflicts;
}

function fixedFits(placement: Placement, operation: number, start: number): boolean {
  const { problem } = placement;
  const calendar = problem.calendarOf[operation] ?? null;
  const minutes = placement.minutes[operation] as number;
  // A fixed operation need not begin in open time nor leave room for a changeover: it is a fact, not a plan.
  const found = findStart(placement, operation, start);
  if (found === start) return true;
  const done = calendar === null ? start + minutes : workEnd(calendar, start, minutes);
  return !overlapsPlaced(placement, operation, start, done);
}

function overlapsPlaced(placement: Placement, operation: number, start: number, done: number): boolean {
  const { problem, timelines } = placement;
  return (problem.usesOf[operation] ?? []).some((use) => {
    const until = use.holds ? done + (placement.unattended[operation] as number) : done;
    return timelines.overlaps(use, start, until);
  });
}

/**
 * Moves of the search. A schedule is held as a list of operations in order of their starts; a move takes one operation behind
 * a later one (with whatever must follow it) and the list is decoded anew. The moves that matter are those on a critical
 * arc: two neighbours on a resource of which the second waits for the first, on a chain that ends in the cost.
 */
import { intBelow, type Random32 } from "#engine/math";
import type { CompiledProblem } from "#engine/schedule";
import { openStart, type Placement, workEnd } from "#engine/schedule";

/** Sorts the operations of a placement by start; ties by end, then by precedence. Written to `list`. */
export function listByStart(placement: Placement, list: Int32Array): void {
  const { start, end, problem } = placement;
  const rank = topologicalRank(problem);
  list.set(problem.topological);
  list.sort(
    (a, b) =>
      (start[a] as number) - (start[b] as number) ||
      (end[a] as number) - (end[b] as number) ||
      (rank[a] as number) - (rank[b] as number),
  );
}

const ranks = new WeakMap<CompiledProblem, Int32Array>();

function topologicalRank(problem: CompiledProblem): Int32Array {
  let rank = ranks.get(problem);
  if (rank === undefined) {
    rank = new Int32Array(problem.operationCount);
    for (let at = 0; at < problem.operationCount; at++) rank[problem.topological[at] as number] = at;
    ranks.set(problem, rank);
  }
  return rank;
}

/** Arcs `first[i] → second[i]` that could be turned round. */
export interface CriticalArcs {
  readonly first: number[];
  readonly second: number[];
}

/**
 * Critical arcs of a schedule.
 *
 * @param list operations by start
 * @param isCostly marks the operations whose end is paid for (last of the makespan, last of each tardy job)
 */
export function criticalArcs(placement: Placement, list: Int32Array, isCostly: Uint8Array): CriticalArcs {
  const { problem, end } = placement;
  const arcs: CriticalArcs = { first: [], second: [] };
  const isCritical = isCostly.slice();
  for (let at = list.length - 1; at >= 0; at--) {
    const operation = list[at] as number;
    if (isCritical[operation] === 0) continue;
    const start = placement.start[operation] as number;
    const last = problem.predecessorsFrom[operation + 1] as number;
    for (let i = problem.predecessorsFrom[operation] as number; i < last; i++) {
      const predecessor = problem.predecessors[i] as number;
      if (openStart(placement, operation, end[predecessor] as number) >= start) isCritical[predecessor] = 1;
    }
    markResourceArcs(placement, list, at, isCritical, arcs);
  }
  return arcs;
}

/** Looks back for the operations that freed a resource just when the one at `at` began. */
function markResourceArcs(
  placement: Placement,
  list: Int32Array,
  at: number,
  isCritical: Uint8Array,
  arcs: CriticalArcs,
): void {
  const { problem, chosen, chosenFrom } = placement;
  const operation = list[at] as number;
  const start = placement.start[operation] as number;
  if (problem.fixedStart[operation] !== -1) return;
  const to = chosenFrom[operation + 1] as number;
  for (let mine = chosenFrom[operation] as number; mine < to; mine++) {
    const resource = chosen[mine] as number;
    const before = previousOn(placement, resource, list, at);
    for (const earlier of before) {
      if (problem.fixedStart[earlier] !== -1) continue;
      const free = freedBy(placement, earlier, operation, resource);
      if (free > start || openStart(placement, operation, free) < start) continue;
      isCritical[earlier] = 1;
      if (problem.jobOf[earlier] !== problem.jobOf[operation] || !precedes(problem, earlier, operation)) {
        arcs.first.push(earlier);
        arcs.second.push(operation);
      }
    }
  }
}

/** The last operation before position `at` on a unit resource; on a pool, every one of the last few. */
function previousOn(placement: Placement, resource: number, list: Int32Array, at: number): readonly number[] {
  const found: number[] = [];
  const wanted = (placement.problem.capacity[resource] as number) > 1 ? 4 : 1;
  const { chosen, chosenFrom } = placement;
  for (let i = at - 1; i >= 0 && found.length < wanted; i--) {
    const operation = list[i] as number;
    const to = chosenFrom[operation + 1] as number;
    for (let k = chosenFrom[operation] as number; k < to; k++) {
      if (chosen[k] === resource) {
        found.push(operation);
        break;
      }
    }
  }
  return found;
}

/** When `earlier` leaves a resource to `later`, with the changeover between them. */
function freedBy(placement: Placement, earlier: number, later: number, resource: number): number {
  const { problem } = placement;
  const use = (problem.usesOf[earlier] ?? []).find(({ members }) => members.includes(resource));
  const free = (use?.holds ? placement.end[earlier] : placement.workEnd[earlier]) as number;
  const table = problem.changeover[resource] ?? null;
  if (table === null) return free;
  const minutes = table[
    (problem.family[earlier] as number) * problem.familyCount + (problem.family[later] as number)
  ] as number;
  const calendar = problem.resourceCalendar[resource] ?? null;
  return calendar === null ? free + minutes : workEnd(calendar, free, minutes);
}

/** True when `earlier` is a direct predecessor of `later`. */
function precedes(problem: CompiledProblem, earlier: number, later: number): boolean {
  const last = problem.predecessorsFrom[later + 1] as number;
  for (let i = problem.predecessorsFrom[later] as number; i < last; i++)
    if (problem.predecessors[i] === earlier) return true;
  return false;
}

/**
 * Writes `list` to `moved` with `first` taken behind `second`; operations in between that must follow `first` go along.
 * False when `second` itself must follow it.
 */
export function moveBehind(
  problem: CompiledProblem,
  list: Int32Array,
  first: number,
  second: number,
  moved: Int32Array,
): boolean {
  const from = list.indexOf(first);
  const to = list.indexOf(second, from);
  if (from < 0 || to < 0) return false;
  const along: number[] = [first];
  let write = from;
  for (let i = 0; i < from; i++) moved[i] = list[i] as number;
  for (let i = from + 1; i <= to; i++) {
    const operation = list[i] as number;
    if (along.some((earlier) => precedes(problem, earlier, operation))) {
      if (operation === second) return false;
      along.push(operation);
    } else moved[write++] = operation;
  }
  for (const operation of along) moved[write++] = operation;
  for (let i = to + 1; i < list.length; i++) moved[i] = list[i] as number;
  return true;
}

/**
 * Writes `list` to `moved` with `second` taken before `first`; operations in between that it must follow go along. False when
 * it must follow `first` itself.
 */
export function moveBefore(
  problem: CompiledProblem,
  list: Int32Array,
  first: number,
  second: number,
  moved: Int32Array,
): boolean {
  const from = list.indexOf(first);
  const to = list.indexOf(second, from);
  if (from < 0 || to < 0) return false;
  const along: number[] = [second];
  let write = to;
  for (let i = list.length - 1; i > to; i--) moved[i] = list[i] as number;
  for (let i = to - 1; i >= from; i--) {
    const operation = list[i] as number;
    if (along.some((later) => precedes(problem, operation, later))) {
      if (operation === first) return false;
      along.push(operation);
    } else moved[write--] = operation;
  }
  for (const operation of along) moved[write--] = operation;
  for (let i = 0; i < from; i++) moved[i] = list[i] as number;
  return true;
}

/**
 * Writes `list` to `moved` with two jobs exchanged on all of their way: in the places of both, what was the turn of one is the
 * turn of the other, each with its operations in their order; the longer one's rest comes last. False when they are one job.
 */
export function exchangeJobs(
  { jobOf }: CompiledProblem,
  list: Int32Array,
  one: number,
  other: number,
  moved: Int32Array,
): boolean {
  if (one === other) return false;
  const places = Array.from(list.keys()).filter((at) => {
    const job = jobOf[list[at] as number];
    return job === one || job === other;
  });
  const own = places.filter((at) => jobOf[list[at] as number] === one).map((at) => list[at] as number);
  const its = places.filter((at) => jobOf[list[at] as number] === other).map((at) => list[at] as number);
  moved.set(list);
  let [ownNext, itsNext] = [0, 0];
  for (const at of places) {
    const isOwnTurn = jobOf[list[at] as number] === other;
    const takesOwn = itsNext === its.length || (isOwnTurn && ownNext < own.length);
    moved[at] = (takesOwn ? own[ownNext++] : its[itsNext++]) as number;
  }
  return true;
}

/** Places that an operation of a short list may be moved by. */
const leastReach = 4;

/** A random move: some operation behind another a few places later, or before it. */
export function randomMove(problem: CompiledProblem, list: Int32Array, random: Random32, moved: Int32Array): boolean {
  if (list.length < 2) return false;
  const from = intBelow(random, list.length - 1);
  const most = Math.max(leastReach, Math.ceil(list.length / 4));
  const reach = Math.min(list.length - 1 - from, 1 + intBelow(random, most));
  const first = list[from] as number;
  const second = list[from + reach] as number;
  return intBelow(random, 2) === 0
    ? moveBehind(problem, list, first, second, moved)
    : moveBefore(problem, list, first, second, moved);
}

/** Any list that respects precedence. */
export function randomList(problem: CompiledProblem, random: Random32): Int32Array {
  const waiting = Int32Array.from(
    { length: problem.operationCount },
    (_, operation) =>
      (problem.predecessorsFrom[operation + 1] as number) - (problem.predecessorsFrom[operation] as number),
  );
  const ready = Array.from(waiting.keys()).filter((operation) => waiting[operation] === 0);
  const list = new Int32Array(problem.operationCount);
  for (let filled = 0; filled < list.length; filled++) {
    const at = intBelow(random, ready.length);
    const operation = ready[at] as number;
    ready[at] = ready.at(-1) as number;
    ready.pop();
    list[filled] = operation;
    for (
      let i = problem.successorsFrom[operation] as number;
      i < (problem.successorsFrom[operation + 1] as number);
      i++
    ) {
      const next = problem.successors[i] as number;
      waiting[next] = (waiting[next] as number) - 1;
      if (waiting[next] === 0) ready.push(next);
    }
  }
  return list;
}

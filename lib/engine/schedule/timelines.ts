/**
 * What every resource is doing: for a resource of capacity 1 the busy intervals in order of time, with the family of each;
 * for a larger one (a pool) the level of use as a step function. All in flat arrays, one stretch a resource.
 */
import { workEnd, workMinutesBefore } from "./calendar";
import type { CompiledProblem, CompiledUse } from "./compile";

const beforeAll = -(2 ** 30);

export interface PackedTimelines {
  /** First index of each resource's stretch; the last entry is the total length. */
  readonly from: Int32Array;
  readonly count: Int32Array;
  /** Unit resource: start of each busy interval. Pool: start of each step. */
  readonly starts: Int32Array;
  /** Unit resource: end of each busy interval. Pool: units in use during the step. */
  readonly ends: Int32Array;
  /** Unit resource: family of each busy interval. */
  readonly families: Int32Array;
}

export interface Timelines extends PackedTimelines {
  /**
   * Others' busy times, which are only read: on unit resources without changeovers this one then keeps its own additions alone.
   */
  below: PackedTimelines | null;
}

/** A unit resource without changeovers: only whether it is busy counts, so additions can lie over what is below. */
export function canLieOver(problem: CompiledProblem, resource: number): boolean {
  return (problem.capacity[resource] as number) === 1 && problem.changeover[resource] === null;
}

/**
 * Empty timelines with room for every operation of the problem once, and `extra` more entries a resource.
 */
export function emptyTimelines(problem: CompiledProblem, extra = 0): Timelines {
  const needed = new Int32Array(problem.resourceCount);
  for (const uses of problem.usesOf) {
    for (const use of uses) for (const member of use.members) needed[member] = (needed[member] as number) + 2;
  }
  const from = new Int32Array(problem.resourceCount + 1);
  needed.forEach((entries, resource) => {
    const away = problem.unavailable[resource]?.length ?? 0;
    from[resource + 1] = (from[resource] as number) + entries + away + extra + 2;
  });
  const size = from[problem.resourceCount] as number;
  const timelines: Timelines = {
    from,
    count: new Int32Array(problem.resourceCount),
    starts: new Int32Array(size),
    ends: new Int32Array(size),
    families: new Int32Array(size),
    below: null,
  };
  clearTimelines(problem, timelines);
  return timelines;
}

export function clearTimelines(problem: CompiledProblem, timelines: Timelines): void {
  const { count, from, starts, ends } = timelines;
  for (let resource = 0; resource < problem.resourceCount; resource++) {
    if ((problem.capacity[resource] as number) > 1) {
      count[resource] = 1;
      starts[from[resource] as number] = beforeAll;
      ends[from[resource] as number] = 0;
    } else count[resource] = 0;
  }
}

/** Index (from the stretch's start) of the first busy interval that ends after `minute`. */
function firstEndingAfter(timelines: PackedTimelines, resource: number, minute: number): number {
  const base = timelines.from[resource] as number;
  const ends = timelines.ends;
  let low = 0;
  let high = timelines.count[resource] as number;
  while (low < high) {
    const middle = (low + high) >>> 1;
    if ((ends[base + middle] as number) > minute) high = middle;
    else low = middle + 1;
  }
  return low;
}

/** Index of the step that covers `minute`. */
function stepAt(timelines: Timelines, resource: number, minute: number): number {
  const base = timelines.from[resource] as number;
  const starts = timelines.starts;
  let low = 0;
  let high = (timelines.count[resource] as number) - 1;
  while (low < high) {
    const middle = (low + high + 1) >>> 1;
    if ((starts[base + middle] as number) <= minute) low = middle;
    else high = middle - 1;
  }
  return low;
}

/** When a changeover of `minutes` begun at `minute` is done; while the resource is not there nobody changes it over. */
export function afterChangeover(problem: CompiledProblem, resource: number, minute: number, minutes: number): number {
  if (minutes === 0) return minute;
  const calendar = problem.resourceCalendar[resource] ?? null;
  const worked = (from: number, to: number) =>
    calendar === null ? to - from : workMinutesBefore(calendar, to) - workMinutesBefore(calendar, from);
  const away = problem.unavailable[resource] ?? null;
  let at = Math.max(0, minute);
  let left = minutes;
  for (let i = 0; away !== null && i < away.length; i += 2) {
    const from = away[i] as number;
    const to = away[i + 1] as number;
    if (to <= at) continue;
    const before = from <= at ? 0 : worked(at, from);
    if (before >= left) break;
    left -= before;
    at = to;
  }
  return calendar === null ? at + left : workEnd(calendar, at, left);
}

/** Family on a unit resource before an index of its stretch: a stretch without family leaves what was mounted. */
function mountedBefore(problem: CompiledProblem, timelines: Timelines, resource: number, next: number): number {
  const base = timelines.from[resource] as number;
  for (let i = next - 1; i >= 0; i--) {
    const family = timelines.families[base + i] as number;
    if (family >= 0) return family;
  }
  return problem.initialFamily[resource] as number;
}

/** As {@link unitFit} where no changeover counts. */
function plainFit(timelines: PackedTimelines, resource: number, start: number, end: number, least: number): number {
  const at = (timelines.from[resource] as number) + firstEndingAfter(timelines, resource, start);
  const last = (timelines.from[resource] as number) + (timelines.count[resource] as number);
  return at === last || (timelines.starts[at] as number) >= end ? start : endOfCrowd(timelines, at, last, least);
}

/** End of the busy interval at index `at`, or of a later one: the first before a gap of at least so many minutes. */
function endOfCrowd({ starts, ends }: PackedTimelines, at: number, last: number, least: number): number {
  let index = at;
  while (index + 1 < last && (starts[index + 1] as number) - (ends[index] as number) < least) index++;
  return ends[index] as number;
}

/** `start` when [start, end) fits on a unit resource; else a later start before which nothing fits. */
function unitFit(
  problem: CompiledProblem,
  timelines: Timelines,
  resource: number,
  start: number,
  end: number,
  family: number,
  least: number,
): number {
  const table = problem.changeover[resource] ?? null;
  if (table === null) {
    const fit = plainFit(timelines, resource, start, end, least);
    return fit !== start || timelines.below === null ? fit : plainFit(timelines.below, resource, start, end, least);
  }
  const base = timelines.from[resource] as number;
  const count = timelines.count[resource] as number;
  const next = firstEndingAfter(timelines, resource, start);
  let limit = end;
  const before = mountedBefore(problem, timelines, resource, next);
  if (before >= 0 && family >= 0) {
    let last = next - 1;
    while (last >= 0 && (timelines.families[base + last] as number) < 0) last--;
    const free = last >= 0 ? (timelines.ends[base + last] as number) : 0;
    const ready = afterChangeover(problem, resource, free, table[before * problem.familyCount + family] as number);
    if (ready > start) return ready;
  }
  let follower = next;
  while (follower < count && (timelines.families[base + follower] as number) < 0) follower++;
  if (follower < count && family >= 0) {
    const behind = timelines.families[base + follower] as number;
    const changed = afterChangeover(problem, resource, end, table[family * problem.familyCount + behind] as number);
    if (follower === next) limit = changed;
    else if ((timelines.starts[base + follower] as number) < changed) return timelines.ends[base + follower] as number;
  }
  return next === count || (timelines.starts[base + next] as number) >= limit
    ? start
    : endOfCrowd(timelines, base + next, base + count, least);
}

/** As {@link unitFit} for `units` of a pool. */
function poolFit(
  problem: CompiledProblem,
  timelines: Timelines,
  resource: number,
  start: number,
  end: number,
  units: number,
): number {
  const base = timelines.from[resource] as number;
  const count = timelines.count[resource] as number;
  const room = (problem.capacity[resource] as number) - units;
  for (let step = stepAt(timelines, resource, start); step < count; step++) {
    if (step > 0 && (timelines.starts[base + step] as number) >= end) return start;
    if ((timelines.ends[base + step] as number) > room) {
      let free = step + 1;
      while ((timelines.ends[base + free] as number) > room) free++;
      return timelines.starts[base + free] as number;
    }
  }
  return start;
}

/**
 * `start` when [start, end) fits one use of an operation; else a later start before which nothing fits.
 *
 * @param least minutes that the use takes whenever it begins, at most end − start (closed hours make an operation longer):
 *   shorter gaps are passed over
 */
export function fitOfUse(
  problem: CompiledProblem,
  timelines: Timelines,
  use: CompiledUse,
  start: number,
  end: number,
  family: number,
  least: number,
): number {
  if (end === start) return start;
  const { members, units } = use;
  if (use.isPool) return poolFit(problem, timelines, members[0] as number, start, end, units);
  if (members.length === 1) return unitFit(problem, timelines, members[0] as number, start, end, family, least);
  let free = 0;
  let earliest = Number.POSITIVE_INFINITY;
  const fits = units === 1 ? null : new Float64Array(members.length);
  for (let i = 0; i < members.length; i++) {
    const fit = unitFit(problem, timelines, members[i] as number, start, end, family, least);
    if (fit === start && ++free === units) return start;
    if (fits !== null) fits[i] = fit;
    if (fit < earliest) earliest = fit;
  }
  if (fits === null) return earliest;
  // The units-th smallest: before it too few members can be free.
  return fits.sort()[units - 1] as number;
}

/** Minutes of changeover that putting [start, …) of `family` on a unit resource would need in front of it. */
function changeoverInFront(
  problem: CompiledProblem,
  timelines: Timelines,
  resource: number,
  start: number,
  family: number,
): number {
  const table = problem.changeover[resource] ?? null;
  if (table === null || family < 0) return 0;
  const next = firstEndingAfter(timelines, resource, start);
  const before = mountedBefore(problem, timelines, resource, next);
  return before < 0 ? 0 : (table[before * problem.familyCount + family] as number);
}

/**
 * The members of a group that take [start, end): the first free ones as listed, on machines with changeovers the one that
 * needs the least. Writes resource numbers to `chosen` from `at` on.
 */
export function chooseMembers(
  problem: CompiledProblem,
  timelines: Timelines,
  use: CompiledUse,
  start: number,
  end: number,
  family: number,
  chosen: Int32Array,
  at: number,
): void {
  const { members, units } = use;
  if (members.length === 1) {
    chosen[at] = members[0] as number;
    return;
  }
  let taken = 0;
  while (taken < units) {
    let best = -1;
    let bestCost = Number.POSITIVE_INFINITY;
    for (let i = 0; i < members.length; i++) {
      const member = members[i] as number;
      if (isAmong(chosen, at, taken, member)) continue;
      if (end > start && unitFit(problem, timelines, member, start, end, family, end - start) !== start) continue;
      const cost = changeoverInFront(problem, timelines, member, start, family);
      if (cost < bestCost) {
        best = member;
        bestCost = cost;
      }
    }
    chosen[at + taken] = best >= 0 ? best : (members[taken] as number);
    taken++;
  }
}

function isAmong(chosen: Int32Array, at: number, count: number, member: number): boolean {
  for (let i = at; i < at + count; i++) if (chosen[i] === member) return true;
  return false;
}

/** Puts [start, end) on a resource. Unit resources take the family with it; an empty interval leaves no trace. */
export function occupy(
  problem: CompiledProblem,
  timelines: Timelines,
  resource: number,
  start: number,
  end: number,
  units: number,
  family: number,
): void {
  if (end === start) return;
  if ((problem.capacity[resource] as number) > 1) {
    raiseLevel(timelines, resource, start, end, units);
    return;
  }
  const base = timelines.from[resource] as number;
  const at = base + firstEndingAfter(timelines, resource, start);
  const last = base + (timelines.count[resource] as number);
  const { starts, ends, families } = timelines;
  for (let i = last; i > at; i--) {
    starts[i] = starts[i - 1] as number;
    ends[i] = ends[i - 1] as number;
    families[i] = families[i - 1] as number;
  }
  starts[at] = start;
  ends[at] = end;
  families[at] = family;
  timelines.count[resource] = (timelines.count[resource] as number) + 1;
}

/** Fills what is free of [from, to) on a resource: it is not there then, whatever was already begun. */
export function occupyFree(
  problem: CompiledProblem,
  timelines: Timelines,
  resource: number,
  from: number,
  to: number,
): void {
  const capacity = problem.capacity[resource] as number;
  if (capacity > 1) {
    raiseLevel(timelines, resource, from, to, capacity);
    return;
  }
  let at = from;
  while (at < to) {
    const base = timelines.from[resource] as number;
    const next = firstEndingAfter(timelines, resource, at);
    const isLast = next >= (timelines.count[resource] as number);
    const starts = isLast ? to : (timelines.starts[base + next] as number);
    if (starts > at) occupy(problem, timelines, resource, at, Math.min(to, starts), 1, -1);
    at = isLast ? to : (timelines.ends[base + next + (starts > at ? 1 : 0)] as number);
  }
}

/** Enters what is known of every resource's absences. */
export function occupyUnavailable(problem: CompiledProblem, timelines: Timelines): void {
  problem.unavailable.forEach((away, resource) => {
    for (let i = 0; away !== null && i < away.length; i += 2) {
      occupyFree(problem, timelines, resource, away[i] as number, away[i + 1] as number);
    }
  });
}

/** Takes [start, end) off a resource again. */
export function release(
  problem: CompiledProblem,
  timelines: Timelines,
  resource: number,
  start: number,
  end: number,
  units: number,
): void {
  if (end === start) return;
  if ((problem.capacity[resource] as number) > 1) {
    raiseLevel(timelines, resource, start, end, -units);
    return;
  }
  const base = timelines.from[resource] as number;
  const at = base + firstEndingAfter(timelines, resource, start);
  const last = base + (timelines.count[resource] as number) - 1;
  const { starts, ends, families } = timelines;
  for (let i = at; i < last; i++) {
    starts[i] = starts[i + 1] as number;
    ends[i] = ends[i + 1] as number;
    families[i] = families[i + 1] as number;
  }
  timelines.count[resource] = (timelines.count[resource] as number) - 1;
}

function raiseLevel(timelines: Timelines, resource: number, start: number, end: number, units: number): void {
  const base = timelines.from[resource] as number;
  const first = splitStep(timelines, resource, start);
  const last = splitStep(timelines, resource, end);
  for (let step = first; step < last; step++) {
    timelines.ends[base + step] = (timelines.ends[base + step] as number) + units;
  }
  joinEqualSteps(timelines, resource, Math.max(0, first - 1), last);
}

/** Makes a step begin at `minute` and returns its index. */
function splitStep(timelines: Timelines, resource: number, minute: number): number {
  const base = timelines.from[resource] as number;
  const step = stepAt(timelines, resource, minute);
  if (timelines.starts[base + step] === minute) return step;
  const count = timelines.count[resource] as number;
  const { starts, ends } = timelines;
  for (let i = base + count; i > base + step + 1; i--) {
    starts[i] = starts[i - 1] as number;
    ends[i] = ends[i - 1] as number;
  }
  starts[base + step + 1] = minute;
  ends[base + step + 1] = ends[base + step] as number;
  timelines.count[resource] = count + 1;
  return step + 1;
}

function joinEqualSteps(timelines: Timelines, resource: number, first: number, last: number): void {
  const base = timelines.from[resource] as number;
  const { starts, ends } = timelines;
  const count = timelines.count[resource] as number;
  let write = first + 1;
  for (let read = first + 1; read < count; read++) {
    if (read <= last && ends[base + read] === ends[base + write - 1]) continue;
    starts[base + write] = starts[base + read] as number;
    ends[base + write] = ends[base + read] as number;
    write++;
  }
  timelines.count[resource] = write;
}

/**
 * What every resource is doing: for a resource of capacity 1 the busy intervals in order of time, with the family of each;
 * for a larger one (a pool) the level of use as a step function. All in flat arrays, one stretch a resource, which this class
 * alone reads and writes by index. The indices are inside by construction and said to be so where they are used: a function
 * that says it once made every search slower by 5 to 20 %.
 */
import { afterChangeover, changeoverMinutes } from "./changeover";
import type { CompiledProblem, CompiledUse } from "./compile";

const beforeAll = -(2 ** 30);

/** From here on the engine's own copy is quicker than a loop. */
const longCopy = 24;

/** Room for every operation of a problem once, its absences, and `extraEntries` more on each resource. */
function roomFor(problem: CompiledProblem, extraEntries: number): Int32Array {
  const needed = new Array<number>(problem.resourceCount).fill(extraEntries + 2);
  for (const uses of problem.usesOf) {
    for (const { members } of uses) for (const member of members) needed[member] = (needed[member] ?? 0) + 2;
  }
  return offsetsOf(needed.map((entries, resource) => entries + (problem.unavailable[resource]?.length ?? 0)));
}

function offsetsOf(lengths: ArrayLike<number> & Iterable<number>): Int32Array {
  const offsets = new Int32Array(lengths.length + 1);
  let total = 0;
  let index = 0;
  for (const length of lengths) {
    total += length;
    index += 1;
    offsets[index] = total;
  }
  return offsets;
}

export class Timelines {
  private readonly count: Int32Array;
  /** Unit resource: start of each busy interval. Pool: start of each step. */
  private readonly starts: Int32Array;
  /** Unit resource: end of each busy interval. Pool: units in use during the step. */
  private readonly ends: Int32Array;
  /** Unit resource: family of each busy interval. */
  private readonly families: Int32Array;
  /**
   * Others' busy times, which are only read: on unit resources without changeovers these timelines then keep their own
   * additions alone.
   */
  private below: Timelines | null = null;

  /** @param from first index of each resource's stretch; the last entry is the total length */
  private constructor(
    private readonly problem: CompiledProblem,
    private readonly from: Int32Array,
  ) {
    const size = from[problem.resourceCount] as number;
    this.count = new Int32Array(problem.resourceCount);
    this.starts = new Int32Array(size);
    this.ends = new Int32Array(size);
    this.families = new Int32Array(size);
  }

  /** Empty timelines with room for every operation of the problem once, and `extraEntries` more a resource. */
  static empty(problem: CompiledProblem, extraEntries = 0): Timelines {
    const timelines = new Timelines(problem, roomFor(problem, extraEntries));
    timelines.clear();
    return timelines;
  }

  /**
   * Timelines to be laid over any of the stored ones ({@link layOver}), with room for what is copied of `resources` and
   * `extraEntries` more on each resource.
   */
  static toLayOver(
    problem: CompiledProblem,
    resources: Int32Array,
    stored: readonly Timelines[],
    extraEntries: number,
  ): Timelines {
    const copied = resources.filter((resource) => !canLieOver(problem, resource));
    let most = 0;
    for (const { count } of stored) {
      for (const resource of copied) most = Math.max(most, count[resource] as number);
    }
    return Timelines.empty(problem, most + extraEntries);
  }

  clear(): void {
    const { problem, count, from, starts, ends } = this;
    for (let resource = 0; resource < problem.resourceCount; resource++) {
      if (isPool(problem, resource)) {
        count[resource] = 1;
        starts[from[resource] as number] = beforeAll;
        ends[from[resource] as number] = 0;
      } else count[resource] = 0;
    }
  }

  /**
   * `start` when [start, end) fits one use of an operation; else a later start before which nothing fits.
   *
   * @param least minutes that the use takes whenever it begins, at most end − start (closed hours make an operation longer):
   *   shorter gaps are passed over
   */
  fits(use: CompiledUse, start: number, end: number, family: number, least: number): number {
    if (end === start) return start;
    const { members, units } = use;
    const first = members[0] as number;
    if (use.isPool) return this.poolFit(first, start, end, units);
    if (members.length === 1) return this.unitFit(first, start, end, family, least);
    let free = 0;
    let earliest = Number.POSITIVE_INFINITY;
    const fits = units === 1 ? null : new Float64Array(members.length);
    for (let i = 0; i < members.length; i++) {
      const fit = this.unitFit(members[i] as number, start, end, family, least);
      if (fit === start && ++free === units) return start;
      if (fits !== null) fits[i] = fit;
      if (fit < earliest) earliest = fit;
    }
    if (fits === null) return earliest;
    // The units-th smallest: before it too few members can be free.
    return fits.sort()[units - 1] ?? earliest;
  }

  /** As {@link fits} for one resource that does one thing at a time. */
  fitsMember(resource: number, start: number, end: number, family: number, least: number): number {
    return end === start ? start : this.unitFit(resource, start, end, family, least);
  }

  /**
   * The members of a group that take [start, end): the first free ones as listed, on machines with changeovers the one that
   * needs the least. Writes resource numbers to `chosen` from `at` on.
   */
  choose(use: CompiledUse, start: number, end: number, family: number, chosen: Int32Array, at: number): void {
    const { members, units } = use;
    if (members.length === 1) {
      chosen[at] = members[0] as number;
      return;
    }
    for (let taken = 0; taken < units; taken++) {
      let best = -1;
      let bestCost = Number.POSITIVE_INFINITY;
      for (let i = 0; i < members.length; i++) {
        const member = members[i] as number;
        if (isAmong(chosen, at, taken, member)) continue;
        if (end > start && this.unitFit(member, start, end, family, end - start) !== start) continue;
        const cost = this.changeoverInFront(member, start, family);
        if (cost < bestCost) {
          best = member;
          bestCost = cost;
        }
      }
      chosen[at + taken] = best >= 0 ? best : (members[taken] as number);
    }
  }

  /** Puts [start, end) on a resource. Unit resources take the family with it; an empty interval leaves no trace. */
  occupy(resource: number, start: number, end: number, units: number, family: number): void {
    if (end === start) return;
    if (isPool(this.problem, resource)) {
      this.raiseLevel(resource, start, end, units);
      return;
    }
    const { starts, ends, families, count } = this;
    const base = this.from[resource] as number;
    const at = base + this.firstEndingAfter(resource, start);
    for (let i = base + (count[resource] as number); i > at; i--) {
      starts[i] = starts[i - 1] as number;
      ends[i] = ends[i - 1] as number;
      families[i] = families[i - 1] as number;
    }
    starts[at] = start;
    ends[at] = end;
    families[at] = family;
    count[resource] = (count[resource] as number) + 1;
  }

  /** Takes [start, end) off a resource again. */
  release(resource: number, start: number, end: number, units: number): void {
    if (end === start) return;
    if (isPool(this.problem, resource)) {
      this.raiseLevel(resource, start, end, -units);
      return;
    }
    const { starts, ends, families, count } = this;
    const base = this.from[resource] as number;
    const last = base + (count[resource] as number) - 1;
    for (let i = base + this.firstEndingAfter(resource, start); i < last; i++) {
      starts[i] = starts[i + 1] as number;
      ends[i] = ends[i + 1] as number;
      families[i] = families[i + 1] as number;
    }
    count[resource] = (count[resource] as number) - 1;
  }

  /** Fills what is free of [from, to) on a resource: it is not there then, whatever was already begun. */
  occupyFree(resource: number, from: number, to: number): void {
    if (isPool(this.problem, resource)) {
      this.raiseLevel(resource, from, to, this.problem.capacity[resource] as number);
      return;
    }
    let at = from;
    while (at < to) {
      const next = (this.from[resource] as number) + this.firstEndingAfter(resource, at);
      const isLast = next >= this.stretchEnd(resource);
      const starts = isLast ? to : (this.starts[next] as number);
      if (starts > at) this.occupy(resource, at, Math.min(to, starts), 1, -1);
      at = isLast ? to : (this.ends[next + (starts > at ? 1 : 0)] as number);
    }
  }

  /** Fills what is free of several times, [from, to, from, to …]; null: none. */
  occupyAllFree(resource: number, times: Int32Array | null): void {
    for (let i = 0; times !== null && i < times.length; i += 2) {
      this.occupyFree(resource, times[i] as number, times[i + 1] as number);
    }
  }

  /** Enters what is known of every resource's absences. */
  occupyUnavailable(): void {
    this.problem.unavailable.forEach((away, resource) => {
      this.occupyAllFree(resource, away);
    });
  }

  /** True when [start, end) would lie over what is there on too many members of a use. Changeovers do not count. */
  overlaps(use: CompiledUse, start: number, end: number): boolean {
    const free = use.members.filter((member) => {
      const last = this.stretchEnd(member);
      for (let i = this.from[member] as number; i < last; i++) {
        const from = this.starts[i] as number;
        if (use.isPool) {
          const to = i + 1 < last ? (this.starts[i + 1] as number) : end;
          const isFull = (this.ends[i] as number) + use.units > (this.problem.capacity[member] as number);
          if (from < end && to > start && isFull) return false;
        } else if (from < end && (this.ends[i] as number) > start) return false;
      }
      return true;
    });
    return free.length < (use.isPool ? 1 : use.units);
  }

  /** Sum of the changeovers between neighbours on a resource, the first from the initial family. */
  changeoversOn(resource: number): number {
    const { problem } = this;
    if ((problem.changeover[resource] ?? null) === null) return 0;
    let family = problem.initialFamily[resource] as number;
    let total = 0;
    const last = this.stretchEnd(resource);
    for (let i = this.from[resource] as number; i < last; i++) {
      const next = this.families[i] as number;
      total += changeoverMinutes(problem, resource, family, next);
      if (next >= 0) family = next;
    }
    return total;
  }

  /** When a family begins on a resource, before a minute. */
  startsOfFamily(resource: number, family: number, beforeMinute: number): readonly number[] {
    const found: number[] = [];
    const last = this.stretchEnd(resource);
    for (let i = this.from[resource] as number; i < last && (this.starts[i] as number) < beforeMinute; i++) {
      if ((this.families[i] as number) === family) found.push(this.starts[i] as number);
    }
    return found;
  }

  /**
   * A copy for keeping, with no room to spare: one more job is later placed into what it leaves free. Touching intervals of
   * a machine without changeovers are merged, here too, so a busy station costs few entries.
   */
  packed(): Timelines {
    const { problem } = this;
    for (let resource = 0; resource < problem.resourceCount; resource++) this.mergeTouching(resource);
    const stored = new Timelines(problem, offsetsOf(this.count));
    for (let resource = 0; resource < problem.resourceCount; resource++) stored.copyStretch(this, resource);
    return stored;
  }

  /**
   * Lays these timelines over stored ones of the same resources. Copied are only pools and machines with changeovers, for
   * which there must be room.
   */
  layOver(stored: Timelines, resources: Int32Array): void {
    this.below = stored;
    for (let i = 0; i < resources.length; i++) {
      const resource = resources[i] as number;
      if (canLieOver(this.problem, resource)) this.count[resource] = 0;
      else this.copyStretch(stored, resource);
    }
  }

  private stretchEnd(resource: number): number {
    return (this.from[resource] as number) + (this.count[resource] as number);
  }

  /** Index (from the stretch's start) of the first busy interval that ends after `minute`. */
  private firstEndingAfter(resource: number, minute: number): number {
    const base = this.from[resource] as number;
    const { ends } = this;
    let low = 0;
    let high = this.count[resource] as number;
    while (low < high) {
      const middle = (low + high) >>> 1;
      if ((ends[base + middle] as number) > minute) high = middle;
      else low = middle + 1;
    }
    return low;
  }

  /** Index (from the stretch's start) of the step that covers `minute`. */
  private stepAt(resource: number, minute: number): number {
    const base = this.from[resource] as number;
    const { starts } = this;
    let low = 0;
    let high = (this.count[resource] as number) - 1;
    while (low < high) {
      const middle = (low + high + 1) >>> 1;
      if ((starts[base + middle] as number) <= minute) low = middle;
      else high = middle - 1;
    }
    return low;
  }

  /** Family on a unit resource before an index of its stretch: a stretch without family leaves what was mounted. */
  private mountedBefore(resource: number, next: number): number {
    const base = this.from[resource] as number;
    for (let i = next - 1; i >= 0; i--) {
      const family = this.families[base + i] as number;
      if (family >= 0) return family;
    }
    return this.problem.initialFamily[resource] as number;
  }

  /** As {@link unitFit} where no changeover counts. */
  private plainFit(resource: number, start: number, end: number, least: number): number {
    const at = (this.from[resource] as number) + this.firstEndingAfter(resource, start);
    const last = this.stretchEnd(resource);
    return at === last || (this.starts[at] as number) >= end ? start : this.endOfCrowd(at, last, least);
  }

  /** End of the busy interval at index `at`, or of a later one: the first before a gap of at least so many minutes. */
  private endOfCrowd(at: number, last: number, least: number): number {
    const { starts, ends } = this;
    let index = at;
    while (index + 1 < last && (starts[index + 1] as number) - (ends[index] as number) < least) index++;
    return ends[index] as number;
  }

  /** `start` when [start, end) fits on a unit resource; else a later start before which nothing fits. */
  private unitFit(resource: number, start: number, end: number, family: number, least: number): number {
    const { problem, below } = this;
    if ((problem.changeover[resource] ?? null) === null) {
      const fit = this.plainFit(resource, start, end, least);
      return fit !== start || below === null ? fit : below.plainFit(resource, start, end, least);
    }
    const { starts, ends, families } = this;
    const base = this.from[resource] as number;
    const count = this.count[resource] as number;
    const next = this.firstEndingAfter(resource, start);
    let limit = end;
    const before = this.mountedBefore(resource, next);
    if (before >= 0 && family >= 0) {
      let last = next - 1;
      while (last >= 0 && (families[base + last] as number) < 0) last--;
      const free = last >= 0 ? (ends[base + last] as number) : 0;
      const ready = afterChangeover(problem, resource, free, changeoverMinutes(problem, resource, before, family));
      if (ready > start) return ready;
    }
    let follower = next;
    while (follower < count && (families[base + follower] as number) < 0) follower++;
    if (follower < count && family >= 0) {
      const behind = families[base + follower] as number;
      const changed = afterChangeover(problem, resource, end, changeoverMinutes(problem, resource, family, behind));
      if (follower === next) limit = changed;
      else if ((starts[base + follower] as number) < changed) return ends[base + follower] as number;
    }
    return next === count || (starts[base + next] as number) >= limit
      ? start
      : this.endOfCrowd(base + next, base + count, least);
  }

  /** As {@link unitFit} for `units` of a pool. */
  private poolFit(resource: number, start: number, end: number, units: number): number {
    const { starts, ends } = this;
    const base = this.from[resource] as number;
    const count = this.count[resource] as number;
    const room = (this.problem.capacity[resource] as number) - units;
    for (let step = this.stepAt(resource, start); step < count; step++) {
      if (step > 0 && (starts[base + step] as number) >= end) return start;
      if ((ends[base + step] as number) > room) {
        let free = step + 1;
        while ((ends[base + free] as number) > room) free++;
        return starts[base + free] as number;
      }
    }
    return start;
  }

  /** Minutes of changeover that putting [start, …) of `family` on a unit resource would need in front of it. */
  private changeoverInFront(resource: number, start: number, family: number): number {
    if ((this.problem.changeover[resource] ?? null) === null || family < 0) return 0;
    const before = this.mountedBefore(resource, this.firstEndingAfter(resource, start));
    return changeoverMinutes(this.problem, resource, before, family);
  }

  private raiseLevel(resource: number, start: number, end: number, units: number): void {
    const { ends } = this;
    const base = this.from[resource] as number;
    const first = this.splitStep(resource, start);
    const last = this.splitStep(resource, end);
    for (let step = base + first; step < base + last; step++) ends[step] = (ends[step] as number) + units;
    this.joinEqualSteps(resource, Math.max(0, first - 1), last);
  }

  /** Makes a step begin at `minute` and returns its index. */
  private splitStep(resource: number, minute: number): number {
    const { starts, ends, count } = this;
    const base = this.from[resource] as number;
    const step = this.stepAt(resource, minute);
    if ((starts[base + step] as number) === minute) return step;
    for (let i = this.stretchEnd(resource); i > base + step + 1; i--) {
      starts[i] = starts[i - 1] as number;
      ends[i] = ends[i - 1] as number;
    }
    starts[base + step + 1] = minute;
    ends[base + step + 1] = ends[base + step] as number;
    count[resource] = (count[resource] as number) + 1;
    return step + 1;
  }

  private joinEqualSteps(resource: number, first: number, last: number): void {
    const { starts, ends } = this;
    const base = this.from[resource] as number;
    const count = this.count[resource] as number;
    let write = first + 1;
    for (let read = first + 1; read < count; read++) {
      if (read <= last && (ends[base + read] as number) === (ends[base + write - 1] as number)) continue;
      starts[base + write] = starts[base + read] as number;
      ends[base + write] = ends[base + read] as number;
      write++;
    }
    this.count[resource] = write;
  }

  private mergeTouching(resource: number): void {
    if (!canLieOver(this.problem, resource)) return;
    const { starts, ends } = this;
    const base = this.from[resource] as number;
    const count = this.count[resource] as number;
    let write = 0;
    for (let read = 0; read < count; read++) {
      const [start, end] = [starts[base + read] as number, ends[base + read] as number];
      if (write > 0 && start <= (ends[base + write - 1] as number)) {
        ends[base + write - 1] = Math.max(ends[base + write - 1] as number, end);
      } else {
        starts[base + write] = start;
        ends[base + write] = end;
        write += 1;
      }
    }
    this.count[resource] = write;
  }

  private copyStretch(source: Timelines, resource: number): void {
    const from = source.from[resource] as number;
    const to = this.from[resource] as number;
    const count = source.count[resource] as number;
    this.count[resource] = count;
    if (count > longCopy) {
      this.starts.set(source.starts.subarray(from, from + count), to);
      this.ends.set(source.ends.subarray(from, from + count), to);
      this.families.set(source.families.subarray(from, from + count), to);
      return;
    }
    for (let i = 0; i < count; i++) {
      this.starts[to + i] = source.starts[from + i] as number;
      this.ends[to + i] = source.ends[from + i] as number;
      this.families[to + i] = source.families[from + i] as number;
    }
  }
}

function isPool({ capacity }: CompiledProblem, resource: number): boolean {
  return (capacity[resource] as number) > 1;
}

/** A unit resource without changeovers: only whether it is busy counts, so additions can lie over what is below. */
function canLieOver(problem: CompiledProblem, resource: number): boolean {
  return (problem.capacity[resource] as number) === 1 && problem.changeover[resource] === null;
}

function isAmong(chosen: Int32Array, at: number, count: number, member: number): boolean {
  for (let i = at; i < at + count; i++) if ((chosen[i] as number) === member) return true;
  return false;
}

/** The resources that a problem's operations can take. */
export function resourcesUsed(problem: CompiledProblem): Int32Array {
  return Int32Array.from(
    new Set(problem.usesOf.flatMap((uses) => uses.flatMap(({ members }) => Array.from(members)))),
  ).sort();
}

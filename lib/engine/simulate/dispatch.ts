/**
 * Rank-driven dispatch: time runs forward, and whenever something can start, the best-ranked of what can start does
 * (parallel schedule generation, non-delay). One run is one schedule, or one replication when durations are sampled, work
 * can fail and machines can be down. Every resource knows when it will be free, so events are only "ready" and "try again".
 */

import type { CompiledUse } from "#engine/schedule";
import {
  afterChangeover,
  workEnd as endOfWork,
  GapNeverKept,
  maxClusterSteps,
  nextOpen,
  nextOpenRun,
  startForEnd,
} from "#engine/schedule";
import { clusterAt, type DispatchClass, type DispatchModel, type RedoRule } from "./dispatch-model";
import { EventQueue } from "./event-queue";
import type { DispatchSampler } from "./sampling";

/** Busy intervals as they were decided: resource, start, end, operation, family; five numbers each, one unit. */
export interface BusyRecord {
  data: Int32Array;
  length: number;
}

export const busyWidth = 5;

/** A run's memory, used again from run to run. */
export class DispatchRun {
  readonly start: Int32Array;
  readonly workEnd: Int32Array;
  readonly end: Int32Array;
  /** Passes begun anew after a failure. */
  readonly visit: Int32Array;
  readonly jobEnd: Int32Array;
  readonly busy: BusyRecord = { data: new Int32Array(4096), length: 0 };
  private readonly slotFree: Int32Array;
  private readonly lastFamily: Int32Array;
  private readonly slotFreeBefore: Int32Array;
  private readonly lastFamilyBefore: Int32Array;
  private readonly pending: Int32Array;
  private readonly readyAt: Int32Array;
  private readonly minutes: Int32Array;
  private readonly unattended: Int32Array;
  private readonly sampledVisit: Int32Array;
  private readonly activeRule: (RedoRule | null)[];
  private readonly queues: number[][];
  private readonly wakeAt: Float64Array;
  private readonly isCandidate: Uint8Array;
  private readonly candidates: number[] = [];
  private readonly claimedUntil: Float64Array;
  private readonly events = new EventQueue();
  private readonly changeoverClasses: readonly number[];
  private sampler: DispatchSampler | null = null;
  private hasAskedAll = false;
  private readonly readyTimes: Float64Array;
  private readonly starts: number[] = [];
  private readonly outagesOf: (Int32Array | null)[];
  /** No changeovers, never away, no outage in this run: free means ready. */
  private readonly isPlain: Uint8Array;

  constructor(private readonly model: DispatchModel) {
    const { problem } = model;
    const count = problem.operationCount;
    this.start = new Int32Array(count);
    this.workEnd = new Int32Array(count);
    this.end = new Int32Array(count);
    this.visit = new Int32Array(count);
    this.jobEnd = new Int32Array(problem.jobCount);
    this.slotFree = new Int32Array(model.slotFrom[problem.resourceCount] as number);
    this.lastFamily = new Int32Array(problem.resourceCount);
    this.slotFreeBefore = this.slotFree.slice();
    this.lastFamilyBefore = this.lastFamily.slice();
    this.pending = new Int32Array(count);
    this.readyAt = new Int32Array(count);
    this.minutes = new Int32Array(count);
    this.unattended = new Int32Array(count);
    this.sampledVisit = new Int32Array(count);
    this.activeRule = Array.from({ length: count }, () => null);
    this.queues = model.classes.map(() => []);
    this.wakeAt = new Float64Array(model.classes.length);
    this.isCandidate = new Uint8Array(model.classes.length);
    this.claimedUntil = new Float64Array(problem.resourceCount);
    this.outagesOf = Array.from({ length: problem.resourceCount }, () => null);
    this.isPlain = new Uint8Array(problem.resourceCount);
    this.readyTimes = new Float64Array(
      problem.capacity.reduce((most, room) => Math.max(most, room), problem.resourceCount),
    );
    this.changeoverClasses = model.classes.flatMap(({ changeoverMembers }, index) =>
      changeoverMembers.length > 0 ? [index] : [],
    );
  }

  /** Runs the shop until everything is done. Without a sampler: planned minutes, nothing fails. */
  run(sampler: DispatchSampler | null): void {
    this.reset(sampler);
    while (!this.events.isEmpty) {
      const time = this.events.nextTime;
      this.collectCandidates(time);
      this.startAllThatCan(time);
    }
  }

  private reset(sampler: DispatchSampler | null): void {
    const { problem, plan, startMinute } = this.model;
    this.sampler = sampler;
    this.busy.length = 0;
    this.visit.fill(0);
    this.sampledVisit.fill(-1);
    this.jobEnd.fill(0);
    this.slotFree.fill(startMinute);
    this.lastFamily.set(problem.initialFamily);
    this.activeRule.fill(null);
    for (const queue of this.queues) queue.length = 0;
    this.wakeAt.fill(-1);
    this.claimedUntil.fill(-1);
    this.events.clear();
    this.askForOutages();
    for (let operation = 0; operation < problem.operationCount; operation++) {
      this.pending[operation] =
        (problem.predecessorsFrom[operation + 1] as number) - (problem.predecessorsFrom[operation] as number);
      const fixed = problem.fixedStart[operation] as number;
      this.readyAt[operation] = Math.max(problem.release[operation] as number, fixed, startMinute);
    }
    for (let operation = 0; operation < problem.operationCount; operation++) {
      if (this.pending[operation] === 0 && !this.isFact(operation)) this.enqueueEvent(operation);
    }
    for (const operation of plan.fixed) {
      if (this.isFact(operation)) this.commit(operation, problem.fixedStart[operation] as number);
    }
  }

  private askForOutages(): void {
    const { changeover, unavailable, resourceCount } = this.model.problem;
    for (let resource = 0; resource < resourceCount; resource++) {
      const outages = this.sampler?.outages(resource) ?? null;
      this.outagesOf[resource] = outages;
      this.isPlain[resource] =
        outages === null && changeover[resource] === null && unavailable[resource] === null ? 1 : 0;
    }
  }

  private isFact(operation: number): boolean {
    const fixed = this.model.problem.fixedStart[operation] as number;
    return fixed !== -1 && fixed <= this.model.startMinute && this.visit[operation] === 0;
  }

  /** Not started by another operation's cluster. */
  private startsByItself(operation: number): boolean {
    return this.model.plan.clusterOf[operation] !== null || this.model.problem.fixedStart[operation] !== -1;
  }

  private enqueueEvent(operation: number): void {
    this.events.push(this.readyAt[operation] as number, operation);
  }

  private collectCandidates(time: number): void {
    this.hasAskedAll = false;
    while (!this.events.isEmpty && this.events.nextTime === time) {
      const event = this.events.pop();
      const index = event >= 0 ? (this.model.classOf[event] as number) : -1 - event;
      if (event >= 0) this.enqueue(index, event);
      else this.wakeAt[index] = -1;
      this.addCandidate(index);
    }
  }

  /**
   * Who gets a machine with changeovers is decided among all that wait for it, or a run of one family would never end. Asked
   * only when somebody is about to take one; true when there was somebody to ask.
   */
  private asksAllFirst(index: number): boolean {
    if (this.hasAskedAll || this.changeoverMembersOf(index).length === 0) return false;
    this.hasAskedAll = true;
    const before = this.candidates.length;
    for (const other of this.changeoverClasses) this.addCandidate(other);
    return this.candidates.length > before;
  }

  private addCandidate(index: number): void {
    if (this.isCandidate[index] === 1 || (this.queues[index] as number[]).length === 0) return;
    this.isCandidate[index] = 1;
    this.candidates.push(index);
  }

  private enqueue(index: number, operation: number): void {
    const queue = this.queues[index] as number[];
    const { rank } = this.model;
    const mine = rank[operation] as number;
    let at = 0;
    for (let high = queue.length; at < high; ) {
      const middle = (at + high) >>> 1;
      const other = queue[middle] as number;
      const theirs = rank[other] as number;
      if (theirs > mine || (theirs === mine && other > operation)) at = middle + 1;
      else high = middle;
    }
    // The best stands at the end, where it is cheap to take.
    queue.splice(at, 0, operation);
  }

  private startAllThatCan(time: number): void {
    while (this.candidates.length > 0) {
      const at = this.bestCandidate();
      const index = this.candidates[at] as number;
      const queue = this.queues[index] as number[];
      const operation = queue[queue.length - 1] as number;
      const start = this.isClaimed(index, time) ? this.claimEnd(index) : this.earliestStart(operation, time);
      if (start === time) {
        if (this.asksAllFirst(index)) continue;
        queue.pop();
        this.commitCluster(operation);
        if (queue.length > 0) continue;
      } else {
        if (this.model.changeoverPenalty > 0 || this.changeoverClasses.length > 0)
          this.claim(index, operation, time, start);
        this.wake(index, start);
      }
      this.candidates[at] = this.candidates[this.candidates.length - 1] as number;
      this.candidates.pop();
      this.isCandidate[index] = 0;
    }
  }

  private wake(index: number, time: number): void {
    const planned = this.wakeAt[index] as number;
    if (planned !== -1 && planned <= time) return;
    this.wakeAt[index] = time;
    this.events.push(time, -1 - index);
  }

  private bestCandidate(): number {
    let best = 0;
    let bestRank = Number.POSITIVE_INFINITY;
    let bestOperation = -1;
    for (let i = 0; i < this.candidates.length; i++) {
      const index = this.candidates[i] as number;
      const queue = this.queues[index] as number[];
      const operation = queue[queue.length - 1] as number;
      const rank = (this.model.rank[operation] as number) + this.penalty(index);
      if (rank < bestRank || (rank === bestRank && operation < bestOperation) || bestOperation === -1) {
        best = i;
        bestRank = rank;
        bestOperation = operation;
      }
    }
    return best;
  }

  private penalty(index: number): number {
    const { changeoverPenalty, classes, longestChangeover } = this.model;
    const { changeoverMembers: members, family } = classes[index] as DispatchClass;
    if (changeoverPenalty === 0 || members.length === 0) return 0;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < members.length; i++) least = Math.min(least, this.changeoverTo(members[i] as number, family));
    return (changeoverPenalty * least) / longestChangeover;
  }

  private changeoverTo(resource: number, family: number): number {
    const table = this.model.problem.changeover[resource] ?? null;
    const before = this.lastFamily[resource] as number;
    if (table === null || before < 0 || family < 0) return 0;
    return table[before * this.model.problem.familyCount + family] as number;
  }

  private isClaimed(index: number, time: number): boolean {
    const members = this.changeoverMembersOf(index);
    return members.length > 0 && this.claimEnd(index) > time;
  }

  /** When the first of the machines that a class may take is no longer claimed. */
  private claimEnd(index: number): number {
    const members = this.changeoverMembersOf(index);
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < members.length; i++) {
      least = Math.min(least, this.claimedUntil[members[i] as number] as number);
    }
    return least;
  }

  /** Whether one of the machines that a class may take needs no changeover for it. */
  private isMounted(index: number): boolean {
    const { changeoverMembers: members, family } = this.model.classes[index] as DispatchClass;
    return members.some(
      (resource) => (this.lastFamily[resource] as number) >= 0 && this.changeoverTo(resource, family) === 0,
    );
  }

  private changeoverMembersOf(index: number): readonly number[] {
    return (this.model.classes[index] as DispatchClass).changeoverMembers;
  }

  /**
   * When the best waits only for a machine with changeovers, nobody of lower rank may take that machine before it. Where its own
   * family is mounted it may also wait for other things, no longer than the shortest changeover that another would need.
   */
  private claim(index: number, operation: number, time: number, until: number): void {
    const members = this.changeoverMembersOf(index);
    if (members.length === 0 || this.isClaimed(index, time)) return;
    const { changeoverPenalty, shortestChangeover } = this.model;
    const patience = changeoverPenalty > 0 && this.isMounted(index) ? shortestChangeover : 0;
    if (this.earliestWithoutChangeover(operation, time) > time + patience) return;
    for (const resource of members) this.claimedUntil[resource] = until;
  }

  private earliestWithoutChangeover(operation: number, time: number): number {
    let start = time;
    for (const member of clusterAt(this.model, operation)) {
      for (const use of this.model.problem.usesOf[member] ?? []) {
        const first = use.members[0] as number;
        if (this.model.problem.changeover[first] === null && member === operation) {
          start = Math.max(start, this.readyForUse(use, start, -1, operation));
        }
      }
    }
    return this.open(operation, start, this.minutesOf(operation));
  }

  private minutesOf(operation: number): number {
    this.sampleOnce(operation);
    return this.minutes[operation] as number;
  }

  private unattendedOf(operation: number): number {
    this.sampleOnce(operation);
    return this.unattended[operation] as number;
  }

  /** Draws the times of a pass when they are first asked for; a pass is looked at many times before it can start. */
  private sampleOnce(operation: number): void {
    const visit = this.visit[operation] as number;
    if (this.sampledVisit[operation] === visit) return;
    this.sampledVisit[operation] = visit;
    const { problem } = this.model;
    this.minutes[operation] = this.sampler?.minutes(operation, visit) ?? (problem.minutes[operation] as number);
    this.unattended[operation] =
      this.sampler?.unattended(operation, visit) ?? (problem.unattended[operation] as number);
  }

  /** Earliest start of an operation, with its cluster, as the resources stand now. Fills `starts` for the cluster. */
  private earliestStart(operation: number, time: number): number {
    const { problem } = this.model;
    const cluster = clusterAt(this.model, operation);
    const starts = this.starts;
    if (cluster.length === 1) {
      starts[0] = this.ready(operation, time, this.minutesOf(operation), this.unattendedOf(operation));
      return starts[0];
    }
    const isEntangled = this.model.isEntangled[operation] === 1;
    if (isEntangled) this.remember();
    let lowest = time;
    for (let steps = 0; ; steps++) {
      let pull = -1;
      for (let i = 0; i < cluster.length && pull < 0; i++) {
        const member = cluster[i] as number;
        const minutes = this.minutesOf(member);
        const before =
          i === 0 ? -1 : cluster.indexOf(problem.predecessors[problem.predecessorsFrom[member] as number] as number);
        const free = before < 0 ? lowest : this.clusterEnd(cluster[before] as number, starts[before] as number);
        starts[i] = this.ready(
          member,
          Math.max(free, problem.release[member] as number),
          minutes,
          this.unattendedOf(member),
        );
        const tooLate = before < 0 ? 0 : (starts[i] as number) - (problem.maxGap[member] as number) - free;
        if (tooLate > 0) pull = tooLate;
        else if (isEntangled) this.occupy(member, starts[i] as number, false);
        if (tooLate > 0 && steps > maxClusterSteps) throw new GapNeverKept(problem, member);
      }
      if (isEntangled) this.restore();
      if (pull < 0) return starts[0] as number;
      lowest = this.laterHead(operation, starts[0] as number, pull);
    }
  }

  /** What is occupied now, to be restored when members of a cluster have been tried one after another. */
  private remember(): void {
    this.slotFreeBefore.set(this.slotFree);
    this.lastFamilyBefore.set(this.lastFamily);
  }

  private restore(): void {
    this.slotFree.set(this.slotFreeBefore);
    this.lastFamily.set(this.lastFamilyBefore);
  }

  private clusterEnd(operation: number, start: number): number {
    return this.workEndOf(operation, start, this.minutesOf(operation)) + this.unattendedOf(operation);
  }

  private laterHead(operation: number, start: number, minutes: number): number {
    const calendar = this.model.problem.calendarOf[operation] ?? null;
    const work = this.minutesOf(operation);
    if (calendar === null || work === 0) return start + minutes;
    return Math.max(start + 1, startForEnd(calendar, endOfWork(calendar, start, work) + minutes, work));
  }

  private workEndOf(operation: number, start: number, minutes: number): number {
    const calendar = this.model.problem.calendarOf[operation] ?? null;
    return calendar === null ? start + minutes : endOfWork(calendar, start, minutes);
  }

  private open(operation: number, time: number, minutes: number): number {
    const calendar = this.model.problem.calendarOf[operation] ?? null;
    if (calendar === null || minutes === 0) return time;
    return this.model.problem.isUninterrupted[operation] === 1
      ? nextOpenRun(calendar, time, minutes)
      : nextOpen(calendar, time);
  }

  private ready(operation: number, time: number, minutes: number, unattended: number): number {
    // Work that was done before (or fell away) takes no time and no resource.
    if (minutes === 0 && unattended === 0) return time;
    const uses = this.model.problem.usesOf[operation] ?? [];
    const family = this.model.problem.family[operation] as number;
    let start = time;
    for (;;) {
      let later = start;
      for (let i = 0; i < uses.length; i++)
        later = Math.max(later, this.readyForUse(uses[i] as CompiledUse, later, family, operation));
      later = this.open(operation, later, minutes);
      if (later === start) return start;
      start = later;
    }
  }

  private readyForUse(use: CompiledUse, time: number, family: number, operation: number): number {
    const { members, units, isPool } = use;
    if (!isPool && units === 1) return this.firstMemberReady(members, use, time, family, operation);
    const times = this.readyTimes;
    let count = 0;
    if (isPool) {
      const pool = members[0] as number;
      const to = this.model.slotFrom[pool + 1] as number;
      for (let slot = this.model.slotFrom[pool] as number; slot < to; slot++) {
        times[count++] = Math.max(time, this.slotFree[slot] as number);
      }
    } else {
      for (let i = 0; i < members.length; i++)
        times[count++] = this.memberReady(use, members[i] as number, time, family, operation);
    }
    const ready = smallest(times, count, units);
    return isPool ? this.behindAbsence(use, members[0] as number, ready, operation) : ready;
  }

  /** When the first of some single resources is ready; the search ends with one that is ready at once. */
  private firstMemberReady(
    members: Int32Array,
    use: CompiledUse,
    time: number,
    family: number,
    operation: number,
  ): number {
    const { slotFrom } = this.model;
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i < members.length && least > time; i++) {
      const resource = members[i] as number;
      const ready =
        this.isPlain[resource] === 1
          ? Math.max(time, this.slotFree[slotFrom[resource] as number] as number)
          : this.memberReady(use, resource, time, family, operation);
      if (ready < least) least = ready;
    }
    return least;
  }

  private memberReady(use: CompiledUse, resource: number, time: number, family: number, operation: number): number {
    return this.behindAbsence(use, resource, this.resourceReady(resource, time, family), operation);
  }

  /** A later start when the stay begun at `start` would run into a time when the resource is not there. */
  private behindAbsence(use: CompiledUse, resource: number, start: number, operation: number): number {
    const away = this.model.problem.unavailable[resource] ?? null;
    if (away === null) return start;
    const minutes = this.minutesOf(operation);
    const held = use.holds ? this.unattendedOf(operation) : 0;
    let at = start;
    for (let i = 0; i < away.length; i += 2) {
      if ((away[i + 1] as number) <= at) continue;
      const begins = this.open(operation, at, minutes);
      if (this.workEndOf(operation, begins, minutes) + held <= (away[i] as number)) break;
      at = away[i + 1] as number;
    }
    return at;
  }

  private resourceReady(resource: number, time: number, family: number): number {
    const free = this.slotFree[this.model.slotFrom[resource] as number] as number;
    const changeover = this.changeoverTo(resource, family);
    let ready = Math.max(
      time,
      changeover === 0 ? free : afterChangeover(this.model.problem, resource, free, changeover),
    );
    const outages = this.outagesOf[resource] ?? null;
    if (outages !== null) {
      for (let i = 0; i < outages.length; i += 2) {
        if (ready >= (outages[i] as number) && ready < (outages[i + 1] as number)) ready = outages[i + 1] as number;
      }
    }
    return ready;
  }

  private commitCluster(operation: number): void {
    const cluster = clusterAt(this.model, operation);
    for (let i = 0; i < cluster.length; i++) this.commit(cluster[i] as number, this.starts[i] as number);
  }

  private commit(operation: number, start: number): void {
    const { problem } = this.model;
    const minutes = this.minutesOf(operation);
    const done = this.workEndOf(operation, start, minutes);
    const end = done + this.unattendedOf(operation);
    this.occupy(operation, start, true);
    this.start[operation] = start;
    this.workEnd[operation] = done;
    this.end[operation] = end;
    const job = problem.jobOf[operation] as number;
    if (end > (this.jobEnd[job] as number)) this.jobEnd[job] = end;
    const rule = this.model.redoRuleOf[operation] ?? null;
    const redoFrom =
      rule === null ? -1 : (this.sampler?.redoFrom(operation, this.visit[operation] as number, end) ?? -1);
    if (rule !== null && redoFrom >= 0) this.redo(rule, redoFrom);
    else this.releaseSuccessors(operation, end);
  }

  private occupy(operation: number, start: number, isRecorded: boolean): void {
    const done = this.workEndOf(operation, start, this.minutesOf(operation));
    const end = done + this.unattendedOf(operation);
    const uses = this.model.problem.usesOf[operation] ?? [];
    for (let i = 0; i < uses.length; i++) {
      const use = uses[i] as CompiledUse;
      this.take(use, start, use.holds ? end : done, operation, isRecorded);
    }
  }

  private releaseSuccessors(operation: number, end: number): void {
    const { problem } = this.model;
    const rule = this.activeRule[operation] ?? null;
    const last = problem.successorsFrom[operation + 1] as number;
    for (let i = problem.successorsFrom[operation] as number; i < last; i++) {
      const successor = problem.successors[i] as number;
      // A redone operation wakes only what is redone with it; what follows outside hears of the last one.
      if (rule !== null && rule.operation !== operation && this.activeRule[successor] !== rule) continue;
      if (end > (this.readyAt[successor] as number)) this.readyAt[successor] = end;
      this.pending[successor] = (this.pending[successor] as number) - 1;
      if (this.pending[successor] !== 0 || this.isFact(successor)) continue;
      if (this.startsByItself(successor)) this.enqueueEvent(successor);
    }
  }

  private redo(rule: RedoRule, from: number): void {
    const { problem } = this.model;
    for (const operation of rule.redo) {
      this.activeRule[operation] = rule;
      this.visit[operation] = (this.visit[operation] as number) + 1;
      this.readyAt[operation] = from;
      this.pending[operation] = 0;
    }
    for (const operation of rule.redo) {
      const last = problem.predecessorsFrom[operation + 1] as number;
      for (let i = problem.predecessorsFrom[operation] as number; i < last; i++) {
        if (
          this.activeRule[problem.predecessors[i] as number] === rule &&
          rule.redo.includes(problem.predecessors[i] as number)
        ) {
          this.pending[operation] = (this.pending[operation] as number) + 1;
        }
      }
    }
    for (const operation of rule.redo) {
      if (this.pending[operation] === 0 && this.startsByItself(operation)) this.enqueueEvent(operation);
    }
  }

  /** Takes the units of a use that are free first (on machines with changeovers: ready first), from `start` to `until`. */
  private take(use: CompiledUse, start: number, until: number, operation: number, isRecorded: boolean): void {
    if (until === start) return;
    const { slotFrom } = this.model;
    const family = this.model.problem.family[operation] as number;
    const pool = use.members[0] as number;
    for (let unit = 0; unit < use.units; unit++) {
      let best = -1;
      let bestFree = Number.NEGATIVE_INFINITY;
      const choices = use.isPool ? (this.model.problem.capacity[pool] as number) : use.members.length;
      for (let i = 0; i < choices; i++) {
        const resource = use.isPool ? pool : (use.members[i] as number);
        const slot = use.isPool ? (slotFrom[pool] as number) + i : (slotFrom[resource] as number);
        const free = this.slotFree[slot] as number;
        if (use.isPool ? free > start : this.memberReady(use, resource, start, family, operation) > start) continue;
        // Pools keep gaps small by taking the slot freed last; people and machines are taken as listed.
        const preference = use.isPool ? free : -i - this.changeoverTo(resource, family) * 64;
        if (preference > bestFree) {
          best = slot;
          bestFree = preference;
        }
      }
      // Only a fact takes what is not free then; it began before this run, and its room is free when it ends.
      if (best < 0) best = this.firstFree(use);
      this.slotFree[best] = Math.max(until, this.slotFree[best] as number);
      const resource = use.isPool ? pool : this.resourceOfSlot(best, use);
      if (!use.isPool) this.lastFamily[resource] = family;
      if (isRecorded) this.record(resource, start, until, operation, family);
    }
  }

  private firstFree(use: CompiledUse): number {
    const { slotFrom } = this.model;
    const pool = slotFrom[use.members[0] as number] as number;
    const slots = use.isPool
      ? Array.from({ length: this.model.problem.capacity[use.members[0] as number] as number }, (_, i) => pool + i)
      : Array.from(use.members, (member) => slotFrom[member] as number);
    return slots.reduce((first, slot) =>
      (this.slotFree[slot] as number) < (this.slotFree[first] as number) ? slot : first,
    );
  }

  private resourceOfSlot(slot: number, use: CompiledUse): number {
    for (const member of use.members) if (this.model.slotFrom[member] === slot) return member;
    return use.members[0] as number;
  }

  private record(resource: number, start: number, until: number, operation: number, family: number): void {
    const { busy } = this;
    if (busy.length + busyWidth > busy.data.length) {
      const longer = new Int32Array(busy.data.length * 2);
      longer.set(busy.data);
      busy.data = longer;
    }
    const { data } = busy;
    data[busy.length] = resource;
    data[busy.length + 1] = start;
    data[busy.length + 2] = until;
    data[busy.length + 3] = operation;
    data[busy.length + 4] = family;
    busy.length += busyWidth;
  }
}

/** The n-th smallest of the first `count` numbers; the array is spent. */
function smallest(values: Float64Array, count: number, n: number): number {
  if (n === 1) {
    let least = values[0] as number;
    for (let i = 1; i < count; i++) if ((values[i] as number) < least) least = values[i] as number;
    return least;
  }
  // Few values, few units: an insertion sort beats the general one.
  for (let i = 1; i < count; i++) {
    const value = values[i] as number;
    let at = i;
    for (; at > 0 && (values[at - 1] as number) > value; at--) values[at] = values[at - 1] as number;
    values[at] = value;
  }
  return values[n - 1] as number;
}

/**
 * A job shop's sequences as a graph: every operation has one neighbour before and one behind on its job and on its machine.
 * Heads are longest ways from the beginning to an operation's start, tails longest ways from its end to the finish; head +
 * minutes + tail is the longest way through it, and what equals the makespan is critical. The operations are kept in an order
 * that respects both neighbours, so that a move rearranges and measures anew only what it reaches.
 */
import type { JobShop } from "./job-shop";

export class DisjunctiveGraph {
  readonly machineBefore: Int32Array;
  readonly machineBehind: Int32Array;
  readonly head: Int32Array;
  readonly tail: Int32Array;
  makespan = 0;
  private readonly order: Int32Array;
  private readonly place: Int32Array;
  private readonly waiting: Int8Array;
  private readonly isAlong: Uint8Array;
  private readonly along: Int32Array;
  /** Last operations of the jobs: the makespan is the latest of their ends. */
  readonly lastOfJobs: Int32Array;

  constructor(readonly shop: JobShop) {
    const count = shop.operationCount;
    this.machineBefore = new Int32Array(count);
    this.machineBehind = new Int32Array(count);
    this.head = new Int32Array(count);
    this.tail = new Int32Array(count);
    this.order = new Int32Array(count);
    this.place = new Int32Array(count);
    this.waiting = new Int8Array(count);
    this.isAlong = new Uint8Array(count);
    this.along = new Int32Array(count);
    this.lastOfJobs = Int32Array.from(
      Array.from({ length: count }, (_, operation) => operation).filter(
        (operation) => shop.jobBehind[operation] === -1,
      ),
    );
  }

  /** Takes the sequences in which a list names the operations of each machine. */
  takeList(list: Int32Array): void {
    const last = new Int32Array(this.shop.machineCount).fill(-1);
    for (const operation of list) {
      const machine = this.shop.machineOf[operation] as number;
      const before = last[machine] as number;
      this.machineBefore[operation] = before;
      this.machineBehind[operation] = -1;
      if (before >= 0) this.machineBehind[before] = operation;
      last[machine] = operation;
    }
  }

  takeSequences(source: { readonly machineBefore: Int32Array; readonly machineBehind: Int32Array }): void {
    this.machineBefore.set(source.machineBefore);
    this.machineBehind.set(source.machineBehind);
  }

  /** Order and longest ways anew; false when the sequences contradict one another (a cycle). */
  measure(): boolean {
    const { shop, machineBefore, machineBehind, order, place, waiting } = this;
    const { operationCount: count, jobBefore, jobBehind } = shop;
    let filled = 0;
    for (let operation = 0; operation < count; operation++) {
      const links =
        ((jobBefore[operation] as number) >= 0 ? 1 : 0) + ((machineBefore[operation] as number) >= 0 ? 1 : 0);
      waiting[operation] = links;
      if (links === 0) order[filled++] = operation;
    }
    for (let at = 0; at < filled; at++) {
      const operation = order[at] as number;
      place[operation] = at;
      const nextJob = jobBehind[operation] as number;
      if (nextJob >= 0) {
        waiting[nextJob] = (waiting[nextJob] as number) - 1;
        if (waiting[nextJob] === 0) order[filled++] = nextJob;
      }
      const nextMachine = machineBehind[operation] as number;
      if (nextMachine >= 0) {
        waiting[nextMachine] = (waiting[nextMachine] as number) - 1;
        if (waiting[nextMachine] === 0) order[filled++] = nextMachine;
      }
    }
    if (filled < count) return false;
    this.measureHeads(0);
    this.measureTails(count - 1);
    return true;
  }

  /** Heads from a place of the order on, and the makespan. */
  private measureHeads(from: number): void {
    const { shop, machineBefore, head, order, lastOfJobs } = this;
    const { operationCount: count, minutes, jobBefore, release } = shop;
    for (let at = from; at < count; at++) {
      const operation = order[at] as number;
      const byJob = jobBefore[operation] as number;
      const byMachine = machineBefore[operation] as number;
      let start = release[operation] as number;
      if (byJob >= 0) {
        const free = (head[byJob] as number) + (minutes[byJob] as number);
        if (free > start) start = free;
      }
      if (byMachine >= 0) {
        const free = (head[byMachine] as number) + (minutes[byMachine] as number);
        if (free > start) start = free;
      }
      head[operation] = start;
    }
    let makespan = 0;
    for (let i = 0; i < lastOfJobs.length; i++) {
      const last = lastOfJobs[i] as number;
      const end = (head[last] as number) + (minutes[last] as number);
      if (end > makespan) makespan = end;
    }
    this.makespan = makespan;
  }

  /** Tails from a place of the order back to its beginning. */
  private measureTails(from: number): void {
    const { shop, machineBehind, tail, order } = this;
    const { minutes, jobBehind } = shop;
    for (let at = from; at >= 0; at--) {
      const operation = order[at] as number;
      const nextJob = jobBehind[operation] as number;
      const nextMachine = machineBehind[operation] as number;
      let rest = nextJob >= 0 ? (minutes[nextJob] as number) + (tail[nextJob] as number) : 0;
      if (nextMachine >= 0) {
        const way = (minutes[nextMachine] as number) + (tail[nextMachine] as number);
        if (way > rest) rest = way;
      }
      tail[operation] = rest;
    }
  }

  /** As {@link moveBehind}, measured; false, and nothing is moved, when that would close a cycle. */
  shiftBehind(first: number, last: number): boolean {
    const before = this.machineBefore[first] as number;
    const next = this.machineBehind[first] as number;
    this.moveBehind(first, last);
    const { order, place, isAlong, along, machineBefore } = this;
    const { jobBefore } = this.shop;
    const from = place[first] as number;
    const to = place[last] as number;
    // What must follow the moved one goes along with it, in its old order.
    let count = 0;
    let write = from;
    isAlong[first] = 1;
    along[count++] = first;
    for (let at = from + 1; at <= to; at++) {
      const operation = order[at] as number;
      const byJob = jobBefore[operation] as number;
      const byMachine = machineBefore[operation] as number;
      if ((byJob >= 0 && isAlong[byJob] === 1) || (byMachine >= 0 && isAlong[byMachine] === 1)) {
        isAlong[operation] = 1;
        along[count++] = operation;
      }
    }
    const isCycle = isAlong[last] === 1;
    if (isCycle) {
      this.take(first);
      this.link(before, first);
      this.link(first, next);
    } else {
      for (let at = from; at <= to; at++) {
        const operation = order[at] as number;
        if (isAlong[operation] === 1) continue;
        order[write] = operation;
        place[operation] = write++;
      }
    }
    for (let i = 0; i < count; i++) {
      const operation = along[i] as number;
      isAlong[operation] = 0;
      if (isCycle) continue;
      order[write] = operation;
      place[operation] = write++;
    }
    if (isCycle) return false;
    this.measureHeads(from);
    this.measureTails(to);
    return true;
  }

  /** As {@link moveBefore}, measured; false, and nothing is moved, when that would close a cycle. */
  shiftBefore(last: number, first: number): boolean {
    const before = this.machineBefore[last] as number;
    const next = this.machineBehind[last] as number;
    this.moveBefore(last, first);
    const { order, place, isAlong, along, machineBehind } = this;
    const { jobBehind } = this.shop;
    const from = place[first] as number;
    const to = place[last] as number;
    let count = 0;
    let write = to;
    isAlong[last] = 1;
    along[count++] = last;
    for (let at = to - 1; at >= from; at--) {
      const operation = order[at] as number;
      const byJob = jobBehind[operation] as number;
      const byMachine = machineBehind[operation] as number;
      if ((byJob >= 0 && isAlong[byJob] === 1) || (byMachine >= 0 && isAlong[byMachine] === 1)) {
        isAlong[operation] = 1;
        along[count++] = operation;
      }
    }
    const isCycle = isAlong[first] === 1;
    if (isCycle) {
      this.take(last);
      this.link(before, last);
      this.link(last, next);
    } else {
      for (let at = to; at >= from; at--) {
        const operation = order[at] as number;
        if (isAlong[operation] === 1) continue;
        order[write] = operation;
        place[operation] = write--;
      }
    }
    for (let i = 0; i < count; i++) {
      const operation = along[i] as number;
      isAlong[operation] = 0;
      if (isCycle) continue;
      order[write] = operation;
      place[operation] = write--;
    }
    if (isCycle) return false;
    this.measureHeads(from);
    this.measureTails(to);
    return true;
  }

  /** Takes `first` out of its machine's sequence and puts it behind `last`, which stands later there. */
  moveBehind(first: number, last: number): void {
    this.take(first);
    const behind = this.machineBehind[last] as number;
    this.link(last, first);
    this.link(first, behind);
  }

  /** Takes `last` out of its machine's sequence and puts it before `first`, which stands earlier there. */
  moveBefore(last: number, first: number): void {
    this.take(last);
    const before = this.machineBefore[first] as number;
    this.link(last, first);
    this.link(before, last);
  }

  private take(operation: number): void {
    this.link(this.machineBefore[operation] as number, this.machineBehind[operation] as number);
  }

  private link(before: number, behind: number): void {
    if (before >= 0) this.machineBehind[before] = behind;
    if (behind >= 0) this.machineBefore[behind] = before;
  }

  /** The operations in order of their starts. */
  listByHead(): Int32Array {
    const { head, place } = this;
    return this.order
      .slice()
      .sort((a, b) => (head[a] as number) - (head[b] as number) || (place[a] as number) - (place[b] as number));
  }
}

/**
 * A job shop's sequences as a graph: every operation has one neighbour before and one behind on its job and on its machine.
 * Heads are longest ways from the beginning to an operation's start, tails longest ways from its end to the finish; head +
 * minutes + tail is the longest way through it, and what equals the makespan is critical.
 */
import type { JobShop } from "./job-shop";

export class DisjunctiveGraph {
  readonly machineBefore: Int32Array;
  readonly machineBehind: Int32Array;
  readonly head: Int32Array;
  readonly tail: Int32Array;
  makespan = 0;
  private readonly order: Int32Array;
  private readonly waiting: Int8Array;

  constructor(readonly shop: JobShop) {
    const count = shop.operationCount;
    this.machineBefore = new Int32Array(count);
    this.machineBehind = new Int32Array(count);
    this.head = new Int32Array(count);
    this.tail = new Int32Array(count);
    this.order = new Int32Array(count);
    this.waiting = new Int8Array(count);
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

  /** Longest ways anew; false when the sequences contradict one another (a cycle). */
  measure(): boolean {
    const { shop, machineBefore, machineBehind, head, tail, order, waiting } = this;
    const { operationCount: count, minutes, jobBefore, jobBehind, release } = shop;
    let filled = 0;
    for (let operation = 0; operation < count; operation++) {
      const links =
        ((jobBefore[operation] as number) >= 0 ? 1 : 0) + ((machineBefore[operation] as number) >= 0 ? 1 : 0);
      waiting[operation] = links;
      if (links === 0) order[filled++] = operation;
    }
    this.makespan = 0;
    for (let at = 0; at < filled; at++) {
      const operation = order[at] as number;
      const byJob = jobBefore[operation] as number;
      const byMachine = machineBefore[operation] as number;
      let start = release[operation] as number;
      if (byJob >= 0) start = Math.max(start, (head[byJob] as number) + (minutes[byJob] as number));
      if (byMachine >= 0) start = Math.max(start, (head[byMachine] as number) + (minutes[byMachine] as number));
      head[operation] = start;
      const end = start + (minutes[operation] as number);
      if (end > this.makespan) this.makespan = end;
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
    for (let at = count - 1; at >= 0; at--) {
      const operation = order[at] as number;
      const nextJob = jobBehind[operation] as number;
      const nextMachine = machineBehind[operation] as number;
      let rest = 0;
      if (nextJob >= 0) rest = (minutes[nextJob] as number) + (tail[nextJob] as number);
      if (nextMachine >= 0) rest = Math.max(rest, (minutes[nextMachine] as number) + (tail[nextMachine] as number));
      tail[operation] = rest;
    }
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
    const place = new Int32Array(this.shop.operationCount);
    this.order.forEach((operation, at) => {
      place[operation] = at;
    });
    return this.order
      .slice()
      .sort(
        (a, b) => (this.head[a] as number) - (this.head[b] as number) || (place[a] as number) - (place[b] as number),
      );
  }
}

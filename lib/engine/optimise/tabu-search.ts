/**
 * Tabu search on the disjunctive graph of a job shop: moves of an operation to the front or the end of its critical block
 * (Balas & Vazacopoulos 1998, Management Science 44:262–275), judged by estimated longest ways (Taillard 1994, ORSA J. on
 * Computing 6:108–117; Nowicki & Smutnicki 1996, Management Science 42:797–813), with starts between two good solutions when
 * it stands still (path relinking). Sources from memory. Seeded; the same seed and iterations give the same schedule.
 * A step is one move.
 */
import { intBelow, type Random32, seededRandom } from "#engine/math";
import { DisjunctiveGraph } from "./disjunctive-graph";
import type { JobShop } from "./job-shop";

export interface Sequences {
  readonly machineBefore: Int32Array;
  readonly machineBehind: Int32Array;
  readonly makespan: number;
}

/** Moves for each operation without a new best of this start before another start is made. */
const patiencePerOperation = 60;
const poolSize = 8;

export class TabuSearch {
  best: Sequences;
  private readonly graph: DisjunctiveGraph;
  private readonly random: Random32;
  /** `tabuUntil[a × n + b]`: until this iteration a may not stand before b again. */
  private readonly tabuUntil: Int32Array;
  private readonly pool: Sequences[] = [];
  private startBest: Sequences;
  private sinceImproved = 0;
  private iteration = 0;
  private readonly tenure: number;
  private readonly block: Int32Array;
  private readonly newHead: Int32Array;

  constructor(
    private readonly shop: JobShop,
    list: Int32Array,
    seed: number,
  ) {
    this.graph = new DisjunctiveGraph(shop);
    this.graph.takeList(list);
    this.graph.measure();
    this.random = seededRandom(seed);
    const count = shop.operationCount;
    this.tabuUntil = new Int32Array(count * count);
    this.best = this.snapshot();
    this.startBest = this.best;
    this.tenure = 10 + Math.round(count / shop.machineCount / shop.machineCount);
    this.block = new Int32Array(count);
    this.newHead = new Int32Array(count);
  }

  private snapshot(): Sequences {
    return {
      machineBefore: this.graph.machineBefore.slice(),
      machineBehind: this.graph.machineBehind.slice(),
      makespan: this.graph.makespan,
    };
  }

  /** One move, or a new start when nothing got better for long. */
  step(): void {
    this.iteration += 1;
    if (this.sinceImproved >= patiencePerOperation * this.shop.operationCount || !this.move()) {
      this.restart();
      return;
    }
    this.sinceImproved += 1;
    if (this.graph.makespan < this.startBest.makespan) {
      this.startBest = this.snapshot();
      this.sinceImproved = 0;
      if (this.startBest.makespan < this.best.makespan) this.best = this.startBest;
    }
  }

  /** The operations of the best schedule in order of their starts. */
  bestList(): Int32Array {
    this.graph.takeSequences(this.best);
    this.graph.measure();
    return this.graph.listByHead();
  }

  private chosenFirst = -1;
  private chosenLast = -1;
  private isForward = true;
  private chosenCost = 0;
  private tabuFirst = -1;
  private tabuLast = -1;
  private tabuForward = true;
  private tabuCount = 0;
  private ties = 0;

  /** Makes the best move that is allowed; false when there is none at all: the schedule is optimal. */
  private move(): boolean {
    this.chosenFirst = -1;
    this.chosenCost = Number.POSITIVE_INFINITY;
    this.tabuCount = 0;
    this.ties = 0;
    this.lookAtBlocks();
    if (this.chosenFirst < 0) {
      if (this.tabuCount === 0) return false;
      this.chosenFirst = this.tabuFirst;
      this.chosenLast = this.tabuLast;
      this.isForward = this.tabuForward;
    }
    this.forbid();
    const isDone = this.isForward
      ? this.graph.shiftBehind(this.chosenFirst, this.chosenLast)
      : this.graph.shiftBefore(this.chosenLast, this.chosenFirst);
    if (!isDone) throw new Error("tabu search: a move closed a cycle");
    return true;
  }

  /** Follows one critical path back from its end, chosen by chance where it forks, and tries the moves of its blocks. */
  private lookAtBlocks(): void {
    const { graph, shop, block } = this;
    const { head, makespan, machineBefore, lastOfJobs } = graph;
    const { minutes, jobBefore } = shop;
    let at = -1;
    let seen = 0;
    for (let i = 0; i < lastOfJobs.length; i++) {
      const last = lastOfJobs[i] as number;
      if ((head[last] as number) + (minutes[last] as number) !== makespan) continue;
      seen += 1;
      if (seen === 1 || intBelow(this.random, seen) === 0) at = last;
    }
    let from = block.length;
    let isLast = true;
    while (at >= 0) {
      block[--from] = at;
      const start = head[at] as number;
      const byJob = jobBefore[at] as number;
      const byMachine = machineBefore[at] as number;
      const followsJob = byJob >= 0 && (head[byJob] as number) + (minutes[byJob] as number) === start;
      const followsMachine = byMachine >= 0 && (head[byMachine] as number) + (minutes[byMachine] as number) === start;
      if (followsMachine && (!followsJob || intBelow(this.random, 2) === 0)) {
        at = byMachine;
        continue;
      }
      // In a block that begins the path nothing is gained by another front, unless the front waits for its release.
      this.tryBlock(from, block.length - from, start === 0, isLast);
      isLast = false;
      from = block.length;
      at = followsJob ? byJob : -1;
    }
  }

  private isCritical(operation: number): boolean {
    const { head, tail, makespan } = this.graph;
    return (
      (head[operation] as number) + (this.shop.minutes[operation] as number) + (tail[operation] as number) === makespan
    );
  }

  /**
   * Moves to the end of the block (not in the last of the path but its front) and to its front (not in the first); never past
   * an operation of the same job.
   */
  private tryBlock(from: number, length: number, isFirst: boolean, isLast: boolean): void {
    if (length < 2) return;
    const { graph, shop } = this;
    const block = this.block.subarray(from);
    const { head, tail } = graph;
    const { minutes, jobBefore, jobBehind } = shop;
    const front = block[0] as number;
    const back = block[length - 1] as number;
    const tailOfBack = (tail[back] as number) + (minutes[back] as number);
    const endOfFront = (head[front] as number) + (minutes[front] as number);
    for (let i = 0; i < length - 1; i++) {
      const operation = block[i] as number;
      const follower = jobBehind[operation] as number;
      const isSafe = follower < 0 || tailOfBack >= (tail[follower] as number) + (minutes[follower] as number);
      if (isSafe && follower !== back && !(isLast && i > 0)) this.offer(operation, back, true);
      if (i > 0 || length === 2) continue;
      if (!isFirst && follower !== block[1]) this.offer(front, block[1] as number, true);
    }
    for (let i = 1; i < length; i++) {
      const operation = block[i] as number;
      const before = jobBefore[operation] as number;
      const isSafe = before < 0 || endOfFront >= (head[before] as number) + (minutes[before] as number);
      if (isSafe && before !== front && !(isFirst && i < length - 1)) this.offer(front, operation, false);
    }
    if (length > 2 && !isLast && jobBefore[back] !== block[length - 2]) {
      this.offer(block[length - 2] as number, back, true);
    }
  }

  private offer(first: number, last: number, isForward: boolean): void {
    const cost = isForward ? this.estimateForward(first, last) : this.estimateBackward(first, last);
    const isTabu = this.isTabu(first, last, isForward) && cost >= this.best.makespan;
    if (isTabu) {
      this.tabuCount += 1;
      if (intBelow(this.random, this.tabuCount) === 0) {
        this.tabuFirst = first;
        this.tabuLast = last;
        this.tabuForward = isForward;
      }
      return;
    }
    if (cost > this.chosenCost) return;
    this.ties = cost === this.chosenCost ? this.ties + 1 : 1;
    if (this.ties > 1 && intBelow(this.random, this.ties) !== 0) return;
    this.chosenFirst = first;
    this.chosenLast = last;
    this.isForward = isForward;
    this.chosenCost = cost;
  }

  /** Longest way through the moved stretch when `first` goes behind `last`. */
  private estimateForward(first: number, last: number): number {
    const { graph, shop, newHead } = this;
    const { head, tail, machineBefore, machineBehind } = graph;
    const { minutes, jobBefore, jobBehind, release } = shop;
    const before = machineBefore[first] as number;
    let free = before < 0 ? 0 : (head[before] as number) + (minutes[before] as number);
    for (let at = machineBehind[first] as number; ; at = machineBehind[at] as number) {
      free = Math.max(free, release[at] as number, endOf(head, minutes, jobBefore[at] as number));
      newHead[at] = free;
      free += minutes[at] as number;
      if (at === last) break;
    }
    free = Math.max(free, release[first] as number, endOf(head, minutes, jobBefore[first] as number));
    let rest = Math.max(
      lengthOf(tail, minutes, jobBehind[first] as number),
      lengthOf(tail, minutes, machineBehind[last] as number),
    );
    let longest = free + (minutes[first] as number) + rest;
    rest += minutes[first] as number;
    for (let at = last; at !== first; at = machineBefore[at] as number) {
      rest = Math.max(rest, lengthOf(tail, minutes, jobBehind[at] as number));
      rest += minutes[at] as number;
      longest = Math.max(longest, (newHead[at] as number) + rest);
    }
    return longest;
  }

  /** Longest way through the moved stretch when `last` goes before `first`. */
  private estimateBackward(first: number, last: number): number {
    const { graph, shop, newHead } = this;
    const { head, tail, machineBefore, machineBehind } = graph;
    const { minutes, jobBefore, jobBehind, release } = shop;
    let free = Math.max(
      endOf(head, minutes, machineBefore[first] as number),
      endOf(head, minutes, jobBefore[last] as number),
      release[last] as number,
    );
    newHead[last] = free;
    free += minutes[last] as number;
    for (let at = first; at !== last; at = machineBehind[at] as number) {
      free = Math.max(free, release[at] as number, endOf(head, minutes, jobBefore[at] as number));
      newHead[at] = free;
      free += minutes[at] as number;
    }
    let rest = lengthOf(tail, minutes, machineBehind[last] as number);
    let longest = 0;
    for (let at = machineBefore[last] as number; ; at = machineBefore[at] as number) {
      rest = Math.max(rest, lengthOf(tail, minutes, jobBehind[at] as number)) + (minutes[at] as number);
      longest = Math.max(longest, (newHead[at] as number) + rest);
      if (at === first) break;
    }
    rest = Math.max(rest, lengthOf(tail, minutes, jobBehind[last] as number)) + (minutes[last] as number);
    return Math.max(longest, (newHead[last] as number) + rest);
  }

  /** True when the move would restore an order that was given up lately. */
  private isTabu(first: number, last: number, isForward: boolean): boolean {
    const count = this.shop.operationCount;
    const { machineBehind } = this.graph;
    if (isForward) {
      for (let at = machineBehind[first] as number; ; at = machineBehind[at] as number) {
        if ((this.tabuUntil[at * count + first] as number) > this.iteration) return true;
        if (at === last) return false;
      }
    }
    for (let at = first; at !== last; at = machineBehind[at] as number) {
      if ((this.tabuUntil[last * count + at] as number) > this.iteration) return true;
    }
    return false;
  }

  /** The orders that the chosen move gives up may not come back for a while. */
  private forbid(): void {
    const count = this.shop.operationCount;
    const { machineBehind } = this.graph;
    const until = this.iteration + this.tenure + intBelow(this.random, Math.max(1, Math.ceil(this.tenure / 2)));
    const { chosenFirst: first, chosenLast: last } = this;
    if (this.isForward) {
      for (let at = machineBehind[first] as number; ; at = machineBehind[at] as number) {
        this.tabuUntil[first * count + at] = until;
        if (at === last) return;
      }
    }
    for (let at = first; at !== last; at = machineBehind[at] as number) this.tabuUntil[at * count + last] = until;
  }

  /** Keeps what this start has found and begins half way between two of the good solutions. */
  private restart(): void {
    this.keep(this.startBest);
    this.tabuUntil.fill(0);
    this.sinceImproved = 0;
    const from = this.pool[intBelow(this.random, this.pool.length)] as Sequences;
    const towards = this.pool[intBelow(this.random, this.pool.length)] as Sequences;
    this.graph.takeSequences(from);
    this.graph.measure();
    if (from === towards) this.shake(10 + intBelow(this.random, 20));
    else this.walkTowards(towards);
    this.startBest = this.snapshot();
  }

  private keep(found: Sequences): void {
    if (this.pool.some((other) => sameSequences(other, found))) return;
    this.pool.push(found);
    this.pool.sort((a, b) => a.makespan - b.makespan);
    if (this.pool.length > poolSize) this.pool.length = poolSize;
  }

  /** Random swaps of neighbours on critical paths, not of one job: these never close a cycle. */
  private shake(swaps: number): void {
    const { graph, shop } = this;
    for (let swap = 0; swap < swaps; swap++) {
      const arcs: number[] = [];
      for (let operation = 0; operation < shop.operationCount; operation++) {
        const behind = graph.machineBehind[operation] as number;
        if (behind < 0 || behind === shop.jobBehind[operation]) continue;
        if (!this.isCritical(operation) || !this.isCritical(behind)) continue;
        if ((graph.head[operation] as number) + (shop.minutes[operation] as number) === graph.head[behind])
          arcs.push(operation);
      }
      if (arcs.length === 0) return;
      const first = arcs[intBelow(this.random, arcs.length)] as number;
      graph.shiftBehind(first, graph.machineBehind[first] as number);
    }
  }

  /** Swaps neighbours that stand the other way round in `target`, until about half of the way is done. */
  private walkTowards(target: Sequences): void {
    const { graph, shop } = this;
    const rank = ranksOf(shop, target);
    const differing = () => {
      const found: number[] = [];
      for (let operation = 0; operation < shop.operationCount; operation++) {
        const behind = graph.machineBehind[operation] as number;
        if (behind >= 0 && (rank[operation] as number) > (rank[behind] as number)) found.push(operation);
      }
      return found;
    };
    const swaps = Math.max(5, Math.round(inversions(shop, graph, rank) / 2));
    for (let swap = 0; swap < swaps; swap++) {
      const choices = differing();
      let isDone = false;
      while (choices.length > 0 && !isDone) {
        const at = intBelow(this.random, choices.length);
        const first = choices.splice(at, 1)[0] as number;
        const behind = graph.machineBehind[first] as number;
        isDone = graph.shiftBehind(first, behind);
      }
      if (!isDone) break;
    }
  }
}

function endOf(head: Int32Array, minutes: Int32Array, operation: number): number {
  return operation < 0 ? 0 : (head[operation] as number) + (minutes[operation] as number);
}

function lengthOf(tail: Int32Array, minutes: Int32Array, operation: number): number {
  return operation < 0 ? 0 : (tail[operation] as number) + (minutes[operation] as number);
}

function sameSequences(a: Sequences, b: Sequences): boolean {
  return a.makespan === b.makespan && a.machineBehind.every((next, operation) => next === b.machineBehind[operation]);
}

/** Place of each operation on its machine. */
function ranksOf(shop: JobShop, { machineBefore, machineBehind }: Sequences): Int32Array {
  const rank = new Int32Array(shop.operationCount);
  for (let first = 0; first < shop.operationCount; first++) {
    if ((machineBefore[first] as number) >= 0) continue;
    let place = 0;
    for (let at = first; at >= 0; at = machineBehind[at] as number) rank[at] = place++;
  }
  return rank;
}

/** Pairs on a machine that stand the other way round in the target. */
function inversions(shop: JobShop, graph: DisjunctiveGraph, rank: Int32Array): number {
  let count = 0;
  for (let first = 0; first < shop.operationCount; first++) {
    for (let at = graph.machineBehind[first] as number; at >= 0; at = graph.machineBehind[at] as number) {
      if ((rank[first] as number) > (rank[at] as number)) count += 1;
    }
  }
  return count;
}

/**
 * A sequence of jobs run down a line: the first stage in the order of the sequence, every later one as the jobs arrive (ties
 * in that order), each on the machine that is free first.
 */

import type { ObjectiveWeights } from "#engine/schedule";
import type { Line, Stage } from "./line";

export class LineSchedule {
  /** Start of each job at each stage: `start[stage · jobs + job]`. */
  readonly start: Int32Array;
  private readonly ready: Int32Array;
  private readonly queue: Int32Array;
  private readonly free: readonly Int32Array[];

  constructor(
    private readonly line: Line,
    private readonly weights: ObjectiveWeights,
  ) {
    this.start = new Int32Array(line.stages.length * line.jobCount);
    this.ready = new Int32Array(line.jobCount);
    this.queue = new Int32Array(line.jobCount);
    this.free = line.stages.map(({ machines }) => new Int32Array(Math.min(machines, line.jobCount)));
  }

  /**
   * Cost of the first `count` jobs of a sequence; infinite as soon as it is certain to exceed `limit`.
   *
   * @param count jobs in the sequence; fewer than all while it is being built
   */
  costOf(sequence: Int32Array, count: number, limit: number): number {
    const { line, queue, ready } = this;
    for (let i = 0; i < count; i++) {
      queue[i] = sequence[i] as number;
      ready[sequence[i] as number] = 0;
    }
    const last = line.stages.length - 1;
    let cost = 0;
    for (let place = 0; place <= last; place++) {
      const stage = line.stages[place] as Stage;
      if (place > 0) this.sortQueue(count);
      const end = place === last ? limit : Number.POSITIVE_INFINITY;
      cost = this.runStage(stage, place, count, cost, end);
      if (cost > limit) return Number.POSITIVE_INFINITY;
    }
    return cost;
  }

  /** Runs the queue through one stage. @returns the cost so far; ends of the last stage are paid for there */
  private runStage(stage: Stage, place: number, count: number, soFar: number, limit: number): number {
    const { line, queue, ready, start, weights } = this;
    const { jobCount, familyCount, due, weight } = line;
    const free = (this.free[place] as Int32Array).fill(0);
    const isLast = place === line.stages.length - 1;
    const base = place * jobCount;
    let family = stage.initialFamily;
    let cost = soFar;
    let makespan = 0;
    for (let i = 0; i < count; i++) {
      const job = queue[i] as number;
      const machine = free.length === 1 ? 0 : firstFree(free);
      let begin = free[machine] as number;
      if (stage.changeover !== null) {
        const next = stage.familyOf[job] as number;
        const minutes = family < 0 ? 0 : (stage.changeover[family * familyCount + next] as number);
        begin += minutes;
        cost += weights.changeover * minutes;
        family = next;
      }
      begin = Math.max(begin, ready[job] as number, stage.release[job] as number);
      start[base + job] = begin;
      const end = begin + (stage.minutes[job] as number);
      free[machine] = end;
      ready[job] = end;
      if (!isLast) continue;
      if (end > (due[job] as number)) {
        cost += weights.weightedTardiness * (weight[job] as number) * (end - (due[job] as number));
      }
      if (end > makespan) makespan = end;
      if (cost + weights.makespan * makespan > limit) return Number.POSITIVE_INFINITY;
    }
    return cost + weights.makespan * makespan;
  }

  /** By arrival; the order so far decides ties. Nearly sorted already. */
  private sortQueue(count: number): void {
    const { queue, ready } = this;
    for (let i = 1; i < count; i++) {
      const job = queue[i] as number;
      const at = ready[job] as number;
      let k = i - 1;
      for (; k >= 0 && (ready[queue[k] as number] as number) > at; k--) queue[k + 1] = queue[k] as number;
      queue[k + 1] = job;
    }
  }
}

function firstFree(free: Int32Array): number {
  let first = 0;
  for (let machine = 1; machine < free.length; machine++) {
    if ((free[machine] as number) < (free[first] as number)) first = machine;
  }
  return first;
}

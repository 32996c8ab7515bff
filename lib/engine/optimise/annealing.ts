/**
 * Improvement by simulated annealing over operation lists: a move, a serial decode, acceptance at a temperature that falls
 * in cycles. Deterministic for a seed and a number of iterations; the clock can only end it early. The best schedule found
 * is kept, so it can be stopped at any time.
 */
import { portableExp, type Random32, seededRandom, unitFromU32 } from "#engine/math";
import type { SearchOptions } from "#engine/schedule";
import {
  decodeSerial,
  emptyPlacement,
  type ObjectiveWeights,
  type Placement,
  type SerialPlan,
  searchCost,
} from "#engine/schedule";
import { criticalArcs, listByStart, moveBehind, randomMove } from "./neighbours";

export interface SearchResult {
  readonly list: Int32Array;
  /** Starts of the operations to be kept as they are; absent: those of the decoded list. */
  readonly start?: Int32Array;
  readonly cost: number;
  readonly iterations: number;
  readonly stoppedBy: "iterations" | "budget" | "proven";
}

const firstCycle = 4_000;
const cycleGrowth = 2;
const longestCycle = 256_000;
/** Start and end temperature as shares of the mean worsening seen so far (tuned on published job shops). */
const hot = 0.8;
const cold = 0.05;
/** Weight of the newest worsening in their running mean. */
const meanMemory = 0.02;
const shareOfRandomMoves = { makespan: 0.1, other: 0.4 };
export const defaultIterations = 20_000;
export const clockEvery = 32;

/** Iterations that a search may do: those asked for, the usual number, or no limit under a budget of time. */
export function iterationLimit({ iterations, budgetMs }: SearchOptions): number {
  return iterations ?? (budgetMs === undefined ? defaultIterations : Number.POSITIVE_INFINITY);
}

/** Improves on the best of `starts`. Every start is decoded and counts as an iteration. */
export function improve(
  plan: SerialPlan,
  starts: readonly Int32Array[],
  weights: ObjectiveWeights,
  bound: number,
  options: SearchOptions,
): SearchResult {
  const limit = iterationLimit(options);
  const isOver = budgetGuard(options);
  const walk = new Walk(plan, weights, seededRandom(options.seed));
  let iterations = 0;
  for (const list of starts) {
    walk.offer(list);
    iterations += 1;
  }
  walk.returnToBest();
  let stoppedBy: SearchResult["stoppedBy"] = "iterations";
  let cycle = firstCycle;
  let inCycle = 0;
  for (;;) {
    if (walk.bestCost <= bound) stoppedBy = "proven";
    else if (iterations < limit && iterations % clockEvery === 0 && isOver()) stoppedBy = "budget";
    if (stoppedBy !== "iterations" || iterations >= limit) break;
    walk.step(hot * (cold / hot) ** (inCycle / cycle));
    iterations += 1;
    inCycle += 1;
    if (inCycle === cycle) {
      inCycle = 0;
      cycle = Math.min(longestCycle, cycle * cycleGrowth);
      walk.returnToBest();
    }
  }
  return { list: walk.bestList, cost: walk.bestCost, iterations, stoppedBy };
}

export function budgetGuard(options: SearchOptions): () => boolean {
  const { budgetMs, clockMs } = options;
  if (budgetMs === undefined) return () => false;
  if (clockMs === undefined) throw new RangeError("scheduleJobs: budgetMs needs clockMs, the clock to measure it by");
  const from = clockMs();
  return () => clockMs() - from >= budgetMs;
}

/** The annealing walk: a current list and its schedule, the arcs that can be turned in it, and the best list so far. */
class Walk {
  bestCost = Number.POSITIVE_INFINITY;
  readonly bestList: Int32Array;
  private readonly current: Placement;
  private readonly trial: Placement;
  private readonly list: Int32Array;
  private readonly trialList: Int32Array;
  private readonly isCostly: Uint8Array;
  private readonly randomShare: number;
  private cost = Number.POSITIVE_INFINITY;
  private meanWorse = 0;
  private arcs: { readonly first: number[]; readonly second: number[] } | null = null;

  constructor(
    private readonly plan: SerialPlan,
    private readonly weights: ObjectiveWeights,
    private readonly random: Random32,
  ) {
    const { problem } = plan;
    this.current = emptyPlacement(problem);
    this.trial = emptyPlacement(problem);
    this.list = problem.topological.slice();
    this.trialList = problem.topological.slice();
    this.bestList = problem.topological.slice();
    this.isCostly = new Uint8Array(problem.operationCount);
    const isMakespanOnly = weights.weightedTardiness === 0 && weights.changeover === 0;
    this.randomShare = isMakespanOnly ? shareOfRandomMoves.makespan : shareOfRandomMoves.other;
  }

  offer(list: Int32Array): void {
    decodeSerial(this.plan, list, this.trial);
    const cost = searchCost(this.trial, this.weights);
    if (cost < this.bestCost) {
      this.bestCost = cost;
      this.bestList.set(list);
    }
  }

  returnToBest(): void {
    decodeSerial(this.plan, this.bestList, this.current);
    this.cost = searchCost(this.current, this.weights);
    listByStart(this.current, this.list);
    this.arcs = null;
  }

  step(temperatureShare: number): void {
    if (!this.propose()) return;
    decodeSerial(this.plan, this.trialList, this.trial);
    const cost = searchCost(this.trial, this.weights);
    const worse = cost - this.cost;
    if (worse > 0 && !this.isAccepted(worse, temperatureShare)) return;
    this.cost = cost;
    if (cost < this.bestCost) {
      this.bestCost = cost;
      this.bestList.set(this.trialList);
    }
    decodedInto(this.current, this.trial);
    listByStart(this.current, this.list);
    this.arcs = null;
  }

  private isAccepted(worse: number, temperatureShare: number): boolean {
    this.meanWorse += (worse - this.meanWorse) * (this.meanWorse === 0 ? 1 : meanMemory);
    const exponent = -worse / (temperatureShare * this.meanWorse);
    return exponent > -40 && unitFromU32(this.random()) < portableExp(exponent);
  }

  private propose(): boolean {
    const { problem } = this.plan;
    this.arcs ??= criticalArcs(this.current, this.list, this.markCostly());
    const count = this.arcs.first.length;
    if (count === 0 || unitFromU32(this.random()) < this.randomShare) {
      return randomMove(problem, this.list, this.random, this.trialList);
    }
    const pick = Math.floor(unitFromU32(this.random()) * count);
    const first = this.arcs.first[pick] as number;
    const second = this.arcs.second[pick] as number;
    return moveBehind(problem, this.list, first, second, this.trialList);
  }

  /** Marks the operations whose ends are paid for. */
  private markCostly(): Uint8Array {
    const { problem } = this.plan;
    const { end } = this.current;
    const paid = this.isCostly.fill(0);
    let makespan = 0;
    for (let operation = 0; operation < problem.operationCount; operation++) {
      makespan = Math.max(makespan, end[operation] as number);
    }
    for (let operation = 0; operation < problem.operationCount; operation++) {
      const job = problem.jobOf[operation] as number;
      const isLate = this.weights.weightedTardiness > 0 && (end[operation] as number) > (problem.due[job] as number);
      const isPast = (end[operation] as number) > (problem.deadline[job] as number);
      const isLast = this.weights.makespan > 0 && end[operation] === makespan;
      if (isLate || isPast || isLast) paid[operation] = 1;
    }
    return paid;
  }
}

/** Copies a finished placement; the timelines are rebuilt by the next decode and are left alone. */
function decodedInto(target: Placement, source: Placement): void {
  target.start.set(source.start);
  target.workEnd.set(source.workEnd);
  target.end.set(source.end);
  target.chosen.set(source.chosen);
}

/**
 * Improvement of lines: annealing over sequences of jobs. A move takes a block of one to three jobs elsewhere or swaps two.
 * Starts: the orders of the general starting lists, as they are and decoded, ATCS over a grid of its scales for one machine
 * with due dates (Lee, Bhaskaran & Pinedo 1997), and insertion by decreasing work (Nawaz, Enscore & Ham 1983) for the
 * makespan. Deterministic for a seed and a number of iterations.
 */
import { intBelow, portableLog, type Random32, seededRandom, unitFromU32 } from "#engine/math";
import type { ObjectiveWeights, SearchOptions } from "#engine/schedule";
import { decodeSerial, emptyPlacement, type SerialPlan } from "#engine/schedule";
import { budgetGuard, clockEvery, improve, iterationLimit, type SearchResult, usualIterations } from "./annealing";
import { mostFilled } from "./encoding";
import type { Line } from "./line";
import { LineSchedule } from "./line-schedule";
import { insertedByWork, setupTardinessOrders } from "./line-starts";
import { listByStart } from "./neighbours";

/** Sequences tried in an iteration: what costs about as much as decoding one list. */
const triesOnOneMachine = 50;
const triesOnLines = 10;
/** Start and end temperature as shares of the middle worsening of random moves (tuned on published sequences). */
const hot = 0.1;
const cold = 0.002;
const probes = 200;
/** Cycles into which a limited search is divided, each twice as long as the one before. */
const cycles = 3;
const firstCycle = 3_000;
const longestBlock = 3;
/** Starts whose work grows with the square and the cube of the jobs are left out for longer lines. */
const mostJobsByRule = 1_000;
const mostJobsInserted = 300;

/** Share of the search on a line of several stages that looks for a good sequence; jobs may overtake in the rest. */
const shareOfSequences = 0.75;

/** As {@link improve}, for problems that {@link lineOf} has recognised. */
export function improveLine(
  line: Line,
  plan: SerialPlan,
  starts: readonly Int32Array[],
  weights: ObjectiveWeights,
  bound: number,
  options: SearchOptions,
): SearchResult {
  const filled = plan.problem.operationCount > mostFilled ? [] : starts.map((list) => decodedOrder(plan, list));
  const orders = [...starts, ...filled];
  if (line.stages.length === 1) return improveSequence(line, orders, weights, bound, options);
  const first = improveSequence(
    line,
    orders,
    weights,
    bound,
    shareOf(options, shareOfSequences, plan.problem.operationCount),
  );
  if (first.stoppedBy === "proven") return first;
  const second = improve(
    plan,
    [first.list, ...starts],
    weights,
    bound,
    shareOf(options, 1 - shareOfSequences, plan.problem.operationCount),
  );
  const better = second.cost < first.cost ? second : first;
  const stoppedBy = first.stoppedBy === "budget" ? "budget" : second.stoppedBy;
  return { ...better, iterations: first.iterations + second.iterations, stoppedBy };
}

/** The operations by their starts when the list is decoded, which fills gaps. */
function decodedOrder(plan: SerialPlan, list: Int32Array): Int32Array {
  const placement = emptyPlacement(plan.problem);
  decodeSerial(plan, list, placement);
  const order = list.slice();
  listByStart(placement, order);
  return order;
}

function shareOf(options: SearchOptions, share: number, operationCount: number): SearchOptions {
  const { iterations, budgetMs } = options;
  const limit = iterations ?? (budgetMs === undefined ? usualIterations(operationCount) : undefined);
  return {
    ...options,
    ...(limit === undefined ? {} : { iterations: Math.round(limit * share) }),
    ...(budgetMs === undefined ? {} : { budgetMs: budgetMs * share }),
  };
}

/** The best sequence found, with its starts. */
function improveSequence(
  line: Line,
  starts: readonly Int32Array[],
  weights: ObjectiveWeights,
  bound: number,
  options: SearchOptions,
): SearchResult {
  const limit = iterationLimit(options, line.jobCount * line.stages.length);
  const isOver = budgetGuard(options);
  const walk = new SequenceWalk(line, weights, seededRandom(options.seed));
  for (const sequence of [
    ...starts.map((list) => sequenceOf(line, list)),
    ...(weights.weightedTardiness > 0 && line.jobCount <= mostJobsByRule ? setupTardinessOrders(line) : []),
    ...(weights.makespan > 0 && line.jobCount <= mostJobsInserted ? [insertedByWork(line, walk.schedule)] : []),
  ])
    walk.offer(sequence);
  walk.begin();
  const tries = line.stages.length === 1 ? triesOnOneMachine : triesOnLines;
  let cycle = Number.isFinite(limit) ? Math.ceil(limit / (2 ** cycles - 1)) : firstCycle;
  let inCycle = 0;
  let iterations = 0;
  let stoppedBy: SearchResult["stoppedBy"] = "iterations";
  for (;;) {
    if (walk.bestCost <= bound) stoppedBy = "proven";
    else if (iterations < limit && iterations % clockEvery === 0 && isOver()) stoppedBy = "budget";
    if (stoppedBy !== "iterations" || iterations >= limit) break;
    const temperature = hot * (cold / hot) ** (inCycle / cycle);
    for (let i = 0; i < tries; i++) walk.step(temperature);
    iterations += 1;
    inCycle += 1;
    if (inCycle < cycle) continue;
    inCycle = 0;
    cycle *= 2;
    walk.returnToBest();
  }
  return { ...walk.bestSchedule(), cost: walk.bestCost, iterations, stoppedBy };
}

/** The jobs in the order in which a list names them first. */
function sequenceOf(line: Line, list: Int32Array): Int32Array {
  const stages = line.stages.length;
  return Int32Array.from(
    list.filter((operation) => operation % stages === 0),
    (operation) => operation / stages,
  );
}

class SequenceWalk {
  bestCost = Number.POSITIVE_INFINITY;
  readonly schedule: LineSchedule;
  private readonly best: Int32Array;
  private readonly current: Int32Array;
  private readonly trial: Int32Array;
  private cost = Number.POSITIVE_INFINITY;
  private worsening = 1;

  constructor(
    private readonly line: Line,
    weights: ObjectiveWeights,
    private readonly random: Random32,
  ) {
    this.schedule = new LineSchedule(line, weights);
    this.best = Int32Array.from({ length: line.jobCount }, (_, job) => job);
    this.current = this.best.slice();
    this.trial = this.best.slice();
  }

  offer(sequence: Int32Array): void {
    const cost = this.schedule.costOf(sequence, sequence.length, Number.POSITIVE_INFINITY);
    if (cost >= this.bestCost) return;
    this.bestCost = cost;
    this.best.set(sequence);
  }

  /** Takes up the best start and measures by how much random moves worsen it. */
  begin(): void {
    this.returnToBest();
    const worse: number[] = [];
    for (let probe = 0; probe < probes; probe++) {
      this.propose();
      const rise = this.schedule.costOf(this.trial, this.line.jobCount, Number.POSITIVE_INFINITY) - this.cost;
      if (rise > 0) worse.push(rise);
    }
    worse.sort((a, b) => a - b);
    this.worsening = worse[Math.floor(worse.length / 2)] ?? 1;
  }

  returnToBest(): void {
    this.current.set(this.best);
    this.cost = this.bestCost;
  }

  step(temperatureShare: number): void {
    this.propose();
    const limit = this.cost - temperatureShare * this.worsening * portableLog(unitFromU32(this.random()));
    const cost = this.schedule.costOf(this.trial, this.line.jobCount, limit);
    if (cost > limit) return;
    this.cost = cost;
    this.current.set(this.trial);
    if (cost >= this.bestCost) return;
    this.bestCost = cost;
    this.best.set(this.trial);
  }

  /** The best sequence as operations in order of their starts, and those starts. */
  bestSchedule(): { readonly list: Int32Array; readonly start: Int32Array } {
    this.schedule.costOf(this.best, this.line.jobCount, Number.POSITIVE_INFINITY);
    const { start } = this.schedule;
    const { jobCount, stages } = this.line;
    const place = new Int32Array(jobCount);
    this.best.forEach((job, at) => {
      place[job] = at;
    });
    const byOperation = Int32Array.from({ length: jobCount * stages.length }, (_, operation) => {
      const job = Math.floor(operation / stages.length);
      return start[(operation - job * stages.length) * jobCount + job] as number;
    });
    const list = Int32Array.from(byOperation.keys()).sort(
      (a, b) =>
        (byOperation[a] as number) - (byOperation[b] as number) ||
        (place[Math.floor(a / stages.length)] as number) - (place[Math.floor(b / stages.length)] as number) ||
        a - b,
    );
    return { list, start: byOperation };
  }

  private propose(): void {
    const { current, trial, random } = this;
    const count = current.length;
    trial.set(current);
    const from = intBelow(random, count);
    if (intBelow(random, 3) === 0) {
      const to = intBelow(random, count);
      trial[from] = current[to] as number;
      trial[to] = current[from] as number;
      return;
    }
    const length = Math.min(count - from, 1 + intBelow(random, longestBlock));
    const to = intBelow(random, count - length + 1);
    if (to <= from) trial.copyWithin(to + length, to, from);
    else trial.copyWithin(from, from + length, to + length);
    for (let i = 0; i < length; i++) trial[to + i] = current[from + i] as number;
  }
}

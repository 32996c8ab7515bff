/**
 * Improvement by simulated annealing over operation lists: a move, a serial decode, acceptance at a temperature that falls
 * in cycles. Deterministic for a seed and a number of iterations; the clock can only end it early. The best schedule found
 * is kept, so it can be stopped at any time.
 */
import { intBelow, portableExp, type Random32, seededRandom, unitFromU32 } from "#engine/math";
import type { SearchOptions } from "#engine/schedule";
import { emptyPlacement, type ObjectiveWeights, type Placement, type SerialPlan, searchCost } from "#engine/schedule";
import { type Decoder, decoderFor, type Encoded, encodingsOf, type Group } from "./encoding";
import { criticalArcs, exchangeJobs, listByStart, moveBefore, moveBehind, randomList, randomMove } from "./neighbours";

export interface SearchResult {
  readonly list: Int32Array;
  /** Starts of the operations to be kept as they are; absent: those of the decoded list. */
  readonly start?: Int32Array;
  /** Which members of groups they take, as `Placement.wanted`; absent: the first that are free. */
  readonly wanted?: Int32Array;
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
const shareOfRandomMoves = { makespan: 0.1, other: 0.4, withGaps: 0.5 };
/** Schedules tried in an iteration where machines with changeovers are to be chosen among: there is more to decide. */
const stepsWithMachines = 4;
/** Lists at random before a problem is given up in which no start keeps every maximum gap. */
const triesAtRandom = 1_000;
/** Moves along a critical arc that exchange the two jobs on all of their way. */
const shareOfJobMoves = 0.3;
/** Moves of an operation to another machine of its group, where there are groups. */
const shareOfMachineMoves = 0.25;
/** Moves of an operation beside another of its family, on that one's machine, which spares the changeover between them. */
const shareOfJoinMoves = 0.25;
const defaultIterations = 20_000;
export const clockEvery = 32;

/** Operations that the usual search decodes in all: of long problems it tries fewer schedules, so that it comes to an end. */
const mostDecoded = 12_000_000;

/** Iterations that a search may do: those asked for, the usual number for so many operations, or no limit under a budget of time. */
export function iterationLimit({ iterations, budgetMs }: SearchOptions, operationCount: number): number {
  if (iterations !== undefined) return iterations;
  return budgetMs === undefined ? usualIterations(operationCount) : Number.POSITIVE_INFINITY;
}

/** The number of iterations when none is asked for. */
export function usualIterations(operationCount: number): number {
  return Math.min(defaultIterations, Math.ceil(mostDecoded / Math.max(1, operationCount)));
}

/** Improves on the best of `starts`. Every start is decoded and counts as an iteration. */
export function improve(
  plan: SerialPlan,
  starts: readonly Int32Array[],
  weights: ObjectiveWeights,
  bound: number,
  options: SearchOptions,
): SearchResult {
  const limit = iterationLimit(options, plan.problem.operationCount);
  const isOver = budgetGuard(options);
  const walk = new Walk(plan, weights, seededRandom(options.seed));
  let iterations = 0;
  for (const list of starts) {
    walk.offer(list);
    iterations += 1;
  }
  let stoppedBy: SearchResult["stoppedBy"] = "iterations";
  for (
    let tries = 0;
    walk.bestCost === Number.POSITIVE_INFINITY && tries < triesAtRandom && iterations < limit;
    tries++
  ) {
    walk.offerAtRandom();
    iterations += 1;
  }
  // Nothing keeps every maximum gap: the caller says which.
  if (walk.bestCost === Number.POSITIVE_INFINITY)
    return { ...walk.bestSchedule(), cost: walk.bestCost, iterations, stoppedBy };
  walk.returnToBest();
  let cycle = firstCycle;
  let inCycle = 0;
  for (;;) {
    if (walk.bestCost <= bound) stoppedBy = "proven";
    else if (iterations < limit && iterations % clockEvery === 0 && isOver()) stoppedBy = "budget";
    if (stoppedBy !== "iterations" || iterations >= limit) break;
    const temperature = hot * (cold / hot) ** (inCycle / cycle);
    for (let step = 0; step < walk.stepsPerIteration; step++) walk.step(temperature);
    iterations += 1;
    inCycle += 1;
    if (inCycle === cycle) {
      inCycle = 0;
      cycle = Math.min(longestCycle, cycle * cycleGrowth);
      walk.returnToBest();
    }
  }
  return { ...walk.bestSchedule(), cost: walk.bestCost, iterations, stoppedBy };
}

export function budgetGuard(options: SearchOptions): () => boolean {
  const { budgetMs, clockMs } = options;
  if (budgetMs === undefined) return () => false;
  if (clockMs === undefined) throw new RangeError("scheduleJobs: budgetMs needs clockMs, the clock to measure it by");
  const from = clockMs();
  return () => clockMs() - from >= budgetMs;
}

/** The annealing walk: a current list and its schedule, the arcs that can be turned in it, and the best found so far. */
class Walk {
  bestCost = Number.POSITIVE_INFINITY;
  readonly stepsPerIteration: number;
  private readonly best: Encoded;
  private readonly current: Placement;
  private readonly trial: Placement;
  private readonly decodeCurrent: Decoder;
  private readonly decodeTrial: Decoder;
  private readonly code: Encoded;
  private readonly trialCode: Encoded;
  private readonly isCostly: Uint8Array;
  private readonly randomShare: number;
  private readonly machineShare: number;
  private readonly jobShare: number;
  /** Operations that share a family and a choice of machines with changeovers: two or more in each. */
  private readonly kin: readonly (readonly Group[])[];
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
    this.decodeCurrent = decoderFor(plan, this.current);
    this.decodeTrial = decoderFor(plan, this.trial);
    const code = (): Encoded => ({
      list: problem.topological.slice(),
      wanted: new Int32Array(this.trial.chosen.length).fill(-1),
    });
    this.code = code();
    this.trialCode = code();
    this.best = code();
    this.isCostly = new Uint8Array(problem.operationCount);
    const isMakespanOnly = weights.weightedTardiness === 0 && weights.changeover === 0;
    const hasGaps = problem.maxGap.some((gap) => gap >= 0);
    this.randomShare = hasGaps
      ? shareOfRandomMoves.withGaps
      : isMakespanOnly
        ? shareOfRandomMoves.makespan
        : shareOfRandomMoves.other;
    this.stepsPerIteration = this.decodeTrial.groups.some(({ family }) => family >= 0) ? stepsWithMachines : 1;
    this.jobShare = this.decodeTrial.isSequenced && problem.jobCount > 1 ? shareOfJobMoves : 0;
    this.machineShare = this.decodeTrial.groups.length === 0 ? 0 : shareOfMachineMoves;
    const byFamily = new Map<string, Group[]>();
    for (const group of this.decodeTrial.groups) {
      const key = `${group.family} ${group.members.join()}`;
      if (group.family >= 0) byFamily.set(key, [...(byFamily.get(key) ?? []), group]);
    }
    this.kin = [...byFamily.values()].filter(({ length }) => length > 1);
  }

  /** Takes a list as the best when it is, as it is named and as its operations follow one another when decoded. */
  offer(list: Int32Array): void {
    for (const code of encodingsOf(this.plan, this.decodeTrial, list)) {
      if (!this.decodeTrial.decode(code)) continue;
      const cost = searchCost(this.trial, this.weights);
      if (cost < this.bestCost) this.keep(cost, code);
    }
  }

  offerAtRandom(): void {
    this.offer(randomList(this.plan.problem, this.random));
  }

  private keep(cost: number, { list, wanted }: Encoded): void {
    this.bestCost = cost;
    this.best.list.set(list);
    this.best.wanted.set(wanted);
  }

  /** The best found: where the decoder is not the plain one, with the starts and machines it gave. */
  bestSchedule(): Pick<SearchResult, "list" | "start" | "wanted"> {
    if (!this.decodeTrial.decode(this.best)) return { list: this.best.list };
    return { list: this.best.list, ...this.decodeTrial.taken() };
  }

  returnToBest(): void {
    this.decodeCurrent.decode(this.best);
    this.cost = searchCost(this.current, this.weights);
    this.code.wanted.set(this.best.wanted);
    listByStart(this.current, this.code.list);
    this.arcs = null;
  }

  step(temperatureShare: number): void {
    if (!this.propose() || !this.decodeTrial.decode(this.trialCode)) return;
    const cost = searchCost(this.trial, this.weights);
    const worse = cost - this.cost;
    if (worse > 0 && !this.isAccepted(worse, temperatureShare)) return;
    this.cost = cost;
    if (cost < this.bestCost) this.keep(cost, this.trialCode);
    decodedInto(this.current, this.trial);
    this.code.wanted.set(this.trialCode.wanted);
    listByStart(this.current, this.code.list);
    this.arcs = null;
  }

  private isAccepted(worse: number, temperatureShare: number): boolean {
    this.meanWorse += (worse - this.meanWorse) * (this.meanWorse === 0 ? 1 : meanMemory);
    const exponent = -worse / (temperatureShare * this.meanWorse);
    return exponent > -40 && unitFromU32(this.random()) < portableExp(exponent);
  }

  private propose(): boolean {
    const { problem } = this.plan;
    const { code, trialCode } = this;
    trialCode.wanted.set(code.wanted);
    if (this.kin.length > 0 && unitFromU32(this.random()) < shareOfJoinMoves) return this.proposeJoin();
    if (this.machineShare > 0 && unitFromU32(this.random()) < this.machineShare) return this.proposeMachine();
    this.arcs ??= criticalArcs(this.current, code.list, this.markCostly());
    const count = this.arcs.first.length;
    if (count === 0 || unitFromU32(this.random()) < this.randomShare) {
      if (this.jobShare > 0 && unitFromU32(this.random()) < this.jobShare) {
        const one = intBelow(this.random, problem.jobCount);
        return exchangeJobs(problem, code.list, one, intBelow(this.random, problem.jobCount), trialCode.list);
      }
      return randomMove(problem, code.list, this.random, trialCode.list);
    }
    const pick = Math.floor(unitFromU32(this.random()) * count);
    const first = this.arcs.first[pick] as number;
    const second = this.arcs.second[pick] as number;
    if (this.jobShare > 0 && unitFromU32(this.random()) < this.jobShare) {
      return exchangeJobs(
        problem,
        code.list,
        problem.jobOf[first] as number,
        problem.jobOf[second] as number,
        trialCode.list,
      );
    }
    return this.decodeTrial.isSequenced && intBelow(this.random, 2) === 0
      ? moveBefore(problem, code.list, first, second, trialCode.list)
      : moveBehind(problem, code.list, first, second, trialCode.list);
  }

  /** Another machine for an operation, perhaps with all of its family, or none in particular; half of the time another place in the list, too. */
  private proposeMachine(): boolean {
    const { code, trialCode, random, decodeTrial } = this;
    const { entry, members, family } = decodeTrial.groups[
      intBelow(random, decodeTrial.groups.length)
    ] as Decoder["groups"][0];
    const at = intBelow(random, members.length + 1);
    const member = at === members.length ? -1 : (members[at] as number);
    if (member === trialCode.wanted[entry]) return false;
    trialCode.wanted[entry] = member;
    if (family >= 0 && intBelow(random, 3) === 0) {
      for (const other of decodeTrial.groups) if (other.family === family) trialCode.wanted[other.entry] = member;
    }
    if (intBelow(random, 2) === 0 && randomMove(this.plan.problem, code.list, random, trialCode.list)) return true;
    trialCode.list.set(code.list);
    return true;
  }

  /** An operation beside another of its family on the same machine, just behind it or just before it: from where it comes. */
  private proposeJoin(): boolean {
    const { problem } = this.plan;
    const { code, trialCode, random } = this;
    const kin = this.kin[intBelow(random, this.kin.length)] as readonly Group[];
    const one = kin[intBelow(random, kin.length)] as Group;
    const other = kin[intBelow(random, kin.length)] as Group;
    if (one === other) return false;
    trialCode.wanted[one.entry] = this.current.chosen[other.entry] as number;
    if (code.list.indexOf(one.operation) < code.list.indexOf(other.operation))
      return moveBehind(problem, code.list, one.operation, other.operation, trialCode.list);
    return moveBefore(problem, code.list, other.operation, one.operation, trialCode.list);
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

/**
 * A population of operation lists for project scheduling: two parents give a child by two-point crossover (Hartmann 1998,
 * Naval Research Logistics 45:733–750), every child is improved forward and backward (Valls, Ballestín & Quintanilla 2005,
 * EJOR 165:375–386: everything as late as possible, then as early as possible), the better half lives on. Sources from memory.
 * An iteration is one decoded list, forward or backward. Seeded and deterministic.
 */
import { intBelow, type Random32, seededRandom, unitFromU32 } from "#engine/math";
import type { CompiledProblem, SearchOptions } from "#engine/schedule";
import { decodeSerial, emptyPlacement, type Placement, type SerialPlan, serialPlan } from "#engine/schedule";
import { budgetGuard, iterationLimit, type SearchResult } from "./annealing";
import { listByStart, randomList } from "./neighbours";

const population = 40;
const mutationChance = 0.05;
/** Generations without a new best before all but the best are replaced by new lists. */
const patience = 25;

interface Member {
  readonly list: Int32Array;
  readonly makespan: number;
}

/** As {@link improve}, for problems that can run backwards. */
export function improveProject(
  plan: SerialPlan,
  mirrored: CompiledProblem,
  starts: readonly Int32Array[],
  weight: number,
  bound: number,
  options: SearchOptions,
): SearchResult {
  const limit = iterationLimit(options, plan.problem.operationCount);
  const isOver = budgetGuard(options);
  const random = seededRandom(options.seed);
  const decoder = new Decoder(plan, serialPlan(mirrored));
  let members: Member[] = [];
  let best: Member = decoder.improved(starts[0] as Int32Array);
  let stoppedBy: SearchResult["stoppedBy"] = "iterations";
  let still = 0;
  const isDone = () => {
    if (weight * best.makespan <= bound) stoppedBy = "proven";
    else if (decoder.decoded < limit && isOver()) stoppedBy = "budget";
    return stoppedBy !== "iterations" || decoder.decoded >= limit;
  };
  const add = (list: Int32Array) => {
    const member = decoder.improved(list);
    if (!members.some((other) => isSame(other, member))) members.push(member);
    if (member.makespan < best.makespan) {
      best = member;
      still = 0;
    }
  };
  for (const list of starts.slice(1)) if (!isDone()) add(list);
  while (!isDone()) {
    if (members.length < population) {
      add(randomList(plan.problem, random));
      continue;
    }
    still += 1;
    const parents = shuffled(members, random);
    for (let i = 0; i + 1 < parents.length && !isDone(); i += 2) {
      const [mother, father] = [parents[i] as Member, parents[i + 1] as Member];
      add(mutated(plan.problem, crossed(mother.list, father.list, random), random));
      if (!isDone()) add(mutated(plan.problem, crossed(father.list, mother.list, random), random));
    }
    members = members.sort((a, b) => a.makespan - b.makespan).slice(0, population);
    if (still > patience) {
      still = 0;
      members = [best];
    }
  }
  return { list: best.list, cost: weight * best.makespan, iterations: decoder.decoded, stoppedBy };
}

/** Twins would crowd out what they could be crossed with. */
function isSame(one: Member, other: Member): boolean {
  return one.makespan === other.makespan && one.list.every((operation, at) => operation === other.list[at]);
}

/** Decodes lists forward and backward, counting. */
class Decoder {
  decoded = 0;
  private readonly forward: Placement;
  private readonly backward: Placement;
  private readonly list: Int32Array;

  constructor(
    private readonly plan: SerialPlan,
    private readonly mirrored: SerialPlan,
  ) {
    this.forward = emptyPlacement(plan.problem);
    this.backward = emptyPlacement(mirrored.problem);
    this.list = plan.problem.topological.slice();
  }

  /** The list forward, then backward and forward again: never longer than the first. */
  improved(list: Int32Array): Member {
    decodeSerial(this.plan, list, this.forward);
    this.orderBy(this.forward, (operation) => -(this.forward.end[operation] as number));
    decodeSerial(this.mirrored, this.list, this.backward);
    this.orderBy(this.backward, (operation) => -(this.backward.end[operation] as number));
    decodeSerial(this.plan, this.list, this.forward);
    this.decoded += 3;
    const found = this.plan.problem.topological.slice();
    listByStart(this.forward, found);
    return { list: found, makespan: this.forward.end.reduce((last, end) => Math.max(last, end), 0) };
  }

  /** The operations by a key; ties against the direction of time keep precedence. */
  private orderBy(placement: Placement, key: (operation: number) => number): void {
    const { topological, operationCount } = placement.problem;
    const place = new Int32Array(operationCount);
    topological.forEach((operation, at) => {
      place[operation] = at;
    });
    this.list.set(topological);
    this.list.sort((a, b) => key(a) - key(b) || (place[b] as number) - (place[a] as number));
  }
}

/** The first part of one list, the middle in the order of the other, the rest again in that of the first. */
function crossed(mother: Int32Array, father: Int32Array, random: Random32): Int32Array {
  const count = mother.length;
  const [a, b] = [intBelow(random, count + 1), intBelow(random, count + 1)];
  const [from, to] = [Math.min(a, b), Math.max(a, b)];
  const child = new Int32Array(count);
  const isTaken = new Uint8Array(count);
  let filled = 0;
  const take = (list: Int32Array, until: number) => {
    for (let i = 0; i < count && filled < until; i++) {
      const operation = list[i] as number;
      if (isTaken[operation] === 1) continue;
      isTaken[operation] = 1;
      child[filled++] = operation;
    }
  };
  take(mother, from);
  take(father, to);
  take(mother, count);
  return child;
}

/** Swaps some neighbours that do not depend on one another. */
function mutated(problem: CompiledProblem, list: Int32Array, random: Random32): Int32Array {
  for (let i = 0; i + 1 < list.length; i++) {
    if (unitFromU32(random()) >= mutationChance) continue;
    const [first, second] = [list[i] as number, list[i + 1] as number];
    const before = problem.predecessors.subarray(
      problem.predecessorsFrom[second] as number,
      problem.predecessorsFrom[second + 1] as number,
    );
    if (before.includes(first)) continue;
    list[i] = second;
    list[i + 1] = first;
  }
  return list;
}

function shuffled(members: readonly Member[], random: Random32): Member[] {
  const list = [...members];
  for (let i = list.length - 1; i > 0; i--) {
    const other = intBelow(random, i + 1);
    [list[i], list[other]] = [list[other] as Member, list[i] as Member];
  }
  return list;
}

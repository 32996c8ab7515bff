/** Improvement of plain job shops: the starting lists decoded, the best taken up by tabu search. */

import type { SearchOptions } from "#engine/schedule";
import { decodeSerial, emptyPlacement, type ObjectiveWeights, type SerialPlan, searchCost } from "#engine/schedule";
import { budgetGuard, clockEvery, iterationLimit, type SearchResult } from "./annealing";
import { permutationList } from "./flow-shop";
import type { JobShop } from "./job-shop";
import { listByStart } from "./neighbours";
import { TabuSearch } from "./tabu-search";

/** Moves in an iteration: of large shops the more, where a move costs little beside decoding a list. */
const movesPerIteration = { least: 10, most: 36, perOperation: 0.12 };

/** Rounds of iterated greedy for a flow shop's first list. */
const permutationRounds = 400;

/** As {@link improve}, for problems that {@link jobShopOf} has recognised. An iteration is some moves of the tabu search. */
export function improveJobShop(
  shop: JobShop,
  plan: SerialPlan,
  starts: readonly Int32Array[],
  weights: ObjectiveWeights,
  bound: number,
  options: SearchOptions,
): SearchResult {
  const limit = iterationLimit(options, plan.problem.operationCount);
  const isOver = budgetGuard(options);
  const placement = emptyPlacement(plan.problem);
  const list = plan.problem.topological.slice();
  let cost = Number.POSITIVE_INFINITY;
  const rounds = Math.min(permutationRounds, Math.floor(limit / 40));
  const permutation = permutationList(plan.problem, shop, options.seed, rounds);
  for (const start of permutation === null ? starts : [...starts, permutation]) {
    decodeSerial(plan, start, placement);
    const reached = searchCost(placement, weights);
    if (reached >= cost) continue;
    cost = reached;
    listByStart(placement, list);
  }
  const { least, most, perOperation } = movesPerIteration;
  const moves = Math.min(most, Math.max(least, Math.round(perOperation * shop.operationCount)));
  let iterations = starts.length;
  let stoppedBy: SearchResult["stoppedBy"] = "iterations";
  const tabu = new TabuSearch(shop, list, options.seed);
  for (;;) {
    if (weights.makespan * tabu.best.makespan <= bound) stoppedBy = "proven";
    else if (iterations < limit && iterations % clockEvery === 0 && isOver()) stoppedBy = "budget";
    if (stoppedBy !== "iterations" || iterations >= limit) break;
    for (let move = 0; move < moves; move++) tabu.step();
    iterations += 1;
  }
  return {
    list: withPredecessorsFirst(plan, tabu.bestList()),
    cost: weights.makespan * tabu.best.makespan,
    iterations,
    stoppedBy,
  };
}

/** The list with what takes no time, which stands nowhere in particular, just before what follows it, or at the end. */
function withPredecessorsFirst({ problem }: SerialPlan, list: Int32Array): Int32Array {
  const ordered = new Int32Array(list.length);
  const isListed = new Uint8Array(list.length);
  let filled = 0;
  const add = (operation: number): void => {
    if (isListed[operation] === 1) return;
    isListed[operation] = 1;
    const to = problem.predecessorsFrom[operation + 1] as number;
    for (let i = problem.predecessorsFrom[operation] as number; i < to; i++) add(problem.predecessors[i] as number);
    ordered[filled++] = operation;
  };
  for (const operation of list) if ((problem.minutes[operation] as number) > 0) add(operation);
  for (const operation of list) add(operation);
  return ordered;
}

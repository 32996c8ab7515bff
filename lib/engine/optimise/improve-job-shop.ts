/** Improvement of plain job shops: the starting lists decoded, the best taken up by tabu search. */

import type { SearchOptions } from "#engine/schedule";
import { decodeSerial, emptyPlacement, type ObjectiveWeights, type SerialPlan, searchCost } from "#engine/schedule";
import { budgetGuard, clockEvery, iterationLimit, type SearchResult } from "./annealing";
import { permutationList } from "./flow-shop";
import type { JobShop } from "./job-shop";
import { listByStart } from "./neighbours";
import { TabuSearch } from "./tabu-search";

/** What costs about as much as decoding one list, the iteration of the general search. */
const movesPerIteration = 10;

/** Rounds of iterated greedy for a flow shop's first list. */
const permutationRounds = 400;

/** As {@link improve}, for problems that {@link jobShopOf} has recognised. An iteration is ten moves of the tabu search. */
export function improveJobShop(
  shop: JobShop,
  plan: SerialPlan,
  starts: readonly Int32Array[],
  weights: ObjectiveWeights,
  bound: number,
  options: SearchOptions,
): SearchResult {
  const limit = iterationLimit(options);
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
  let iterations = starts.length;
  let stoppedBy: SearchResult["stoppedBy"] = "iterations";
  const tabu = new TabuSearch(shop, list, options.seed);
  for (;;) {
    if (weights.makespan * tabu.best.makespan <= bound) stoppedBy = "proven";
    else if (iterations < limit && iterations % clockEvery === 0 && isOver()) stoppedBy = "budget";
    if (stoppedBy !== "iterations" || iterations >= limit) break;
    for (let move = 0; move < movesPerIteration; move++) tabu.step();
    iterations += 1;
  }

  return { list: tabu.bestList(), cost: weights.makespan * tabu.best.makespan, iterations, stoppedBy };
}

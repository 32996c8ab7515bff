/**
 * A good permutation for flow shops, where every job goes over the machines in the same order: insertion of the jobs by
 * decreasing work (Nawaz, Enscore & Ham 1983, Omega 11:91–95), then iterated greedy (Ruiz & Stützle 2007, EJOR
 * 177:2033–2049): take four out, put each back where it is best. Sources from memory.
 */
import { intBelow, type Random32, seededRandom } from "#engine/math";
import type { CompiledProblem } from "#engine/schedule";
import type { JobShop } from "./job-shop";

const takenOut = 4;

/** Minutes of each job on each machine in their order, or null when the jobs go different ways. */
function flowShopMinutes(problem: CompiledProblem, shop: JobShop): readonly Int32Array[] | null {
  const jobs = Array.from({ length: problem.jobCount }, (_, job) => {
    const chain: number[] = [];
    const from = problem.firstOfJob[job] as number;
    const to = problem.firstOfJob[job + 1] as number;
    let at = from;
    while (at < to && (shop.jobBefore[at] as number) >= 0) at += 1;
    for (; at >= 0 && at < to; at = shop.jobBehind[at] as number) chain.push(at);
    return chain;
  });
  const first = jobs[0] ?? [];
  const isFlow =
    shop.release.every((minute) => minute === 0) &&
    jobs.every(
      (chain) =>
        chain.length === first.length &&
        chain.every((operation, k) => shop.machineOf[operation] === shop.machineOf[first[k] as number]),
    );
  return isFlow ? jobs.map((chain) => Int32Array.from(chain, (operation) => shop.minutes[operation] as number)) : null;
}

/** The list of a flow shop that runs a good permutation of its jobs; null for other shops. */
export function permutationList(
  problem: CompiledProblem,
  shop: JobShop,
  seed: number,
  rounds: number,
): Int32Array | null {
  const minutes = flowShopMinutes(problem, shop);
  if (minutes === null || minutes.length < 2) return null;
  const order = iteratedGreedy(minutes, insertionOrder(minutes), seededRandom(seed), rounds);
  const list = new Int32Array(problem.operationCount);
  let filled = 0;
  for (const job of order) {
    for (let at = problem.firstOfJob[job] as number; at < (problem.firstOfJob[job + 1] as number); at++) {
      if ((shop.jobBefore[at] as number) >= 0) continue;
      for (let operation = at; operation >= 0; operation = shop.jobBehind[operation] as number)
        list[filled++] = operation;
    }
  }
  return list;
}

/** Makespan of a permutation. */
export function permutationMakespan(minutes: readonly Int32Array[], order: readonly number[]): number {
  const ends = new Int32Array(minutes[0]?.length ?? 0);
  for (const job of order) {
    const row = minutes[job] as Int32Array;
    let end = 0;
    for (let machine = 0; machine < row.length; machine++) {
      end = Math.max(end, ends[machine] as number) + (row[machine] as number);
      ends[machine] = end;
    }
  }
  return ends.at(-1) ?? 0;
}

/** Jobs by decreasing total minutes (ties as listed), each put in at its first best place. */
export function insertionOrder(minutes: readonly Int32Array[]): readonly number[] {
  const total = minutes.map((row) => row.reduce((sum, value) => sum + value, 0));
  const jobs = [...minutes.keys()].sort((a, b) => (total[b] as number) - (total[a] as number) || a - b);
  return jobs.reduce((order, job) => bestInsertion(minutes, order, job), [] as readonly number[]);
}

function bestInsertion(minutes: readonly Int32Array[], order: readonly number[], job: number): readonly number[] {
  let best: readonly number[] = [...order, job];
  let least = Number.POSITIVE_INFINITY;
  for (let place = 0; place <= order.length; place++) {
    const candidate = [...order.slice(0, place), job, ...order.slice(place)];
    const makespan = permutationMakespan(minutes, candidate);
    if (makespan >= least) continue;
    best = candidate;
    least = makespan;
  }
  return best;
}

function iteratedGreedy(
  minutes: readonly Int32Array[],
  start: readonly number[],
  random: Random32,
  rounds: number,
): readonly number[] {
  let order = start;
  let makespan = permutationMakespan(minutes, order);
  for (let round = 0; round < rounds; round++) {
    const left = [...order];
    const out = Array.from({ length: Math.min(takenOut, left.length - 1) }, () => {
      return left.splice(intBelow(random, left.length), 1)[0] as number;
    });
    const built = out.reduce((partial, job) => bestInsertion(minutes, partial, job), left as readonly number[]);
    const reached = permutationMakespan(minutes, built);
    if (reached > makespan) continue;
    order = built;
    makespan = reached;
  }
  return order;
}

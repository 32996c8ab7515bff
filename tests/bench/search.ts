/** The search on published job shops: its speed, and what it reaches in fixed iterations. */
import { scheduleJobs } from "#engine/optimise";
import type { Schedule, ScheduleProblem } from "#engine/schedule";
import { type Instance, instance, instances } from "../engine/optimise/instances";
import {
  flowShop,
  flowShops20by5,
  jobShops15by15,
  jobShops20by5,
  loadBound,
  taillardJobShop,
} from "../engine/optimise/taillard";
import { arithmetic, type Measured, measured, median } from "./measure";

const iterations = 20_000;

export interface Quality {
  readonly kind: string;
  readonly instance: string;
  readonly best: number;
  readonly reached: number;
  readonly gapPercent: number;
  readonly iterations: number;
  readonly ms: number;
}

/** What is kept here and what the published generator makes; the three flow shops that are both count once. */
function every(): readonly Omit<Instance, "isOptimum">[] {
  return [
    ...instances.filter(({ name }) => !name.startsWith("tai20_5_")),
    ...jobShops15by15.map(([timeSeed, machineSeed, best], i) => ({
      kind: "job shop 15 × 15",
      name: `Taillard ${i + 1}`,
      best,
      problem: taillardJobShop(15, 15, timeSeed, machineSeed),
    })),
    ...jobShops20by5.map(([timeSeed, machineSeed], i) => {
      const problem = taillardJobShop(20, 5, timeSeed, machineSeed);
      return { kind: "job shop 20 × 5", name: `unseen ${i + 1}`, best: loadBound(problem), problem };
    }),
    ...flowShops20by5.map(([timeSeed, best], i) => ({
      kind: "flow shop 20 × 5",
      name: `Taillard ${i + 1}`,
      best,
      problem: flowShop(20, 5, timeSeed),
    })),
  ];
}

function solved(problem: ScheduleProblem, seed: number, steps: number): Schedule {
  const outcome = scheduleJobs(problem, { seed, iterations: steps });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
}

/** The median of five seeds on every problem. */
export function qualities(): Quality[] {
  return every().map(({ kind, name, best, problem }) => {
    const from = performance.now();
    const reached = median([1, 2, 3, 4, 5].map((seed) => solved(problem, seed, iterations).objectiveValue));
    const ms = (performance.now() - from) / 5;
    const gapPercent = best === 0 ? (reached === 0 ? 0 : Number.POSITIVE_INFINITY) : (reached / best - 1) * 100;
    return { kind, instance: name, best, reached, gapPercent, iterations, ms };
  });
}

export async function searchMeasures(): Promise<Measured[]> {
  const found: Measured[] = [];
  for (const name of ["ft06", "ft10"]) {
    const { problem } = instance(name);
    const operations = problem.jobs.reduce((sum, job) => sum + job.operations.length, 0);
    const made = solved(problem, 1, 2000).iterations;
    found.push(
      await measured(
        `scheduleJobs, ${name}, ${made} iterations`,
        () => solved(problem, 1, 2000),
        `${made} loops over ${operations} operations`,
        arithmetic(made * operations),
        5,
      ),
    );
  }
  return found;
}

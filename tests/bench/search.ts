/** The search on published job shops: its speed, and what it reaches in fixed iterations. */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { type Schedule, type ScheduleProblem, scheduleJobs } from "@/lib/engine/schedule";
import { ft06Text, jobShop } from "@/tests/engine/schedule/instances";
import { arithmetic, type Measured, measured, median } from "./measure";

const folder = path.resolve("../shared/checks/instances/jobshop");
const iterations = 20_000;

/** Optima: Fisher & Thompson 1963 and Lawrence 1984, as listed by van Hoorn 2018, J. Scheduling 21:127–128. */
const optima = [
  ["ft06", 55],
  ["la01", 666],
  ["la02", 655],
  ["la05", 593],
  ["ft10", 930],
  ["ft20", 1165],
] as const;

export interface Quality {
  readonly instance: string;
  readonly optimum: number;
  readonly reached: number;
  readonly gapPercent: number;
  readonly iterations: number;
}

function problemOf(name: string): ScheduleProblem | null {
  if (name === "ft06") return jobShop(ft06Text);
  const file = path.join(folder, `${name}.txt`);
  if (existsSync(file)) return jobShop(readFileSync(file, "utf8"));
  console.info(`skipped: ${name} is not in ../shared/checks/instances`);
  return null;
}

function solved(problem: ScheduleProblem, seed: number, steps: number): Schedule {
  const outcome = scheduleJobs(problem, { seed, iterations: steps });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
}

/** The median of five seeds on every instance that is there. */
export function qualities(): Quality[] {
  return optima.flatMap(([instance, optimum]) => {
    const problem = problemOf(instance);
    if (problem === null) return [];
    const reached = median([1, 2, 3, 4, 5].map((seed) => solved(problem, seed, iterations).objectiveValue));
    return [{ instance, optimum, reached, gapPercent: (reached / optimum - 1) * 100, iterations }];
  });
}

export async function searchMeasures(): Promise<Measured[]> {
  const found: Measured[] = [];
  for (const name of ["ft06", "ft10"]) {
    const problem = problemOf(name);
    if (problem === null) continue;
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

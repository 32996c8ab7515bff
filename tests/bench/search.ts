/** The search on published job shops: its speed, and what it reaches in fixed iterations. */
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { scheduleJobs } from "#engine/optimise";
import type { Schedule, ScheduleProblem } from "#engine/schedule";
import {
  ft06Text,
  hybridFlowShop,
  jobShop,
  resourceConstrained,
  setupFlowShop,
  setupSequence,
  tardinessSequence,
  workshop,
} from "../engine/optimise/instances";
import {
  flowShop,
  flowShops20by5,
  jobShops15by15,
  jobShops20by5,
  loadBound,
  taillardJobShop,
} from "../engine/optimise/taillard";
import { arithmetic, type Measured, measured, median } from "./measure";

const folder = path.resolve("../shared/checks/instances");
const iterations = 20_000;

interface Instance {
  readonly kind: string;
  readonly name: string;
  readonly best: number;
  readonly problem: ScheduleProblem;
}

/** Optima: Fisher & Thompson 1963 and Lawrence 1984, as listed by van Hoorn 2018, J. Scheduling 21:127–128. */
const jobShops = [
  ["ft06", 55],
  ["la01", 666],
  ["la02", 655],
  ["la05", 593],
  ["ft10", 930],
  ["ft20", 1165],
] as const;

/** Optima of Demeulemeester & Herroelen. */
const projects = [
  ["j301_1", 43],
  ["j301_2", 47],
  ["j305_1", 53],
  ["j3013_1", 58],
] as const;

/**
 * Lines. Carlier 1978 (best permutation, from memory); OR-Library (optima as published there); Cicirello & Smith 2005 (optima
 * of Tanaka & Araki 2013, from memory; the first is the best known beside the file); Ruiz & Stützle 2008 and the hybrid set
 * with Naderi, Ruiz & Roshanaei 2023 (best known beside the files).
 */
const lines = [
  ["flow shop 11 × 5", "flowshop_perm/car1", 7038, jobShop],
  ["one machine, late", "single_machine_twt/wt40_001", 913, tardinessSequence],
  ["one machine, late", "single_machine_twt/wt40_006", 6955, tardinessSequence],
  ["one machine, late", "single_machine_twt/wt40_011", 17465, tardinessSequence],
  ["setups, late", "single_machine_sdst_twt/wt_sds_1", 483, setupSequence],
  ["setups, late", "single_machine_sdst_twt/wt_sds_12", 0, setupSequence],
  ["setups, late", "single_machine_sdst_twt/wt_sds_41", 69102, setupSequence],
  ["setups, late", "single_machine_sdst_twt/wt_sds_81", 383485, setupSequence],
  ["flow shop, setups", "flowshop_sdst/sdst_001", 1330, setupFlowShop],
  ["flow shop, setups", "flowshop_sdst/sdst_121", 1567, setupFlowShop],
  ["flow shop, setups", "flowshop_sdst/sdst_361", 2065, setupFlowShop],
  ["hybrid flow shop", "hybrid_flowshop/hfs_0001", 955, hybridFlowShop],
  ["hybrid flow shop", "hybrid_flowshop/hfs_0002", 909, hybridFlowShop],
  ["hybrid flow shop", "hybrid_flowshop/hfs_0097", 642, hybridFlowShop],
] as const;

export interface Quality {
  readonly kind: string;
  readonly instance: string;
  readonly best: number;
  readonly reached: number;
  readonly gapPercent: number;
  readonly iterations: number;
  readonly ms: number;
}

function textOf(file: string): string | null {
  const whole = path.join(folder, file);
  if (existsSync(whole)) return readFileSync(whole, "utf8");
  console.info(`skipped: ${file} is not in ../shared/checks/instances`);
  return null;
}

function problemOf(name: string): ScheduleProblem | null {
  if (name === "ft06") return jobShop(ft06Text);
  const text = textOf(`jobshop/${name}.txt`);
  return text === null ? null : jobShop(text);
}

function instances(): readonly Instance[] {
  return [
    ...jobShops.flatMap(([name, best]) => {
      const problem = problemOf(name);
      return problem === null ? [] : [{ kind: "job shop", name, best, problem }];
    }),
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
    ...projects.flatMap(([name, best]) => {
      const text = textOf(`rcpsp_j30/${name}.txt`);
      return text === null ? [] : [{ kind: "project of 30", name, best, problem: resourceConstrained(text) }];
    }),
    ...lines.flatMap(([kind, file, best, problemFrom]) => {
      const text = textOf(`${file}.txt`);
      return text === null ? [] : [{ kind, name: path.basename(file), best, problem: problemFrom(text) }];
    }),
    ...["ws_a1", "ws_m1", "ws_k1", "ws_c1"].flatMap((name) => {
      const text = textOf(`workshop/${name}.json`);
      if (text === null) return [];
      const { problem, optimum } = workshop(text);
      return [{ kind: "workshop", name, best: optimum, problem }];
    }),
  ];
}

function solved(problem: ScheduleProblem, seed: number, steps: number): Schedule {
  const outcome = scheduleJobs(problem, { seed, iterations: steps });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  return outcome.value;
}

/** The median of five seeds on every instance that is there. */
export function qualities(): Quality[] {
  return instances().map(({ kind, name, best, problem }) => {
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

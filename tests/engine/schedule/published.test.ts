import { describe, expect, it } from "vitest";
import { type ScheduleProblem, scheduleJobs } from "@/lib/engine/schedule";
import { faultsOf } from "@/tests/support/feasible";
import { ft06Text, instanceText, jobShop, resourceConstrained, workshop } from "./instances";

/** Solves, checks feasibility with the independent judge, returns the objective. */
function solved(problem: ScheduleProblem, iterations: number, seed: number): number {
  const outcome = scheduleJobs(problem, { seed, iterations });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  expect(faultsOf(problem, outcome.value)).toEqual([]);
  return outcome.value.objectiveValue;
}

const median = (values: readonly number[]) =>
  [...values].sort((a, b) => a - b)[Math.floor(values.length / 2)] as number;

describe("scheduleJobs on published job shops", () => {
  it("finds the optimum 55 of ft06 for every one of five seeds", () => {
    expect([1, 2, 3, 4, 5].map((seed) => solved(jobShop(ft06Text), 20_000, seed))).toEqual([55, 55, 55, 55, 55]);
  });

  // Optima: Lawrence 1984 instances, proven (van Hoorn 2018, J. Scheduling 21:127–128).
  it.for([
    ["la01", 666],
    ["la02", 655],
    ["la05", 593],
  ] as const)("reaches the optimum of %s", ([name, optimum]) => {
    const text = instanceText(`jobshop/${name}.txt`);
    if (text === null) return;
    const reached = [2, 3].map((seed) => solved(jobShop(text), 60_000, seed));
    expect(Math.min(...reached)).toBe(optimum);
  });

  // Fisher & Thompson 1963; optima 930 and 1165. The full budget is the bench's; here five short runs must come close.
  it.for([
    ["ft10", 930, 0.08],
    ["ft20", 1165, 0.03],
  ] as const)("comes near the optimum of %s in short runs", ([name, optimum, share]) => {
    const text = instanceText(`jobshop/${name}.txt`);
    if (text === null) return;
    const found = median([1, 2, 3, 4, 5].map((seed) => solved(jobShop(text), 12_000, seed)));
    expect(found).toBeGreaterThanOrEqual(optimum);
    expect(found).toBeLessThanOrEqual(optimum * (1 + share));
  });
});

describe("scheduleJobs on workshop instances", () => {
  // Made for this project; optima proven by an exact constraint solver. The instances name themselves in ../shared.
  it.for(["ws_a1", "ws_m1", "ws_k1", "ws_c1"])("reaches the proven optimum of %s", (name) => {
    const text = instanceText(`workshop/${name}.json`);
    if (text === null) return;
    const { problem, optimum } = workshop(text);
    expect(solved(problem, 20_000, 1)).toBe(optimum);
  });
});

describe("scheduleJobs on project scheduling", () => {
  // PSPLIB j30 (Kolisch & Sprecher 1996); optima of Demeulemeester & Herroelen.
  it.for([
    ["j301_1", 43],
    ["j301_2", 47],
  ] as const)("reaches the optimum of %s", ([name, optimum]) => {
    const text = instanceText(`rcpsp_j30/${name}.txt`);
    if (text === null) return;
    expect(solved(resourceConstrained(text), 5_000, 1)).toBe(optimum);
  });
});

import { describe, expect, it } from "vitest";
import { intBelow, seededRandom } from "#engine/math";
import { scheduleJobs } from "#engine/optimise";
import type { ScheduleProblem } from "#engine/schedule";
import { faultsOf } from "../../support/feasible";

const families = ["a", "b", "c"] as const;
const objectives = ["makespan", { weightedTardiness: 1 }, { weightedTardiness: 1, changeover: 3 }] as const;

/** One machine, six jobs, changeovers that need not obey the triangle inequality, releases and due dates. */
function press(seed: number): ScheduleProblem {
  const random = seededRandom(seed);
  const changeoverMinutes = Object.fromEntries(
    families.map((from) => [
      from,
      Object.fromEntries(families.map((to) => [to, from === to ? 0 : intBelow(random, 12)])),
    ]),
  );
  return {
    resources: [{ id: "press", capacity: 1, changeoverMinutes, initialFamily: "b" }],
    jobs: Array.from({ length: 6 }, (_, job) => ({
      id: `j${job}`,
      releaseMinute: intBelow(random, 10),
      dueMinute: 10 + intBelow(random, 30),
      weight: 1 + intBelow(random, 4),
      operations: [
        { id: "o", resource: "press", minutes: 3 + intBelow(random, 8), family: families[intBelow(random, 3)] ?? "a" },
      ],
    })),
    objective: objectives[seed % 3] ?? "makespan",
  };
}

function orders(jobs: readonly number[]): readonly (readonly number[])[] {
  if (jobs.length === 0) return [[]];
  return jobs.flatMap((job) => orders(jobs.filter((other) => other !== job)).map((rest) => [job, ...rest]));
}

/** Cost of one order of the press, reckoned from the problem as it is written. */
function costOf(problem: ScheduleProblem, order: readonly number[]): number {
  const [press] = problem.resources;
  let [time, family, changeover, tardiness] = [0, press?.initialFamily ?? "", 0, 0];
  for (const index of order) {
    const job = problem.jobs[index];
    const [operation] = job?.operations ?? [];
    const minutes = press?.changeoverMinutes?.[family]?.[operation?.family ?? ""] ?? 0;
    time = Math.max(time + minutes, job?.releaseMinute ?? 0) + (operation?.minutes ?? 0);
    family = operation?.family ?? "";
    changeover += minutes;
    tardiness += (job?.weight ?? 1) * Math.max(0, time - (job?.dueMinute ?? 0));
  }
  if (problem.objective === "makespan") return time;
  return tardiness + (problem.objective.changeover ?? 0) * changeover;
}

describe("one machine with changeovers", () => {
  it.for(Array.from({ length: 30 }, (_, i) => i + 1))("finds the best of all 720 orders of press %d", (seed) => {
    const problem = press(seed);
    const outcome = scheduleJobs(problem, { seed, iterations: 200 });
    if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
    expect(faultsOf(problem, outcome.value)).toEqual([]);
    expect(outcome.value.objectiveValue).toBe(Math.min(...orders([0, 1, 2, 3, 4, 5]).map((o) => costOf(problem, o))));
  });
});

describe("lines of several stages", () => {
  it("lets a job overtake another between stages when that is better", () => {
    // Two jobs of 4, 1, 1, 4 and 1, 4, 4, 1 minutes on four machines. By hand: in one order throughout, the last ends at 14
    // either way; B first on two machines and A first on the others ends at 12.
    const minutesOf = { A: [4, 1, 1, 4], B: [1, 4, 4, 1] };
    const problem: ScheduleProblem = {
      resources: ["0", "1", "2", "3"].map((id) => ({ id, capacity: 1 })),
      jobs: Object.entries(minutesOf).map(([id, row]) => ({
        id,
        dueMinute: 12,
        operations: row.map((minutes, stage) => step(`${stage}`, minutes)),
      })),
      objective: { weightedTardiness: 1 },
    };
    const outcome = scheduleJobs(problem, { seed: 1, iterations: 400 });
    expect(outcome.ok && outcome.value.objectiveValue).toBe(0);
  });

  it("gives the same schedule for the same seed and is never worse than its best start", () => {
    const random = seededRandom(7);
    const problem: ScheduleProblem = {
      resources: [
        { id: "cut", capacity: 2 },
        { id: "press", capacity: 1, changeoverMinutes: { a: { b: 9 }, b: { a: 9 } } },
        { id: "trim", capacity: 3 },
      ],
      jobs: Array.from({ length: 12 }, (_, job) => ({
        id: `j${job}`,
        dueMinute: 40 + intBelow(random, 80),
        operations: [
          step("cut", 5 + intBelow(random, 20)),
          { ...step("press", 5 + intBelow(random, 10)), family: job % 2 === 0 ? "a" : "b" },
          step("trim", 10 + intBelow(random, 20)),
        ],
      })),
      objective: { weightedTardiness: 1, changeover: 1, makespan: 1 },
    };
    const run = (iterations: number) => {
      const outcome = scheduleJobs(problem, { seed: 3, iterations });
      if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
      expect(faultsOf(problem, outcome.value)).toEqual([]);
      return outcome.value;
    };
    expect(run(500)).toEqual(run(500));
    expect(run(2_000).objectiveValue).toBeLessThanOrEqual(run(0).objectiveValue);
  });

  function step(resource: string, minutes: number) {
    return { id: resource, resource, minutes };
  }
});

import { describe, expect, it } from "vitest";
import { intBelow, seededRandom } from "#engine/math";
import { scheduleJobs } from "#engine/optimise";
import type { ScheduleProblem } from "#engine/schedule";
import { faultsOf } from "../../support/feasible";
import { leastCost } from "./enumerate";

/** Every problem small enough to try all that is possible; the search has to find the least. */
function reached(problem: ScheduleProblem, seed: number, iterations: number): number {
  const outcome = scheduleJobs(problem, { seed, iterations });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  expect(faultsOf(problem, outcome.value)).toEqual([]);
  expect(outcome.value.lowerBound).toBeLessThanOrEqual(outcome.value.objectiveValue);
  return outcome.value.objectiveValue;
}

const seeds = (count: number) => Array.from({ length: count }, (_, i) => i + 1);

function matrix(random: () => number, names: readonly string[], below: number) {
  return Object.fromEntries(
    names.map((from) => [from, Object.fromEntries(names.map((to) => [to, from === to ? 0 : intBelow(random, below)]))]),
  );
}

/** Four jobs over three machines in any order, some released later. */
function jobShop(seed: number, objective: ScheduleProblem["objective"]): ScheduleProblem {
  const random = seededRandom(seed);
  return {
    resources: ["0", "1", "2"].map((id) => ({ id, capacity: 1 })),
    jobs: Array.from({ length: 4 }, (_, j) => {
      const order = ["0", "1", "2"].sort(() => intBelow(random, 3) - 1);
      return {
        id: `j${j}`,
        releaseMinute: seed % 2 === 0 ? intBelow(random, 15) : 0,
        dueMinute: 10 + intBelow(random, 25),
        weight: 1 + intBelow(random, 3),
        operations: order.map((resource) => ({ id: resource, resource, minutes: 1 + intBelow(random, 9) })),
      };
    }),
    objective,
  };
}

describe("job shops of 4 × 3", () => {
  it.for(seeds(30))("are as short as can be: %d", (seed) => {
    const problem = jobShop(seed, "makespan");
    expect(reached(problem, seed, 300)).toBe(leastCost(problem));
  });

  it.for(seeds(20))("are as little late as can be: %d", (seed) => {
    const problem = jobShop(100 + seed, { weightedTardiness: 1 });
    expect(reached(problem, seed, 2_000)).toBe(leastCost(problem));
  });
});

describe("one machine with setups and due dates", () => {
  it.for(seeds(25))("is as little late as any of 5,040 orders: %d", (seed) => {
    const random = seededRandom(200 + seed);
    const problem: ScheduleProblem = {
      resources: [
        { id: "m", capacity: 1, changeoverMinutes: matrix(random, ["a", "b", "c", "d"], 15), initialFamily: "a" },
      ],
      jobs: Array.from({ length: 7 }, (_, j) => ({
        id: `j${j}`,
        releaseMinute: seed % 3 === 0 ? intBelow(random, 25) : 0,
        dueMinute: 10 + intBelow(random, 60),
        weight: 1 + intBelow(random, 4),
        operations: [
          {
            id: "o",
            resource: "m",
            minutes: 2 + intBelow(random, 10),
            family: ["a", "b", "c", "d"][intBelow(random, 4)] ?? "a",
          },
        ],
      })),
      objective: { weightedTardiness: 1, changeover: seed % 2 },
    };
    expect(reached(problem, seed, 400)).toBe(leastCost(problem));
  });
});

describe("two stages with several machines", () => {
  it.for(seeds(25))("of five jobs cost as little as can be: %d", (seed) => {
    const random = seededRandom(300 + seed);
    const problem: ScheduleProblem = {
      resources: [
        { id: "0", capacity: 1 + (seed % 2) },
        { id: "1", capacity: 2 },
      ],
      jobs: Array.from({ length: 5 }, (_, j) => ({
        id: `j${j}`,
        dueMinute: 10 + intBelow(random, 25),
        weight: 1 + intBelow(random, 3),
        operations: ["0", "1"].map((resource) => ({
          id: resource,
          resource,
          minutes: 1 + intBelow(random, 12),
          ...(intBelow(random, 4) === 0 ? { releaseMinute: intBelow(random, 25) } : {}),
        })),
      })),
      objective: seed % 3 === 0 ? { weightedTardiness: 1 } : "makespan",
    };
    expect(reached(problem, seed, 2_000)).toBe(leastCost(problem));
  });
});

describe("a press with moulds behind a bench, in a working day", () => {
  // A mould change takes its time in open hours; curing holds the press over lunch and night.
  it.for(seeds(8))("cost as little as can be: %d", (seed) => {
    const random = seededRandom(400 + seed);
    const problem: ScheduleProblem = {
      calendars: {
        day: {
          windows: [
            [480, 720],
            [750, 990],
          ],
        },
      },
      resources: [
        { id: "bench", capacity: 1, calendar: "day" },
        {
          id: "press",
          capacity: 1,
          calendar: "day",
          initialFamily: "a",
          changeoverMinutes: matrix(random, ["a", "b", "c"], 60),
        },
      ],
      jobs: Array.from({ length: 5 }, (_, j) => ({
        id: `j${j}`,
        dueMinute: 720 + intBelow(random, 2400),
        weight: 1 + intBelow(random, 3),
        operations: [
          { id: "lay-up", resource: "bench", minutes: 20 + intBelow(random, 60) },
          {
            id: "press",
            resource: "press",
            minutes: 10 + intBelow(random, 30),
            unattendedMinutes: 60 + intBelow(random, 90),
            holdsDuring: ["press"],
            family: ["a", "b", "c"][intBelow(random, 3)] ?? "a",
            uninterrupted: true,
          },
        ],
      })),
      objective: { weightedTardiness: 1, changeover: 2 },
    };
    expect(reached(problem, seed, 10_000)).toBe(leastCost(problem));
  });
});

describe("projects of eight activities", () => {
  it.for(seeds(20))("are as short as can be: %d", (seed) => {
    const random = seededRandom(500 + seed);
    const problem: ScheduleProblem = {
      resources: [{ id: "r", capacity: 3 }],
      jobs: [
        {
          id: "project",
          operations: Array.from({ length: 8 }, (_, at) => ({
            id: `${at}`,
            minutes: 1 + intBelow(random, 9),
            after: Array.from({ length: at }, (_, k) => `${k}`).filter(() => intBelow(random, 4) === 0),
            uses: [{ resource: "r", units: 1 + intBelow(random, 3) }],
          })),
        },
      ],
      objective: "makespan",
    };
    expect(reached(problem, seed, 400)).toBe(leastCost(problem));
  });
});

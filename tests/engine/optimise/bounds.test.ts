/** Heads, tails and lower bounds of small shops, worked by hand; minutes throughout. */
import { describe, expect, it } from "vitest";
import { compileProblem, type ScheduleProblem } from "#engine/schedule";
import { lowerBound } from "../../../lib/engine/optimise/bounds";
import { earliestEnds, heads, tails } from "../../../lib/engine/optimise/heads-tails";

const compiled = (change: Partial<ScheduleProblem>) =>
  compileProblem({
    resources: [
      { id: "m", capacity: 1 },
      { id: "n", capacity: 1 },
    ],
    jobs: [],
    objective: "makespan",
    ...change,
  });
const makespan = { makespan: 1, weightedTardiness: 0, changeover: 0 };

describe("heads and tails", () => {
  // A: 3 on m, cure 4; then 5 on n. B: 2 on n from minute 10 on.
  const two = compiled({
    jobs: [
      {
        id: "A",
        operations: [
          { id: "a1", minutes: 3, resource: "m", unattendedMinutes: 4 },
          { id: "a2", minutes: 5, resource: "n" },
        ],
      },
      { id: "B", releaseMinute: 10, operations: [{ id: "b1", minutes: 2, resource: "n" }] },
    ],
  });

  it("are the least time before an operation and behind its work", () => {
    expect([...heads(two)]).toEqual([0, 7, 10]);
    expect([...earliestEnds(two)]).toEqual([7, 12, 12]);
    expect([...tails(two)]).toEqual([9, 0, 0]);
  });

  it("follow the longest way where ways join, a fixed start and the hours", () => {
    const join = compiled({
      calendars: { c: { windows: [[480, 720]] } },
      resources: [
        { id: "m", capacity: 1, calendar: "c" },
        { id: "n", capacity: 1 },
      ],
      jobs: [
        {
          id: "A",
          operations: [
            { id: "x", minutes: 30, resource: "m", after: [] },
            { id: "y", minutes: 90, resource: "n", after: [], fixed: { startMinute: 600 } },
            { id: "z", minutes: 60, resource: "m", after: ["x", "y"], uninterrupted: true },
          ],
        },
      ],
    });
    // x begins when the shop opens; y is done at 690, and an hour fits no more that day: z begins the next, at 1440 + 480.
    expect([...heads(join)]).toEqual([480, 600, 1920]);
    expect([...earliestEnds(join)]).toEqual([510, 690, 1980]);
    expect([...tails(join)]).toEqual([60, 60, 0]);
  });
});

describe("the lower bound", () => {
  const job = (id: string, minutes: readonly (readonly [string, number])[], more: object = {}) => ({
    id,
    operations: minutes.map(([resource, amount], index) => ({ id: `${id}${index}`, minutes: amount, resource })),
    ...more,
  });

  it("is the longest job where no machine has more to do", () => {
    expect(
      lowerBound(
        compiled({
          jobs: [
            job("A", [
              ["m", 9],
              ["n", 9],
            ]),
            job("B", [["m", 1]]),
          ],
        }),
        makespan,
      ),
    ).toBe(18);
  });

  it("is the work of the fullest machine between the shortest way to it and from it", () => {
    // Three jobs of 2 on m, then 5 on n: n cannot begin before 2 and has 15 to do.
    const jobs = ["A", "B", "C"].map((id) =>
      job(id, [
        ["m", 2],
        ["n", 5],
      ]),
    );
    expect(lowerBound(compiled({ jobs }), makespan)).toBe(17);
    // The other way round n's 15 come first, and the last of them has 2 on m behind it.
    const turned = ["A", "B", "C"].map((id) =>
      job(id, [
        ["n", 5],
        ["m", 2],
      ]),
    );
    expect(lowerBound(compiled({ jobs: turned }), makespan)).toBe(17);
  });

  it("counts those alone that cannot begin early", () => {
    // Two jobs of 5 released at 20, one of 5 at 0: 20 + 10.
    const jobs = [
      job("A", [["m", 5]]),
      job("B", [["m", 5]], { releaseMinute: 20 }),
      job("C", [["m", 5]], { releaseMinute: 20 }),
    ];
    expect(lowerBound(compiled({ jobs }), makespan)).toBe(30);
  });

  it("shares the work among the units of a resource, and counts what a cure holds", () => {
    const pool = (capacity: number, holdsDuring: readonly string[]) =>
      compiled({
        resources: [{ id: "m", capacity }],
        jobs: ["A", "B", "C"].map((id) => ({
          id,
          operations: [{ id: "o", minutes: 5, resource: "m", unattendedMinutes: 10, holdsDuring }],
        })),
      });
    expect(lowerBound(pool(1, ["m"]), makespan)).toBe(45);
    expect(lowerBound(pool(2, ["m"]), makespan)).toBe(23);
    expect(lowerBound(pool(1, []), makespan)).toBe(25);
  });

  it("weighs each part: lateness of each job alone in an empty shop by its own weight", () => {
    const jobs = [
      job("A", [["m", 10]], { dueMinute: 4, weight: 3 }),
      job("B", [["n", 10]], { dueMinute: 10, weight: 7 }),
    ];
    const problem = compiled({ jobs });
    expect(lowerBound(problem, { makespan: 0, weightedTardiness: 1, changeover: 0 })).toBe(18);
    expect(lowerBound(problem, { makespan: 0, weightedTardiness: 2, changeover: 9 })).toBe(36);
    expect(lowerBound(problem, { makespan: 2, weightedTardiness: 1, changeover: 0 })).toBe(38);
  });
});

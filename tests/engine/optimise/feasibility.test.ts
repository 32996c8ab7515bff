import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { scheduleJobs } from "#engine/optimise";
import { compileProblem, type JobSpec, type ScheduleProblem } from "#engine/schedule";
import { DispatchRun, dispatchModel } from "#engine/simulate";
import { faultsOf } from "../../support/feasible";

const families = ["a", "b", "c"] as const;

/** Small problems that use every part of the form: pools, groups, calendars, holds, changeovers, gaps, branches. */
const absences = fc
  .array(fc.tuple(fc.nat(1500), fc.integer({ min: 1, max: 900 })), { maxLength: 2 })
  .map((list): readonly (readonly [number, number])[] => {
    let end = 0;
    return list.map(([wait, length]) => {
      const from = end + wait;
      end = from + length;
      return [from, end] as const;
    });
  });

const jobsOf = fc.array(
  fc.record({
    release: fc.nat(600),
    due: fc.nat(4000),
    family: fc.constantFrom(...families),
    minutes: fc.array(fc.integer({ min: 1, max: 90 }), { minLength: 4, maxLength: 4 }),
    cure: fc.nat(900),
    gap: fc.integer({ min: 0, max: 60 }),
  }),
  { minLength: 1, maxLength: 6 },
);

const problems = fc
  .record({ jobs: jobsOf, press: absences, person: absences, bench: absences })
  .map(({ jobs, press, person, bench }): ScheduleProblem => {
    const changeoverMinutes = Object.fromEntries(
      families.map((from) => [from, Object.fromEntries(families.map((to) => [to, from === to ? 0 : 25]))]),
    );
    return {
      calendars: {
        day: {
          windows: [
            [480, 720],
            [750, 990],
          ],
          weekdays: [1, 2, 3, 4, 5],
          closedDays: [1],
          closures: [[500, 560]],
        },
        early: { windows: [[360, 840]] },
      },
      resources: [
        { id: "bench", capacity: 2, calendar: "day", unavailable: bench },
        { id: "press-1", capacity: 1, calendar: "day", changeoverMinutes, initialFamily: "a", unavailable: press },
        { id: "press-2", capacity: 1, calendar: "day", changeoverMinutes },
        { id: "ann", capacity: 1, calendar: "day" },
        { id: "bo", capacity: 1, calendar: "day", unavailable: person },
        { id: "cy", capacity: 1, calendar: "day" },
        { id: "saw", capacity: 1, calendar: "early" },
      ],
      jobs: jobs.map(
        ({ release, due, family, minutes, cure, gap }, j): JobSpec => ({
          id: `j${j}`,
          releaseMinute: release,
          dueMinute: due,
          weight: 1 + (j % 3),
          operations: [
            {
              id: "saw",
              uses: [{ resource: "saw" }, { anyOf: ["ann", "bo"] }],
              minutes: minutes[0] ?? 1,
              unattendedMinutes: cure,
            },
            { id: "side", resource: "bench", minutes: minutes[1] ?? 1, after: [] },
            {
              id: "lay-up",
              uses: [
                { resource: "bench", units: 2 },
                { anyOf: ["ann", "bo", "cy"], units: 2 },
              ],
              minutes: minutes[2] ?? 1,
              after: ["saw", "side"],
              uninterrupted: true,
            },
            {
              id: "press",
              uses: [{ anyOf: ["press-1", "press-2"] }, { anyOf: ["cy", "bo"] }],
              minutes: minutes[3] ?? 1,
              unattendedMinutes: cure,
              holdsDuring: ["press-1", "press-2"],
              maxGapMinutes: gap,
              uninterrupted: true,
              family,
            },
          ],
        }),
      ),
      objective: { makespan: 0.1, weightedTardiness: 1, changeover: 0.5 },
    };
  });

describe("scheduleJobs on random problems", () => {
  it("gives only schedules that can be carried out", () => {
    fc.assert(
      fc.property(problems, fc.nat(1000), (problem, seed) => {
        const outcome = scheduleJobs(problem, { seed, iterations: 60 });
        if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
        expect(faultsOf(problem, outcome.value)).toEqual([]);
      }),
      { numRuns: 60 },
    );
  });

  it("repeats itself for a seed and never gets worse with more iterations", () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const value = (iterations: number) => {
          const outcome = scheduleJobs(problem, { seed: 7, iterations });
          return outcome.ok ? outcome.value : null;
        };
        expect(value(50)).toEqual(value(50));
        expect(value(120)?.objectiveValue).toBeLessThanOrEqual(value(50)?.objectiveValue ?? 0);
        expect(value(50)?.lowerBound).toBeLessThanOrEqual(value(120)?.objectiveValue ?? 0);
      }),
      { numRuns: 20 },
    );
  });
});

describe("DispatchRun on random problems", () => {
  it("lets nobody stay on a press, a bench or with a person while these are away", () => {
    fc.assert(
      fc.property(problems, (problem) => {
        const compiled = compileProblem(problem);
        const rank = Float64Array.from(compiled.jobOf, (job) => compiled.due[job] as number);
        const run = new DispatchRun(dispatchModel(compiled, { rank }));
        run.run(null);
        const { busy } = run;
        for (let at = 0; at < busy.length; at += 5) {
          const [resource = 0, from = 0, to = 0] = busy.data.subarray(at, at + 3);
          for (const [gone, back] of problem.resources[resource]?.unavailable ?? []) {
            expect(from >= back || to <= gone).toBe(true);
          }
        }
        expect(Math.min(...run.end)).toBeGreaterThan(0);
      }),
      { numRuns: 60 },
    );
  });
});

describe("faultsOf", () => {
  it("sees an overlap, a broken gap and work in closed time", () => {
    const problem: ScheduleProblem = {
      calendars: { day: { windows: [[480, 720]] } },
      resources: [{ id: "m", capacity: 1, calendar: "day" }],
      jobs: [
        {
          id: "a",
          operations: [
            { id: "1", resource: "m", minutes: 10 },
            { id: "2", resource: "m", minutes: 10, maxGapMinutes: 5 },
          ],
        },
      ],
      objective: "makespan",
    };
    const entry = (operation: string, startMinute: number) => ({
      job: "a",
      operation,
      startMinute,
      workEndMinute: startMinute + 10,
      endMinute: startMinute + 10,
      resources: ["m"],
    });
    expect(faultsOf(problem, { operations: [entry("1", 480), entry("2", 485)] }).join()).toMatch(/carries 2 of 1/);
    expect(faultsOf(problem, { operations: [entry("1", 480), entry("2", 500)] }).join()).toMatch(/more than 5/);
    expect(faultsOf(problem, { operations: [entry("1", 470), entry("2", 480)] }).join()).toMatch(/closed/);
    expect(faultsOf(problem, { operations: [entry("1", 480), entry("2", 490)] })).toEqual([]);
  });
});

describe("scheduleJobs refuses", () => {
  const one = (operation: object, extra: object = {}): ScheduleProblem =>
    ({
      resources: [{ id: "m", capacity: 1 }],
      jobs: [
        {
          id: "a",
          operations: [
            { id: "1", resource: "m", minutes: 5 },
            { id: "2", resource: "m", minutes: 5, ...operation },
          ],
          ...extra,
        },
      ],
      objective: "makespan",
    }) as ScheduleProblem;
  const refusal = (problem: ScheduleProblem) => {
    const outcome = scheduleJobs(problem, { seed: 1, iterations: 50 });
    return outcome.ok ? null : [outcome.refusal.code, outcome.refusal.path];
  };

  it("names the field of what is wrong", () => {
    expect(refusal(one({ minutes: 1.5 }))).toEqual(["not-whole", "jobs.0.operations.1.minutes"]);
    expect(refusal(one({ minutes: -1 }))).toEqual(["out-of-range", "jobs.0.operations.1.minutes"]);
    expect(refusal(one({ resource: "x" }))).toEqual(["unknown-id", "jobs.0.operations.1.resource"]);
    expect(refusal(one({ id: "1" }))).toEqual(["duplicate-id", "jobs.0.operations.1.id"]);
    expect(refusal(one({ after: ["2"] }))).toEqual(["cycle", "jobs.0.operations"]);
    expect(refusal(one({ holdsDuring: ["m2"] }))).toEqual(["hold-not-used", "jobs.0.operations.1.holdsDuring"]);
    expect(refusal(one({}, { deadlineMinute: 9 }))).toEqual(["deadline-not-met", "jobs.0.deadlineMinute"]);
    expect(refusal(one({ fixed: { startMinute: 2 } }))).toEqual([
      "fixed-before-predecessor",
      "jobs.0.operations.1.fixed",
    ]);
  });
});

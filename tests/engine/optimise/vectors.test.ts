import { describe, expect, it } from "vitest";
import { johnsonOrder } from "#engine/handbook";
import { apparentTardinessCost, apparentTardinessCostWithSetups, scheduleJobs } from "#engine/optimise";
import { compileProblem, type ScheduleProblem } from "#engine/schedule";
import { DispatchRun, dispatchModel } from "#engine/simulate";
import truth from "../../fixtures/truth/queue.json";
import { faultsOf } from "../../support/feasible";

/** A check of fixtures/truth/queue.json; its source stands beside it there. */
function check(id: string) {
  const found = truth.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`no check "${id}"`);
  return found as unknown as { inputs: Record<string, never>; expected: Record<string, never> };
}

function solve(problem: ScheduleProblem, iterations = 5_000) {
  const outcome = scheduleJobs(problem, { seed: 1, iterations });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.refusal));
  expect(faultsOf(problem, outcome.value)).toEqual([]);
  return outcome.value;
}

describe("johnsonOrder", () => {
  it.for(["johnson-1954", "johnson-b"])("gives the exact order and makespan of %s, and the search agrees", (id) => {
    const { inputs, expected } = check(id);
    const [a, b] = [inputs.A, inputs.B] as unknown as [number[], number[]];
    expect(johnsonOrder(a, b)).toEqual(expected.sequence_0based);
    const problem: ScheduleProblem = {
      resources: [
        { id: "A", capacity: 1 },
        { id: "B", capacity: 1 },
      ],
      jobs: a.map((first, j) => ({
        id: `${j}`,
        operations: [
          { id: "A", resource: "A", minutes: first },
          { id: "B", resource: "B", minutes: b[j] ?? 0 },
        ],
      })),
      objective: "makespan",
    };
    expect(solve(problem).makespanMinutes).toBe(expected.makespan);
  });
});

describe("priority indices", () => {
  it("reproduces the ATC and ATCS tables", () => {
    const atc = check("atc-index");
    const { t, K, p, d, w } = atc.inputs as unknown as { t: number; K: number; p: number[]; d: number[]; w: number[] };
    const meanMinutes = p.reduce((sum, value) => sum + value, 0) / p.length;
    const jobs = p.map((minutes, i) => ({ minutes, due: d[i] ?? 0, weight: w[i] ?? 1 }));
    const expectedAtc = atc.expected.index as unknown as number[];
    jobs.forEach((job, i) => {
      expect(apparentTardinessCost(job, { time: t, lookAhead: K, meanMinutes })).toBeCloseTo(expectedAtc[i] ?? 0, 10);
    });
    const atcs = check("atcs-index");
    const setups = atcs.inputs.setup_from_last as unknown as number[];
    const expectedAtcs = atcs.expected.index as unknown as number[];
    jobs.forEach((job, i) => {
      const index = apparentTardinessCostWithSetups(
        { ...job, setupMinutes: setups[i] ?? 0 },
        { time: 0, lookAhead: 2, setupScale: 0.5, meanMinutes, meanSetupMinutes: 10 },
      );
      expect(index).toBeCloseTo(expectedAtcs[i] ?? 0, 10);
    });
  });
});

describe("single machine", () => {
  it("finds the enumerated optimum of weighted tardiness", () => {
    const { inputs, expected } = check("single-machine-7");
    const { p, d, w } = inputs as unknown as { p: number[]; d: number[]; w: number[] };
    const problem: ScheduleProblem = {
      resources: [{ id: "m", capacity: 1 }],
      jobs: p.map((minutes, i) => ({
        id: `${i}`,
        dueMinute: d[i] ?? 0,
        weight: w[i] ?? 1,
        operations: [{ id: "o", resource: "m", minutes }],
      })),
      objective: { weightedTardiness: 1 },
    };
    expect(solve(problem).objectiveValue).toBe(expected.min_twt);
    const alike = { ...problem, jobs: problem.jobs.map((job) => ({ ...job, weight: 1 })) };
    expect(solve(alike).objectiveValue).toBe(expected.min_total_tardiness);
    // Everything due at once: weighted tardiness is the weighted sum of the ends, which Smith's order minimises.
    const dueAtOnce = { ...problem, jobs: problem.jobs.map((job) => ({ ...job, dueMinute: 0 })) };
    expect(solve(dueAtOnce).objectiveValue).toBe(expected.min_sum_wC);
  });

  it("dispatches by due date and by weight over work as Jackson's and Smith's rules say", () => {
    const { inputs, expected } = check("single-machine-7");
    const { p, d, w } = inputs as unknown as { p: number[]; d: number[]; w: number[] };
    const jobs = p.map((minutes, i) => ({ id: `${i}`, operations: [{ id: "o", resource: "m", minutes }] }));
    const compiled = compileProblem({ resources: [{ id: "m", capacity: 1 }], jobs, objective: "makespan" });
    const ends = (ranks: readonly number[]) => {
      const run = new DispatchRun(dispatchModel(compiled, { rank: Float64Array.from(ranks) }));
      run.run(null);
      return Array.from(run.end);
    };
    const order = (found: readonly number[]) => [...found.keys()].sort((a, b) => (found[a] ?? 0) - (found[b] ?? 0));
    const late = (found: readonly number[]) =>
      found.reduce((sum, end, i) => sum + (w[i] ?? 0) * Math.max(0, end - (d[i] ?? 0)), 0);
    const byDue = ends(d);
    expect(order(byDue)).toEqual(expected.EDD_sequence);
    expect(late(byDue)).toBe(expected.EDD_twt);
    expect(Math.max(...byDue.map((end, i) => end - (d[i] ?? 0)))).toBe(expected.min_Lmax);
    const byWeight = ends(p.map((minutes, i) => minutes / (w[i] ?? 1)));
    expect(order(byWeight)).toEqual(expected.WSPT_sequence);
    expect(late(byWeight)).toBe(expected.WSPT_twt);
    expect(byWeight.reduce((sum, end, i) => sum + (w[i] ?? 0) * end, 0)).toBe(expected.min_sum_wC);
  });

  it("meets deadlines that lie as late as the least of the latest lateness, and refuses a minute less", () => {
    const { inputs, expected } = check("single-machine-7");
    const { p, d } = inputs as unknown as { p: number[]; d: number[] };
    const outcome = (lateness: number) =>
      scheduleJobs(
        {
          resources: [{ id: "m", capacity: 1 }],
          jobs: p.map((minutes, i) => ({
            id: `${i}`,
            deadlineMinute: (d[i] ?? 0) + lateness,
            operations: [{ id: "o", resource: "m", minutes }],
          })),
          objective: { weightedTardiness: 1 },
        },
        { seed: 1, iterations: 500 },
      );
    const least = Number(expected.min_Lmax);
    expect(outcome(least).ok).toBe(true);
    const refused = outcome(least - 1);
    expect(refused.ok ? null : refused.refusal.code).toBe("deadline-not-met");
  });

  it("finds the enumerated optima of the press sequence with changeovers", () => {
    const { inputs, expected } = check("press-sequence-8");
    const { run, family, due, weight, changeover } = inputs as unknown as Record<
      "run" | "family" | "due" | "weight",
      number[]
    > & {
      changeover: number[][];
    };
    const problem = (objective: ScheduleProblem["objective"]): ScheduleProblem => ({
      resources: [
        {
          id: "press",
          capacity: 1,
          initialFamily: "f0",
          changeoverMinutes: Object.fromEntries(
            changeover.map((row, i) => [`f${i}`, Object.fromEntries(row.map((value, k) => [`f${k}`, value]))]),
          ),
        },
      ],
      jobs: run.map((minutes, i) => ({
        id: `${i}`,
        dueMinute: due[i] ?? 0,
        weight: weight[i] ?? 1,
        operations: [{ id: "o", resource: "press", minutes, family: `f${family[i]}` }],
      })),
      objective,
    });
    const compiled = compileProblem(problem("makespan"));
    const byDue = new DispatchRun(dispatchModel(compiled, { rank: Float64Array.from(due) }));
    byDue.run(null);
    const late = Array.from(byDue.end, (end, i) => (weight[i] ?? 0) * Math.max(0, end - (due[i] ?? 0)));
    const finish = Math.max(...byDue.end);
    expect({
      twt: late.reduce((sum, value) => sum + value, 0),
      changeover: finish - run.reduce((sum, minutes) => sum + minutes, 0),
      finish,
    }).toEqual(expected.EDD);
    expect(solve(problem({ weightedTardiness: 1 })).objectiveValue).toBe(expected.min_twt);
    expect(solve(problem({ changeover: 1 })).changeoverMinutes).toBe(expected.min_changeover);
    expect(solve(problem({ weightedTardiness: 1, changeover: 2 })).objectiveValue).toBe(expected.min_twt_plus_2co);
    // The second goal decides among the best for the first.
    const onTime = solve(problem({ weightedTardiness: 1, changeover: 0.001 }));
    expect(onTime.changeoverMinutes).toBe(expected.changeover_time_at_min_twt);
    const fewChanges = solve(problem({ weightedTardiness: 0.001, changeover: 1 }));
    expect(fewChanges.weightedTardinessMinutes).toBe(expected.twt_at_min_changeover);
  });
});

describe("equal machines", () => {
  // Graham 1966, Bell System Technical Journal 45: a list may be 2 − 1/m times as long as the best, and this list is.
  it.for([2, 3, 4])("shows the worst list on %d machines, and the search finds the best schedule", (machines) => {
    const times = [...Array.from({ length: machines * (machines - 1) }, () => 1), machines];
    const problem: ScheduleProblem = {
      resources: [{ id: "m", capacity: machines }],
      jobs: times.map((minutes, i) => ({ id: `${i}`, operations: [{ id: "o", resource: "m", minutes }] })),
      objective: "makespan",
    };
    const rank = Float64Array.from(times, (_, i) => i);
    const run = new DispatchRun(dispatchModel(compileProblem(problem), { rank }));
    run.run(null);
    const best = solve(problem);
    expect(best.makespanMinutes).toBe(machines);
    expect(best.stoppedBy).toBe("proven");
    expect(Math.max(...run.end) / best.makespanMinutes).toBeCloseTo(2 - 1 / machines, 12);
  });
});

describe("press day", () => {
  it("reproduces the hand-worked day of the press with an unattended cure and a change of mould", () => {
    const { expected } = check("press-cycle-day");
    // 08:00 = minute 480; an 8 h shift; lay-up 1 h must be done in one go, cure 1.5 h may outlast the shift.
    const problem: ScheduleProblem = {
      calendars: { shift: { windows: [[480, 960]] } },
      resources: [
        {
          id: "press",
          capacity: 1,
          calendar: "shift",
          initialFamily: "A",
          changeoverMinutes: { A: { B: 30 }, B: { A: 30 } },
        },
      ],
      jobs: ["A", "A", "B", "B"].map((family, i) => ({
        id: `${i}`,
        operations: [
          {
            id: "press",
            resource: "press",
            minutes: 60,
            unattendedMinutes: 90,
            holdsDuring: ["press"],
            family,
            uninterrupted: true,
          },
        ],
      })),
      objective: { makespan: 1, changeover: 1 },
    };
    const starts = solve(problem).operations.map(({ startMinute }) => (startMinute - 480) / 60);
    expect(starts.sort((a, b) => a - b)).toEqual(expected.start_hours);
  });
});

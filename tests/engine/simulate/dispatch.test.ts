import { describe, expect, it } from "vitest";
import { compileProblem } from "#engine/schedule";
import { DispatchRun, dispatchModel } from "#engine/simulate";
import truth from "../../fixtures/truth/queue.json";

/** A check of fixtures/truth/queue.json; its source stands beside it there. */
function check(id: string) {
  const found = truth.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`no check "${id}"`);
  return found as unknown as { inputs: Record<string, never>; expected: Record<string, never> };
}

describe("dispatch by list", () => {
  /** Graham's nine tasks as nine one-operation… precedence crosses jobs, so they are one job. */
  function graham(machines: number, shorter: number, precedence: readonly (readonly [number, number])[]): number {
    const { inputs } = check("graham-anomalies");
    const times = inputs.times as unknown as number[];
    const compiled = compileProblem({
      resources: [{ id: "m", capacity: machines }],
      jobs: [
        {
          id: "tasks",
          operations: times.map((minutes, i) => ({
            id: `${i + 1}`,
            resource: "m",
            minutes: minutes - shorter,
            after: precedence.filter(([, to]) => to === i + 1).map(([from]) => `${from}`),
          })),
        },
      ],
      objective: "makespan",
    });
    const run = new DispatchRun(dispatchModel(compiled, { rank: Float64Array.from(times, (_, i) => i) }));
    run.run(null);
    return Math.max(...run.end);
  }

  it("shows Graham's four anomalies", () => {
    const { inputs, expected } = check("graham-anomalies");
    const all = inputs.precedence_1based as unknown as [number, number][];
    const fewer = all.filter(([from, to]) => !(from === 4 && (to === 5 || to === 6)));
    expect(graham(3, 0, all)).toBe(expected.base_3_machines);
    expect(graham(4, 0, all)).toBe(expected.machines_4);
    expect(graham(3, 1, all)).toBe(expected.all_times_minus_1);
    expect(graham(3, 0, fewer)).toBe(expected.precedence_4to5_4to6_removed);
  });
});

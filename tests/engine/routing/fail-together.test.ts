import { describe, expect, it } from "vitest";
import {
  chanceKept,
  dateOfDay,
  dayIndex,
  type FloorCatalog,
  failTogether,
  type PairOnFloor,
  prepareRuns,
  runRange,
  shopMinute,
} from "#engine/routing";
import { isoDate } from "#engine/units";
import { demoFloor } from "../../support/demo-floor";

const floor = demoFloor();
const now = shopMinute(isoDate("2026-10-05"), 9 * 60);

/** Pairs promised a day after another, the first of them soon. */
function queueOf(count: number, firstDay: string): readonly PairOnFloor[] {
  return Array.from({ length: count }, (_, i): PairOnFloor => {
    const mould = floor.moulds[i % floor.moulds.length];
    return {
      pairId: `pair-${i}`,
      route: {
        kind: "pair",
        mould: mould?.id ?? "",
        mouldFamily: mould?.family ?? "",
        extraMinutes: [],
        hasOwnGraphic: false,
      },
      operations: [],
      waitingOn: [],
      queuedAtMinute: now - count + i,
      promise: { class: "promise", date: dateOfDay(dayIndex(isoDate(firstDay)) + i) },
    };
  });
}

function runsOf(own: FloorCatalog, pairs: readonly PairOnFloor[], count = 200) {
  const runs = prepareRuns({ floor: own, changes: [], pairs, now }, 7);
  if (!runs.ok) throw new Error(runs.refusal.code);
  runRange(runs.value, count);
  return runs.value;
}

describe("promises that fail in the same future", () => {
  it("fail in the mean as often as each by itself", () => {
    const pairs = queueOf(12, "2026-10-16");
    const runs = runsOf(floor, pairs);
    const together = failTogether(runs);
    const kept = pairs.map(
      ({ pairId, promise }) => chanceKept(runs, pairId, promise?.date ?? isoDate("2026-10-16")) ?? 0,
    );
    expect(together?.mean).toBeCloseTo(1 - kept.reduce((sum, each) => sum + each, 0) / 12, 10);
    expect(together).toMatchObject({ promises: 12, runs: 200 });
    expect(together?.histogram.reduce((sum, each) => sum + each, 0)).toBe(200);
  });

  it("fail far more at once where the whole shop stands still, than each by itself would", () => {
    // A stop of thirty days in half of the futures' months, and nothing else that goes wrong: all of them or none. It comes
    // while these pairs are on the floor in a sixth of the futures.
    const shock = { probability: 0.5, windowWorkingDays: 30, delayWorkingDays: { low: 30, high: 30 } };
    const own = { ...floor, sharedShock: shock, pressDayLostProbability: 0, rework: [] };
    const together = failTogether(runsOf(own, queueOf(12, "2026-11-02")));
    expect(together?.oneOfTwenty).toBeGreaterThan(0.8);
    expect(together?.oneOfTwentyAlone).toBeLessThan(0.5);
    expect(together?.mean).toBeGreaterThan(0.05);
    expect(together?.mean).toBeLessThan(0.3);
  });

  it("are no more than they would be alone where nothing is shared", () => {
    // Redone work alone, each pair's own: seeds 1 to 200 differ in nothing that all share.
    const own = { ...floor, sharedShock: { ...floor.sharedShock, probability: 0 }, pressDayLostProbability: 0 };
    const together = failTogether(runsOf(own, queueOf(10, "2026-11-16")));
    expect(Math.abs((together?.oneOfTwenty ?? 1) - (together?.oneOfTwentyAlone ?? 0))).toBeLessThanOrEqual(0.1);
  });

  it("are not spoken of without a promise or a run", () => {
    expect(failTogether(runsOf(floor, []))).toBeNull();
    expect(failTogether(runsOf(floor, queueOf(2, "2026-11-02"), 0))).toBeNull();
    const unpromised = queueOf(2, "2026-11-02").map((pair) => ({ ...pair, promise: null }));
    expect(failTogether(runsOf(floor, unpromised))).toBeNull();
  });
});

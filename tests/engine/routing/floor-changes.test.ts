/** Days by the civil calendar: 9 October 2026 is a Friday; the windows are those of content/catalog/floor.json. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { type FloorChange, type PairOnFloor, planQueue, shopMinute, singleChanges } from "#engine/routing";
import { isoDate } from "#engine/units";
import { floorFileSchema, floorOf } from "#schemas/floor";

const floor = floorOf(
  floorFileSchema.parse(
    JSON.parse(readFileSync(path.resolve(import.meta.dirname, "../../../content/catalog/floor.json"), "utf8")),
  ),
  "America/Denver",
);
const at = (date: string, hour: number, minute = 0) => shopMinute(isoDate(date), hour * 60 + minute);
const evening = (date: string): FloorChange => ({
  kind: "overtime",
  fromMinute: at(date, 16, 30),
  toMinute: at(date, 18, 30),
});
const series: FloorChange = {
  kind: "overtime",
  fromMinute: at("2026-10-09", 16, 30),
  toMinute: at("2026-10-13", 18, 30),
  daily: { fromMinute: 990, toMinute: 1110 },
};

describe("singleChanges", () => {
  it("makes one evening of each working day, and leaves every other change as it is", () => {
    expect(singleChanges([series], floor.hours)).toEqual(["2026-10-09", "2026-10-12", "2026-10-13"].map(evening));
    expect(singleChanges([evening("2026-10-10")], floor.hours)).toEqual([evening("2026-10-10")]);
    // Thanksgiving and the day after, and begun when the first evening is half over.
    const late = { ...series, fromMinute: at("2026-11-25", 17, 30), toMinute: at("2026-11-30", 18, 30) };
    expect(singleChanges([late], floor.hours).map((change) => "fromMinute" in change && change.fromMinute)).toEqual([
      at("2026-11-25", 17, 30),
      at("2026-11-30", 16, 30),
    ]);
  });

  it("gives the very plan that the evenings one by one give, other than the plan without", () => {
    const moulds = ["M95-178", "K68-150", "D117-172", "U92-158", "P75-146", "M84-150"];
    const pairs = moulds.map(
      (mould, index): PairOnFloor => ({
        pairId: `pair-${index}`,
        route: { kind: "pair", mould, mouldFamily: mould, extraMinutes: [], hasOwnGraphic: false },
        operations: [],
        waitingOn: [],
        queuedAtMinute: at("2026-10-01", 9) + index,
        promise: null,
      }),
    );
    const planned = (changes: readonly FloorChange[]) => {
      const plan = planQueue({ floor, changes, pairs, now: at("2026-10-09", 9) });
      if (!plan.ok) throw new Error(plan.refusal.code);
      return plan.value;
    };
    const together = planned([series]);
    expect(together).toEqual(planned(["2026-10-09", "2026-10-12", "2026-10-13"].map(evening)));
    expect(together.totals.finishMinute).toBeLessThan(planned([]).totals.finishMinute);
  });
});

/**
 * The drivers of a date must name a day that can be checked on its own: the day a press comes back, the day a delivery is due,
 * the days on which the plan has the same mould in the press. Dates are chosen by hand from the calendar of October 2026
 * (1 October 2026 is a Thursday).
 */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { causeText } from "#app/_ui/drivers.tsx";
import copy from "#content/copy/sheet.json";
import {
  type CandidatePair,
  type FloorChange,
  onlyWeekdays,
  type PairOnFloor,
  planQueue,
  promiseRuns,
  shopMinute,
} from "#engine/routing";
import { isoDate } from "#engine/units";
import { floorFileSchema, floorOf } from "#schemas/floor";

const floor = floorOf(
  floorFileSchema.parse(
    JSON.parse(readFileSync(path.resolve(import.meta.dirname, "../../../content/catalog/floor.json"), "utf8")),
  ),
  "America/Denver",
);
const now = shopMinute(isoDate("2026-10-05"), 9 * 60);
const options = { runs: 60, seed: 4 };

function pair(mould: string): CandidatePair {
  const family = floor.moulds.find(({ id }) => id === mould)?.family ?? "";
  return {
    route: { kind: "pair", mould, mouldFamily: family, extraMinutes: [], hasOwnGraphic: false },
    waitingOn: [],
  };
}

function driversOf(
  pairs: readonly PairOnFloor[],
  changes: readonly FloorChange[],
  candidate: CandidatePair = pair("M95-178"),
) {
  const range = promiseRuns({ floor, changes, pairs, now }, candidate, options);
  if (!range.ok) throw new Error(JSON.stringify(range.refusal));
  return range.value.drivers;
}

describe("the drivers of a date", () => {
  it("name the day on which every press is back", () => {
    const changes = floor.presses.map(
      ({ id }): FloorChange => ({
        kind: "press-down",
        press: id,
        fromMinute: now,
        toMinute: shopMinute(isoDate("2026-10-26"), 0),
      }),
    );
    const press = driversOf([], changes).find(({ code }) => code === "press-queue");
    expect(press?.untilDate).toBe("2026-10-26");
    expect(press?.workingDays).toBeGreaterThan(8);
  });

  it("name no day for the press when it is free", () => {
    expect(driversOf([], []).filter(({ code }) => code === "press-queue")).toEqual([]);
  });

  it("name the mould, and the day on which it is back", () => {
    const away: FloorChange = {
      kind: "mould-out",
      mould: "M95-178",
      fromMinute: now,
      toMinute: shopMinute(isoDate("2026-10-28"), 0),
    };
    const mould = driversOf([], [away]).find(({ code }) => code === "mould");
    expect(mould).toMatchObject({ mould: "M95-178", untilDate: "2026-10-28" });
    expect(mould?.mouldDays).toBeUndefined();
  });

  it("name the day of a delivery and of a proof", () => {
    const waits = [
      { reason: "material", holdsUpStation: "kit", expectedDate: isoDate("2026-10-22") },
      { reason: "proof", holdsUpStation: "print", expectedDate: isoDate("2026-10-29") },
    ] as const;
    const material = driversOf([], [], { ...pair("M95-178"), waitingOn: waits.slice(0, 1) });
    expect(material.find(({ code }) => code === "material")?.untilDate).toBe("2026-10-22");
    // Only the later of the two decides.
    const both = driversOf([], [], { ...pair("M95-178"), waitingOn: waits });
    expect(both.find(({ code }) => code === "proof")?.untilDate).toBe("2026-10-29");
    expect(both.some(({ code }) => code === "material")).toBe(false);
  });

  it("name only days on which the plan has the mould in a press", () => {
    const pairs = Array.from(
      { length: 24 },
      (_, i): PairOnFloor => ({
        pairId: `pair-${i}`,
        ...pair("M95-178"),
        operations: ["strips", "core-glue", "sidewalls", "profile", "base-cut", "edges", "print", "kit"].map(
          (station) => ({ station, state: "done", doneAtMinute: now - 3000 }),
        ),
        queuedAtMinute: now - 100 * (24 - i),
        promise: { class: "promise", date: isoDate("2026-11-20") },
      }),
    );
    const plan = planQueue({ floor, changes: [], pairs, now });
    if (!plan.ok) throw new Error(JSON.stringify(plan.refusal));
    const planned = new Set(plan.value.pressPlan.map(({ date }) => date));
    const press = driversOf(pairs, []).find(({ mouldDays }) => mouldDays !== undefined);
    expect(press?.mouldDays?.length).toBeGreaterThan(2);
    for (const day of press?.mouldDays ?? []) {
      expect(planned.has(day)).toBe(true);
      expect(day <= (press?.untilDate ?? "")).toBe(true);
    }
    const other = driversOf(pairs, [], pair("K68-162"));
    expect(other.every(({ mouldDays }) => mouldDays === undefined)).toBe(true);
  });
});

describe("a mould's habit", () => {
  it("is a weekday only when the days keep to it", () => {
    const days = (...all: string[]) => all.map(isoDate);
    // 6, 13, 20 October 2026 are Tuesdays; 8 and 15 Thursdays.
    expect(onlyWeekdays(days("2026-10-06", "2026-10-13", "2026-10-20"))).toEqual([2]);
    expect(onlyWeekdays(days("2026-10-15", "2026-10-06", "2026-10-13", "2026-10-08"))).toEqual([2, 4]);
    expect(onlyWeekdays(days("2026-10-06", "2026-10-08"))).toEqual([]);
    expect(onlyWeekdays(days("2026-10-06", "2026-10-13", "2026-10-08"))).toEqual([]);
    expect(onlyWeekdays([])).toEqual([]);
  });

  it("is told in a sentence", () => {
    const driver = { code: "press-queue", workingDays: 9, untilDate: isoDate("2027-01-12") } as const;
    const tuesdays = [isoDate("2026-10-06"), isoDate("2026-10-13")];
    expect(causeText(driver, copy.date)).toBe("The press is full until 12 January");
    expect(causeText({ ...driver, mouldDays: tuesdays }, copy.date)).toBe(
      "The press is full until 12 January; your mould runs on Tuesdays",
    );
    expect(causeText({ ...driver, mouldDays: [isoDate("2026-10-06"), isoDate("2026-10-08")] }, copy.date)).toBe(
      "The press is full until 12 January; your mould runs on 6 October and 8 October",
    );
    expect(causeText({ code: "work", workingDays: 1 }, copy.date)).toBe("Work on your pair");
  });
});

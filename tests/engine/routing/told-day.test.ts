/**
 * The day that is told for so much working time from now: work that ends as the shop closes is ready that day, not the next.
 * The demo floor works 07:30–12:00 and 12:30–16:30, 510 minutes a day, Monday to Friday; 26 and 27 November 2026 are closed.
 */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { prepareRuns, shopMinute } from "#engine/routing";
import { isoDate } from "#engine/units";
import { rangeLevelsOf } from "#lib/engine/routing/promise";

const { floor } = loadCatalog();
const at = (time: string) => Number(time.slice(0, 2)) * 60 + Number(time.slice(3));

/** All levels of a sample of one. */
function told(day: string, time: string, workMinutes: number) {
  const now = shopMinute(isoDate(day), at(time));
  const runs = prepareRuns({ floor, changes: [], pairs: [], now }, 1);
  if (!runs.ok) throw new Error(runs.refusal.code);
  return rangeLevelsOf(runs.value, Float64Array.of(workMinutes));
}

describe("the day that is told", () => {
  it.each([
    ["2026-11-09", "07:30", 1, "2026-11-09"],
    ["2026-11-09", "07:30", 270, "2026-11-09"],
    ["2026-11-09", "07:30", 510, "2026-11-09"],
    ["2026-11-09", "07:30", 511, "2026-11-10"],
    ["2026-11-09", "07:30", 1020, "2026-11-10"],
    ["2026-11-09", "10:00", 360, "2026-11-09"],
    ["2026-11-09", "10:00", 361, "2026-11-10"],
    // Over lunch the clock of work stands.
    ["2026-11-09", "12:15", 240, "2026-11-09"],
    ["2026-11-09", "12:15", 241, "2026-11-10"],
    ["2026-11-09", "16:29", 1, "2026-11-09"],
    ["2026-11-09", "16:30", 1, "2026-11-10"],
    ["2026-11-09", "16:30", 510, "2026-11-10"],
    ["2026-11-09", "22:00", 0, "2026-11-10"],
    ["2026-11-09", "08:00", 0, "2026-11-09"],
    // Friday to Monday, and over the two closed days.
    ["2026-11-13", "07:30", 510, "2026-11-13"],
    ["2026-11-13", "07:30", 511, "2026-11-16"],
    ["2026-11-25", "07:30", 510, "2026-11-25"],
    ["2026-11-25", "07:30", 511, "2026-11-30"],
    ["2026-12-31", "07:30", 511, "2027-01-04"],
  ])("%s %s and %d minutes of work: %s", (day, time, workMinutes, ready) => {
    const { dates } = told(day, time, workMinutes);
    expect(new Set(Object.values(dates))).toEqual(new Set([ready]));
  });

  it.each([
    [510, 1],
    [255, 0.5],
    [1275, 2.5],
  ])("%d minutes are %d working days", (workMinutes, days) => {
    expect(new Set(Object.values(told("2026-11-09", "07:30", workMinutes).workingDays))).toEqual(new Set([days]));
  });

  it("takes the half and the nine of ten of the sample, each its own day", () => {
    const now = shopMinute(isoDate("2026-11-09"), at("07:30"));
    const runs = prepareRuns({ floor, changes: [], pairs: [], now }, 1);
    if (!runs.ok) throw new Error(runs.refusal.code);
    // Ten runs that end on ten working days from Monday on: the fifth is a Friday, the ninth a Thursday.
    const { dates } = rangeLevelsOf(
      runs.value,
      Float64Array.from({ length: 10 }, (_, index) => 510 * (index + 1)),
    );
    expect([dates.p50, dates.p90]).toEqual(["2026-11-13", "2026-11-19"]);
  });

  it("holds the share of the sample that ends by its close, which is more than its level", () => {
    const now = shopMinute(isoDate("2026-11-09"), at("07:30"));
    const runs = prepareRuns({ floor, changes: [], pairs: [], now }, 1);
    if (!runs.ok) throw new Error(runs.refusal.code);
    // Twenty runs, an hour apart, from the first minute on: nine end on Monday (0 to 480), nine on Tuesday (540 to 1020),
    // two on Wednesday. The tenth is a Tuesday, by whose close 18 are ready; the nineteenth is a Wednesday.
    const { dates, shares } = rangeLevelsOf(
      runs.value,
      Float64Array.from({ length: 20 }, (_, index) => 60 * index),
    );
    expect([dates.p10, dates.p50, dates.p90, dates.p95]).toEqual([
      "2026-11-09",
      "2026-11-10",
      "2026-11-10",
      "2026-11-11",
    ]);
    expect([shares.p10, shares.p50, shares.p90, shares.p95]).toEqual([0.45, 0.9, 0.9, 1]);
  });
});

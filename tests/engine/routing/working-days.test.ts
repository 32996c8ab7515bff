import { describe, expect, it } from "vitest";
import { addWorkingDays, type ShopHours, workingDaysBetween } from "#engine/routing";
import { isoDate } from "#engine/units";

// November 2026 by the civil calendar: the 26th (Thursday) and 27th are closed, the 28th and 29th a weekend.
const hours: ShopHours = {
  timeZone: "America/Denver",
  windows: [{ fromMinute: 450, toMinute: 990 }],
  workingWeekdays: [1, 2, 3, 4, 5],
  closedDays: [
    { date: isoDate("2026-11-26"), label: "holiday" },
    { date: isoDate("2026-11-27"), label: "holiday" },
  ],
};

describe("working days", () => {
  it.for([
    ["2026-11-23", 2, "2026-11-25"],
    ["2026-11-25", 1, "2026-11-30"],
    ["2026-11-25", 0, "2026-11-25"],
    ["2026-11-28", 0, "2026-11-30"],
    ["2026-11-28", 1, "2026-11-30"],
    ["2026-11-20", 5, "2026-12-01"],
  ] as const)("from %s, %d on, is %s", ([from, count, to]) => {
    expect(addWorkingDays(hours, isoDate(from), count)).toBe(to);
  });

  it("are counted both ways", () => {
    expect(workingDaysBetween(hours, isoDate("2026-11-20"), isoDate("2026-12-01"))).toBe(5);
    expect(workingDaysBetween(hours, isoDate("2026-12-01"), isoDate("2026-11-20"))).toBe(-5);
    expect(workingDaysBetween(hours, isoDate("2026-11-25"), isoDate("2026-11-25"))).toBe(0);
  });
});

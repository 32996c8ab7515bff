/** Days counted by hand on the calendar: 5 October 2026 is a Monday; 26 and 27 November 2026 the shop is closed. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { openQueue, planQueue, promiseRuns, shopMinute, waitForBought } from "#engine/routing";
import { isoDate } from "#engine/units";
import { floorFileSchema, floorOf } from "#schemas/floor";

const floor = floorOf(
  floorFileSchema.parse(
    JSON.parse(readFileSync(path.resolve(import.meta.dirname, "../../../content/catalog/floor.json"), "utf8")),
  ),
  "America/Denver",
);
const monday = isoDate("2026-10-05");
const now = shopMinute(monday, 9 * 60);
const metal = {
  extraMinutes: [
    { station: "lay-up", minutes: 15 },
    { station: "kit", minutes: 25 },
  ],
};
const route = {
  kind: "pair",
  mould: "M95-178",
  mouldFamily: "midlow-95",
  extraMinutes: [],
  hasOwnGraphic: false,
} as const;

function rangeWith(leadDays: number, waits = waitForBought({ ...metal, leadDays }, monday, floor)) {
  const candidate = { route, waitingOn: waits === null ? [] : [waits] };
  const range = promiseRuns({ floor, changes: [], pairs: [], now }, candidate, { runs: 60, seed: 4 });
  if (!range.ok) throw new Error(range.refusal.code);
  return range.value;
}

describe("waitForBought", () => {
  it("counts working days from the order and holds up the first station that needs it", () => {
    const wait = (leadDays: number, on: string) => waitForBought({ ...metal, leadDays }, isoDate(on), floor);
    expect(wait(0, "2026-10-05")).toBeNull();
    expect(wait(2, "2026-10-05")).toEqual({ reason: "material", holdsUpStation: "kit", expectedDate: "2026-10-07" });
    // Friday to Tuesday, over the weekend; Wednesday before Thanksgiving to Tuesday.
    expect(wait(2, "2026-10-09")?.expectedDate).toBe("2026-10-13");
    expect(wait(2, "2026-11-25")?.expectedDate).toBe("2026-12-01");
    expect(waitForBought({ extraMinutes: [], leadDays: 1 }, monday, floor)?.holdsUpStation).toBe("kit");
  });
});

describe("a bought part's lead", () => {
  it("does not move a date whose core takes longer anyway", () => {
    // Four glued stations with clamp and cure (hours to a day each) outlast a part that is here tomorrow.
    expect(rangeWith(1).dates).toEqual(rangeWith(0).dates);
  });

  it("moves the date when it is long, by no more than itself, and says so with the day", () => {
    const [plain, bought] = [rangeWith(0), rangeWith(25)];
    // Twenty-five working days after Monday 5 October: Monday 9 November.
    const driver = bought.drivers.find(({ code }) => code === "material");
    expect(driver?.untilDate).toBe("2026-11-09");
    expect(plain.drivers.some(({ code }) => code === "material")).toBe(false);
    // Kit, lay-up, press, a day of rest, trim, finish, check still come after it: more than two days.
    expect(bought.workingDays.p50).toBeGreaterThan(25 + 2);
    expect(bought.workingDays.p50 - plain.workingDays.p50).toBeLessThanOrEqual(25);
  });

  it("keeps an open pair's kit off the plan until it is here, and nothing of a kit that is made", () => {
    const wait = waitForBought({ ...metal, leadDays: 8 }, monday, floor);
    const pair = {
      pairId: "p",
      route,
      operations: [],
      waitingOn: wait === null ? [] : [wait],
      queuedAtMinute: now,
      promise: null,
    };
    const plan = planQueue({ floor, changes: [], pairs: [pair], now });
    if (!plan.ok) throw new Error(plan.refusal.code);
    const startOf = (station: string) => plan.value.operations.find((each) => each.station === station)?.date ?? "";
    expect(startOf("kit") >= "2026-10-15").toBe(true);
    // The other branches do not wait for it.
    expect(startOf("print") < "2026-10-15").toBe(true);
    expect(openQueue({ floor, changes: [], pairs: [pair], now }).ok).toBe(true);
  });
});

/** Ranks, places, windows and causes of the queue, each worked by hand. Day 0 is 1 January 1970, a Thursday. */
import { describe, expect, it } from "vitest";
import {
  addWorkingDays,
  dateOfDay,
  dateOfShopMinute,
  dayIndex,
  type FloorChange,
  floorWithChanges,
  hoursChanges,
  type PairOnFloor,
  pairRank,
  shopMinute,
  standingOf,
  stationsWithOvertime,
  unavailableWindows,
  weekdayOf,
  workingDaysBetween,
} from "#engine/routing";
import { isoDate } from "#engine/units";
import { CauseTallies, usualDays } from "../../../lib/engine/routing/drivers";
import { inQueueOrder, placesFor, withPlaces } from "../../../lib/engine/routing/reorder";

const day = 1440;

describe("days of the shop", () => {
  it.each([
    // Published calendars: 1 January 1970 a Thursday, 29 February 2000 a Tuesday, 1 March 1900 a Thursday, 31 December 2026 a Thursday.
    ["1970-01-01", 0, 4],
    ["1969-12-31", -1, 3],
    ["2000-02-29", 11_016, 2],
    ["2000-03-01", 11_017, 3],
    ["1900-03-01", -25_508, 4],
    ["2026-12-31", 20_818, 4],
    ["2027-01-03", 20_821, 7],
  ])("%s is day %d, weekday %d", (date, index, weekday) => {
    expect(dayIndex(isoDate(date))).toBe(index);
    expect(dateOfDay(index)).toBe(date);
    expect(weekdayOf(index)).toBe(weekday);
    expect(shopMinute(isoDate(date), 61)).toBe(index * day + 61);
    expect(dateOfShopMinute(index * day + 1439)).toBe(date);
  });

  it("are counted by the shop's week and holidays, both ways", () => {
    // Thursday 24 December 2026 to Monday 28; the 25th is a holiday.
    const hours = {
      workingWeekdays: [1, 2, 3, 4, 5],
      closedDays: [{ date: isoDate("2026-12-25"), label: "x" }],
      windows: [],
      timeZone: "",
    } as never;
    const on = (date: string) => isoDate(date);
    expect(workingDaysBetween(hours, on("2026-12-24"), on("2026-12-28"))).toBe(1);
    expect(workingDaysBetween(hours, on("2026-12-28"), on("2026-12-24"))).toBe(-1);
    expect(workingDaysBetween(hours, on("2026-12-24"), on("2026-12-24"))).toBe(0);
    expect(addWorkingDays(hours, on("2026-12-24"), 0)).toBe("2026-12-24");
    expect(addWorkingDays(hours, on("2026-12-25"), 0)).toBe("2026-12-28");
    expect(addWorkingDays(hours, on("2026-12-24"), 1)).toBe("2026-12-28");
    expect(addWorkingDays(hours, on("2026-12-25"), 1)).toBe("2026-12-28");
    expect(addWorkingDays(hours, on("2026-12-23"), 3)).toBe("2026-12-29");
  });
});

const pair = (pairId: string, change: Partial<PairOnFloor>) =>
  ({ pairId, promise: null, queuedAtMinute: 0, ...change }) as PairOnFloor;
const placed = (pairId: string, placeMinute: number) => pair(pairId, { placeMinute });

describe("the rank of a pair", () => {
  const date = isoDate("1970-04-11");
  it.each([
    ["by hand, whatever it was promised", { placeMinute: 7, promise: { class: "hard-date", date } }, 7],
    ["by its promise", { promise: { class: "promise", date } }, 100 * day],
    ["a week before a hard date", { promise: { class: "hard-date", date } }, 93 * day],
    ["as if promised six weeks after it came", { queuedAtMinute: 10 }, 42 * day + 10],
    ["no later than its press slot", { placeMinute: 900, frozenPressStart: { press: "p", startMinute: 500 } }, 500],
    [
      "by its place when the slot is later",
      { placeMinute: 300, frozenPressStart: { press: "p", startMinute: 500 } },
      300,
    ],
  ] as const)("is %s", (_, change, rank) => {
    expect(pairRank(pair("a", change))).toBe(rank);
  });

  it("orders the queue, equals as they stand", () => {
    const order = inQueueOrder([placed("c", 5), placed("a", 1), placed("d", 5), placed("b", 2)]);
    expect(order.map(({ pairId }) => pairId)).toEqual(["a", "b", "c", "d"]);
  });
});

describe("a place before another pair", () => {
  const queue = [placed("a", 100), placed("b", 200), placed("c", 201), placed("d", 202)];
  it.each([
    ["first of all, a day before", "d", "a", [["d", 100 - day]]],
    ["last of all, a day behind", "a", null, [["a", 202 + day]]],
    ["half way where there is room", "d", "b", [["d", 150]]],
    ["half way, the earlier minute", "a", "b", [["a", 200 - day]]],
    [
      "one minute before, the ones in front moved up as little as needed",
      "a",
      "d",
      [
        ["a", 201],
        ["c", 200],
        ["b", 199],
      ],
    ],
  ] as const)("%s", (_, pairId, before, places) => {
    expect(placesFor(queue, pairId, before).map((each) => [each.pairId, each.placeMinute])).toEqual(places);
  });

  it("takes the minute between two that leave one", () => {
    expect(placesFor([placed("a", 100), placed("b", 102), placed("c", 300)], "c", "b")).toEqual([
      { pairId: "c", placeMinute: 101 },
    ]);
    expect(placesFor([placed("a", 100)], "a", null)).toEqual([{ pairId: "a", placeMinute: 0 }]);
  });

  it("is not given by or before one that is not there", () => {
    expect(() => placesFor(queue, "x", "a")).toThrow(/"x" is not in the queue/);
    expect(() => placesFor(queue, "a", "x")).toThrow(/"x" is not in the queue/);
  });

  it("is set, or taken away, and nobody else's", () => {
    const places = [
      { pairId: "a", placeMinute: 7 },
      { pairId: "b", placeMinute: null },
    ];
    expect(withPlaces(queue.slice(0, 3), places).map(({ placeMinute }) => placeMinute)).toEqual([7, undefined, 201]);
  });
});

describe("when something is not there", () => {
  const span = (fromMinute: number, toMinute: number) => ({ fromMinute, toMinute });
  const changes: readonly FloorChange[] = [
    { kind: "press-down", press: "p", ...span(1_100, 1_200) },
    { kind: "press-down", press: "p", ...span(1_150, 1_300) },
    { kind: "press-down", press: "p", ...span(900, 1_050) },
    { kind: "press-down", press: "q", ...span(1_400, 1_500) },
    { kind: "station-down", station: "s" as never, ...span(1_010, 1_020) },
    { kind: "person-away", person: "i", ...span(1_030, 1_040) },
    { kind: "mould-out", mould: "m", ...span(1_050, 1_060) },
    { kind: "mould-out", mould: "m", ...span(1_060, 1_070) },
    { kind: "extra-press", press: { id: "x", label: "X", kind: "heated" }, fromMinute: 1_500, toMinute: 1_600 },
    {
      kind: "extra-person",
      person: { id: "y", label: "Y", stations: [], isReserve: false },
      fromMinute: 1_700,
      toMinute: null,
    },
    { kind: "shop-closed", ...span(1_000, 9_000) },
  ] as never;
  const away = (who: object) => unavailableWindows(changes, who as never, 1_000);

  it("is told from the plan's own minute on, apart and ascending, each by its own name", () => {
    expect(away({ press: "p" })).toEqual([
      [0, 50],
      [100, 300],
    ]);
    expect(away({ press: "q" })).toEqual([[400, 500]]);
    expect(away({ station: "s" })).toEqual([[10, 20]]);
    expect(away({ person: "i" })).toEqual([[30, 40]]);
    expect(away({ mould: "m" })).toEqual([[50, 70]]);
    expect(away({ press: "none" })).toEqual([]);
  });

  it("what is added is away before and after, for good only before", () => {
    const [before, after] = away({ press: "x" });
    expect(before).toEqual([0, 500]);
    expect(after?.[0]).toBe(600);
    expect(after?.[1]).toBeGreaterThan(5 * 365 * day);
    expect(away({ person: "y" })).toEqual([[0, 700]]);
  });

  it("what is over before the plan begins is nothing", () => {
    expect(unavailableWindows(changes, { mould: "m" }, 1_070)).toEqual([]);
    expect(unavailableWindows(changes, { mould: "m" }, 1_065)).toEqual([[0, 5]]);
  });

  const hours: readonly FloorChange[] = [
    { kind: "shop-closed", ...span(1_100, 1_200) },
    { kind: "shop-closed", ...span(1_200, 1_300) },
    { kind: "overtime", ...span(1_400, 1_450) },
    { kind: "overtime", stations: ["s"], ...span(1_500, 1_550) },
  ] as never;

  it.each([
    [null, [[400, 450]]],
    [
      "s",
      [
        [400, 450],
        [500, 550],
      ],
    ],
    ["t", [[400, 450]]],
    [
      "any",
      [
        [400, 450],
        [500, 550],
      ],
    ],
  ] as const)("the shop's hours change for %s", (station, extraWindows) => {
    expect(hoursChanges(hours, 1_000, station as never)).toEqual({ closures: [[100, 300]], extraWindows });
    expect([...stationsWithOvertime(hours)]).toEqual(["s"]);
  });

  it("the floor has what is added, and rework as often as is said, never for certain", () => {
    const floor = {
      presses: [{ id: "p" }],
      crew: [{ id: "i" }],
      rework: [{ probability: 0.1 }, { probability: 0.5 }],
    } as never;
    const more = floorWithChanges(floor, [
      ...changes,
      { kind: "rework-factor", factor: 2 },
      { kind: "rework-factor", factor: 1.5 },
    ] as never);
    expect(more.presses.map(({ id }) => id)).toEqual(["p", "x"]);
    expect(more.crew.map(({ id }) => id)).toEqual(["i", "y"]);
    expect(more.rework[0]?.probability).toBeCloseTo(0.3, 12);
    expect(more.rework[1]?.probability).toBe(0.95);
    expect(floorWithChanges(floor, [])).toBe(floor);
  });
});

describe("how sure a promise is", () => {
  const dates = { p50: isoDate("2026-12-10"), p90: isoDate("2026-12-15") };
  it.each([
    ["2026-12-16", "safe"],
    ["2026-12-15", "safe"],
    ["2026-12-14", "at-risk"],
    ["2026-12-10", "at-risk"],
    ["2026-12-09", "late"],
  ])("promised for %s it is %s", (date, standing) => {
    expect(standingOf({ class: "promise", date: isoDate(date) }, dates)).toBe(standing);
  });
  it("and open without a promise", () => {
    expect(standingOf(null, dates)).toBe("open");
  });
});

describe("what a date is made of", () => {
  // Open eight hours a day: 480 working minutes.
  const floor = {
    hours: { windows: [{ fromMinute: 0, toMinute: 480 }], workingWeekdays: [1, 2, 3, 4, 5], closedDays: [] },
  } as never;
  const driversOf = (
    runs: readonly (readonly (readonly [string, number, number?])[])[],
    mouldDays: readonly string[] = [],
  ) => {
    const tallies = new CauseTallies();
    for (const run of runs) {
      for (const [cause, minutes, until] of run) tallies.book(cause, minutes, until);
      tallies.endRun();
    }
    return tallies.drivers(floor, 0, () => mouldDays.map(isoDate));
  };

  it("is the mean of the runs, the largest cause first, under a twentieth of a day left out", () => {
    const run = [
      ["work", 960],
      ["rework-and-shocks", 20],
    ] as const;
    expect(
      driversOf([
        run,
        [
          ["work", 480],
          ["crew:s", 480],
        ],
      ]),
    ).toEqual([
      { code: "work", workingDays: 1.5 },
      { code: "crew", workingDays: 0.5, station: "s" },
    ]);
    expect(driversOf([[["work", 48]]])).toEqual([{ code: "work", workingDays: 0.1 }]);
    expect(
      driversOf([
        [
          ["work", 0],
          ["other-wait", -5],
        ],
      ]),
    ).toEqual([]);
  });

  it("names the median day until which it waited, of the last wait of each run, when a quarter of the runs met it", () => {
    const wait = (until: number) => [["proof", 480, until]] as const;
    expect(driversOf([wait(3 * day), wait(1 * day), wait(2 * day)])).toMatchObject([
      { code: "proof", untilDate: "1970-01-03" },
    ]);
    expect(
      driversOf([
        [
          ["proof", 480, 5 * day],
          ["proof", 480, 2 * day],
        ],
      ]),
    ).toMatchObject([{ workingDays: 2, untilDate: "1970-01-06" }]);
    const seldom = (count: number) => driversOf([wait(day), ...Array.from({ length: count }, () => [])])[0];
    expect(seldom(3)).toMatchObject({ untilDate: "1970-01-02" });
    expect(seldom(4)).toEqual({ code: "proof", workingDays: 0.2 });
    expect(driversOf([[["work", 480, day]]])).toEqual([{ code: "work", workingDays: 1 }]);
  });

  it("names the mould, and its days where it waits for a press", () => {
    expect(driversOf([[["mould:M1", 480, day]]], ["1970-01-05"])).toEqual([
      { code: "mould", workingDays: 1, mould: "M1", untilDate: "1970-01-02", mouldDays: ["1970-01-05"] },
    ]);
    expect(driversOf([[["press-queue", 480, day]]], [])).toEqual([
      { code: "press-queue", workingDays: 1, untilDate: "1970-01-02" },
    ]);
    expect(driversOf([[["crew:s", 480, day]]], ["1970-01-05"])[0]).not.toHaveProperty("mouldDays");
  });

  it("takes days as usual that half of the runs have, at most six, earliest first", () => {
    const [mon, tue] = [100, day + 100];
    expect(usualDays([[tue, mon], [mon, mon], [tue], [day * 9]], 0)).toEqual([0, 1]);
    expect(usualDays([[tue], [mon], [mon]], 0)).toEqual([0]);
    expect(usualDays([[1300]], 200)).toEqual([1]);
    expect(usualDays([Array.from({ length: 9 }, (_, index) => index * day)], 0)).toEqual([0, 1, 2, 3, 4, 5]);
  });
});

/**
 * The board to scale. Expected values are worked out by hand from the shop's hours (07:30–12:00 and 12:30–16:30, Monday to
 * Friday, content/catalog/floor.json) and the calendar: 4 December 2026 is a Friday; 26 November 2026 is Thanksgiving.
 */
import { describe, expect, it } from "vitest";
import { dayIndex } from "#engine/routing";
import { isoDate } from "#engine/units";
import { boardDays, boardRows, type PlannedVisit, type ReasonedChange } from "#shop/board/station-board";
import { floorCatalog } from "#shop/floor/recipe";

const floor = floorCatalog();
const at = (date: string, hour: number, minute = 0) => dayIndex(isoDate(date)) * 1440 + hour * 60 + minute;

function visit(
  serial: string,
  station: string,
  startMinute: number,
  workEndMinute: number,
  freeMinute = workEndMinute,
) {
  const cell = { serial, station, state: "ready" as const, operationId: serial, pairId: serial, key: `s${station}` };
  const instants = { startsAt: "", endsAt: "", freeAt: "" };
  return { cell: { ...cell, ...instants }, standing: "safe", startMinute, workEndMinute, freeMinute } as PlannedVisit;
}

const rowOf = (station: string, visits: readonly PlannedVisit[], changes: readonly ReasonedChange[] = []) => {
  const days = boardDays(isoDate("2026-12-04"), 7, floor, changes);
  const [row] = boardRows([station], visits, days, changes);
  if (row === undefined) throw new Error("one station gives one row");
  return row;
};

describe("the days of the board", () => {
  it("leave weekends out and keep a closed weekday with its reason", () => {
    expect(boardDays(isoDate("2026-12-04"), 7, floor, []).map(({ date }) => date)).toEqual(
      ["2026-12-04", "2026-12-07", "2026-12-08", "2026-12-09", "2026-12-10"].map(isoDate),
    );
    const [wednesday, thursday] = boardDays(isoDate("2026-11-25"), 2, floor, []);
    expect(wednesday).toMatchObject({ axis: { fromMinute: 450, toMinute: 990 }, closedBecause: null });
    expect(thursday).toMatchObject({ open: [], closedBecause: "Thanksgiving" });
  });

  it("are longer by overtime, on a Saturday too, and empty when the shop closes", () => {
    const days = boardDays(isoDate("2026-12-04"), 4, floor, [
      {
        reason: "",
        change: { kind: "overtime", fromMinute: at("2026-12-04", 16, 30), toMinute: at("2026-12-04", 19) },
      },
      { reason: "", change: { kind: "overtime", fromMinute: at("2026-12-05", 8), toMinute: at("2026-12-05", 12) } },
      {
        reason: "burst pipe",
        change: { kind: "shop-closed", fromMinute: at("2026-12-07", 0), toMinute: at("2026-12-08", 0) },
      },
    ]);
    expect(days.map(({ date, axis, closedBecause }) => [date, axis.fromMinute, axis.toMinute, closedBecause])).toEqual([
      ["2026-12-04", 450, 1140, null],
      ["2026-12-05", 480, 720, null],
      ["2026-12-07", 0, 0, "burst pipe"],
    ]);
  });
});

describe("a bar", () => {
  it("stops for lunch and goes on over the weekend", () => {
    const [bar] = rowOf("edges", [visit("A", "edges", at("2026-12-04", 11, 30), at("2026-12-04", 13))]).bars;
    expect(bar?.attended.map(({ fromMinute, toMinute }) => [fromMinute, toMinute])).toEqual([
      [690, 720],
      [750, 780],
    ]);
    const [over] = rowOf("edges", [visit("A", "edges", at("2026-12-04", 16), at("2026-12-07", 8))]).bars;
    expect(over?.attended).toEqual([
      { date: "2026-12-04", fromMinute: 960, toMinute: 990 },
      { date: "2026-12-07", fromMinute: 450, toMinute: 480 },
    ]);
  });

  it("shows a cure as far as anybody is there to see it", () => {
    const pressed = visit("A", "press", at("2026-12-04", 15), at("2026-12-04", 15, 30), at("2026-12-04", 20));
    expect(rowOf("press", [pressed]).bars[0]?.unattended).toEqual([
      { date: "2026-12-04", fromMinute: 930, toMinute: 990 },
    ]);
  });

  it("lies on a line of its own while another is under way; a press is taken until it is free", () => {
    const first = visit("A", "press", at("2026-12-07", 8), at("2026-12-07", 8, 30), at("2026-12-07", 11));
    const second = visit("B", "press", at("2026-12-07", 9, 30), at("2026-12-07", 10), at("2026-12-07", 12));
    const third = visit("C", "press", at("2026-12-07", 11), at("2026-12-07", 12), at("2026-12-07", 14));
    const row = rowOf("press", [third, second, first]);
    expect(row.bars.map(({ serial, lane }) => [serial, lane])).toEqual([
      ["A", 0],
      ["B", 1],
      ["C", 0],
    ]);
    expect(row.lanes).toBe(2);
  });
});

describe("the serial of a bar", () => {
  it("stands on its widest piece, and beside one that is too short for it", () => {
    const [over] = rowOf("edges", [visit("A", "edges", at("2026-12-04", 16, 20), at("2026-12-07", 9))]).bars;
    expect(over?.label).toEqual({
      piece: { date: "2026-12-07", fromMinute: 450, toMinute: 540 },
      isBeside: false,
    });
    const [brief] = rowOf("edges", [visit("A", "edges", at("2026-12-07", 8), at("2026-12-07", 8, 20))]).bars;
    expect(brief?.label.isBeside).toBe(true);
    const [cut] = rowOf("edges", [visit("A", "edges", at("2026-12-07", 11, 30), at("2026-12-07", 12, 40))]).bars;
    expect(cut?.label).toEqual({ piece: { date: "2026-12-07", fromMinute: 750, toMinute: 760 }, isBeside: true });
  });

  it("is covered by no other bar of its line", () => {
    // Twenty minutes of work and a word of about an hour: what begins within that needs another line.
    const brief = visit("A", "edges", at("2026-12-07", 8), at("2026-12-07", 8, 20));
    const soon = visit("B", "edges", at("2026-12-07", 9), at("2026-12-07", 11));
    const later = visit("C", "edges", at("2026-12-07", 10), at("2026-12-07", 11));
    expect(rowOf("edges", [brief, soon, later]).bars.map(({ serial, lane }) => [serial, lane])).toEqual([
      ["A", 0],
      ["B", 1],
      ["C", 0],
    ]);
  });
});

describe("what is different about the floor", () => {
  it("marks the press that is down at the press alone", () => {
    const down: ReasonedChange = {
      reason: "pump",
      change: {
        kind: "press-down",
        press: floor.presses[0]?.id ?? "",
        fromMinute: at("2026-12-04", 15),
        toMinute: at("2026-12-07", 9),
      },
    };
    expect(rowOf("press", [], [down]).down).toEqual([
      { date: "2026-12-04", fromMinute: 900, toMinute: 990 },
      { date: "2026-12-07", fromMinute: 450, toMinute: 540 },
    ]);
    expect(rowOf("lay-up", [], [down]).down).toEqual([]);
  });

  it("gives overtime of two stations to these two alone", () => {
    const evening: ReasonedChange = {
      reason: "",
      change: {
        kind: "overtime",
        stations: ["lay-up", "press"],
        fromMinute: at("2026-12-04", 16, 30),
        toMinute: at("2026-12-04", 19),
      },
    };
    const long = (station: string) => visit("A", station, at("2026-12-04", 16), at("2026-12-04", 18));
    const lastMinute = (station: string) =>
      rowOf(station, [long(station)], [evening]).bars[0]?.attended.at(-1)?.toMinute;
    expect(lastMinute("lay-up")).toBe(1080);
    expect(lastMinute("edges")).toBe(990);
  });
});

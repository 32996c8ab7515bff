/** What one ski built again does a second time, by fault and by how far the pair has come: common practice, no source. */
import { describe, expect, it } from "vitest";
import { type ReworkFault, redoPlan, reworkStarts, type StationVisit } from "#engine/floor";
import { demoFloor } from "../../support/demo-floor";
import { stationCalled, stationNames } from "../floor-stations";

const floor = demoFloor();

/** The station that makes a fault good at the earliest. */
const madeGoodAt: Readonly<Record<ReworkFault, string>> = {
  "void-after-press": "strips",
  "core-wrong": "strips",
  "outside-limits": "strips",
  "base-damaged": "base-cut",
  "edge-wrong": "edges",
  "topsheet-nicked": "print",
};

/** Done up to and with a station of the floor's order, the rest blocked. */
function doneTo(last: string): StationVisit[] {
  const end = stationNames.indexOf(last);
  return stationNames.map((name, index) => ({
    station: stationCalled(name),
    visit: 0,
    state: index <= end ? "done" : "blocked",
  }));
}

const named = (stations: readonly string[]) => stations.join(" ");

interface Row {
  readonly fault: ReworkFault;
  readonly done: string;
  readonly again: string;
  /** Those that can begin at once. */
  readonly ready: string;
}

const rows: readonly Row[] = [
  // Nothing is laid up: only what follows on the same branch is lost.
  { fault: "core-wrong", done: "kit", again: "strips core-glue sidewalls profile", ready: "strips" },
  { fault: "base-damaged", done: "kit", again: "base-cut edges", ready: "base-cut" },
  { fault: "edge-wrong", done: "kit", again: "edges", ready: "edges" },
  { fault: "topsheet-nicked", done: "kit", again: "print", ready: "print" },
  // Pressed: everything from that station on is in one piece with it.
  {
    fault: "void-after-press",
    done: "press",
    again: "strips core-glue sidewalls profile base-cut edges print kit lay-up press",
    ready: "strips base-cut print kit",
  },
  {
    fault: "outside-limits",
    done: "check",
    again: "strips core-glue sidewalls profile base-cut edges print kit lay-up press trim finish check",
    ready: "strips base-cut print kit",
  },
  {
    fault: "base-damaged",
    done: "press",
    again: "base-cut edges print kit lay-up press",
    ready: "base-cut print kit",
  },
  { fault: "edge-wrong", done: "lay-up", again: "edges print kit lay-up", ready: "edges print kit" },
  { fault: "topsheet-nicked", done: "trim", again: "print kit lay-up press trim", ready: "print kit" },
  // Not come that far.
  { fault: "base-damaged", done: "profile", again: "", ready: "" },
  { fault: "topsheet-nicked", done: "edges", again: "", ready: "" },
];

describe("a ski built again", () => {
  it("is made good at the earliest station that can", () => {
    const found = reworkStarts(floor);
    expect(found).toEqual(madeGoodAt);
  });

  it.each(rows)("$fault when done to $done: $again", ({ fault, done, again, ready }) => {
    const { visits, brokenOff, blocked } = redoPlan(doneTo(done), stationCalled(madeGoodAt[fault]), floor);
    expect(named(visits.map(({ station }) => station))).toBe(again);
    expect(named(visits.filter(({ state }) => state === "ready").map(({ station }) => station))).toBe(ready);
    expect(visits.every(({ visit, isOneSki }) => visit === 1 && isOneSki)).toBe(true);
    expect([brokenOff, blocked]).toEqual([[], []]);
  });
});

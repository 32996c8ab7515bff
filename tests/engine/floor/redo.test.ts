import { describe, expect, it } from "vitest";
import { latestVisits, redoPlan, reworkFaults, reworkStarts, type StationVisit } from "#engine/floor";
import { demoFloor } from "../../support/demo-floor";

const floor = demoFloor();
const stations = floor.stations.map(({ id }) => id);

/** Done up to here along every branch, then one in this state, the rest blocked. */
function stood(done: readonly string[], others: Readonly<Record<string, StationVisit["state"]>> = {}): StationVisit[] {
  return stations.map((station) => ({
    station,
    visit: 0,
    state: done.includes(station) ? "done" : (others[station] ?? "blocked"),
  }));
}

const upTo = (last: string) => stations.slice(0, stations.indexOf(last) + 1);
const branches = ["strips", "core-glue", "sidewalls", "profile", "base-cut", "edges", "print", "kit"];

describe("redoPlan", () => {
  it("builds a pressed ski again in every branch from the named station", () => {
    const plan = redoPlan(stood(upTo("press"), { trim: "ready" }), "strips", floor);
    expect(plan.visits.map(({ station }) => station)).toEqual([...branches, "lay-up", "press"]);
    expect(plan.visits.filter(({ state }) => state === "ready").map(({ station }) => station)).toEqual([
      "strips",
      "base-cut",
      "print",
      "kit",
    ]);
    expect(plan.visits.every(({ visit, isOneSki }) => visit === 1 && isOneSki)).toBe(true);
    expect(plan.blocked).toEqual(["trim"]);
  });

  it("leaves base, print and composites alone while nothing is laid up", () => {
    const done = ["release", "strips", "core-glue", "base-cut", "edges", "print"];
    const plan = redoPlan(stood(done, { profile: "running", kit: "ready" }), "strips", floor);
    expect(plan.visits).toEqual([
      { station: "strips", visit: 1, state: "ready", isOneSki: true },
      { station: "core-glue", visit: 1, state: "blocked", isOneSki: true },
      { station: "profile", visit: 1, state: "blocked", isOneSki: false },
    ]);
    expect(plan.brokenOff).toEqual(["profile"]);
    expect(plan.blocked).toEqual([]);
  });

  it("keeps the core when only the topsheet is made again", () => {
    const plan = redoPlan(stood(upTo("press"), { trim: "running" }), "print", floor);
    expect(plan.visits.map(({ station }) => station)).toEqual(["print", "kit", "lay-up", "press", "trim"]);
  });

  it("plans nothing from a station that the pair has not come to", () => {
    expect(redoPlan(stood(upTo("core-glue"), { profile: "ready" }), "print", floor).visits).toEqual([]);
  });

  it("counts on from the latest visit", () => {
    const once = stood(upTo("check"));
    const twice = [...once, { station: "check", visit: 1, state: "done" as const }];
    expect(latestVisits(twice).find(({ station }) => station === "check")?.visit).toBe(1);
    const plan = redoPlan(twice, "finish", floor);
    expect(plan.visits.map(({ station, visit }) => [station, visit])).toEqual([
      ["finish", 1],
      ["check", 2],
    ]);
  });

  it("names for every fault a station of the pair", () => {
    expect(reworkFaults.map(({ id }) => reworkStarts(floor)[id])).toEqual([
      "strips",
      "strips",
      "strips",
      "base-cut",
      "edges",
      "print",
    ]);
  });
});

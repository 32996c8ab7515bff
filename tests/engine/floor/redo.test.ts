import { describe, expect, it } from "vitest";
import { latestVisits, redoPlan, reworkFaults, type StationVisit } from "#engine/floor";
import { pairStations, stationsBefore } from "#engine/routing";

/** Done up to here along every branch, then one in this state, the rest blocked. */
function stood(done: readonly number[], others: Readonly<Record<number, StationVisit["state"]>> = {}): StationVisit[] {
  return pairStations.map((station) => ({
    station,
    visit: 0,
    state: done.includes(station) ? "done" : (others[station] ?? "blocked"),
  }));
}

const upTo = (last: number) => pairStations.filter((station) => station <= last);

describe("redoPlan", () => {
  it("builds a pressed ski again in every branch from the named station (trade.md scenario 19: from station 2)", () => {
    const plan = redoPlan(stood(upTo(11), { 12: "ready" }), 2, stationsBefore);
    expect(plan.visits.map(({ station }) => station)).toEqual([2, 3, 4, 5, 6, 7, 8, 9, 10, 11]);
    expect(plan.visits.filter(({ state }) => state === "ready").map(({ station }) => station)).toEqual([2, 6, 8, 9]);
    expect(plan.visits.every(({ visit, isOneSki }) => visit === 1 && isOneSki)).toBe(true);
    expect(plan.blocked).toEqual([12]);
  });

  it("leaves base, print and composites alone while nothing is laid up", () => {
    const plan = redoPlan(stood([1, 2, 3, 6, 7, 8], { 4: "running", 9: "ready" }), 2, stationsBefore);
    expect(plan.visits).toEqual([
      { station: 2, visit: 1, state: "ready", isOneSki: true },
      { station: 3, visit: 1, state: "blocked", isOneSki: true },
      { station: 4, visit: 1, state: "blocked", isOneSki: false },
    ]);
    expect(plan.brokenOff).toEqual([4]);
    expect(plan.blocked).toEqual([]);
  });

  it("keeps the core when only the topsheet is made again", () => {
    const plan = redoPlan(stood(upTo(11), { 12: "running" }), 8, stationsBefore);
    expect(plan.visits.map(({ station }) => station)).toEqual([8, 9, 10, 11, 12]);
  });

  it("plans nothing from a station that the pair has not come to", () => {
    expect(redoPlan(stood(upTo(3), { 4: "ready" }), 8, stationsBefore).visits).toEqual([]);
  });

  it("counts on from the latest visit", () => {
    const once = stood(upTo(14));
    const twice = [...once, { station: 14, visit: 1, state: "done" as const }];
    expect(latestVisits(twice).find(({ station }) => station === 14)?.visit).toBe(1);
    const plan = redoPlan(twice, 13, stationsBefore);
    expect(plan.visits.map(({ station, visit }) => [station, visit])).toEqual([
      [13, 1],
      [14, 2],
    ]);
  });

  it("names for every fault a station of the pair", () => {
    expect(reworkFaults.every(({ fromStation }) => pairStations.includes(fromStation))).toBe(true);
  });
});

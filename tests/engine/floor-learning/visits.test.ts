import { describe, expect, it } from "vitest";
import type { FloorVisit } from "#engine/floor-learning";
import { floorClock, sortVisits } from "#lib/engine/floor-learning/visits";
import { floor, history, settings, visit } from "./small-floor";

function sorted(visits: readonly FloorVisit[]) {
  const all = history(visits);
  const { counted, leftOut } = sortVisits(floor, all, settings, floorClock(floor, all));
  return {
    minutes: counted.map(({ touchMinutes }) => Math.round(touchMinutes * 100) / 100),
    leftOut: leftOut.map(({ visit: { station }, why, workMinutes }) => [station, why, Math.round(workMinutes)]),
  };
}

describe("what a visit took", () => {
  it("leaves out the shop's break and its night", () => {
    // The demo works 07:30–12:00 and 12:30–16:30. 11:40–13:00: 20 + 30. 16:10–08:00: 20 + 30.
    expect(
      sorted([
        visit("edges", "2027-06-07 11:40", "2027-06-07 13:00"),
        visit("edges", "2027-06-07 16:10", "2027-06-08 08:00"),
      ]).minutes,
    ).toEqual([50, 50]);
  });

  it("goes by the clock where work began outside the hours", () => {
    // Saturday, and an evening after 16:30.
    expect(
      sorted([
        visit("edges", "2027-06-12 09:00", "2027-06-12 09:50"),
        visit("edges", "2027-06-09 18:00", "2027-06-09 18:45"),
      ]).minutes,
    ).toEqual([50, 45]);
  });

  it("is of a whole pair, of all people, without what options add", () => {
    // Two people lay up: 40 minutes of the clock are 80. Half a pair in 20 is 40. 70 with 25 for options are 45.
    const layUp = visit("lay-up", "2027-06-07 08:00", "2027-06-07 08:40");
    expect(floor.stations.find(({ id }) => id === "lay-up")?.crewNeeded).toBe(2);
    expect(sorted([layUp]).minutes).toEqual([80]);
    expect(sorted([visit("strips", "2027-06-07 08:00", "2027-06-07 08:20", { share: 0.5 })]).minutes).toEqual([40]);
    expect(sorted([visit("strips", "2027-06-07 08:00", "2027-06-07 09:10", { extraMinutes: 25 })]).minutes).toEqual([
      45,
    ]);
  });

  it("at the press is without the minutes it is shut and opened in", () => {
    // 10 to unload, 18 + 45 + 35 shut: of 138 minutes 30 are left, with as many people as the floor says.
    const crew = floor.stations.find(({ id }) => id === "press")?.crewNeeded ?? 1;
    expect(sorted([visit("press", "2027-06-07 08:00", "2027-06-07 10:18")]).minutes).toEqual([30 * crew]);
  });

  it("is a share of a batch: what one person has open at one station", () => {
    // 08:00–09:30 and 08:30–09:30: 30 alone, then 60 halved.
    const batch = [
      visit("core-glue", "2027-06-07 08:00", "2027-06-07 09:30", { by: "Mo" }),
      visit("core-glue", "2027-06-07 08:30", "2027-06-07 09:30", { by: "Mo", pair: "b" }),
    ];
    expect(sorted(batch).minutes).toEqual([60, 30]);
    // Two people, or two stations, are no batch.
    expect(sorted(batch.map((each, i) => ({ ...each, by: `person ${i}` }))).minutes).toEqual([90, 60]);
    expect(sorted(batch.map((each) => ({ ...each, by: null }))).minutes).toEqual([90, 60]);
  });
});

describe("what is left out", () => {
  const mornings = (station: string, to: string) =>
    ["08", "09", "10", "11", "14", "15", "16", "17", "18", "21", "22", "23", "24", "25", "28"].map((day) =>
      visit(station, `2027-06-${day} 07:30`, `2027-06-${day} ${to}`),
    );

  it("are ticks of a second and finishes that were forgotten", () => {
    const day = (from: string, to: string | null) => visit("edges", `2027-06-07 ${from}`, to);
    // Edges: 40, 60, 90 minutes. 270 are no more than 3 × 90, 450 are; 120 over a night are under 1.5 × 90, 140 over.
    const found = sorted([
      ...mornings("edges", "08:30"),
      day("08:00", "2027-06-07 08:00"),
      day("08:00", "2027-06-07 13:00"),
      day("08:00", "2027-06-07 16:00"),
      day("15:30", "2027-06-08 08:30"),
      day("15:30", "2027-06-08 08:50"),
      day("10:00", null),
    ]);
    expect(found.minutes).toEqual([...mornings("edges", "08:30").map(() => 60), 270, 120]);
    // Nineteen whole days of 510 minutes after the first, and 360 of that one.
    expect(found.leftOut).toEqual([
      ["edges", "forgotten", 450],
      ["edges", "too-short", 0],
      ["edges", "forgotten", 19 * 510 + 360],
      ["edges", "forgotten", 140],
    ]);
  });

  it("is measured by the station's own pace: where all take long, nothing was forgotten", () => {
    // 120 minutes are over 3 × 30 of the release, whose usual time is 15.
    const slow = mornings("release", "09:30");
    expect(sorted(slow).leftOut).toEqual([]);
    expect(sorted(slow.slice(0, 1)).leftOut).toEqual([["release", "forgotten", 120]]);
    const quick = visit("release", "2027-06-07 10:00", "2027-06-07 10:15");
    expect(sorted([quick, quick, ...slow.slice(0, 1)]).leftOut).toEqual([["release", "forgotten", 120]]);
  });

  it("is what a station of another floor took", () => {
    expect(sorted([visit("nowhere", "2027-06-07 10:00", "2027-06-07 10:15")])).toEqual({ minutes: [], leftOut: [] });
  });
});

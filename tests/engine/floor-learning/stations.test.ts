import { describe, expect, it } from "vitest";
import { type FloorVisit, floorWithBook, learnFloor } from "#engine/floor-learning";
import { lognormalFromMoments, normalQuantile, seededRandom, unitFromU32 } from "#engine/math";
import { learnStation, threePoints } from "#lib/engine/floor-learning/stations";
import { learnWeeks } from "#lib/engine/floor-learning/weeks";
import { at, floor, history, settings, visit } from "./small-floor";

/** Visits of one station, `pace` times as long as its setting's lognormal, one a morning from Monday on. */
function drawn(station: string, count: number, pace: number, seed = 1): readonly FloorVisit[] {
  const { low, typ, high } = floor.stations.find(({ id }) => id === station)?.minutes ?? { low: 0, typ: 0, high: 0 };
  const { mu, sigma } = lognormalFromMoments((low + 4 * typ + high) / 6, (high - low) / 6);
  const random = seededRandom(seed);
  return Array.from({ length: count }, (_, i) => {
    const minutes = pace * Math.exp(mu + sigma * normalQuantile(unitFromU32(random())));
    const startMinute = at("2027-06-07 08:00") + Math.floor(i / 5) * 7 * 1440 + (i % 5) * 1440;
    return {
      ...visit(station, "2027-06-07 08:00", null),
      pair: `p${i}`,
      startMinute,
      endMinute: startMinute + Math.round(minutes),
    };
  });
}

const learn = (visits: readonly FloorVisit[]) =>
  learnFloor(floor, history(visits, { toMinute: at("2028-12-29 00:00") }), settings, "FB-1");
const of = (learnt: ReturnType<typeof learnFloor>, station: string) =>
  learnt.stations.find((each) => each.station === station) ?? raise();

function raise(): never {
  throw new Error("no such station");
}

describe("minutes of a station", () => {
  it("come to what was taken when much was seen, and stay at the setting when nothing was", () => {
    const learnt = learn(drawn("release", 400, 1.4));
    const release = of(learnt, "release");
    // The mean's own error is σ/√400, about 1 %; the setting weighs as 10 of 410.
    expect(release.learntMeanMinutes / release.assumedMeanMinutes).toBeGreaterThan(1.33);
    expect(release.learntMeanMinutes / release.assumedMeanMinutes).toBeLessThan(1.44);
    expect(release.interval.low).toBeLessThan(release.learntMeanMinutes);
    expect(release.interval.high).toBeGreaterThan(release.learntMeanMinutes);
    expect(release.visits).toBe(400);
    const untouched = of(learnt, "edges");
    expect(untouched).toMatchObject({ visits: 0, takenMeanMinutes: null, learnt: untouched.assumed });
  });

  it("lean on the setting in proportion: n visits count as n of n + 10", () => {
    const release = of(learn(drawn("release", 10, 2)), "release");
    // Half of ln 2 over ten visits of weight ten: about √2.
    const ratio = release.learntMeanMinutes / release.assumedMeanMinutes;
    expect(ratio).toBeGreaterThan(1.25);
    expect(ratio).toBeLessThan(1.65);
  });

  it("cover the truth nine times of ten", () => {
    // An interval of a normal mean holds its truth in 90 % of samples: of 200, at least 168 by chance 499 times of 500
    // (binomial). The truth is the setting, which the prior pulls nobody away from: somewhat more are held.
    const station = floor.stations.find(({ id }) => id === "edges") ?? raise();
    const held = Array.from({ length: 200 }, (_, i) => {
      const counted = drawn("edges", 40, 1, i + 1).map((each) => ({
        visit: each,
        touchMinutes: (each.endMinute ?? 0) - each.startMinute,
      }));
      return learnStation(station, { counted, leftOut: [] }, settings).learning;
    }).filter(
      ({ interval, assumedMeanMinutes }) => interval.low <= assumedMeanMinutes && assumedMeanMinutes <= interval.high,
    );
    expect(held.length).toBeGreaterThanOrEqual(168);
    expect(held.length).toBeLessThan(200);
  });

  it("keep mean, width and lean of the three points", () => {
    // 10, 15, 30: mean 16.667, sd 3.333. Twice both: every distance from the typical doubles.
    expect(threePoints({ low: 10, typ: 15, high: 30 }, 100 / 3, 20 / 3)).toEqual({ low: 20, typ: 30, high: 60 });
    expect(threePoints({ low: 10, typ: 15, high: 30 }, 50 / 3, 10 / 3)).toEqual({ low: 10, typ: 15, high: 30 });
    expect(threePoints({ low: 5, typ: 5, high: 5 }, 6, 1)).toEqual({ low: 6, typ: 6, high: 6 });
  });

  it("go into the floor with everything else the book holds", () => {
    const { proposal } = learn(drawn("release", 100, 2));
    const learnt = floorWithBook(floor, { ...proposal, stations: proposal.stations.slice(0, 1) });
    expect(learnt.stations[0]?.minutes).toEqual(proposal.stations[0]?.minutes);
    expect(learnt.stations.slice(1)).toEqual(floor.stations.slice(1));
    expect(learnt.rework.map(({ probability }) => probability)).toEqual(
      proposal.rework.map(({ probability }) => probability),
    );
    expect(learnt).toMatchObject({
      pressDayLostProbability: proposal.pressDayLostProbability,
      personDayLostProbability: 0,
      sharedShock: { windowWorkingDays: 30, ...proposal.sharedShock },
    });
  });
});

describe("whole weeks", () => {
  const week = (from: string, values: readonly number[]) =>
    values.map((logRatio) => ({ counted: { visit: visit("edges", from, null), touchMinutes: 1 }, logRatio }));
  const none = { ...settings, prior: { ...settings.prior, weeks: 1e-9 } };

  it("differ by the variance component of a balanced analysis, by hand", () => {
    // Weeks {1, 3} and {5, 7}: MSB = 2·(2² + 2²)/1 = 16, MSW = 4/2 = 2, component (16 − 2)/2 = 7.
    const learnt = learnWeeks([...week("2027-06-07 08:00", [1, 3]), ...week("2027-06-14 08:00", [5, 7])], 0, none);
    expect(learnt.learnt).toBeCloseTo(Math.sqrt(7), 6);
    expect(learnt).toMatchObject({ weeks: 2, visits: 4 });
    expect(learnt.interval.low).toBeLessThan(learnt.learnt);
    expect(learnt.interval.high).toBeGreaterThan(learnt.learnt);
  });

  it("do not differ where they are as alike as chance has them, nor where there is one", () => {
    const alike = [...week("2027-06-07 08:00", [1, 3]), ...week("2027-06-14 08:00", [1, 3])];
    expect(learnWeeks(alike, 0, none).learnt).toBe(0);
    expect(learnWeeks(week("2027-06-07 08:00", [1, 3]), 0.1, none).learnt).toBe(0.1);
  });
});

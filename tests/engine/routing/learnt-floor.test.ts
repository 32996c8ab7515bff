/** What a floor's book adds to the futures: people who are away for a day, weeks that are slow or quick for everybody. */
import { describe, expect, it } from "vitest";
import { type CandidatePair, type FloorCatalog, promiseRuns, shopMinute } from "#engine/routing";
import { isoDate } from "#engine/units";
import { afterShocks } from "#lib/engine/routing/replications";
import { sharedShocks } from "#lib/engine/routing/sampling";
import { demoFloor } from "../../support/demo-floor";

const floor = demoFloor();
const mould = floor.moulds[0];
const candidate: CandidatePair = {
  route: {
    kind: "pair",
    mould: mould?.id ?? "",
    mouldFamily: mould?.family ?? "",
    extraMinutes: [],
    hasOwnGraphic: false,
  },
  waitingOn: [],
};

function daysOn(own: FloorCatalog) {
  const now = shopMinute(isoDate("2026-10-05"), 9 * 60);
  const range = promiseRuns({ floor: own, changes: [], pairs: [], now }, candidate, { runs: 150, seed: 3 });
  if (!range.ok) throw new Error(range.refusal.code);
  return range.value.workingDays;
}

describe("a day that a person is away", () => {
  it("holds the pair up where nobody else can do the work, and costs nothing where it never happens", () => {
    const plain = daysOn(floor);
    expect(daysOn({ ...floor, personDayLostProbability: 0 })).toEqual(plain);
    const often = daysOn({ ...floor, personDayLostProbability: 0.3 });
    expect(often.p50).toBeGreaterThan(plain.p50 + 0.5);
    expect(often.p90).toBeGreaterThan(plain.p90 + 0.5);
  });
});

describe("slow and quick weeks", () => {
  const weeks = (seed: number, weekPaceLogSd: number) =>
    sharedShocks({ ...floor, sharedShock: { ...floor.sharedShock, probability: 0 }, weekPaceLogSd }, seed, 0);

  it("are delays and gains of the shared pace, in order of time, with mean 1", () => {
    expect(weeks(1, 0)).toEqual([]);
    const many = Array.from({ length: 200 }, (_, seed) => weeks(seed, 0.2)).flat();
    // A week has 5 × 510 minutes. The pace is lognormal with mean 1: over 10,800 weeks the mean delay is within 4 standard
    // errors of 0 (σ ≈ 0.202 of a week, 515 minutes, so 20 minutes).
    const mean = many.reduce((sum, { delayWorkMinutes }) => sum + delayWorkMinutes, 0) / many.length;
    expect(Math.abs(mean)).toBeLessThan(20);
    const sd = Math.sqrt(many.reduce((sum, each) => sum + (each.delayWorkMinutes - mean) ** 2, 0) / many.length);
    // exp(0.04) − 1 = 0.0408, its root 0.202.
    expect(sd / 2550).toBeGreaterThan(0.19);
    expect(sd / 2550).toBeLessThan(0.215);
    const times = weeks(5, 0.2).map(({ afterWorkMinutes }) => afterWorkMinutes);
    expect(times).toEqual([...times].sort((a, b) => a - b));
  });

  it("widen the range about the same middle", () => {
    const plain = daysOn(floor);
    const uneven = daysOn({ ...floor, weekPaceLogSd: 0.25 });
    expect(Math.abs(uneven.p50 - plain.p50)).toBeLessThan(1);
    expect(uneven.p90 - uneven.p10).toBeGreaterThan(plain.p90 - plain.p10);
  });

  it("bring nothing before the week itself", () => {
    expect(afterShocks(1000, [{ afterWorkMinutes: 900, delayWorkMinutes: -300 }])).toBe(900);
    expect(afterShocks(1000, [{ afterWorkMinutes: 900, delayWorkMinutes: -50 }])).toBe(950);
    expect(afterShocks(900, [{ afterWorkMinutes: 900, delayWorkMinutes: 50 }])).toBe(900);
    // A delay may so meet the next one.
    expect(
      afterShocks(1000, [
        { afterWorkMinutes: 900, delayWorkMinutes: 200 },
        { afterWorkMinutes: 1100, delayWorkMinutes: 10 },
      ]),
    ).toBe(1210);
  });
});

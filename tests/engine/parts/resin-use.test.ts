import { describe, expect, it } from "vitest";
import { hardenerLimits, potsOf, workingMinutesAt } from "#engine/parts";

describe("resin in use", () => {
  it.each([
    [560, 151, 400, 2],
    [300, 81, 381, 1],
    [301, 81, 381, 2],
    [0, 0, 400, 1],
  ])("%d g and %d g in pots of at most %d g are %d pots", (resinG, hardenerG, maxPotG, count) => {
    const pots = potsOf({ resinG, hardenerG }, maxPotG);
    expect(pots.count).toBe(count);
    expect(pots.resinG * count).toBeCloseTo(resinG, 9);
    expect(pots.hardenerG * count).toBeCloseTo(hardenerG, 9);
    expect(pots.resinG + pots.hardenerG).toBeLessThanOrEqual(maxPotG);
  });

  it("accepts the hardener within its tolerance", () => {
    // 27 on 100 within 3 %: 26.19 to 27.81.
    const { low, high } = hardenerLimits(27, 3);
    expect(low).toBeCloseTo(26.19, 12);
    expect(high).toBeCloseTo(27.81, 12);
  });

  it.each([
    [22, 60],
    [32, 30],
    [12, 120],
    // 60/2^0.4 = 45.47
    [26, 45],
  ])("at %d °C a resin of 60 min at 22 °C works for %d min", (roomC, minutes) => {
    expect(workingMinutesAt({ workingMinutes: 60, atC: 22 }, roomC)).toBe(minutes);
  });
});

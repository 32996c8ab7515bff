import { describe, expect, it } from "vitest";
import { barRiseMm } from "#engine/geometry";

describe("a base bevel under a true bar", () => {
  it.each([
    // tan 45° is 1; tan 1° is 0.0174551.
    [0, 60, 0],
    [45, 60, 60],
    [1, 60, 1.047306],
  ])("of %d° rises over %d mm by %d mm", (bevelDeg, lengthMm, riseMm) => {
    expect(barRiseMm(bevelDeg, lengthMm)).toBeCloseTo(riseMm, 5);
  });
});

/** What is left of a ski at its very ends: many layers and hardly any width. */
import { describe, expect, it } from "vitest";
import { torsionalStiffnessNmm2 } from "#engine/torsion";
import { MESHES, meshOf } from "#lib/engine/torsion/mesh";

const sliver = (widthMm: number) => ({
  isHalf: false,
  layers: Array.from({ length: 12 }, () => ({
    thicknessMm: 0.8,
    parts: [{ fromMm: 0, toMm: widthMm, inPlaneMpa: 800, throughMpa: 800 }],
  })),
});

describe("a section much higher than wide", () => {
  it("is not cut finer than a ski needs", () => {
    expect(meshOf(sliver(0.02), MESHES.station).rows).toBeLessThanOrEqual(92);
  });

  // Thin strip, GJ = G·h·b³/3 for b ≪ h (S. P. Timoshenko & J. N. Goodier, Theory of Elasticity, art. 109, from memory).
  it("twists like a thin strip standing on edge", () => {
    expect(torsionalStiffnessNmm2(sliver(0.2)) / ((800 * 9.6 * 0.2 ** 3) / 3)).toBeCloseTo(1, 1);
  });
});

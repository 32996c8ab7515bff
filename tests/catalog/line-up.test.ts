/** The line-up against the shop's own table of models (invented demo values; R by the federation's formula). */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";

const { build } = loadCatalog();

const table = [
  { id: "kerfline-68", lengths: [150, 156, 162, 168, 174, 180], ref: 168, widths: [121, 68, 103], radiusM: 12.6 },
  { id: "pathwick-75", lengths: [138, 146, 154, 162, 170, 178], ref: 170, widths: [124, 75, 107], radiusM: 13.7 },
  { id: "midlow-84", lengths: [150, 158, 166, 174, 182], ref: 174, widths: [127, 84, 112], radiusM: 15.4 },
  { id: "midlow-95", lengths: [162, 170, 178, 186], ref: 178, widths: [132, 95, 119], radiusM: 17.5 },
  { id: "ridgefold-106", lengths: [168, 176, 184, 192], ref: 184, widths: [138, 106, 126], radiusM: 19.8 },
  { id: "drifthold-117", lengths: [172, 180, 188, 196], ref: 188, widths: [145, 117, 134], radiusM: 20.4 },
  { id: "upleigh-92", lengths: [158, 166, 174, 182], ref: 174, widths: [126, 92, 112], radiusM: 17.9 },
  { id: "skeward-90", lengths: [158, 166, 174, 182], ref: 174, widths: [120, 90, 112], radiusM: 19.6 },
];

describe("the line-up", () => {
  it.each(table)("builds $id as the table says", ({ id, lengths, ref, widths, radiusM }) => {
    const model = build.models.find((each) => each.id === id);
    const shape = model?.shape;
    expect(model?.lengths.map((length) => length.lengthCm)).toEqual(lengths);
    expect([shape?.shoulderWidthMm, shape?.waistWidthMm, shape?.heelWidthMm]).toEqual(widths);
    expect(shape?.refLengthCm).toBe(ref);
    const [shoulder = 0, waist = 0, heel = 0] = widths;
    const sidecutMm = ref * 10 - (shape?.tipLengthMm ?? 0) - (shape?.tailLengthMm ?? 0);
    // R[m] = Ls²/(2000 (S + H − 2W)), lengths in mm
    const federationM = sidecutMm ** 2 / (2000 * (shoulder + heel - 2 * waist));
    expect(Math.abs(federationM - radiusM)).toBeLessThan(0.06);
  });

  it("puts the dense wood of every blend under the screw rows, never lighter than the wood beside it", () => {
    const density = new Map(build.materials.woods.map((wood) => [wood.id, wood.densityKgM3]));
    for (const { strips } of build.blends) {
      expect(density.get(strips.I)).toBeGreaterThanOrEqual(density.get(strips.O) ?? Number.POSITIVE_INFINITY);
    }
  });

  it("offers paulownia on touring models alone", () => {
    const light = build.blends.filter((blend) => Object.values(blend.strips).includes("paulownia"));
    expect(light.map((blend) => blend.forUses)).toEqual([["touring"]]);
  });
});

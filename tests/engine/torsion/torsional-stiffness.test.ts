import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  closedBoxTorsionalStiffnessNmm2,
  layeredRectangleTorsionNmm2,
  rectangleTorsionConstantMm4,
} from "#engine/handbook";
import { type SectionLayer, sectionConstants } from "#engine/laminate";
import { MESHES, type TwistLayer, type TwistPart, type TwistSection, torsionalStiffnessNmm2 } from "#engine/torsion";
import sections from "../../fixtures/truth/section-torsion.json";

const off = (found: number, wanted: number) => Math.abs(found / wanted - 1);
const isotropic = (fromMm: number, toMm: number, g: number): TwistPart => ({
  fromMm,
  toMm,
  inPlaneMpa: g,
  throughMpa: g,
});
const rectangle = (b: number, h: number, g: number): TwistSection => ({
  isHalf: false,
  layers: [{ thicknessMm: h, parts: [isotropic(-b / 2, b / 2, g)] }],
});
/** The right half of a mirrored section of a `section` file. */
const halfOf = (layers: readonly SectionLayer[]): TwistSection => ({
  isHalf: true,
  layers: layers.map(({ thicknessMm, parts }): TwistLayer => {
    let from = -parts.reduce((sum, part) => sum + part.widthMm, 0) / 2;
    const placed = parts.flatMap((part) => {
      const to = from + part.widthMm;
      const here = "ply" in part ? [] : [isotropic(Math.max(0, from), to, part.shearModulusMpa ?? 0)];
      from = to;
      return to > 0 ? here : [];
    });
    return { thicknessMm, parts: placed };
  }),
});

describe("torsional stiffness of composite sections", () => {
  it.each(sections.cases.map((each) => [each.id, each] as const))("meets %s within 1 %%", (_, each) => {
    // Independent finite elements: see the fixture's source.
    expect(off(sectionConstants(each.layers).torsionalStiffnessNmm2, each.torsionalStiffnessNmm2)).toBeLessThan(0.01);
    expect(off(torsionalStiffnessNmm2(halfOf(each.layers)), each.torsionalStiffnessNmm2)).toBeLessThan(0.01);
  });
});

describe("rectangles", () => {
  it.each([
    [80, 8],
    [70, 10],
    [20, 10],
    [10, 10],
    [8, 80],
  ])("of %d × %d meet the exact series (Timoshenko & Goodier, art. 109)", (b, h) => {
    const exact = 1000 * rectangleTorsionConstantMm4(b, h);
    expect(off(torsionalStiffnessNmm2(rectangle(b, h, 1000), MESHES.single), exact)).toBeLessThan(0.003);
    expect(off(torsionalStiffnessNmm2(rectangle(b, h, 1000), MESHES.fine), exact)).toBeLessThan(0.001);
  });
});

/** What plies and sections refuse, and what stands at the edge of it (limits: Jones eq. 2.41; definitions). */

import { describe, expect, it } from "vitest";
import { compliance, laminaInvariants, rectangleTorsionConstantMm4 } from "#engine/handbook";
import {
  bendingSlipCompliance,
  plateStiffness,
  reducedStiffness,
  type SectionLayer,
  sectionConstants,
  transformedStiffness,
} from "#engine/laminate";

const ply = { e1Mpa: 40_000, e2Mpa: 10_000, g12Mpa: 4000, nu12: 0.3 };
const one = (part: object, thicknessMm = 1): SectionLayer[] => [
  { thicknessMm, parts: [{ widthMm: 10, modulusMpa: 1000, ...part }] },
];

describe("refusals name the layer and what is wrong", () => {
  it.each<[string, () => unknown]>([
    ["e1Mpa: 0 MPa", () => reducedStiffness({ ...ply, e1Mpa: 0 })],
    ["e2Mpa: -1 MPa", () => compliance({ ...ply, e2Mpa: -1 })],
    ["g12Mpa: Infinity MPa", () => reducedStiffness({ ...ply, g12Mpa: Number.POSITIVE_INFINITY })],
    // The root of 40/10 is 2.
    ["nu12: 2 is not within ±2", () => reducedStiffness({ ...ply, nu12: 2 })],
    ["nu12: -2 is not within ±2", () => compliance({ ...ply, nu12: -2 })],
    ["layers: there must be at least one", () => plateStiffness([])],
    ["layer 0: thicknessMm 0", () => plateStiffness([{ thicknessMm: 0, stiffness: [1, 0, 0, 1, 0, 1] }])],
    [
      "layer 1: thicknessMm Infinity",
      () =>
        plateStiffness(
          [1, Number.POSITIVE_INFINITY].map((thicknessMm) => ({ thicknessMm, stiffness: [1, 0, 0, 1, 0, 1] as const })),
        ),
    ],
    [
      "layers[1].parts: there must be at least one",
      () => sectionConstants([...one({}), { thicknessMm: 1, parts: [] }]),
    ],
    ["layers[0].parts[0].widthMm: 0 mm", () => sectionConstants(one({ widthMm: 0 }))],
    ["layers[0].parts[0].densityKgM3: -1", () => sectionConstants(one({ densityKgM3: -1 }))],
    ["layers[0].parts[0].modulusMpa: 0 MPa", () => sectionConstants(one({ modulusMpa: 0 }))],
    ["layers[0].parts[0].shearModulusMpa: -1 MPa", () => sectionConstants(one({ shearModulusMpa: -1 }))],
    ["widthMm 0 and heightMm 1", () => rectangleTorsionConstantMm4(0, 1)],
    ["widthMm 1 and heightMm 0", () => rectangleTorsionConstantMm4(1, 0)],
  ])("%s", (message, act) => {
    expect(act).toThrow(RangeError);
    expect(act).toThrow(message);
  });
});

describe("by hand", () => {
  it("Q of a ply: 1 − ν²·E2/E1 = 0.9775; S is its inverse", () => {
    expect(reducedStiffness(ply)).toEqual(
      [40_000 / 0.9775, 3000 / 0.9775, 0, 10_000 / 0.9775, 0, 4000].map((x) => expect.closeTo(x, 6)),
    );
    expect(compliance(ply)).toEqual(
      [1 / 40_000, -0.3 / 40_000, 0, 1 / 10_000, 0, 1 / 4000].map((x) => expect.closeTo(x, 14)),
    );
  });

  it("turned by a right angle the axes change places; turned by ±θ the couplings change sign", () => {
    const [q11, q12, , q22, , q66] = reducedStiffness(ply);
    expect(transformedStiffness({ ...ply, angleDeg: 90 })).toEqual(
      [q22, q12, 0, q11, 0, q66].map((x) => expect.closeTo(x, 6)),
    );
    const [a, b] = [transformedStiffness({ ...ply, angleDeg: 30 }), transformedStiffness({ ...ply, angleDeg: -30 })];
    expect(b).toEqual([a[0], a[1], -a[2], a[3], -a[4], a[5]].map((x) => expect.closeTo(x, 6)));
    // Q11 at 45°: (Q11 + Q22 + 2·Q12 + 4·Q66)/4.
    expect(transformedStiffness({ ...ply, angleDeg: 45 })[0]).toBeCloseTo((q11 + q22 + 2 * q12 + 4 * q66) / 4, 6);
  });

  it("the mean over all angles is the invariants' (Tsai & Hahn 1980): every 45° a quarter", () => {
    const { u1Mpa, u4Mpa, u5Mpa } = laminaInvariants(ply);
    const turned = [0, 45, 90, -45].map((angleDeg) => transformedStiffness({ ...ply, angleDeg }));
    const mean = (i: number) => turned.reduce((sum, q) => sum + (q[i] ?? 0), 0) / 4;
    expect([mean(0), mean(1), mean(2), mean(5)]).toEqual([u1Mpa, u4Mpa, 0, u5Mpa].map((x) => expect.closeTo(x, 6)));
  });

  it("a bar of two widths and two moduli: EA 10·1·1000 + 20·2·500, ES by heights, EI by Steiner, grams by volume", () => {
    const found = sectionConstants([
      { thicknessMm: 1, parts: [{ widthMm: 10, modulusMpa: 1000, densityKgM3: 2000 }] },
      {
        thicknessMm: 2,
        parts: [
          { widthMm: 12, modulusMpa: 500, densityKgM3: 1000 },
          { widthMm: 8, modulusMpa: 500 },
        ],
      },
    ]);
    const z = (10_000 * 0.5 + 20_000 * 2) / 30_000;
    expect(found.axialStiffnessN).toBeCloseTo(30_000, 3);
    expect(found.neutralAxisMm).toBeCloseTo(z, 9);
    expect(found.bendingStiffnessNmm2).toBeCloseTo(
      10_000 / 12 + 10_000 * (z - 0.5) ** 2 + (20_000 * 4) / 12 + 20_000 * (2 - z) ** 2,
      3,
    );
    expect(found.massGPerM).toBeCloseTo(20 + 24, 9);
    expect([found.thicknessMm, found.torsionalStiffnessNmm2]).toEqual([3, 0]);
    expect(sectionConstants(one({ densityKgM3: 0, shearModulusMpa: 0 })).massGPerM).toBe(0);
  });

  it("a ply's shear through the thickness is above 0", () => {
    const ply = { e1Mpa: 1e4, e2Mpa: 1e3, g12Mpa: 500, nu12: 0.3, angleDeg: 0, g13Mpa: 0 };
    expect(() => sectionConstants([{ thicknessMm: 1, parts: [{ widthMm: 10, ply }] }])).toThrow(/g13Mpa: 0/);
  });

  it("a square's torsion constant is 0.140577·a⁴ (Timoshenko & Goodier, table), whichever side is named first", () => {
    expect(rectangleTorsionConstantMm4(10, 10)).toBeCloseTo(1405.77, 1);
    expect(rectangleTorsionConstantMm4(20, 10)).toBeCloseTo(0.2287 * 20 * 1000, -1);
    expect(rectangleTorsionConstantMm4(10, 20)).toBe(rectangleTorsionConstantMm4(20, 10));
  });

  it("a foil slips by π²/(K·L²): 9.8696/(2·100²)", () => {
    expect(bendingSlipCompliance(2, 100)).toBeCloseTo(9.8696e-4 / 2, 8);
  });
});

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { closedBoxTorsionalStiffnessNmm2, rectangleTorsionConstantMm4 } from "#engine/handbook";
import { type PlyMaterial, type SectionLayer, sectionConstants } from "#engine/laminate";
import { findRoot } from "#engine/math";
import { expectCase, expected, input, mechanicsCase } from "../../fixtures/truth/mechanics";

const part = (modulusMpa: number, widthMm: number, shearModulusMpa = modulusMpa / 2.6) => ({
  modulusMpa,
  widthMm,
  shearModulusMpa,
});
const sandwich = (faceMm: number, faceMpa: number, coreMm: number, coreMpa: number): SectionLayer[] => [
  { thicknessMm: faceMm, parts: [part(faceMpa, 80)] },
  { thicknessMm: coreMm, parts: [part(coreMpa, 80)] },
  { thicknessMm: faceMm, parts: [part(faceMpa, 80)] },
];
const EI = (layers: readonly SectionLayer[]) => sectionConstants(layers).bendingStiffnessNmm2 / 1e6;

/** The five layers of SEC-5LAYER, as [E, width] pairs. */
const fiveLayers = (
  mechanicsCase("SEC-5LAYER").inputs.layers_bottom_to_top as readonly { t_mm: number; parts: [number, number][] }[]
).map(({ t_mm, parts }): SectionLayer => ({ thicknessMm: t_mm, parts: parts.map(([e, w]) => part(e, w)) }));

describe("sectionConstants of parts given by moduli", () => {
  it("meets the symmetric sandwich", () => {
    const found = sectionConstants(sandwich(0.8, 38_600, 10, 11_000));
    expectCase("SEC-SANDWICH", "EI_Nm2", found.bendingStiffnessNmm2 / 1e6);
    expectCase("SEC-SANDWICH", "zbar_mm", found.neutralAxisMm);
  });

  it("meets the aluminium-faced sandwich", () => {
    expectCase("SEC-ALU", "EI_Nm2", EI(sandwich(0.5, 71_700, 10, 11_000)));
  });

  it("meets the unsymmetric strip with sidewalls", () => {
    const found = sectionConstants(fiveLayers);
    expectCase("SEC-5LAYER", "EA_N", found.axialStiffnessN);
    expectCase("SEC-5LAYER", "zbar_mm_from_bottom", found.neutralAxisMm);
    expectCase("SEC-5LAYER", "EI_Nm2", found.bendingStiffnessNmm2 / 1e6);
    expectCase("SEC-5LAYER", "H_mm", found.thicknessMm);
  });

  it("meets the same strip with steel edges", () => {
    const edges = mechanicsCase("SEC-EDGES").inputs.base_layer_parts as readonly [number, number][];
    const base = { thicknessMm: 1.3, parts: edges.map(([e, w]) => part(e, w)) };
    const found = sectionConstants([base, ...fiveLayers.slice(1)]);
    expectCase("SEC-EDGES", "EA_N", found.axialStiffnessN);
    expectCase("SEC-EDGES", "zbar_mm_from_bottom", found.neutralAxisMm);
    expectCase("SEC-EDGES", "EI_Nm2", found.bendingStiffnessNmm2 / 1e6);
    expectCase("SEC-EDGES", "ratio_to_no_edges", found.bendingStiffnessNmm2 / 1e6 / EI(fiveLayers));
  });

  it("grows with the core as the closed form says", () => {
    const log = (coreMm: number) => Math.log(EI(sandwich(0.8, 38_600, coreMm, 11_000)));
    expectCase("SEC-SENS", "exponent", (log(10.001) - log(9.999)) / Math.log(10.001 / 9.999));
    const wanted = EI(sandwich(0.8, 38_600, 10, 11_000)) * input("SEC-SOLVE", "EI_factor");
    const coreMm = findRoot((t) => EI(sandwich(0.8, 38_600, t, 11_000)) - wanted, 9, 13);
    expectCase("SEC-SOLVE", "core_t_mm", coreMm);
  });

  it("is ΣE·w·t along and G·b·h³/3 in twist", () => {
    const found = sectionConstants([{ thicknessMm: 4, parts: [part(70_000, 80, input("TW-4BD66-ISO", "G_MPa"))] }]);
    expectCase("TW-4BD66-ISO", "GJ_Nm2", found.thinStripTorsionalStiffnessNmm2 / 1e6);
  });

  it("weighs every part with a density", () => {
    const parts = [
      { ...part(760, 76), densityKgM3: 940 },
      { ...part(205_000, 4), densityKgM3: 7850 },
    ];
    // 1.3 mm × (76 × 940 + 4 × 7850) kg/m³ = 0.134 kg/m, by hand.
    expect(sectionConstants([{ thicknessMm: 1.3, parts }]).massGPerM).toBeCloseTo(133.692, 6);
    expect(sectionConstants(fiveLayers).massGPerM).toBe(0);
  });

  it("sums to the mass of a whole ski of even width", () => {
    const { layers, edges } = mechanicsCase("MASS-1").inputs as {
      layers: { t_mm: number; rho: number }[];
      edges: { n: number; length_m: number; section_mm2: number; rho: number };
    };
    // 0.16625 m² as 95 mm × 1.75 m; the edges are a section of their own.
    const widthMm = 95;
    const plan = layers.map(({ t_mm, rho }) => ({
      thicknessMm: t_mm,
      parts: [{ ...part(1, widthMm), densityKgM3: rho }],
    }));
    const bar = [{ thicknessMm: 2, parts: [{ ...part(1, edges.section_mm2 / 2), densityKgM3: edges.rho }] }];
    const edgeG = edges.n * edges.length_m * sectionConstants(bar).massGPerM;
    expectCase(
      "MASS-1",
      "mass_kg",
      ((input("MASS-1", "area_m2") / 0.095) * sectionConstants(plan).massGPerM) / 1e3 + edgeG / 1e3,
    );
  });

  it("reports no torsion when no part gives a shear modulus, and bends all the same", () => {
    const bare = fiveLayers.map(({ thicknessMm, parts }) => ({
      thicknessMm,
      parts: parts.map((one) => ({ widthMm: one.widthMm, modulusMpa: "modulusMpa" in one ? one.modulusMpa : 0 })),
    }));
    const found = sectionConstants(bare);
    expect(found.torsionalStiffnessNmm2).toBe(0);
    expectCase("SEC-5LAYER", "EI_Nm2", found.bendingStiffnessNmm2 / 1e6);
  });

  it("cannot take a missing or impossible value", () => {
    expect(() => sectionConstants([])).toThrow(/at least one/);
    expect(() => sectionConstants([{ thicknessMm: 1, parts: [] }])).toThrow(/layers\[0\].parts/);
    expect(() => sectionConstants([{ thicknessMm: 1, parts: [part(0, 80)] }])).toThrow(/modulusMpa: 0/);
    expect(() => sectionConstants([{ thicknessMm: 1, parts: [part(100, -1)] }])).toThrow(/parts\[0\].widthMm: -1/);
  });
});

const glass = { e1Mpa: 38_600, e2Mpa: 8_270, g12Mpa: 4_140, nu12: 0.26 };
const wood = { e1Mpa: 11_000, e2Mpa: 1_000, g12Mpa: 1_000, nu12: 0.4, angleDeg: 0 };
const layer = (ply: PlyMaterial, thicknessMm: number): SectionLayer => ({ thicknessMm, parts: [{ widthMm: 80, ply }] });
/** Faces of plies on a wood core, mirrored; the face is listed from the outside in. */
const faced = (face: readonly (readonly [number, number])[]): SectionLayer[] => {
  const plies = face.map(([angleDeg, thicknessMm]) => layer({ ...glass, angleDeg }, thicknessMm));
  return [...plies, layer(wood, 10), ...plies.toReversed()];
};

describe("sectionConstants of plies", () => {
  it("meets UD, triaxial and biaxial glass faces, the 0° ply outermost", () => {
    const EIs = expected("TW-COMPARE", "EI_Nm2") as Record<string, number>;
    const GJs = expected("TW-COMPARE", "GJ_Nm2") as Record<string, number>;
    const faces = {
      UD: faced([[0, 0.6]]),
      TRI: faced([
        [0, 0.3],
        [45, 0.15],
        [-45, 0.15],
      ]),
      BI: faced([
        [45, 0.3],
        [-45, 0.3],
      ]),
    };
    for (const [name, layers] of Object.entries(faces)) {
      const found = sectionConstants(layers);
      expect(Math.abs(found.bendingStiffnessNmm2 / 1e6 / (EIs[name] ?? 0) - 1), name).toBeLessThan(1e-4);
      expect(Math.abs(found.thinStripTorsionalStiffnessNmm2 / 1e6 / (GJs[name] ?? 0) - 1), name).toBeLessThan(1e-4);
    }
    expectCase("TW-SANDWICH45", "GJ_Nm2", sectionConstants(faces.BI).thinStripTorsionalStiffnessNmm2 / 1e6);
  });
});

describe("torsion of other sections", () => {
  it("meets the exact series of a rectangle", () => {
    for (const id of ["TW-J-10", "TW-J-7"]) {
      const b = input(id, "b_mm");
      const h = input(id, "h_mm");
      const J = rectangleTorsionConstantMm4(b, h);
      expectCase(id, "J_mm4", J);
      expectCase(id, "factor", J / ((b * h ** 3) / 3));
    }
  });

  it("meets Bredt's closed box, and twists like it with two skins and walls between", () => {
    const {
      w_mm: w,
      d_mm: d,
      t_face_mm: t,
      G_face_MPa: G,
      t_wall_mm,
      G_wall_MPa,
    } = mechanicsCase("TW-BREDT").inputs as Record<string, number>;
    if (!w || !d || !t || !G || !t_wall_mm || !G_wall_MPa) throw new Error("TW-BREDT lacks an input");
    const face = { lengthMm: w, thicknessMm: t, shearModulusMpa: G };
    const wall = { lengthMm: d, thicknessMm: t_wall_mm, shearModulusMpa: G_wall_MPa };
    expectCase("TW-BREDT", "GJ_Nm2", closedBoxTorsionalStiffnessNmm2(w * d, [face, face, wall, wall]) / 1e6);
    expectCase("TW-BREDT", "limit_rigid_walls_Nm2", closedBoxTorsionalStiffnessNmm2(w * d, [face, face]) / 1e6);

    // Skins as wide as the box outside its walls, nothing between but the walls: thin beside the box, so a few per cent off.
    const skin = { thicknessMm: t, parts: [part(1, w + t_wall_mm, G)] };
    const walls = {
      thicknessMm: d - t,
      parts: [part(1, t_wall_mm, G_wall_MPa), part(1, w - t_wall_mm, 0), part(1, t_wall_mm, G_wall_MPa)],
    };
    const closed = sectionConstants([skin, walls, skin]).torsionalStiffnessNmm2;
    const bredt = closedBoxTorsionalStiffnessNmm2(w * d, [face, face, wall, wall]);
    expect(Math.abs(closed / bredt - 1)).toBeLessThan(0.05);
    // The thin strip knows no walls: it is the limit of rigid ones, t²/3d² = 0.2 % more than the thin-walled box.
    const open = [skin, { ...walls, parts: [part(1, w + t_wall_mm, 0)] }, skin];
    const rigid = closedBoxTorsionalStiffnessNmm2(w * d, [face, face]);
    const wider = (w + t_wall_mm) / w;
    expect(sectionConstants(open).thinStripTorsionalStiffnessNmm2 / rigid / wider).toBeCloseTo(1, 2);
    // Without walls two skins twist each for itself.
    const alone = sectionConstants([skin]).torsionalStiffnessNmm2;
    expect(sectionConstants(open).torsionalStiffnessNmm2 / alone).toBeCloseTo(2, 2);
  });
});

const anyLayer = fc
  .tuple(
    fc.double({ min: 0.1, max: 10, noNaN: true }),
    fc.array(fc.tuple(fc.double({ min: 1, max: 2e5, noNaN: true }), fc.double({ min: 1, max: 60, noNaN: true })), {
      minLength: 1,
      maxLength: 3,
    }),
  )
  .map(([thicknessMm, parts]) => ({
    thicknessMm,
    parts: parts.map(([e, w]) => ({ ...part(e, w), densityKgM3: e / 10 })),
  }));
const anySection = fc.array(anyLayer, { minLength: 1, maxLength: 7 });

describe("laws of sections", () => {
  it("bend as the transformed section of a handbook does", () => {
    fc.assert(
      fc.property(anySection, (layers) => {
        let z = 0;
        let [a, s, i] = [0, 0, 0];
        for (const { thicknessMm: t, parts } of layers) {
          const ew = parts.reduce((sum, one) => sum + one.modulusMpa * one.widthMm, 0);
          a += ew * t;
          s += ew * t * (z + t / 2);
          i += ew * t * ((z + t / 2) ** 2 + t ** 2 / 12);
          z += t;
        }
        const found = sectionConstants(layers);
        expect(found.axialStiffnessN / a).toBeCloseTo(1, 8);
        expect(found.neutralAxisMm).toBeCloseTo(s / a, 6);
        expect(found.bendingStiffnessNmm2 / (i - s ** 2 / a)).toBeCloseTo(1, 6);
      }),
    );
  });

  it("scale with the width", () => {
    fc.assert(
      fc.property(anySection, fc.double({ min: 0.1, max: 10, noNaN: true }), (layers, factor) => {
        const wide = layers.map(({ thicknessMm, parts }) => ({
          thicknessMm,
          parts: parts.map((one) => ({ ...one, widthMm: one.widthMm * factor })),
        }));
        const before = sectionConstants(layers);
        const after = sectionConstants(wide);
        for (const name of [
          "axialStiffnessN",
          "bendingStiffnessNmm2",
          "thinStripTorsionalStiffnessNmm2",
          "massGPerM",
        ] as const) {
          expect(after[name] / before[name] / factor).toBeCloseTo(1, 8);
        }
        expect(after.neutralAxisMm).toBeCloseTo(before.neutralAxisMm, 6);
      }),
    );
  });
});

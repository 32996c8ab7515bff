/** Sections: parts given by moduli, plies on a core, torsion of other shapes, mass. */

import {
  closedBoxTorsionalStiffnessNmm2,
  layeredRectangleTorsionNmm2,
  rectangleTorsionConstantMm4,
} from "#engine/handbook";
import {
  coupleStiffnessNmm2,
  laminateConstants,
  type PlyMaterial,
  type SectionLayer,
  sectionConstants,
  torsionSlipCompliance,
} from "#engine/laminate";
import { findRoot, invert } from "#engine/math";
import sectionTorsion from "../fixtures/truth/section-torsion.json";
import { caseCheck, caseOf, expected, input, markOf } from "./cases";
import type { Check } from "./types";

const NM2 = 1e-6;
const part = (modulusMpa: number, widthMm: number) => ({ modulusMpa, widthMm, shearModulusMpa: modulusMpa / 2.6 });
const bendingNm2 = (layers: readonly SectionLayer[]) => sectionConstants(layers).bendingStiffnessNmm2 * NM2;

/** Two faces on a core, as SEC-SANDWICH gives them, with another core where asked. */
function sandwich(id: string, coreMm = input(id, "core_t_mm"), coreMpa = input(id, "core_E_MPa")): SectionLayer[] {
  const width = input(id, "b_mm");
  const face = { thicknessMm: input(id, "face_t_mm"), parts: [part(input(id, "face_E_MPa"), width)] };
  return [face, { thicknessMm: coreMm, parts: [part(coreMpa, width)] }, face];
}

type PrintedLayer = { readonly t_mm: number; readonly parts: readonly (readonly [number, number])[] };
const printedParts = (parts: PrintedLayer["parts"]) => parts.map(([e, w]) => part(e, w));
const fiveLayers = () =>
  (caseOf("SEC-5LAYER").inputs.layers_bottom_to_top as readonly PrintedLayer[]).map(
    ({ t_mm, parts }): SectionLayer => ({ thicknessMm: t_mm, parts: printedParts(parts) }),
  );

const moduli: readonly Check[] = [
  caseCheck("SEC-SANDWICH", "section", () => {
    const { bendingStiffnessNmm2, neutralAxisMm } = sectionConstants(sandwich("SEC-SANDWICH"));
    return { EI_Nm2: bendingStiffnessNmm2 * NM2, zbar_mm: neutralAxisMm };
  }),
  caseCheck("SEC-ALU", "section", () => ({ EI_Nm2: bendingNm2(sandwich("SEC-ALU")) })),
  caseCheck("SEC-5LAYER", "section", () => {
    const found = sectionConstants(fiveLayers());
    return {
      EA_N: found.axialStiffnessN,
      zbar_mm_from_bottom: found.neutralAxisMm,
      EI_Nm2: found.bendingStiffnessNmm2 * NM2,
      H_mm: found.thicknessMm,
    };
  }),
  caseCheck("SEC-EDGES", "section", () => {
    const parts = printedParts(caseOf("SEC-EDGES").inputs.base_layer_parts as PrintedLayer["parts"]);
    const found = sectionConstants([{ thicknessMm: 1.3, parts }, ...fiveLayers().slice(1)]);
    return {
      EA_N: found.axialStiffnessN,
      zbar_mm_from_bottom: found.neutralAxisMm,
      EI_Nm2: found.bendingStiffnessNmm2 * NM2,
      ratio_to_no_edges: (found.bendingStiffnessNmm2 * NM2) / bendingNm2(fiveLayers()),
    };
  }),
  caseCheck("SEC-SENS", "section", () => {
    const log = (coreMm: number) => Math.log(bendingNm2(sandwich("SEC-SANDWICH", coreMm)));
    return { exponent: (log(10.001) - log(9.999)) / Math.log(10.001 / 9.999) };
  }),
  caseCheck("SEC-SOLVE", "section", () => {
    const wanted = bendingNm2(sandwich("SEC-SANDWICH")) * input("SEC-SOLVE", "EI_factor");
    return { core_t_mm: findRoot((t) => bendingNm2(sandwich("SEC-SANDWICH", t)) - wanted, 9, 13) };
  }),
  caseCheck("MASS-1", "section", () => {
    const inputs = caseOf("MASS-1").inputs as {
      readonly layers: readonly { readonly t_mm: number; readonly rho: number }[];
      readonly edges: { n: number; length_m: number; section_mm2: number; rho: number };
    };
    // The area as a ski of even width; the edges are a section of their own.
    const widthMm = 95;
    const plan = inputs.layers.map(({ t_mm, rho }) => ({
      thicknessMm: t_mm,
      parts: [{ ...part(1, widthMm), densityKgM3: rho }],
    }));
    const { n, length_m, section_mm2, rho } = inputs.edges;
    const bar = [{ thicknessMm: 2, parts: [{ ...part(1, section_mm2 / 2), densityKgM3: rho }] }];
    const lengthM = input("MASS-1", "area_m2") / (widthMm / 1e3);
    const massG = lengthM * sectionConstants(plan).massGPerM + n * length_m * sectionConstants(bar).massGPerM;
    return { mass_kg: massG / 1e3 };
  }),
];

const glass = { e1Mpa: 38_600, e2Mpa: 8_270, g12Mpa: 4_140, nu12: 0.26 };
const wood = { e1Mpa: 11_000, e2Mpa: 1_000, g12Mpa: 1_000, nu12: 0.4, angleDeg: 0 };
const layer = (ply: PlyMaterial, thicknessMm: number): SectionLayer => ({ thicknessMm, parts: [{ widthMm: 80, ply }] });
type Face = readonly (readonly [angleDeg: number, thicknessMm: number])[];
const faced = (face: Face): SectionLayer[] => {
  const plies = face.map(([angleDeg, thicknessMm]) => layer({ ...glass, angleDeg }, thicknessMm));
  return [...plies, layer(wood, 10), ...plies.toReversed()];
};
const biaxial: Face = [
  [45, 0.3],
  [-45, 0.3],
];
/** The 0° ply outermost. */
const faces: Readonly<Record<string, Face>> = {
  UD: [[0, 0.6]],
  TRI: [
    [0, 0.3],
    [45, 0.15],
    [-45, 0.15],
  ],
  BI: biaxial,
};

/** A case that prints one value per kind of face, in the order it prints them. */
const perFace = (name: string, value: (layers: readonly SectionLayer[]) => number) => {
  const wanted = expected("TW-COMPARE", name) as unknown as Readonly<Record<string, number>>;
  return Object.entries(wanted).map(([kind, printed]) => ({
    name: `${name} ${kind}`,
    expected: printed,
    computed: value(faced(faces[kind] ?? [])),
    tolerance: { kind: "rel", value: 1e-4 } as const,
  }));
};

const ofPlies: readonly Check[] = [
  {
    id: "TW-COMPARE",
    topic: "torsion",
    about: caseOf("TW-COMPARE").topic,
    source: caseOf("TW-COMPARE").source,
    mark: markOf("TW-COMPARE"),
    values: () => [
      ...perFace("EI_Nm2", bendingNm2),
      ...perFace("GJ_Nm2", (layers) => sectionConstants(layers).thinStripTorsionalStiffnessNmm2 * NM2),
    ],
  },
  caseCheck("TW-SANDWICH45", "torsion", () => {
    const plies = biaxial.map(([angleDeg, thicknessMm]) => ({ ...glass, angleDeg, thicknessMm }));
    const { dNmm } = laminateConstants([...plies, { ...wood, thicknessMm: 10 }, ...plies.toReversed()]);
    return {
      D66_Nmm: dNmm[2]?.[2] ?? Number.NaN,
      one_over_d66_Nmm: 1 / (invert(dNmm)[2]?.[2] ?? Number.NaN),
      GJ_Nm2: sectionConstants(faced(biaxial)).thinStripTorsionalStiffnessNmm2 * NM2,
    };
  }),
  caseCheck("TW-4BD66-ISO", "torsion", () => {
    const at = (name: string) => input("TW-4BD66-ISO", name);
    const parts = [{ widthMm: at("b_mm"), modulusMpa: 2.6 * at("G_MPa"), shearModulusMpa: at("G_MPa") }];
    return { GJ_Nm2: sectionConstants([{ thicknessMm: at("h_mm"), parts }]).thinStripTorsionalStiffnessNmm2 * NM2 };
  }),
];

const box = () => {
  const at = (name: string) => input("TW-BREDT", name);
  const face = { lengthMm: at("w_mm"), thicknessMm: at("t_face_mm"), shearModulusMpa: at("G_face_MPa") };
  const wall = { lengthMm: at("d_mm"), thicknessMm: at("t_wall_mm"), shearModulusMpa: at("G_wall_MPa") };
  return { face, wall, areaMm2: face.lengthMm * wall.lengthMm };
};

const otherShapes: readonly Check[] = [
  ...["TW-J-10", "TW-J-7"].map((id) =>
    caseCheck(id, "torsion", () => {
      const [b, h] = [input(id, "b_mm"), input(id, "h_mm")];
      const J = rectangleTorsionConstantMm4(b, h);
      return { J_mm4: J, factor: J / ((b * h ** 3) / 3) };
    }),
  ),
  caseCheck("TW-BREDT", "torsion", () => {
    const { face, wall, areaMm2 } = box();
    return {
      GJ_Nm2: closedBoxTorsionalStiffnessNmm2(areaMm2, [face, face, wall, wall]) * NM2,
      limit_rigid_walls_Nm2: closedBoxTorsionalStiffnessNmm2(areaMm2, [face, face]) * NM2,
    };
  }),
];

/** Sections with parts side by side, by the product's own solver. */
const partsSideBySide: readonly Check[] = [
  ...["TW-J-10", "TW-J-7"].map((id): Check => {
    const [b, h] = [input(id, "b_mm"), input(id, "h_mm")];
    return {
      id: `${id}-SECTION`,
      topic: "torsion",
      about: `the same rectangle b/h = ${b / h} as a section, G 1,000 MPa`,
      source: caseOf(id).source,
      mark: markOf(id),
      values: () => {
        const parts = [{ widthMm: b, modulusMpa: 2600, shearModulusMpa: 1000 }];
        const computed = sectionConstants([{ thicknessMm: h, parts }]).torsionalStiffnessNmm2 * NM2;
        const wanted = 1000 * NM2 * Number(expected(id, "J_mm4"));
        return [{ name: "GJ, N·m²", expected: wanted, computed, tolerance: { kind: "rel", value: 0.003 } }];
      },
    };
  }),
  {
    id: "TW-LAYERS",
    topic: "torsion",
    about: "layers of 90 mm: base, glass, wood, rubber foil, metal, glass, topsheet",
    source:
      "Prandtl's stress function as a sine series across, layer by layer (after S. P. Timoshenko & J. N. Goodier, Theory of Elasticity, art. 109, from memory; own derivation)",
    mark: "derived",
    values: () => {
      const layers = [
        [1.3, 270],
        [0.656, 7470],
        [9, 730],
        [0.4, 26_900],
        [0.2, 0.7],
        [0.656, 7470],
        [0.6, 480],
      ].map(([thicknessMm = 0, shearModulusMpa = 0]) => ({ thicknessMm, shearModulusMpa }));
      const stacked = layers.map(({ thicknessMm, shearModulusMpa }) => ({
        thicknessMm,
        parts: [{ widthMm: 90, modulusMpa: 1, shearModulusMpa }],
      }));
      const computed = sectionConstants(stacked).torsionalStiffnessNmm2 * NM2;
      const wanted = layeredRectangleTorsionNmm2(90, layers) * NM2;
      return [{ name: "GJ, N·m²", expected: wanted, computed, tolerance: { kind: "rel", value: 0.003 } }];
    },
  },
  {
    id: "TW-PARTS",
    topic: "torsion",
    about: "ski sections with steel, sidewalls, metal and carbon, parts from left to right",
    source: sectionTorsion.source,
    mark: "derived",
    values: () =>
      sectionTorsion.cases.map((each) => ({
        name: `GJ ${each.id}, N·m²`,
        expected: each.torsionalStiffnessNmm2 * NM2,
        computed: sectionConstants(each.layers).torsionalStiffnessNmm2 * NM2,
        tolerance: { kind: "rel", value: 0.01 } as const,
      })),
  },
];

/** Closed forms of parts that slip; N, mm. */
const softLayers: readonly Check[] = [
  {
    id: "SLIP-GAMMA",
    topic: "soft-layers",
    about: "two parts on a yielding joint: A1·A2/(A1 + A2)·d²/(1 + s·A1·A2/(A1 + A2))",
    source: "γ-method for two parts (EN 1995-1-1:2004, annex B, from memory), worked out by hand",
    mark: "memory",
    values: () => {
      // 3 MN and 2 MN, 6 mm apart: 1.2 MN·36 mm² = 43.2 N·m² bonded; a joint of s = 1/1.2 MN halves it.
      const parts = [
        { stiffnessN: 3e6, heightMm: 1 },
        { stiffnessN: 2e6, heightMm: 7 },
      ];
      const tolerance = { kind: "rel", value: 1e-9 } as const;
      const couple = (slip: number) => coupleStiffnessNmm2(parts, [slip]) * NM2;
      return [
        { name: "bonded, N·m²", expected: 43.2, computed: couple(0), tolerance },
        { name: "yielding, N·m²", expected: 21.6, computed: couple(1 / 1.2e6), tolerance },
      ];
    },
  },
  {
    id: "SLIP-BREDT",
    topic: "soft-layers",
    about: "two skins and no core, closed by soft walls, twist as Bredt's box",
    source: caseOf("TW-BREDT").source,
    mark: "derived",
    values: () => {
      const { face, wall } = box();
      const skinN = face.shearModulusMpa * face.thicknessMm * face.lengthMm;
      const wallNPerMm2 = (wall.shearModulusMpa * wall.thicknessMm) / wall.lengthMm;
      const joint = { lowerN: skinN, upperN: skinN, widthMm: face.lengthMm, jointNPerMm3: 0, wallNPerMm2 };
      const skins = [
        { stiffnessN: skinN, heightMm: 0 },
        { stiffnessN: skinN, heightMm: wall.lengthMm },
      ];
      const computed = 4 * coupleStiffnessNmm2(skins, [torsionSlipCompliance(joint)]) * NM2;
      const wanted = expected("TW-BREDT", "GJ_Nm2");
      return [{ name: "GJ, N·m²", expected: wanted, computed, tolerance: { kind: "rel", value: 1e-5 } }];
    },
  },
];

export const sectionChecks: readonly Check[] = [
  ...moduli,
  ...ofPlies,
  ...otherShapes,
  ...partsSideBySide,
  ...softLayers,
];

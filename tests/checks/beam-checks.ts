/** Beams: deflection, twist, shear of the core. Cases count in metres and N·m²; x from their own zero. */
import { type BeamStation, solveBeam } from "#engine/flex";
import { coreShearDeflectionMm } from "#engine/handbook";
import { sectionConstants } from "#engine/laminate";
import { evenlySpaced } from "#engine/math";
import { caseCheck, caseOf, input } from "./cases";
import type { Check } from "./types";

/** [x in m, EI in N·m²] knots. */
type Knots = readonly (readonly number[])[];
const stations = (knots: Knots): BeamStation[] =>
  knots.map(([x = 0, EI = 0]) => ({ xMm: x * 1e3, bendingStiffnessNmm2: EI * 1e6 }));

function onSupports(knots: Knots, loadM: number, forceN: number) {
  const list = stations(knots);
  const span = [list[0]?.xMm ?? 0, list.at(-1)?.xMm ?? 0] as const;
  return solveBeam({ stations: list, support: { kind: "simple", xMm: span }, load: { xMm: loadM * 1e3, forceN } });
}

const onClamp = (knots: Knots, clampM: number, loadM: number, forceN: number) =>
  solveBeam({
    stations: stations(knots),
    support: { kind: "clamped", xMm: clampM * 1e3 },
    load: { xMm: loadM * 1e3, forceN },
  });

const even = (lengthM: number, EI: number): Knots => [
  [0, EI],
  [lengthM, EI],
];
const skiKnots = (id: string) => caseOf(id).inputs.EI_knots as Knots;

const supported: readonly Check[] = [
  caseCheck("BM-3PT", "beam", () => {
    const at = (name: string) => input("BM-3PT", name);
    const found = onSupports(even(at("L_m"), at("EI_Nm2")), at("L_m") / 2, at("F_N"));
    return { delta_mm: found.deflectionMm, k_N_mm: found.springNPerMm };
  }),
  caseCheck("BM-3PT-OFF", "beam", () => {
    const at = (name: string) => input("BM-3PT-OFF", name);
    return { delta_mm: onSupports(even(at("a_m") + at("b_m"), at("EI_Nm2")), at("a_m"), at("F_N")).deflectionMm };
  }),
  // The case measures from the support farther from the load.
  caseCheck("BM-3PT-OFF-MAX", "beam", () => {
    const at = (name: string) => input("BM-3PT-OFF-MAX", name);
    const found = onSupports(even(at("a_m") + at("b_m"), at("EI_Nm2")), at("a_m"), at("F_N"));
    return { x_max_from_far_support_m: found.maxAtMm / 1e3, delta_max_mm: found.maxDeflectionMm };
  }),
  caseCheck("BM-STEP", "beam", () => {
    const [outer, centre] = [input("BM-STEP", "EI_outer"), input("BM-STEP", "EI_centre")];
    const [a, L] = [input("BM-STEP", "a_m_from_support"), input("BM-STEP", "L_m")];
    const knots = [
      [0, outer],
      [a, outer],
      [a, centre],
      [L - a, centre],
      [L - a, outer],
      [L, outer],
    ];
    return { delta_mm: onSupports(knots, L / 2, input("BM-STEP", "F_N")).deflectionMm };
  }),
  caseCheck("BM-LIN", "beam", () => {
    const [support, centre, L] = [input("BM-LIN", "EI_support"), input("BM-LIN", "EI_centre"), input("BM-LIN", "L_m")];
    const knots = [
      [0, support],
      [L / 2, centre],
      [L, support],
    ];
    return { delta_mm: onSupports(knots, L / 2, input("BM-LIN", "F_N")).deflectionMm };
  }),
  ...(
    [
      ["BM-TAPER3", 3],
      ["BM-TAPER2", 2],
    ] as const
  ).map(([id, power]) =>
    caseCheck(id, "beam", () => {
      const [r, L, EI] = [input(id, "t_end_over_t_centre"), input(id, "L_m"), input(id, "EI_centre")];
      const knots = evenlySpaced(0, L, 2000).map((x) => [
        x,
        EI * (r + (1 - r) * (1 - Math.abs(x / (L / 2) - 1))) ** power,
      ]);
      return { delta_mm: onSupports(knots, L / 2, input(id, "F_N")).deflectionMm };
    }),
  ),
  caseCheck("BM-SKI", "beam", () => {
    const found = onSupports(skiKnots("BM-SKI"), input("BM-SKI", "load_x_m"), input("BM-SKI", "F_N"));
    return { delta_mm: found.deflectionMm, k_N_mm: found.springNPerMm };
  }),
];

const clamped: readonly Check[] = [
  caseCheck("BM-CANT", "beam", () => {
    const [EI, L] = [input("BM-CANT", "EI_Nm2"), input("BM-CANT", "L_m")];
    // A tenth of a metre beyond the load lies straight: its slope is the end's.
    const found = onClamp(
      [
        [0, EI],
        [L, EI],
        [L + 0.1, EI],
      ],
      0,
      L,
      input("BM-CANT", "F_N"),
    );
    const end = found.curve.at(-1)?.deflectionMm ?? Number.NaN;
    return { delta_mm: found.deflectionMm, slope_rad: (end - found.deflectionMm) / 100 };
  }),
  caseCheck("BM-CANT-STEP", "beam", () => {
    const at = (name: string) => input("BM-CANT-STEP", name);
    const [tip, L] = [at("tip_part_m"), at("L_m")];
    const knots = [
      [0, at("EI_tip")],
      [tip, at("EI_tip")],
      [tip, at("EI_root")],
      [L, at("EI_root")],
    ];
    return { delta_mm: onClamp(knots, L, 0, at("F_N")).deflectionMm };
  }),
  caseCheck("BM-CANT-LIN", "beam", () => {
    const at = (name: string) => input("BM-CANT-LIN", name);
    const knots = [
      [0, at("EI_root")],
      [at("L_m"), at("EI_tip")],
    ];
    return { delta_mm: onClamp(knots, 0, at("L_m"), at("F_N")).deflectionMm };
  }),
  // The case counts x from the tail and presses at the ends of the beam.
  caseCheck("BM-SKI-BAL", "beam", () => {
    const knots = skiKnots("BM-SKI-BAL");
    const at = caseOf("BM-SKI-BAL").inputs.clamp_x_m as { readonly afterbody: number; readonly forebody: number };
    const after = onClamp(knots, at.afterbody, 0, 20).springNPerMm;
    const fore = onClamp(knots, at.forebody, 1.4, 20).springNPerMm;
    return { c_A_N_mm: after, c_B_N_mm: fore, balance_cA_over_cB: after / fore };
  }),
];

/** [x in m, GJ in N·m²] clamped at the first, torque at the last. */
function twistRad(knots: Knots, torqueNm: number): number {
  const list = knots.map(([x = 0, GJ = 0]) => ({
    xMm: x * 1e3,
    bendingStiffnessNmm2: 1e8,
    torsionalStiffnessNmm2: GJ * 1e6,
  }));
  const load = { xMm: list.at(-1)?.xMm ?? 0, forceN: 0 };
  const support = { kind: "clamped", xMm: 0 } as const;
  return solveBeam({ stations: list, support, load, torqueNmm: torqueNm * 1e3 }).twistRad ?? Number.NaN;
}
const degrees = (rad: number) => (rad * 180) / Math.PI;

const twist: readonly Check[] = [
  caseCheck("TW-UNI", "twist", () => ({
    deg: degrees(twistRad(even(input("TW-UNI", "L_m"), input("TW-UNI", "GJ_Nm2")), input("TW-UNI", "T_Nm"))),
  })),
  caseCheck("TW-STEP", "twist", () => {
    const parts = caseOf("TW-STEP").inputs.parts as readonly (readonly [lengthM: number, GJ: number])[];
    let x = 0;
    const knots = parts.flatMap(([lengthM, GJ]) => {
      const from = x;
      x += lengthM;
      return [
        [from, GJ],
        [x, GJ],
      ];
    });
    return { deg: degrees(twistRad(knots, input("TW-STEP", "T_Nm"))) };
  }),
  caseCheck("TW-LIN", "twist", () => {
    const at = (name: string) => input("TW-LIN", name);
    const rad = twistRad(
      [
        [0, at("GJ0")],
        [at("L_m"), at("GJ1")],
      ],
      at("T_Nm"),
    );
    return { rad, deg: degrees(rad) };
  }),
];

const shear: readonly Check[] = [
  caseCheck("SH-WOOD", "core-shear", () => {
    const at = (name: string) => input("SH-WOOD", name);
    const bend = onSupports(even(at("L_mm") / 1e3, at("EI_Nmm2") / 1e6), at("L_mm") / 2e3, at("F_N")).deflectionMm;
    const slid = coreShearDeflectionMm({
      forceN: at("F_N"),
      spanMm: at("L_mm"),
      widthMm: at("b_mm"),
      coreMm: at("c_mm"),
      faceDistanceMm: at("d_mm"),
      coreShearMpa: at("G_core_MPa"),
    });
    return { bend_mm: bend, shear_mm: slid, ratio: slid / bend };
  }),
  caseCheck("SH-FOAM", "core-shear", () => {
    const [forceN, spanMm] = [input("SH-FOAM", "F_N"), input("SH-FOAM", "L_mm")];
    const of = (name: string) => input("SEC-SANDWICH", name);
    const face = { thicknessMm: of("face_t_mm"), parts: [{ widthMm: of("b_mm"), modulusMpa: of("face_E_MPa") }] };
    const foam = { widthMm: of("b_mm"), modulusMpa: input("SH-FOAM", "core_E_MPa") };
    const layers = [face, { thicknessMm: of("core_t_mm"), parts: [foam] }, face];
    const EI = sectionConstants(layers).bendingStiffnessNmm2 / 1e6;
    return {
      EI_Nm2: EI,
      bend_mm: onSupports(even(spanMm / 1e3, EI), spanMm / 2e3, forceN).deflectionMm,
      shear_mm: coreShearDeflectionMm({
        forceN,
        spanMm,
        widthMm: of("b_mm"),
        coreMm: of("core_t_mm"),
        faceDistanceMm: of("core_t_mm") + of("face_t_mm"),
        coreShearMpa: input("SH-FOAM", "G_core_MPa"),
      }),
    };
  }),
];

export const beamChecks: readonly Check[] = [...supported, ...clamped, ...twist, ...shear];

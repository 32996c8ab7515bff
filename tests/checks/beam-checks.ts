/** Beams: springs, twist, shear of the core, frequencies, camber. Cases count in metres and N·m²; x from their own zero. */
import {
  type BeamStation,
  cantileverFrequencyHz,
  coreShearDeflectionMm,
  type FlexStation,
  freeFreeFrequencies,
  pressedCamber,
  solveBeam,
  springConstants,
} from "@/lib/engine/flex";
import { sectionConstants } from "@/lib/engine/laminate";
import { evenlySpaced } from "@/lib/engine/math";
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
  caseCheck("TW-UNI", "beam", () => ({
    deg: degrees(twistRad(even(input("TW-UNI", "L_m"), input("TW-UNI", "GJ_Nm2")), input("TW-UNI", "T_Nm"))),
  })),
  caseCheck("TW-STEP", "beam", () => {
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
  caseCheck("TW-LIN", "beam", () => {
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

/** A uniform ski-like strip: 1.8 m, 200 N·m², 100 N·m², 1 kg/m, 90 mm wide. */
const strip = evenlySpaced(0, 1800, 90).map(
  (xMm): FlexStation => ({
    xMm,
    widthMm: 90,
    coreMm: 8,
    thicknessMm: 12,
    bendingStiffnessNmm2: 200e6,
    torsionalStiffnessNmm2: 100e6,
    neutralAxisMm: 6,
    massGPerM: 1000,
  }),
);

const dynamics: readonly Check[] = [
  caseCheck("VIB-CANT", "frequencies", () => {
    const at = (name: string) => input("VIB-CANT", name);
    return { f1_Hz: cantileverFrequencyHz(at("EI_Nm2") * 1e6, at("m_per_m_kg"), at("L_m") * 1e3) };
  }),
  {
    id: "VIB-FREE",
    topic: "frequencies",
    about: "uniform strip hanging free: 1.8 m, EI 200 N·m², GJ 100 N·m², 1 kg/m, 90 mm wide",
    source:
      "(4.73004)²/2π·√(EI/mL⁴) and √(GJ/(m·w²/12))/2L (S. P. Timoshenko, Vibration Problems in Engineering, from memory)",
    mark: "memory",
    values: () => {
      const { bendingHz, torsionHz } = freeFreeFrequencies(strip);
      const tolerance = { kind: "rel", value: 1e-4 } as const;
      const bending = (4.7300407449 ** 2 / (2 * Math.PI)) * Math.sqrt(200 / 1.8 ** 4);
      const torsion = Math.sqrt(100 / (0.09 ** 2 / 12)) / (2 * 1.8);
      return [
        { name: "bending, Hz", expected: bending, computed: bendingHz, tolerance },
        { name: "torsion, Hz", expected: torsion, computed: torsionHz, tolerance },
      ];
    },
  },
  {
    id: "CAMBER",
    topic: "beam",
    about: "camber shaped like the bend of a centre load closes evenly, h = c − F·L³/48EI",
    source: "own derivation: EI 200 N·m², L 1.4 m, camber 8 mm in the form 3ξ − 4ξ³ of a centre-loaded beam",
    mark: "derived",
    values: () => {
      const [L, c] = [1400, 8];
      const closing = (48 * 200e6 * c) / L ** 3;
      const xi = (x: number) => Math.min(x, L - x) / L;
      const beam = {
        stations: strip,
        fromMm: 0,
        toMm: L,
        loadMm: L / 2,
        restHeightMm: (x: number) => c * (3 * xi(x) - 4 * xi(x) ** 3),
      };
      return [0.25, 0.5, 0.75].map((share) => ({
        name: `height under ${100 * share} % of the closing load, mm`,
        expected: c * (1 - share),
        computed: pressedCamber(beam, share * closing).heightMm,
        // The engine's own statement: within 2 % of the camber.
        tolerance: { kind: "abs", value: 0.02 * c } as const,
      }));
    },
  },
  {
    id: "SPRINGS",
    topic: "beam",
    about: "the three springs of a uniform strip, supports 1.4 m apart, load 0.6 m behind the first",
    source: "3EI·L/(a²b²), 3EI/a³ and 3EI/b³ (beam tables), EI 200 N·m²",
    mark: "derived",
    values: () => {
      const [a, b, EI] = [600, 800, 200e6];
      const found = springConstants(
        strip.map((station) => station.xMm),
        strip.map((station) => station.bendingStiffnessNmm2),
        { frontSupportMm: 200, rearSupportMm: 200 + a + b, loadMm: 200 + a },
      );
      const tolerance = { kind: "rel", value: 1e-6 } as const;
      return [
        ["centre, N/mm", (3 * EI * (a + b)) / (a * b) ** 2, found.springCentreNPerMm] as const,
        ["forebody, N/mm", (3 * EI) / a ** 3, found.springForebodyNPerMm] as const,
        ["afterbody, N/mm", (3 * EI) / b ** 3, found.springAfterbodyNPerMm] as const,
      ].map(([name, expected, computed]) => ({ name, expected, computed, tolerance }));
    },
  },
];

export const beamChecks: readonly Check[] = [...supported, ...clamped, ...twist, ...shear, ...dynamics];

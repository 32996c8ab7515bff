/** Outline, sidecut and fit. */
import { loadCatalog } from "#catalog";
import { type FitAnswers, fitToModel } from "#engine/fit";
import { solveBeam } from "#engine/flex";
import { federationRadiusM, type SidecutWidths, taperedArc } from "#engine/geometry";
import { arcWidthMm, carvedRadiusM, edgeContactBendMm } from "#engine/handbook";
import { sectionConstants } from "#engine/laminate";
import { radians } from "#engine/units";
import { caseCheck, caseOf, expected, input, markOf } from "./cases";
import type { Check } from "./types";

const widthsOf = (id: string, names: readonly [string, string, string]): SidecutWidths => ({
  shoulderWidthMm: input(id, names[0]),
  waistWidthMm: input(id, names[1]),
  heelWidthMm: input(id, names[2]),
  sidecutLengthMm: input(id, "L_mm"),
});
/** The ski of GEO-TAPER, GEO-EDGE and GEO-WIDTH. */
const tapered = () => widthsOf("GEO-TAPER", ["tip_mm", "waist_mm", "tail_mm"]);

const outline: readonly Check[] = [
  caseCheck("GEO-FIS", "outline", () => ({ R_m: federationRadiusM(widthsOf("GEO-FIS", ["S_mm", "W_mm", "H_mm"])) })),
  caseCheck("GEO-SYM", "outline", () => {
    const widths = widthsOf("GEO-SYM", ["tip_mm", "waist_mm", "tail_mm"]);
    const { radiusMm, waistFromShoulderMm } = taperedArc(widths);
    const depth = (arcWidthMm(widths.waistWidthMm, radiusMm, waistFromShoulderMm) - widths.waistWidthMm) / 2;
    return { depth_mm: depth, R_m: radiusMm / 1e3 };
  }),
  caseCheck("GEO-TAPER", "outline", () => {
    const { radiusMm, waistFromShoulderMm } = taperedArc(tapered());
    return {
      R_m: radiusMm / 1e3,
      waist_from_tip_widest_mm: waistFromShoulderMm,
      waist_behind_middle_mm: waistFromShoulderMm - input("GEO-TAPER", "L_mm") / 2,
    };
  }),
  caseCheck("GEO-EDGE", "outline", () => {
    const { effectiveEdgeMm } = taperedArc(tapered());
    return { arc_mm: effectiveEdgeMm, excess_over_L_mm: effectiveEdgeMm - tapered().sidecutLengthMm };
  }),
  caseCheck("GEO-WIDTH", "outline", () => ({
    width_mm: arcWidthMm(tapered().waistWidthMm, taperedArc(tapered()).radiusMm, input("GEO-WIDTH", "x_mm")),
  })),
  caseCheck("GEO-FIS-POS", "outline", () => {
    const at = (name: string) => input("GEO-FIS-POS", name);
    const [front, rear] = [0.8 * (at("L_TOT_mm") - at("L_W_mm")), 0.9 * at("L_W_mm")];
    const width = (x: number) => arcWidthMm(at("W_mm"), at("R_true_m") * 1e3, x);
    const widths = { shoulderWidthMm: width(front), waistWidthMm: at("W_mm"), heelWidthMm: width(rear) };
    return {
      S_mm: widths.shoulderWidthMm,
      H_mm: widths.heelWidthMm,
      R_FIS_m: federationRadiusM({ ...widths, sidecutLengthMm: front + rear }),
    };
  }),
  ...[30, 45, 60, 70].map((angle) => {
    const id = `GEO-CARVE-${angle}`;
    return caseCheck(id, "outline", () => {
      const edge = radians(input(id, "theta_deg"));
      return {
        R_m: carvedRadiusM(input(id, "R_sc_m"), edge),
        bend_at_waist_mm: edgeContactBendMm(input(id, "depth_mm"), edge),
      };
    });
  }),
  caseCheck("GEO-CONTACT", "outline", () => {
    const at = (name: string) => input("GEO-CONTACT", name);
    const [lengthMm, bendingStiffnessNmm2] = [at("L_m") * 1e3, at("EI_Nm2") * 1e6];
    const { springNPerMm } = solveBeam({
      stations: [0, lengthMm].map((xMm) => ({ xMm, bendingStiffnessNmm2 })),
      support: { kind: "simple", xMm: [0, lengthMm] },
      load: { xMm: lengthMm / 2, forceN: 1 },
    });
    return { k_N_mm: springNPerMm, F_N: springNPerMm * edgeContactBendMm(at("depth_mm"), radians(at("theta_deg"))) };
  }),
  // A ski at the limits of length and waist, on an arc of the least radius, measured where the federation measures it.
  caseCheck(
    "FIT-FIS-GS",
    "outline",
    () => {
      const of = (name: string) => Number(expected("FIT-FIS-GS", name));
      const lengthMm = of("min_length_cm") * 10;
      const [front, rear] = [0.8 * 0.55 * lengthMm, 0.9 * 0.45 * lengthMm];
      const width = (x: number) => arcWidthMm(of("max_waist_mm"), of("min_radius_m") * 1e3, x);
      const widths = { shoulderWidthMm: width(front), waistWidthMm: of("max_waist_mm"), heelWidthMm: width(rear) };
      return {
        min_radius_m: federationRadiusM({ ...widths, sidecutLengthMm: front + rear }),
        max_tip_mm: widths.shoulderWidthMm,
      };
    },
    // The federation's formula takes the waist in the middle: see GEO-FIS-POS, 0.14 % there.
    { min_radius_m: { kind: "rel", value: 0.003 }, max_tip_mm: { kind: "most" } },
  ),
  {
    id: "FIT-REID",
    topic: "outline",
    about: "R·cos θ of a slalom ski at the edge angles measured in races, against the radii measured there",
    source: caseOf("FIT-REID").source,
    mark: markOf("FIT-REID"),
    values: () => {
      const read = (name: string) => Object.entries(expected("FIT-REID", name) as unknown as Record<string, number>);
      const radii = read("min_turn_radius_m").map(([, radius]) => radius);
      const band = [0.75 * Math.min(...radii), 1.25 * Math.max(...radii)];
      return read("edge_angle_deg").map(([gates, angle]) => ({
        name: `radius at ${angle}° (gates ${gates}), m`,
        expected: band,
        computed: carvedRadiusM(12, radians(angle)),
        tolerance: { kind: "range" } as const,
      }));
    },
  },
];

const { build, fit } = loadCatalog();
/** The demo's fit with exponent 1 and no gear: pure similarity. */
const similar = { ...fit, massExponent: 1, gearKg: 0 };
const massRatio = (massKg: number, coefficients = similar) => {
  const answers: FitAnswers = { heightCm: 175, massKg, ability: "confident" };
  return fitToModel(answers, { model: "midlow-84" }, build, coefficients).choice.flexRatio;
};

const flex: readonly Check[] = [
  caseCheck("FIT-SCALE", "flex", () => {
    const at = (name: string) => input("FIT-SCALE", name);
    return { EI1: (at("EI0") * massRatio(at("m1_kg")) * (at("L1_cm") / at("L0_cm")) ** 2) / massRatio(at("m0_kg")) };
  }),
  caseCheck("FIT-SCALE-K", "flex", () => {
    const at = (name: string) => input("FIT-SCALE-K", name);
    return { k1: (at("k0") * massRatio(at("m1"))) / massRatio(at("m0")) / (at("L1") / at("L0")) };
  }),
  // Everything a tenth larger: weight as the cube. EI that is needed: mass times length squared.
  caseCheck("FIT-SIM", "flex", () => {
    const scale = input("FIT-SIM", "scale");
    const massKg = 75;
    const needed = (massRatio(massKg * scale ** 3) / massRatio(massKg)) * scale ** 2;
    const bending = (size: number) =>
      sectionConstants([{ thicknessMm: 12 * size, parts: [{ widthMm: 80 * size, modulusMpa: 10_000 }] }])
        .bendingStiffnessNmm2;
    return {
      EI_factor_if_all_dimensions_scale: bending(scale) / bending(1),
      EI_factor_for_constant_relative_deflection: needed,
    };
  }),
];

/** Length over height of our offer for the mean skier of the study, within two of its standard deviations. */
const lengths = ["FIT-RUEDL-M", "FIT-RUEDL-F"].map((id): Check => {
  const { topic: about, source, expected: found } = caseOf(id);
  const [ratio, sd, lengthCm] = [Number(found.ratio_percent), Number(found.ratio_sd), Number(found.ski_length_cm)];
  const massKg = lengthCm / Number(found.length_over_mass_cm_per_kg);
  return {
    id,
    topic: "length",
    about,
    source,
    mark: markOf(id),
    values: () =>
      ["kerfline-68", "pathwick-75", "midlow-84"].map((model) => {
        const heightCm = lengthCm / (ratio / 100);
        const answers: FitAnswers = { heightCm, massKg, ability: "improving" };
        const { wantedLengthCm } = fitToModel(answers, { model }, build, fit).choice;
        return {
          name: `length over height, ${model}, %`,
          expected: ratio,
          computed: (100 * wantedLengthCm) / heightCm,
          tolerance: { kind: "abs", value: 2 * sd } as const,
        };
      }),
  };
});

export const fitChecks: readonly Check[] = [...outline, ...flex, ...lengths];

/** The catalogue's materials against the tables they are taken from, and the rules for wood, strips and cured cloth. */

import catalogue from "#content/catalog/materials.json";
import {
  atMoisture,
  axialModulusMpa,
  benchModulusMpa,
  coreVariation,
  curedThicknessMm,
  fibreVolume,
  fibreWeight,
  halpinTsai,
  inParallel,
  inSeries,
  isotropicShear,
  laminateDensityKgM3,
  resinGM2,
  shearCorrection,
  woodDensityKgM3,
} from "#engine/handbook";
import { type MaterialLibrary, sheetById, woodById } from "#engine/materials";
import { caseCheck, caseOf, input, markOf } from "./cases";
import type { Check, Tolerance, Values } from "./types";

const library: MaterialLibrary = catalogue;
const GPA = 1e-3;
const wood = (id: string) => woodById(library, id);

/** Case, row of the catalogue. Specific gravity is at 12 % moisture: density over 1.12. */
const woodRows = [
  ["WOOD-ASH-W", "ash"],
  ["WOOD-ASPEN-Q", "aspen"],
  ["WOOD-BEECH-A", "beech"],
  ["WOOD-BIRCH-Y", "birch"],
  ["WOOD-BASSWOOD", "basswood"],
  ["WOOD-MAPLE-S", "maple"],
] as const;
const woods = woodRows.map(([id, row]) =>
  caseCheck(id, "materials", () => ({
    MOE_GPa: wood(row).bendingModulusMpa * GPA,
    SG: wood(row).densityKgM3 / woodDensityKgM3(1, 12),
  })),
);

const sheetRows = [
  ["MAT-UHMWPE", "base"],
  ["MAT-ABS", "abs"],
  ["MAT-AL7075", "aluminium"],
  ["MAT-STEEL", "steel"],
] as const;
const sheets = sheetRows.map(([id, row]) =>
  caseCheck(id, "materials", () => {
    const { modulusMpa, densityKgM3 } = sheetById(library, row);
    return { E_GPa: modulusMpa * GPA, rho_kg_m3: densityKgM3 };
  }),
);

/** Table 5-1 by species: the catalogue keeps one number of it, E/G, with one decimal. */
const ratioRows: Readonly<Record<string, string>> = {
  "white ash": "ash",
  basswood: "basswood",
  "yellow birch": "birch",
  "sugar maple": "maple",
};
const ONE_DECIMAL: Tolerance = { kind: "abs", value: 0.0501 };

/** The catalogue's E/G = 1/mean(GLR/EL, GLT/EL) against the two ratios of the table. */
const elasticRatios: Check = {
  id: "WOOD-RATIO-T51",
  topic: "materials",
  about: caseOf("WOOD-RATIO-T51").topic,
  source: caseOf("WOOD-RATIO-T51").source,
  mark: markOf("WOOD-RATIO-T51"),
  values: () =>
    Object.entries(caseOf("WOOD-RATIO-T51").expected).map(([name, ratios]) => {
      const [, , longRadial = 0, longTangential = 0] = ratios as readonly number[];
      return {
        name: `E/G ${name}`,
        expected: 2 / (longRadial + longTangential),
        computed: wood(ratioRows[name] ?? name).modulusToShearRatio,
        tolerance: ONE_DECIMAL,
      };
    }),
};

const otherWoods: readonly Check[] = [
  caseCheck("WOOD-PAUL", "materials", () => {
    const { densityKgM3, bendingModulusMpa } = wood("paulownia");
    return { density_kg_m3: densityKgM3, MOE_GPa: bendingModulusMpa * GPA };
  }),
  caseCheck("WOOD-COV-MOE", "materials", () => ({ COV: wood("aspen").modulusVariation })),
];

/** Every row of the catalogue's materials that is compared with a table. */
export const checkedMaterials: readonly string[] = [
  ...[...woodRows, ...sheetRows].map(([, row]) => row),
  ...Object.values(ratioRows),
  "paulownia",
];

const woodRules: readonly Check[] = [
  ...["WOOD-DENS-ASH", "WOOD-DENS-YP"].map((id) =>
    caseCheck(id, "materials", () => ({
      density_kg_m3: woodDensityKgM3(input(id, "SG_at_MC"), input(id, "MC_percent")),
    })),
  ),
  caseCheck("WOOD-MC-MOR", "materials", () => {
    const at = (name: string) => input("WOOD-MC-MOR", name);
    return { P_kPa: atMoisture({ at12: at("P12"), green: at("Pg") }, at("M"), at("Mp")) };
  }),
  caseCheck("WOOD-MC-MOE", "materials", () => {
    const at = (name: string) => input("WOOD-MC-MOE", name);
    return { E_MPa: atMoisture({ at12: at("P12_MPa"), green: at("Pg_MPa") }, at("M"), at("Mp")) };
  }),
  caseCheck("WOOD-G-ASH", "materials", () => {
    const at = (name: string) => input("WOOD-G-ASH", name);
    const axial = axialModulusMpa(at("MOE_bending_GPa") * 1e3, at("axial_factor")) * GPA;
    return { EL_GPa: axial, G_LR_GPa: axial * at("GLR_EL"), G_LT_GPa: axial * at("GLT_EL") };
  }),
];

const strips: readonly Check[] = [
  ...["STRIP-1", "STRIP-2"].map((id) =>
    caseCheck(id, "strips", () => ({
      E_MPa: benchModulusMpa({
        forceN: input(id, "P_N"),
        spanMm: input(id, "L_mm"),
        widthMm: input(id, "b_mm"),
        heightMm: input(id, "h_mm"),
        deflectionMm: input(id, "delta_mm"),
      }),
    })),
  ),
  ...["STRIP-SHEAR", "STRIP-SHEAR50"].map((id) =>
    caseCheck(id, "strips", () => ({
      E_true_over_E_app: shearCorrection(input(id, "span_to_depth"), input(id, "E_over_G")),
    })),
  ),
  caseCheck("STRIP-AVG", "strips", () => ({
    COV_core: coreVariation(input("STRIP-AVG", "COV_strip"), input("STRIP-AVG", "n")),
  })),
];

const G_CM3 = 1e3;
const densities = (id: string) => ({ fibreKgM3: input(id, "rho_f") * G_CM3, matrixKgM3: input(id, "rho_m") * G_CM3 });

const cloth: readonly Check[] = [
  ...["CPT-GLASS450", "CPT-GLASS750", "CPT-CARB200"].map((id) =>
    caseCheck(id, "materials", () => ({
      t_mm: curedThicknessMm(input(id, "FAW_g_m2"), input(id, "rho_f_g_cm3") * G_CM3, input(id, "Vf")),
    })),
  ),
  caseCheck("CPT-TOTAL", "materials", () => {
    const id = "CPT-TOTAL";
    const volume = fibreVolume(input(id, "Wf"), densities(id));
    return {
      t_mm: curedThicknessMm(input(id, "total_g_m2") * input(id, "Wf"), densities(id).fibreKgM3, volume),
    };
  }),
  caseCheck("WF-VF", "materials", () => ({
    Wf: fibreWeight(input("WF-VF", "Vf"), densities("WF-VF")),
    rho_c_g_cm3: laminateDensityKgM3(input("WF-VF", "Vf"), densities("WF-VF")) / G_CM3,
  })),
  caseCheck("WF-VF2", "materials", () => ({ Wf: fibreWeight(input("WF-VF2", "Vf"), densities("WF-VF2")) })),
  caseCheck("RESIN-450", "materials", () => {
    const dry = input("RESIN-450", "FAW_g_m2");
    const resin = resinGM2(dry, input("RESIN-450", "Vf"), densities("RESIN-450"));
    return { resin_g_m2: resin, laminate_g_m2: dry + resin };
  }),
];

const plies = ["MIC-KAW36", "MIC-EGLASS50"].map((id) =>
  caseCheck(id, "materials", () => {
    const [volume, fibre, matrix] = [input(id, "Vf"), input(id, "Ef_GPa"), input(id, "Em_GPa")];
    const [fibreNu, matrixNu] = [input(id, "nu_f"), input(id, "nu_m")];
    const shears = [isotropicShear(fibre, fibreNu), isotropicShear(matrix, matrixNu)] as const;
    const every: Readonly<Record<string, Values>> = {
      E1_GPa: inParallel(fibre, matrix, volume),
      nu12: inParallel(fibreNu, matrixNu, volume),
      E2_HalpinTsai_GPa: halpinTsai(fibre, matrix, volume, input(id, "xi_E2")),
      G12_HalpinTsai_GPa: halpinTsai(...shears, volume, input(id, "xi_G12")),
      E2_inverse_rule_GPa: inSeries(fibre, matrix, volume),
      G12_inverse_rule_GPa: inSeries(...shears, volume),
    };
    const wanted = Object.keys(caseOf(id).expected);
    return Object.fromEntries(wanted.map((name) => [name, every[name] ?? Number.NaN]));
  }),
);

export const materialsChecks: readonly Check[] = [
  ...woods,
  ...otherWoods,
  elasticRatios,
  ...sheets,
  ...woodRules,
  ...cloth,
  ...plies,
  ...strips,
];

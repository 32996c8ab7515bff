/** Plies and laminates. Cases count in GPa, 1/TPa and SI plates; the engine in MPa and mm. */

import { compliance, laminaInvariants } from "#engine/handbook";
import { type Lamina, laminateConstants, type Ply, reducedStiffness, transformedStiffness } from "#engine/laminate";
import type { Matrix } from "#engine/math";
import { caseCheck, caseOf, input } from "./cases";
import type { Check } from "./types";

const [GPA, PER_TPA] = [1e-3, 1e6];
// N/mm → Pa·m, N → Pa·m², N·mm → Pa·m³
const [A_TO_SI, B_TO_SI, D_TO_SI] = [1e3, 1, 1e-3];

function laminaOf(id: string): Lamina {
  const gpa = (name: string) => input(id, name) * 1e3;
  return { e1Mpa: gpa("E1"), e2Mpa: gpa("E2"), g12Mpa: gpa("G12"), nu12: input(id, "nu12") };
}

/** Plies from the bottom face up. */
const stack = (lamina: Lamina, angles: readonly number[], thicknessMm: number): Ply[] =>
  angles.map((angleDeg) => ({ ...lamina, angleDeg, thicknessMm }));
const scaled = (matrix: Matrix, factor: number) => matrix.map((row) => row.map((value) => value * factor));
const at = (matrix: Matrix, i: number, j: number) => matrix[i]?.[j] ?? Number.NaN;

const plates = (plies: readonly Ply[]) => {
  const { aNPerMm, bN, dNmm } = laminateConstants(plies);
  return { A: scaled(aNPerMm, A_TO_SI), B: scaled(bN, B_TO_SI), D: scaled(dNmm, D_TO_SI) };
};

const single = ["CARBON", "GLASS", "ARAMID"].flatMap((name): Check[] => [
  caseCheck(`CLT-Q-${name}`, "laminate", () => {
    const [q11, q12, , q22, , q66] = reducedStiffness(laminaOf(`CLT-Q-${name}`));
    return { Q11: q11 * GPA, Q12: q12 * GPA, Q22: q22 * GPA, Q66: q66 * GPA };
  }),
  caseCheck(`CLT-S-${name}`, "laminate", () => {
    const [s11, s12, , s22, , s66] = compliance(laminaOf(`CLT-S-${name}`));
    return { S11: s11 * PER_TPA, S12: s12 * PER_TPA, S22: s22 * PER_TPA, S66: s66 * PER_TPA };
  }),
]);

/** Constants of a case whose plies are symmetric, those of `names`. */
function constants(id: string, plies: () => readonly Ply[]): Check {
  return caseCheck(id, "laminate", () => {
    const found = laminateConstants(plies());
    const every: Readonly<Record<string, number>> = {
      Ex_GPa: found.exMpa * GPA,
      Ey_GPa: found.eyMpa * GPA,
      Gxy_GPa: found.gxyMpa * GPA,
      nu_xy: found.nuXy,
      Ef_x_GPa: found.flexExMpa * GPA,
      Ef_y_GPa: found.flexEyMpa * GPA,
      ...Object.fromEntries(
        (["11", "12", "22", "66"] as const).flatMap((index) => {
          const [i, j] = index === "66" ? [2, 2] : [Number(index[0]) - 1, Number(index[1]) - 1];
          return [
            [`A${index}`, at(found.aNPerMm, i, j) * A_TO_SI],
            [`D${index}`, at(found.dNmm, i, j) * D_TO_SI],
          ];
        }),
      ),
    };
    const wanted = Object.keys(caseOf(id).expected);
    return Object.fromEntries(wanted.map((name) => [name, every[name] ?? Number.NaN]));
  });
}

const mirrored = (id: string, angles: readonly number[]) =>
  constants(id, () => stack(laminaOf(id), [...angles, ...angles.toReversed()], input(id, "ply_mm")));

const triaxial = ["CLT-TRI-GLASS-50", "CLT-TRI-GLASS-60", "CLT-TRI-GLASS-33"].map((id) =>
  constants(id, () => {
    // Fractions laid symmetrically, so that the membrane is free of coupling.
    const shares = caseOf(id).inputs.thickness_fractions as Readonly<Record<string, number>>;
    const half = Object.entries(shares).map(([angle, share]) => ({
      ...laminaOf(id),
      angleDeg: Number(angle),
      thicknessMm: share,
    }));
    return [...half, ...half.toReversed()];
  }),
);

export const laminateChecks: readonly Check[] = [
  ...single,
  caseCheck("CLT-QBAR60", "laminate", () => {
    const [q11, q12, q16, q22, q26, q66] = transformedStiffness({ ...laminaOf("CLT-QBAR60"), angleDeg: 60 });
    const turned = [
      [q11, q12, q16],
      [q12, q22, q26],
      [q16, q26, q66],
    ];
    return { Qbar: scaled(turned, GPA) };
  }),
  // Kaw lists plies from his top with z down: the same order from the bottom face with z up.
  caseCheck("CLT-KAW42", "laminate", () => plates(stack(laminaOf("CLT-KAW42"), [0, 30, -45], 5))),
  caseCheck("CLT-CARBON-B-090", "laminate", () => plates(stack(laminaOf("CLT-CARBON-B-090"), [0, 90], 1))),
  constants("CLT-090-3PLY", () => stack(laminaOf("CLT-090-3PLY"), [0, 90, 0], 5)),
  mirrored("CLT-PM45-CARBON", [45, -45]),
  mirrored("CLT-090S-CARBON", [0, 90]),
  mirrored("CLT-PM45-GLASS", [45, -45]),
  mirrored("CLT-090S-GLASS", [0, 90]),
  ...triaxial,
  caseCheck("CLT-QI", "laminate", () => {
    const lamina = laminaOf("CLT-QI");
    const found = laminateConstants(stack(lamina, [0, 45, -45, 90, 90, -45, 45, 0], 0.125));
    const { u1Mpa, u4Mpa, u5Mpa } = laminaInvariants(lamina);
    return {
      E_GPa: found.exMpa * GPA,
      G_GPa: found.gxyMpa * GPA,
      nu: found.nuXy,
      U1_GPa: u1Mpa * GPA,
      U4_GPa: u4Mpa * GPA,
      U5_GPa: u5Mpa * GPA,
    };
  }),
  caseCheck("CLT-INV-SYM", "laminate", () => {
    const { A, B } = plates(stack(laminaOf("CLT-Q-CARBON"), [0, 30, -45, 10, 10, -45, 30, 0], 0.2));
    const largest = (matrix: Matrix) => Math.max(...matrix.flat().map(Math.abs));
    return { max_abs_B_over_A_h: largest(B) / (largest(A) * 1.6e-3) };
  }),
  caseCheck(
    "CLT-ANTI-090",
    "laminate",
    () => {
      const { B } = plates(stack(laminaOf("CLT-ANTI-090"), [0, 90], 5));
      return { B11_Pa_m2: at(B, 0, 0), B22_Pa_m2: at(B, 1, 1), B12: at(B, 0, 1), B16: at(B, 0, 2) };
    },
    // Printed to six digits; a zero is meant against the size of B11.
    {
      B11_Pa_m2: { kind: "rel", value: 1.5e-6 },
      B22_Pa_m2: { kind: "rel", value: 1.5e-6 },
      B12: { kind: "abs", value: 1e-3 },
      B16: { kind: "abs", value: 1e-3 },
    },
  ),
  caseCheck("CLT-ISO", "laminate", () => {
    const metal: Lamina = { e1Mpa: 70_000, e2Mpa: 70_000, nu12: 0.33, g12Mpa: 70_000 / 2.66 };
    const { A, D } = plates(stack(metal, [0], 2));
    return { A11_Pa_m: at(A, 0, 0), D11_Nm: at(D, 0, 0), D66_Nm: at(D, 2, 2) };
  }),
];

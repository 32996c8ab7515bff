import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { compliance, laminaInvariants } from "#engine/handbook";
import {
  type Lamina,
  laminateConstants,
  type Ply,
  plateCompliance,
  reducedStiffness,
  transformedStiffness,
} from "#engine/laminate";
import type { Matrix } from "#engine/math";
import { expectCase, expected } from "../../fixtures/truth/mechanics";

// Laminae in epoxy of Tsai & Hahn, Introduction to Composite Materials, 1980; carbon B of Soden, Hinton & Kaddour 1998.
const carbon: Lamina = { e1Mpa: 181_000, e2Mpa: 10_300, g12Mpa: 7_170, nu12: 0.28 };
const glass: Lamina = { e1Mpa: 38_600, e2Mpa: 8_270, g12Mpa: 4_140, nu12: 0.26 };
const aramid: Lamina = { e1Mpa: 76_000, e2Mpa: 5_500, g12Mpa: 2_300, nu12: 0.34 };
const carbonB: Lamina = { e1Mpa: 126_000, e2Mpa: 11_000, g12Mpa: 6_600, nu12: 0.28 };

/** Plies from the bottom face up. */
const stack = (lamina: Lamina, angles: readonly number[], thicknessMm: number): Ply[] =>
  angles.map((angleDeg) => ({ ...lamina, angleDeg, thicknessMm }));
const scaled = (matrix: Matrix, factor: number) => matrix.map((row) => row.map((value) => value * factor));
const at = (matrix: Matrix, i: number, j: number) => matrix[i]?.[j] ?? Number.NaN;
// N/mm → Pa·m, N → Pa·m², N·mm → Pa·m³
const [A_TO_SI, B_TO_SI, D_TO_SI] = [1e3, 1, 1e-3];

describe("reducedStiffness and compliance", () => {
  for (const [id, lamina] of [
    ["CARBON", carbon],
    ["GLASS", glass],
    ["ARAMID", aramid],
  ] as const) {
    it(`gives Q and S of ${id}`, () => {
      const [q11, q12, , q22, , q66] = reducedStiffness(lamina);
      const [s11, s12, , s22, , s66] = compliance(lamina);
      const Q = { Q11: q11, Q12: q12, Q22: q22, Q66: q66 };
      const S = { S11: s11, S12: s12, S22: s22, S66: s66 };
      for (const [name, value] of Object.entries(Q)) expectCase(`CLT-Q-${id}`, name, value / 1e3);
      for (const [name, value] of Object.entries(S)) expectCase(`CLT-S-${id}`, name, value * 1e6);
    });
  }

  it("turns Q to 60°", () => {
    const [q11, q12, q16, q22, q26, q66] = transformedStiffness({ ...carbon, angleDeg: 60 });
    const Q = [
      [q11, q12, q16],
      [q12, q22, q26],
      [q16, q26, q66],
    ];
    expectCase("CLT-QBAR60", "Qbar", scaled(Q, 1e-3));
  });

  it("cannot take an impossible material", () => {
    expect(() => reducedStiffness({ ...carbon, e2Mpa: 0 })).toThrow(/e2Mpa: 0/);
    expect(() => reducedStiffness({ ...carbon, nu12: 4.5 })).toThrow(/nu12: 4.5/);
  });
});

describe("laminateConstants", () => {
  it("meets Kaw's example 4.2, whose plies are listed from his top with z down", () => {
    // The same order from the bottom face with z up.
    const found = laminateConstants(stack(carbon, [0, 30, -45], 5));
    expectCase("CLT-KAW42", "A", scaled(found.aNPerMm, A_TO_SI));
    expectCase("CLT-KAW42", "B", scaled(found.bN, B_TO_SI));
    expectCase("CLT-KAW42", "D", scaled(found.dNmm, D_TO_SI));
  });

  it("meets [0/90] of carbon B", () => {
    const found = laminateConstants(stack(carbonB, [0, 90], 1));
    expectCase("CLT-CARBON-B-090", "A", scaled(found.aNPerMm, A_TO_SI));
    expectCase("CLT-CARBON-B-090", "B", scaled(found.bN, B_TO_SI));
    expectCase("CLT-CARBON-B-090", "D", scaled(found.dNmm, D_TO_SI));
  });

  it("meets [0/90/0]", () => {
    const found = laminateConstants(stack(carbon, [0, 90, 0], 5));
    const id = "CLT-090-3PLY";
    for (const [name, i, j] of [
      ["11", 0, 0],
      ["12", 0, 1],
      ["22", 1, 1],
      ["66", 2, 2],
    ] as const) {
      expectCase(id, `A${name}`, at(found.aNPerMm, i, j) * A_TO_SI);
      expectCase(id, `D${name}`, at(found.dNmm, i, j) * D_TO_SI);
    }
    expectCase(id, "Ex_GPa", found.exMpa / 1e3);
    expectCase(id, "Ey_GPa", found.eyMpa / 1e3);
    expectCase(id, "Gxy_GPa", found.gxyMpa / 1e3);
    expectCase(id, "nu_xy", found.nuXy);
    expectCase(id, "Ef_x_GPa", found.flexExMpa / 1e3);
    expectCase(id, "Ef_y_GPa", found.flexEyMpa / 1e3);
  });

  it("is the same in every direction for a quasi-isotropic stack, with the lamina's invariants", () => {
    const angles = [0, 45, -45, 90, 90, -45, 45, 0];
    const found = laminateConstants(stack(carbon, angles, 0.125));
    const { u1Mpa, u4Mpa, u5Mpa } = laminaInvariants(carbon);
    expectCase("CLT-QI", "E_GPa", found.exMpa / 1e3);
    expectCase("CLT-QI", "E_GPa", found.eyMpa / 1e3);
    expectCase("CLT-QI", "G_GPa", found.gxyMpa / 1e3);
    expectCase("CLT-QI", "nu", found.nuXy);
    expectCase("CLT-QI", "U1_GPa", u1Mpa / 1e3);
    expectCase("CLT-QI", "U4_GPa", u4Mpa / 1e3);
    expectCase("CLT-QI", "U5_GPa", u5Mpa / 1e3);
  });

  for (const [id, lamina, thicknessMm, angles] of [
    ["CLT-PM45-CARBON", carbon, 0.25, [45, -45, -45, 45]],
    ["CLT-PM45-GLASS", glass, 0.25, [45, -45, -45, 45]],
    ["CLT-090S-CARBON", carbon, 0.2, [0, 90, 90, 0]],
    ["CLT-090S-GLASS", glass, 0.2, [0, 90, 90, 0]],
  ] as const) {
    it(`meets ${id}`, () => {
      const found = laminateConstants(stack(lamina, angles, thicknessMm));
      expectCase(id, "Ex_GPa", found.exMpa / 1e3);
      expectCase(id, "Gxy_GPa", found.gxyMpa / 1e3);
      expectCase(id, "nu_xy", found.nuXy);
      if (!id.startsWith("CLT-090S")) return;
      expectCase(id, "Ef_x_GPa", found.flexExMpa / 1e3);
      expectCase(id, "Ef_y_GPa", found.flexEyMpa / 1e3);
    });
  }

  for (const [id, along] of [
    ["CLT-TRI-GLASS-50", 0.5],
    ["CLT-TRI-GLASS-60", 0.6],
    ["CLT-TRI-GLASS-33", 0.3333],
  ] as const) {
    it(`meets the membrane constants of ${id}`, () => {
      // Fractions laid symmetrically, so that the membrane is free of coupling.
      const half = [0, 45, -45].map((angleDeg, i) => ({
        ...glass,
        angleDeg,
        thicknessMm: i === 0 ? along : (1 - along) / 2,
      }));
      const found = laminateConstants([...half, ...half.toReversed()]);
      expectCase(id, "Ex_GPa", found.exMpa / 1e3);
      expectCase(id, "Ey_GPa", found.eyMpa / 1e3);
      expectCase(id, "Gxy_GPa", found.gxyMpa / 1e3);
      expectCase(id, "nu_xy", found.nuXy);
    });
  }

  it("has B11 = −B22 = h²(Q22 − Q11)/2 for [0/90]", () => {
    const { bN } = laminateConstants(stack(carbon, [0, 90], 5));
    const [q11, , , q22] = reducedStiffness(carbon);
    expect(at(bN, 0, 0)).toBeCloseTo((25 * (q22 - q11)) / 2, 6);
    expect(at(bN, 1, 1)).toBeCloseTo((-25 * (q22 - q11)) / 2, 6);
    // The case prints six digits.
    expect(Math.abs(at(bN, 0, 0) / Number(expected("CLT-ANTI-090", "B11_Pa_m2")) - 1)).toBeLessThan(1.5e-6);
    expect(Math.abs(at(bN, 0, 1))).toBeLessThan(1e-6);
    expect(Math.abs(at(bN, 0, 2))).toBeLessThan(1e-6);
  });

  it("is an isotropic plate for an isotropic ply", () => {
    const metal: Ply = {
      e1Mpa: 70_000,
      e2Mpa: 70_000,
      nu12: 0.33,
      g12Mpa: 70_000 / 2.66,
      angleDeg: 17,
      thicknessMm: 2,
    };
    const { aNPerMm, dNmm } = laminateConstants([metal]);
    expectCase("CLT-ISO", "A11_Pa_m", at(aNPerMm, 0, 0) * A_TO_SI);
    expectCase("CLT-ISO", "D11_Nm", at(dNmm, 0, 0) * D_TO_SI);
    expectCase("CLT-ISO", "D66_Nm", at(dNmm, 2, 2) * D_TO_SI);
  });

  it("cannot take an empty stack or a ply without thickness", () => {
    expect(() => laminateConstants([])).toThrow(/at least one/);
    expect(() => laminateConstants(stack(carbon, [0], 0))).toThrow(/thicknessMm 0/);
  });
});

const anyLamina = fc
  .record({
    e1Mpa: fc.double({ min: 1e3, max: 2e5, noNaN: true }),
    e2Mpa: fc.double({ min: 1e3, max: 2e4, noNaN: true }),
    g12Mpa: fc.double({ min: 500, max: 3e4, noNaN: true }),
    nu12: fc.double({ min: 0, max: 0.3, noNaN: true }),
  })
  .filter(({ e1Mpa, e2Mpa, nu12 }) => nu12 < 0.9 * Math.sqrt(e1Mpa / e2Mpa));
const anyPly = fc
  .tuple(anyLamina, fc.integer({ min: -90, max: 90 }), fc.double({ min: 0.1, max: 5, noNaN: true }))
  .map(([lamina, angleDeg, thicknessMm]) => ({ ...lamina, angleDeg, thicknessMm }));
const anyStack = fc.array(anyPly, { minLength: 1, maxLength: 6 });

describe("laws of laminates", () => {
  it("a mirrored stack has no coupling", () => {
    fc.assert(
      fc.property(anyStack, (half) => {
        const { aNPerMm, bN, thicknessMm } = laminateConstants([...half, ...half.toReversed()]);
        const largest = Math.max(...bN.flat().map(Math.abs));
        expectCase("CLT-INV-SYM", "max_abs_B_over_A_h", largest / (Math.max(...aNPerMm.flat()) * thicknessMm));
      }),
    );
  });

  it("turned upside down only flips the coupling", () => {
    fc.assert(
      fc.property(anyStack, (plies) => {
        const up = laminateConstants(plies);
        const down = laminateConstants(plies.toReversed());
        const size = Math.max(...up.aNPerMm.flat()) * up.thicknessMm;
        up.bN.flat().forEach((value, i) => {
          expect(Math.abs(value + (down.bN.flat()[i] ?? 0)) / size).toBeLessThan(1e-9);
        });
        expect(down.exMpa / up.exMpa).toBeCloseTo(1, 8);
        expect(down.flexExMpa / up.flexExMpa).toBeCloseTo(1, 8);
      }),
    );
  });

  it("a stiffer ply never softens the free laminate", () => {
    fc.assert(
      fc.property(anyStack, fc.nat(5), fc.double({ min: 1, max: 3, noNaN: true }), (plies, which, factor) => {
        const i = which % plies.length;
        // All moduli of one ply up by the same factor: its Q grows in every direction.
        const stiffer = plies.map((ply, k) =>
          k === i ? { ...ply, e1Mpa: ply.e1Mpa * factor, e2Mpa: ply.e2Mpa * factor, g12Mpa: ply.g12Mpa * factor } : ply,
        );
        const before = laminateConstants(plies);
        const after = laminateConstants(stiffer);
        for (const name of ["exMpa", "eyMpa", "gxyMpa", "flexExMpa", "flexEyMpa"] as const) {
          expect(after[name]).toBeGreaterThanOrEqual(before[name] * (1 - 1e-9));
        }
      }),
    );
  });

  it("the compliance is symmetric and undoes the stiffness", () => {
    fc.assert(
      fc.property(anyStack, (plies) => {
        const { aNPerMm, bN, dNmm } = laminateConstants(plies);
        const { a, b, d } = plateCompliance({ a: aNPerMm, b: bN, d: dNmm });
        // Upper left block of [A B; B D]·[a b; bᵀ d] is the identity.
        for (const i of [0, 1, 2]) {
          for (const j of [0, 1, 2]) {
            const sum = [0, 1, 2].reduce((s, k) => s + at(aNPerMm, i, k) * at(a, k, j) + at(bN, i, k) * at(b, j, k), 0);
            expect(sum).toBeCloseTo(i === j ? 1 : 0, 6);
            expect(Math.abs(at(d, i, j) - at(d, j, i))).toBeLessThan(1e-9 * at(d, i, i) + 1e-9 * at(d, j, j));
          }
        }
      }),
    );
  });
});

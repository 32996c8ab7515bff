import { describe, expect, it } from "vitest";
import geometry from "../fixtures/truth/geometry.json";
import truth from "../fixtures/truth/mechanics.json";
import { runVerb } from "./run-verb";

interface Case {
  readonly id: string;
  // biome-ignore lint/suspicious/noExplicitAny: fixtures differ from case to case; their shape is the published one
  readonly inputs: any;
  // biome-ignore lint/suspicious/noExplicitAny: as above
  readonly expected: any;
  readonly source: string;
}
const cases = truth as unknown as readonly Case[] | { readonly cases: readonly Case[] };
const list = "cases" in cases ? cases.cases : cases;

function caseOf(id: string): Case {
  const found = [...list, ...(Object.values(geometry.cases) as Case[])].find((each) => each.id === id);
  if (!found) throw new Error(`no check case ${id}`);
  return found;
}

/** Carbon/epoxy of Tsai & Hahn 1980 (Kaw 2006, Table 2.1), MPa. */
const carbon = { e1Mpa: 181_000, e2Mpa: 10_300, g12Mpa: 7_170, nu12: 0.28 };

describe("pairwright laminate", () => {
  it("gives the ABD matrices of Kaw's example 4.2, listed from the bottom in his order", () => {
    const { expected } = caseOf("CLT-KAW42");
    const plies = [0, 30, -45].map((angleDeg) => ({ ...carbon, angleDeg, thicknessMm: 5 }));
    const { exitCode, json } = runVerb(["laminate"], { plies });
    expect(exitCode).toBe(0);
    // Pa·m = 1e-3 N/mm, Pa·m² = 1 N, Pa·m³ = 1e3 N·mm.
    for (let row = 0; row < 3; row += 1) {
      for (let column = 0; column < 3; column += 1) {
        close(json.aNPerMm[row][column], expected.A[row][column] / 1e3, 1e-3);
        close(json.bN[row][column], expected.B[row][column], 1e-3);
        close(json.dNmm[row][column], expected.D[row][column] * 1e3, 1e-3);
      }
    }
  });

  it("gives the engineering constants of a [0/90/0] laminate", () => {
    const { expected } = caseOf("CLT-090-3PLY");
    const plies = [0, 90, 0].map((angleDeg) => ({ ...carbon, angleDeg, thicknessMm: 5 }));
    const { json } = runVerb(["laminate"], { plies });
    close(json.exMpa, expected.Ex_GPa * 1e3, 1e-3);
    close(json.eyMpa, expected.Ey_GPa * 1e3, 1e-3);
    close(json.flexExMpa, expected.Ef_x_GPa * 1e3, 1e-3);
    close(json.flexEyMpa, expected.Ef_y_GPa * 1e3, 1e-3);
  });
});

describe("pairwright section", () => {
  it("gives the five-layer strip, without and with steel edges", () => {
    for (const [id, base] of [
      ["SEC-5LAYER", [{ modulusMpa: 800, widthMm: 80 }]],
      [
        "SEC-EDGES",
        [
          { modulusMpa: 800, widthMm: 76 },
          { modulusMpa: 210_000, widthMm: 4 },
        ],
      ],
    ] as const) {
      const { expected } = caseOf(id);
      const face = [{ modulusMpa: 38_600, widthMm: 80 }];
      const layers = [
        { thicknessMm: 1.3, parts: base },
        { thicknessMm: 0.6, parts: face },
        {
          thicknessMm: 9,
          parts: [
            { modulusMpa: 11_000, widthMm: 70 },
            { modulusMpa: 2_000, widthMm: 10 },
          ],
        },
        { thicknessMm: 0.9, parts: face },
        { thicknessMm: 0.5, parts: [{ modulusMpa: 1_400, widthMm: 80 }] },
      ];
      const { json } = runVerb(["section"], { layers });
      close(json.bendingStiffnessNmm2, expected.EI_Nm2 * 1e6, 1e-5);
      close(json.neutralAxisMm, expected.zbar_mm_from_bottom, 1e-5);
      close(json.axialStiffnessN, expected.EA_N, 1e-5);
    }
  });
});

describe("pairwright beam", () => {
  it("bends a uniform beam by F·L³/48EI", () => {
    const input = {
      stations: [0, 1200].map((xMm) => ({ xMm, bendingStiffnessNmm2: 2e8 })),
      support: { kind: "simple", xMm: [0, 1200] },
      load: { xMm: 600, forceN: 300 },
    };
    close(runVerb(["beam"], input).json.deflectionMm, 54, 1e-9);
  });

  it("refuses a load beside the beam and names the place", () => {
    const input = {
      stations: [0, 1200].map((xMm) => ({ xMm, bendingStiffnessNmm2: 2e8 })),
      support: { kind: "simple", xMm: [0, 1200] },
      load: { xMm: 1300, forceN: 300 },
    };
    const { exitCode, json } = runVerb(["beam"], input);
    expect(exitCode).toBe(1);
    expect(json.refusal).toMatchObject({ code: "off-the-beam", xMm: 1300, toMm: 1200 });
  });
});

describe("pairwright shape", () => {
  it("gives the exact tapered arc and the federation's radius", () => {
    const { json } = runVerb(["shape"], { shoulderMm: 120, waistMm: 85, heelMm: 110, sidecutLengthMm: 1450 });
    close(json.sidecutRadiusM, caseOf("GEO-TAPER").expected.R_m, 1e-5);
    close(json.waistFromShoulderMm, caseOf("GEO-TAPER").expected.waist_from_tip_widest_mm, 1e-5);
    close(json.fisRadiusM, caseOf("GEO-FIS").expected.R_m, 1e-5);
    close(json.effectiveEdgeMm, caseOf("GEO-EDGE").expected.arc_mm, 1e-5);
  });
});

function close(actual: number, expected: number, relative: number): void {
  expect(Math.abs(actual - expected)).toBeLessThanOrEqual(Math.abs(expected) * relative + 1e-9);
}

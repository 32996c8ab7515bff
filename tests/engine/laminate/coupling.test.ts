import { inverse, Matrix } from "ml-matrix";
import { describe, expect, it } from "vitest";
import { laminateConstants } from "#engine/laminate";

// Carbon/epoxy of Tsai & Hahn 1980 (Kaw 2006, Table 2.1), MPa.
const carbon = { e1Mpa: 181_000, e2Mpa: 10_300, g12Mpa: 7170, nu12: 0.28 };
const stack = (angles: readonly number[]) => angles.map((angleDeg) => ({ ...carbon, angleDeg, thicknessMm: 0.125 }));

describe("coupling of a laminate", () => {
  it("has the compliances of the inverted 6×6, by a general matrix library", () => {
    const found = laminateConstants(stack([0, 30, -45, 90]));
    const [A, B, D] = [found.aNPerMm, found.bN, found.dNmm].map((block) => block.map((row) => [...row]));
    if (!A || !B || !D) throw new Error("a block is missing");
    const whole = inverse(
      new Matrix([...A.map((row, i) => [...row, ...(B[i] ?? [])]), ...B.map((row, i) => [...row, ...(D[i] ?? [])])]),
    );
    const blocks = [
      [found.aComplianceMmPerN, 0, 0],
      [found.bCompliancePerN, 0, 3],
      [found.dCompliancePerNmm, 3, 3],
    ] as const;
    for (const [block, row, column] of blocks) {
      const size = Math.max(...block.flat().map(Math.abs));
      block.forEach((values, i) => {
        for (const [j, value] of values.entries()) {
          expect((value - whole.get(row + i, column + j)) / size).toBeCloseTo(0, 9);
        }
      });
    }
  });

  it("of one ply off its axis is S̄16/S̄11 (Jones, Mechanics of Composite Materials, eq. 2.88, from memory)", () => {
    const angle = (30 * Math.PI) / 180;
    const [m, n] = [Math.cos(angle), Math.sin(angle)];
    const [s11, s22, s12, s66] = [1 / carbon.e1Mpa, 1 / carbon.e2Mpa, -carbon.nu12 / carbon.e1Mpa, 1 / carbon.g12Mpa];
    const bar11 = s11 * m ** 4 + (2 * s12 + s66) * m ** 2 * n ** 2 + s22 * n ** 4;
    const bar16 = (2 * s11 - 2 * s12 - s66) * m ** 3 * n - (2 * s22 - 2 * s12 - s66) * m * n ** 3;
    const { shearPerStretch, twistPerBend } = laminateConstants(stack([30]));
    expect(shearPerStretch).toBeCloseTo(bar16 / bar11, 10);
    expect(twistPerBend).toBeCloseTo(bar16 / bar11, 10);
  });

  it("vanishes for a balanced stack in stretch, and for a cross-ply in bending too", () => {
    expect(laminateConstants(stack([45, -45, -45, 45])).shearPerStretch).toBeCloseTo(0, 12);
    expect(laminateConstants(stack([0, 90, 90, 0])).twistPerBend).toBeCloseTo(0, 12);
    // ±45 outside bends and twists together even when balanced and mirrored: D16 does not vanish.
    expect(Math.abs(laminateConstants(stack([45, -45, -45, 45])).twistPerBend)).toBeGreaterThan(0.1);
  });
});

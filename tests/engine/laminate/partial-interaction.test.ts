import { Matrix, solve } from "ml-matrix";
import { describe, expect, it } from "vitest";
import {
  bendingSlipCompliance,
  coupleStiffnessNmm2,
  type StiffPart,
  type TwistJoint,
  torsionSlipCompliance,
} from "#engine/laminate";

const parts: readonly StiffPart[] = [
  { stiffnessN: 1.7e6, heightMm: 1.6 },
  { stiffnessN: 5.2e6, heightMm: 7.4 },
  { stiffnessN: 1.5e6, heightMm: 13.8 },
];

describe("coupleStiffnessNmm2", () => {
  it("is the bonded section's Σ A(z − z̄)² without slip and nothing with endless slip", () => {
    const a = parts.reduce((sum, part) => sum + part.stiffnessN, 0);
    const centre = parts.reduce((sum, part) => sum + part.stiffnessN * part.heightMm, 0) / a;
    const steiner = parts.reduce((sum, part) => sum + part.stiffnessN * (part.heightMm - centre) ** 2, 0);
    expect(coupleStiffnessNmm2(parts, [0, 0]) / steiner).toBeCloseTo(1, 12);
    expect(coupleStiffnessNmm2(parts, [Infinity, Infinity])).toBe(0);
  });

  it("is the γ-method for mechanically jointed beams (EN 1995-1-1:2004, annex B.2, formulas from memory)", () => {
    // One half wave over L, joints of stiffness K per length: γi = 1/(1 + π²·EiAi/(Ki·L²)), γ2 = 1.
    const span = 1461;
    const joints = [280, 240] as const;
    const gamma = [joints[0], Infinity, joints[1]].map(
      (k, i) => 1 / (1 + (Math.PI ** 2 * (parts[i]?.stiffnessN ?? 0)) / (k * span ** 2)),
    );
    const weighed = parts.map((part, i) => (gamma[i] ?? 0) * part.stiffnessN);
    const z2 = parts[1]?.heightMm ?? 0;
    // Heights from the middle part's axis; a2 is the distance of that axis from the effective neutral axis.
    const a2 =
      parts.reduce((sum, part, i) => sum - (weighed[i] ?? 0) * (part.heightMm - z2), 0) /
      weighed.reduce((x, y) => x + y, 0);
    const expected = parts.reduce((sum, part, i) => sum + (weighed[i] ?? 0) * (part.heightMm - z2 + a2) ** 2, 0);
    const slips = joints.map((k) => bendingSlipCompliance(k, span));
    expect(coupleStiffnessNmm2(parts, slips) / expected).toBeCloseTo(1, 9);
  });

  it("stays within 1 % of the exact deflection under a point load, which bends in all half waves", () => {
    // Navier's series of a simply supported beam, each term with the stiffness of its own half wave (exact for uniform beams).
    const own = 9e7;
    const span = 1461;
    const foil = 300;
    const stiffness = (halfWave: number) =>
      own + coupleStiffnessNmm2(parts, [bendingSlipCompliance(foil, halfWave), bendingSlipCompliance(foil, halfWave)]);
    let exact = 0;
    for (let n = 1; n < 400; n += 2) exact += 2 / (span * ((n * Math.PI) / span) ** 4 * stiffness(span / n));
    const taken = span ** 3 / (48 * stiffness(span));
    expect(taken / exact).toBeLessThan(1);
    expect(taken / exact).toBeGreaterThan(0.99);
  });

  it("falls steadily as a foil softens", () => {
    const at = (foil: number) => coupleStiffnessNmm2(parts, [bendingSlipCompliance(foil, 1400), 0]);
    const values = [1e6, 1e3, 100, 10, 1, 0.01].map(at);
    expect(values).toEqual(values.toSorted((a, b) => b - a));
    expect(at(1e9) / coupleStiffnessNmm2(parts, [0, 0])).toBeCloseTo(1, 6);
  });
});

describe("torsionSlipCompliance", () => {
  const skin = 3000 * 80; // G·t·b, N
  const at = (change: Partial<TwistJoint>): number => {
    const joint = { lowerN: skin, upperN: skin, widthMm: 80, jointNPerMm3: 0, wallNPerMm2: 0, ...change };
    return (
      4 *
      coupleStiffnessNmm2(
        [
          { stiffnessN: skin, heightMm: 0 },
          { stiffnessN: skin, heightMm: 10 },
        ],
        [torsionSlipCompliance(joint)],
      )
    );
  };

  it("without a core is Bredt's closed cell, 4A²/Σ(s/Gt)", () => {
    const wall = { shearMpa: 800, thicknessMm: 7 };
    const bredt = (4 * (80 * 10) ** 2) / ((2 * 80) / 3000 + (2 * 10) / (wall.shearMpa * wall.thicknessMm));
    expect(at({ wallNPerMm2: (wall.shearMpa * wall.thicknessMm) / 10 }) / bredt).toBeCloseTo(1, 9);
    expect(at({})).toBe(0);
  });

  it("with a stiff core is the two skins of the thin strip, 4b/d66 = 2·b·d²·Gt", () => {
    expect(at({ jointNPerMm3: 1e9 }) / (2 * 80 * 10 ** 2 * 3000)).toBeCloseTo(1, 3);
  });

  // An independent numerical solution: linear elements across the width, solved with a general matrix library.
  it.each([
    { name: "wood between glass", skins: [4900, 4900], joints: [60], walls: [430], within: 0.005 },
    {
      name: "two foils and a core, as on a metal ski",
      skins: [4900, 10760, 10760, 4900],
      joints: [4.7, 66, 4.7],
      walls: [0, 480, 0],
      within: 0.06,
    },
  ])("meets finite elements across the width: $name", ({ skins, joints, walls, within }) => {
    const width = 70;
    const heights = skins.map((_, i) => (skins.length === 2 ? i * 12 : ([0, 0.6, 11.4, 12][i] ?? 0)));
    const total = (list: readonly number[]) => list.reduce((sum, each) => sum + each, 0) * width;
    const middle = skins.length / 2 - 1;
    const slips = joints.map((jointNPerMm3, i) =>
      torsionSlipCompliance({
        lowerN:
          i === middle
            ? total(skins.slice(0, i + 1))
            : i < middle
              ? total(skins.slice(0, 1))
              : total(skins.slice(0, -1)),
        upperN: i === middle ? total(skins.slice(i + 1)) : i < middle ? total(skins.slice(1)) : total(skins.slice(-1)),
        widthMm: width,
        jointNPerMm3,
        wallNPerMm2: walls[i] ?? 0,
      }),
    );
    const found =
      4 *
      coupleStiffnessNmm2(
        skins.map((s, i) => ({ stiffnessN: s * width, heightMm: heights[i] ?? 0 })),
        slips,
      );
    expect(Math.abs(found / twisted(skins, heights, joints, walls, width) - 1)).toBeLessThan(within);
  });
});

/** 2·min energy of skins u_i(y) under a unit twist: ½ΣS(u′ − z)² + ½Σk(Δu + y·d)² + walls at both edges. */
function twisted(
  skins: readonly number[],
  heights: readonly number[],
  joints: readonly number[],
  walls: readonly number[],
  width: number,
): number {
  const elements = 140;
  const h = width / elements;
  const n = skins.length;
  const size = n * (elements + 1);
  const K = Matrix.zeros(size, size);
  const f = Matrix.zeros(size, 1);
  let constant = 0;
  const at = (part: number, node: number) => part * (elements + 1) + node;
  // Adds w·(Σ c·u + g)² to twice the energy.
  const square = (weight: number, terms: readonly (readonly [number, number])[], g: number) => {
    constant += weight * g * g;
    for (const [i, ci] of terms) {
      f.set(i, 0, f.get(i, 0) - weight * g * ci);
      for (const [j, cj] of terms) K.set(i, j, K.get(i, j) + weight * ci * cj);
    }
  };
  skins.forEach((s, i) => {
    for (let e = 0; e < elements; e++)
      square(
        s * h,
        [
          [at(i, e), -1 / h],
          [at(i, e + 1), 1 / h],
        ],
        -(heights[i] ?? 0),
      );
  });
  joints.forEach((k, i) => {
    const d = (heights[i + 1] ?? 0) - (heights[i] ?? 0);
    for (let node = 0; node <= elements; node++) {
      const y = node * h - width / 2;
      const isEdge = node === 0 || node === elements;
      const weight = k * (isEdge ? h / 2 : h) + (isEdge ? (walls[i] ?? 0) : 0);
      square(
        weight,
        [
          [at(i, node), -1],
          [at(i + 1, node), 1],
        ],
        y * d,
      );
    }
  });
  // Nothing holds the whole against a shift along the ski: a touch of stiffness does.
  square(1e-6, [[0, 1]], 0);
  const u = solve(K, f);
  return constant - f.transpose().mmul(u).get(0, 0);
}

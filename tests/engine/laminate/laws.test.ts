/** Laws of sections made of plies, and of parts that slip past each other; limits by closed form. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { closedBoxTorsionalStiffnessNmm2 } from "#engine/handbook";
import {
  coupleStiffnessNmm2,
  laminateConstants,
  type Ply,
  type SectionLayer,
  sectionConstants,
  torsionSlipCompliance,
} from "#engine/laminate";

const between = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const anyPly: fc.Arbitrary<Ply> = fc
  .record({
    e1Mpa: between(5e3, 2e5),
    e2Mpa: between(1e3, 2e4),
    g12Mpa: between(500, 3e4),
    nu12: between(0, 0.3),
    angleDeg: fc.integer({ min: -90, max: 90 }),
    thicknessMm: between(0.1, 5),
  })
  .filter(({ e1Mpa, e2Mpa, nu12 }) => nu12 < 0.9 * Math.sqrt(e1Mpa / e2Mpa));
const anyStack = fc.array(anyPly, { minLength: 1, maxLength: 6 });

const section = (plies: readonly Ply[], widthMm: number): SectionLayer[] =>
  plies.map(({ thicknessMm, ...ply }) => ({ thicknessMm, parts: [{ widthMm, ply }] }));

describe("a section of plies", () => {
  it("never softens when a ply is made stiffer: A11, EI and GJ", () => {
    fc.assert(
      fc.property(anyStack, fc.nat(5), between(1, 3), (plies, which, factor) => {
        const stiffer = plies.map((ply, i) =>
          i === which % plies.length
            ? { ...ply, e1Mpa: ply.e1Mpa * factor, e2Mpa: ply.e2Mpa * factor, g12Mpa: ply.g12Mpa * factor }
            : ply,
        );
        const a11 = (of: readonly Ply[]) => laminateConstants(of).aNPerMm[0]?.[0] ?? Number.NaN;
        expect(a11(stiffer)).toBeGreaterThanOrEqual(a11(plies) * (1 - 1e-9));
        const [before, after] = [sectionConstants(section(plies, 90)), sectionConstants(section(stiffer, 90))];
        expect(after.bendingStiffnessNmm2).toBeGreaterThanOrEqual(before.bendingStiffnessNmm2 * (1 - 1e-9));
        expect(after.torsionalStiffnessNmm2).toBeGreaterThanOrEqual(before.torsionalStiffnessNmm2 * (1 - 1e-9));
      }),
    );
  });

  it("mirrored has its neutral axis in the middle, and EI and GJ that grow with the width", () => {
    fc.assert(
      fc.property(anyStack, between(0.2, 5), (half, factor) => {
        const plies = [...half, ...half.toReversed()];
        const one = sectionConstants(section(plies, 80));
        const wide = sectionConstants(section(plies, 80 * factor));
        expect(one.neutralAxisMm / (one.thicknessMm / 2)).toBeCloseTo(1, 7);
        expect(wide.bendingStiffnessNmm2 / one.bendingStiffnessNmm2 / factor).toBeCloseTo(1, 8);
        const strip = "thinStripTorsionalStiffnessNmm2";
        expect(wide[strip] / one[strip] / factor).toBeCloseTo(1, 8);
      }),
    );
  });
});

const anyParts = fc.array(fc.record({ stiffnessN: between(1e3, 1e7), heightMm: between(0, 20) }), {
  minLength: 2,
  maxLength: 5,
});

describe("parts that slip past each other", () => {
  it("bonded keep the whole parallel-axis term ΣA(z − z̄)² of a handbook, and lose all without a joint", () => {
    fc.assert(
      fc.property(anyParts, (unsorted) => {
        const parts = unsorted.toSorted((a, b) => a.heightMm - b.heightMm);
        const total = parts.reduce((sum, part) => sum + part.stiffnessN, 0);
        const axis = parts.reduce((sum, part) => sum + part.stiffnessN * part.heightMm, 0) / total;
        const steiner = parts.reduce((sum, part) => sum + part.stiffnessN * (part.heightMm - axis) ** 2, 0);
        const bonded = coupleStiffnessNmm2(
          parts,
          parts.map(() => 0),
        );
        expect(Math.abs(bonded - steiner)).toBeLessThanOrEqual(1e-7 * steiner + 1e-6);
        const loose = coupleStiffnessNmm2(
          parts,
          parts.map(() => 1e12),
        );
        expect(loose).toBeLessThan(1e-6);
      }),
    );
  });

  it("never gain by a softer joint", () => {
    fc.assert(
      fc.property(anyParts, fc.nat(3), between(0, 1e-5), between(1, 10), (unsorted, which, slip, factor) => {
        const parts = unsorted.toSorted((a, b) => a.heightMm - b.heightMm);
        const slips = parts.slice(1).map(() => slip);
        const softer = slips.map((value, i) => (i === which % slips.length ? value * factor : value));
        const before = coupleStiffnessNmm2(parts, slips);
        expect(coupleStiffnessNmm2(parts, softer)).toBeLessThanOrEqual(before * (1 + 1e-9) + 1e-9);
      }),
    );
  });

  it("twist as Bredt's closed cell when there is no core: 4A²/Σ(s/Gt)", () => {
    // Two skins of G·t per width, closed by walls that shear over their height: w 80, d 10.8 mm (the box of TW-BREDT).
    const [widthMm, d, skinN, wallNPerMm] = [80, 10.8, 10_000 * 0.8, 800 * 6];
    const areas = skinN * widthMm;
    const slip = torsionSlipCompliance({
      lowerN: areas,
      upperN: areas,
      widthMm,
      jointNPerMm3: 0,
      wallNPerMm2: wallNPerMm / d,
    });
    const parts = [
      { stiffnessN: areas, heightMm: 0 },
      { stiffnessN: areas, heightMm: d },
    ];
    const found = 4 * coupleStiffnessNmm2(parts, [slip]);
    const face = { lengthMm: widthMm, thicknessMm: 0.8, shearModulusMpa: 10_000 };
    const wall = { lengthMm: d, thicknessMm: 6, shearModulusMpa: 800 };
    expect(found / closedBoxTorsionalStiffnessNmm2(widthMm * d, [face, face, wall, wall])).toBeCloseTo(1, 6);
  });
});

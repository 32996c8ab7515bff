/** Similarity against values worked out by hand from beam theory; the cases name their derivation. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { bendingForSameFeel, relativeDeflection, springForSameFeel, torsionForSameTwist } from "#engine/fit";
import truth from "../../fixtures/truth/fit.json";

const [bending, spring] = truth.scaling;

describe("similarity of skiers and skis", () => {
  it("FIT-SCALE: 200 N·m² for 75 kg on 177 cm is 259.358 N·m² for 90 kg on 184 cm (EI ∝ m L²)", () => {
    const factor = bendingForSameFeel({ massKg: 90, lengthMm: 1840 }, { massKg: 75, lengthMm: 1770 });
    const wanted = bending?.expected.stiffness1Nm2 ?? Number.NaN;
    expect(Math.abs((200 * factor) / wanted - 1)).toBeLessThan(1e-5);
  });

  it("FIT-SCALE-K: 4.0 N/mm becomes 4.6174 N/mm (k ∝ m/L)", () => {
    const factor = springForSameFeel({ massKg: 90, lengthMm: 1840 }, { massKg: 75, lengthMm: 1770 });
    const wanted = spring?.expected.spring1 ?? Number.NaN;
    expect(Math.abs((4 * factor) / wanted - 1)).toBeLessThan(1e-4);
  });

  it("FIT-SIM: grown by 1.1 in all dimensions, a ski has 1.1⁴ = 1.4641 of its EI and needs 1.1⁵ = 1.61051", () => {
    const grown = { massKg: 75 * 1.1 ** 3, lengthMm: 1770 * 1.1 };
    const needed = bendingForSameFeel(grown, { massKg: 75, lengthMm: 1770 });
    expect(Math.abs(needed / 1.61051 - 1)).toBeLessThan(1e-5);
    // With the 1.4641 that it has, it bends by 1.1 more of its length: own derivation, δ/L ∝ s³·s²/s⁴ = s.
    expect(needed / 1.4641).toBeCloseTo(1.1, 5);
  });

  it("keeps δ/L = F L²/(48 EI) of an even beam, whatever the two riders", () => {
    const size = fc.record({
      massKg: fc.double({ min: 30, max: 150, noNaN: true }),
      lengthMm: fc.double({ min: 1300, max: 2000, noNaN: true }),
    });
    fc.assert(
      fc.property(size, size, (now, reference) => {
        const stiffnessNmm2 = 2e8 * bendingForSameFeel(now, reference);
        const share = (rider: typeof now, ei: number) =>
          relativeDeflection(rider.massKg * 9.80665, (48 * ei) / rider.lengthMm ** 3, rider.lengthMm);
        // Euler–Bernoulli, simply supported, load in the middle: δ = F L³/48EI.
        const byHand = (reference.massKg * 9.80665 * reference.lengthMm ** 2) / (48 * 2e8);
        expect(share(now, stiffnessNmm2) / byHand).toBeCloseTo(1, 9);
      }),
    );
  });

  it("tempered by 0.8, a 91 kg rider against 84 kg gets (91/84)^0.8 = 1.0661 (by logarithm table: 0.8·ln 1.08333 = 0.06403)", () => {
    const lengthMm = 1780;
    const factor = bendingForSameFeel({ massKg: 91, lengthMm }, { massKg: 84, lengthMm }, { mass: 0.8, length: 2 });
    expect(factor).toBeCloseTo(1.0661, 4);
  });

  it("needs GJ ∝ m b L: 90 kg, 100 mm, 1840 mm against 75, 90, 1770 is 1.2 · 1.1111 · 1.03955 = 1.38606", () => {
    const factor = torsionForSameTwist(
      { massKg: 90, widthMm: 100, lengthMm: 1840 },
      { massKg: 75, widthMm: 90, lengthMm: 1770 },
    );
    expect(factor).toBeCloseTo(1.38606, 4);
  });
});

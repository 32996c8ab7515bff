/** Slip over foils and over the core, at the limits where a textbook has a closed form. */
import { describe, expect, it } from "vitest";
import { bendingLostToFoils, type FoilJoint, torsionLost } from "#lib/engine/flex/soft-foils";
import { StackSum } from "#lib/engine/flex/stack-sum";

const relative = (actual: number, expected: number) => Math.abs(actual / expected - 1);

/** A rectangle of stiffness `a` (E·A or G·A) from z = `from`, `t` thick. */
const slab = (a: number, from: number, t: number) => ({
  a,
  s: a * (from + t / 2),
  i: a * ((from + t / 2) ** 2 + t ** 2 / 12),
});
const plus = (...all: readonly ReturnType<typeof slab>[]) => ({
  a: all.reduce((sum, one) => sum + one.a, 0),
  s: all.reduce((sum, one) => sum + one.s, 0),
  i: all.reduce((sum, one) => sum + one.i, 0),
});

describe("bending over foils", () => {
  // Outer skins of 1 mm outside foils of no stiffness: 0–1 mm below, 12–13 mm above, the rest from 1 to 12 mm.
  const [lower, middle, upper] = [slab(3e6, 0, 1), slab(2e6, 1, 11), slab(4e6, 12, 1)];
  const foil = (young: ReturnType<typeof slab>, gw: number): FoilJoint => ({
    young,
    shear: young,
    gw,
    thicknessMm: 0.2,
  });
  const aboveAt = 10;
  const upperInStack = slab(4e6, 12 - aboveAt, 1);
  const halfWave = 1400;
  const two = (a1: number, a2: number, d: number) => ((a1 * a2) / (a1 + a2)) * d ** 2;

  it("of one foil takes what two parts without it lack: couple·(1 − 1/(1 + s·A1·A2/(A1 + A2))), s = π²t/(G·w·L²)", () => {
    for (const gw of [1, 50, 5000]) {
      const whole = plus(lower, middle);
      const couple = two(3e6, 2e6, 6.5 - 0.5);
      const s = (Math.PI ** 2 * 0.2) / (gw * halfWave ** 2);
      const kept = couple / (1 + (s * 3e6 * 2e6) / 5e6);
      expect(
        relative(bendingLostToFoils({ below: foil(lower, gw) }, whole, aboveAt, halfWave), couple - kept),
      ).toBeLessThan(1e-9);
      const over = plus(middle, upper);
      const coupleOver = two(2e6, 4e6, 12.5 - 6.5);
      const keptOver = coupleOver / (1 + (s * 2e6 * 4e6) / 6e6);
      expect(
        relative(bendingLostToFoils({ above: foil(upperInStack, gw) }, over, aboveAt, halfWave), coupleOver - keptOver),
      ).toBeLessThan(1e-9);
    }
  });

  it("of two foils is the whole couple where they are soft, and nothing where they are stiff or missing", () => {
    const whole = plus(lower, middle, upper);
    const zBar = whole.s / whole.a;
    const couple = [lower, middle, upper].reduce((sum, part) => sum + part.a * (part.s / part.a - zBar) ** 2, 0);
    const lost = (gw: number) =>
      bendingLostToFoils({ below: foil(lower, gw), above: foil(upperInStack, gw) }, whole, aboveAt, halfWave);
    expect(relative(lost(1e-9), couple)).toBeLessThan(1e-6);
    expect(lost(1e12) / couple).toBeLessThan(1e-6);
    expect(bendingLostToFoils({}, whole, aboveAt, halfWave)).toBe(0);
    // A soft foil below and a stiff one above: the rest holds together.
    const one = bendingLostToFoils(
      { below: foil(lower, 1e-9), above: foil(upperInStack, 1e12) },
      whole,
      aboveAt,
      halfWave,
    );
    const rest = plus(middle, upper);
    expect(relative(one, two(3e6, rest.a, rest.s / rest.a - 0.5))).toBeLessThan(1e-6);
  });
});

describe("twist over the core", () => {
  const [b, t, core] = [90, 1.5, 10];
  const G = 5000;
  const d = core + t;
  const skin = slab(G * b * t, 0, t);
  const box = (
    coreGw: number,
    wall: { thicknessMm: number; shearMpa: number },
    more: Partial<Parameters<typeof torsionLost>[0]> = {},
  ) => ({
    under: skin,
    over: skin,
    widthMm: b,
    aboveAtMm: t + core,
    coreMm: core,
    coreGw,
    wall,
    ...more,
  });
  /** 4·Σ G·A·(z − z̄)² of two equal skins. */
  const bonded = 4 * (G * b * t) * 0.5 * d ** 2;

  it("without a core leaves R. Bredt's closed cell, 4A²/Σ(s/Gt), with the walls between the skins", () => {
    for (const [thicknessMm, shearMpa] of [
      [7, 800],
      [3, 200],
    ] as const) {
      const bredt = (4 * (b * d) ** 2) / (2 * (b / (G * t)) + 2 * (core / (shearMpa * thicknessMm)));
      expect(relative(bonded - torsionLost(box(1e-9, { thicknessMm, shearMpa })), bredt)).toBeLessThan(1e-6);
    }
  });

  it("takes all without core and walls, next to nothing with a rigid core, and less the stiffer the core", () => {
    const open = { thicknessMm: 0, shearMpa: 1 };
    const lost = [1e-9, 1e3, 1e4, 1e5, 1e12].map((gw) => torsionLost(box(gw, open)) / bonded);
    expect(lost[0]).toBeCloseTo(1, 6);
    expect(lost.at(-1)).toBeLessThan(0.001);
    expect(lost).toEqual(lost.toSorted((x, y) => y - x));
    // 1 − the share kept: (2λ/b)·tanh(b/2λ), λ² = S/2k, S = G·t, k = G_core/c (thin skins, as after Reissner's sandwich).
    const coreG = 1e4 / b;
    const lambda = Math.sqrt((G * t) / 2 / (coreG / core));
    expect(lost[2]).toBeCloseTo(((2 * lambda) / b) * Math.tanh(b / (2 * lambda)), 6);
  });

  it("counts the core's shear over the width between the walls", () => {
    const wide = torsionLost(box(1e4, { thicknessMm: 7, shearMpa: 1e-9 }));
    const narrow = torsionLost(box((1e4 * 90) / 76, { thicknessMm: 0, shearMpa: 1 }));
    expect(relative(wide, narrow)).toBeLessThan(1e-9);
  });

  it("loses the outer skins to soft foils as well", () => {
    const outer = slab(G * b * 0.5, 0, 0.5);
    const under = plus(outer, slab(G * b, 0.5, 1));
    const outerAbove = slab(G * b * 0.5, 1, 0.5);
    const over = plus(slab(G * b, 0, 1), outerAbove);
    const joint = (shear: ReturnType<typeof slab>, gw: number): FoilJoint => ({
      young: shear,
      shear,
      gw,
      thicknessMm: 0.2,
    });
    const lost = (below?: number, above?: number) =>
      torsionLost(
        box(
          1e12,
          { thicknessMm: 0, shearMpa: 1 },
          {
            under,
            over,
            below: below === undefined ? undefined : joint(outer, below),
            above: above === undefined ? undefined : joint(outerAbove, above),
          },
        ),
      );
    expect(lost()).toBeLessThan(0.001 * bonded);
    // Outer skin against the rest: 0.5 against 1 + 1.5 of G·b, centroids at 0.25 and (1·1 + 1.5·12.25)/2.5 = 7.75 mm.
    const alone = 4 * ((G * b * 0.5 * 2.5) / 3) * (7.75 - 0.25) ** 2;
    expect(relative(lost(1e-9), alone)).toBeLessThan(0.001);
    expect(relative(lost(undefined, 1e-9), alone)).toBeLessThan(0.001);
    // Both: 0.5 and 0.5 of G·b, each 6.25 mm from the middle of what holds together.
    expect(relative(lost(1e-9, 1e-9), 4 * G * b * 2 * 0.5 * 6.25 ** 2)).toBeLessThan(0.001);
    expect(lost(1e12, 1e12)).toBeLessThan(0.001 * bonded);
  });

  it("is nothing where there is nothing to twist", () => {
    const nothing = slab(0, 0, 1);
    for (const more of [{ under: nothing }, { over: nothing }, { widthMm: 0 }, { coreMm: 0 }])
      expect(torsionLost(box(1, { thicknessMm: 1, shearMpa: 1 }, more))).toBe(0);
  });
});

describe("StackSum", () => {
  it("sums ∫w, ∫w·z and ∫w·z² layer by layer for every modulus (two layers by hand), and grams per metre", () => {
    const sum = new StackSum();
    sum.add(2, { ew: 100, gw: 10, densityWidth: 50_000, q11w: 110, q12w: 30, q22w: 80 });
    sum.add(3, { ew: 7, gw: 5, densityWidth: 20_000, q11w: 8, q12w: 1, q22w: 6 });
    // Second layer from 2 to 5: ∫z = 10.5, ∫z² = (125 − 8)/3 = 39; first: 2 and 8/3.
    const byHand = (first: number, second: number) => ({
      a: expect.closeTo(2 * first + 3 * second, 9),
      s: expect.closeTo(2 * first + 10.5 * second, 9),
      i: expect.closeTo((8 / 3) * first + 39 * second, 9),
    });
    expect({ ...sum.young }).toEqual(byHand(100, 7));
    expect({ ...sum.shear }).toEqual(byHand(10, 5));
    expect({ ...sum.q11 }).toEqual(byHand(110, 8));
    expect({ ...sum.q12 }).toEqual(byHand(30, 1));
    expect({ ...sum.q22 }).toEqual(byHand(80, 6));
    expect(sum.massGPerM).toBeCloseTo(100 + 60, 9);
    expect(sum.thicknessMm).toBe(5);
  });
});

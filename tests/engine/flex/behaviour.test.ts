import { describe, expect, it } from "vitest";
import type { FlexStation } from "#engine/flex";
import {
  bareBuild,
  camberUnderLoad,
  closingForceN,
  freeFreeFrequencies,
  pressedCamber,
  skiBehaviour,
  twistPerNmm,
} from "#engine/flex";
import { profileHeightMm } from "#engine/geometry";
import { evenlySpaced } from "#engine/math";
import { catalog, solved, specOf } from "../demo-catalog";

const station = (xMm: number, change: Partial<FlexStation> = {}): FlexStation => ({
  xMm,
  widthMm: 100,
  coreMm: 10,
  thicknessMm: 12,
  bendingStiffnessNmm2: 2e8,
  torsionalStiffnessNmm2: 1e8,
  neutralAxisMm: 6,
  massGPerM: 900,
  ...change,
});

describe("freeFreeFrequencies", () => {
  const uniform = evenlySpaced(0, 1800, 20).map((x) => station(x));

  it("meets the uniform free beam, (4.730041)²/2π·√(EI/mL⁴) (R. D. Blevins, table 8-1, from memory)", () => {
    const expected = (4.730040744862704 ** 2 / (2 * Math.PI)) * Math.sqrt(200 / (0.9 * 1.8 ** 4));
    expect(freeFreeFrequencies(uniform).bendingHz / expected).toBeCloseTo(1, 6);
  });

  it("meets the uniform free shaft, √(GJ/Ip)/2L with Ip = m·w²/12 of a thin plate", () => {
    const expected = Math.sqrt(100 / ((0.9 * 0.1 ** 2) / 12)) / (2 * 1.8);
    expect(freeFreeFrequencies(uniform).torsionHz / expected).toBeCloseTo(1, 6);
  });

  it("cannot be found without mass or length", () => {
    expect(() => freeFreeFrequencies([station(0)])).toThrow(/two/);
    expect(() => freeFreeFrequencies(uniform.map((s) => ({ ...s, massGPerM: 0 })))).toThrow(/mass/);
  });
});

describe("twistPerNmm", () => {
  it("meets a shaft whose GJ grows evenly, T·L·ln(g1/g0)/(g1 − g0) (TW-LIN, own closed form)", () => {
    const shaft = [station(0, { torsionalStiffnessNmm2: 40e6 }), station(600, { torsionalStiffnessNmm2: 160e6 })];
    expect((10_000 * twistPerNmm(shaft, 0, 600) * 180) / Math.PI).toBeCloseTo(3.971441, 5);
  });
});

describe("skiBehaviour", () => {
  const { build, flexWithPlate } = solved(specOf());
  const whole = skiBehaviour(build, flexWithPlate);

  it("lies within the orders of magnitude of published skis and boards", () => {
    // Two boards of Fuss et al., Engineering of Sport 8 (2010): bending 16 Hz, torsion 30 Hz; skis are half as wide, so
    // twist faster. Torsion 1–6 N·m a degree and 0.3–0.6 kg·m² are sanity bands, from memory.
    expect(whole.bendingHz).toBeGreaterThan(10);
    expect(whole.bendingHz).toBeLessThan(25);
    expect(whole.torsionHz).toBeGreaterThan(60);
    expect(whole.torsionHz).toBeLessThan(160);
    expect(whole.twistForebodyNmPerDeg).toBeGreaterThan(1);
    expect(whole.twistAfterbodyNmPerDeg).toBeLessThan(6);
    expect(whole.polarMomentKgM2).toBeGreaterThan(0.25);
    expect(whole.polarMomentKgM2).toBeLessThan(0.6);
  });

  it("swings less easily about any line but the balance point (Steiner)", () => {
    const d = (flexWithPlate.balancePointMm - build.mountFromTipMm) / 1000;
    expect(whole.polarMomentAtMountKgM2 - whole.polarMomentKgM2).toBeCloseTo(flexWithPlate.massKg * d * d, 9);
  });

  it("turns like a plate, m(L² + w²)/12, when mass and width are even", () => {
    const even = {
      ...flexWithPlate,
      stations: evenlySpaced(0, 1800, 12).map((x) => station(x)),
      massKg: 1.62,
      balancePointMm: 900,
    };
    expect(skiBehaviour(build, even).polarMomentKgM2).toBeCloseTo((1.62 * (1.8 ** 2 + 0.1 ** 2)) / 12, 9);
  });
});

describe("camber under load", () => {
  const L = 1400;
  const EI = 2e8;
  const arch = {
    stations: [station(0), station(L)],
    fromMm: 0,
    toMm: L,
    loadMm: L / 2,
    restHeightMm: (x: number) => 5 * (1 - ((2 * x) / L - 1) ** 2),
  };
  const closing = (48 * EI * 5) / L ** 3;

  it("meets the parabolic arch, which stands on its ends until 48·EI·c/L³ (closed form)", () => {
    for (const share of [0, 0.25, 0.5, 0.9]) {
      const { heightMm, standsFromMm, standsToMm } = pressedCamber(arch, share * closing);
      expect(heightMm).toBeCloseTo(5 * (1 - share), 1);
      expect([standsFromMm, standsToMm]).toEqual([0, L]);
    }
  });

  const { build, flex } = solved(specOf());

  it("of a ski falls steadily, rolls inward from both ends and closes under tens of newtons", () => {
    const loads = [0, 10, 20, 40, 60].map((force) => camberUnderLoad(build, flex, force));
    const heights = loads.map((each) => each.heightMm);
    expect(heights[0]).toBeGreaterThan(0.95 * build.shape.camberMm);
    expect(heights).toEqual(heights.toSorted((a, b) => b - a));
    const spans = loads.map((each) => each.standsToMm - each.standsFromMm);
    expect(spans).toEqual(spans.toSorted((a, b) => b - a));
    // mechanics of contact at 45° (own derivation, GEO-CONTACT): 47 N for a uniform ski; the order is what counts.
    const closes = closingForceN(build, flex);
    expect(closes).toBeGreaterThan(20);
    expect(closes).toBeLessThan(200);
    expect(camberUnderLoad(build, flex, closes * 1.05).heightMm).toBeLessThan(0.05);
  });

  it("of a stiffer ski takes more force to close", () => {
    const stiff = solved(specOf({ flexRatio: 1.15 }));
    expect(closingForceN(stiff.build, stiff.flex)).toBeGreaterThan(closingForceN(build, flex));
    expect(() => camberUnderLoad(build, flex, -1)).toThrow(/below 0/);
  });

  it("has converged: a mesh four times finer moves the closing force by less than 1 % and heights by less than 0.02 mm", () => {
    for (const [model, lengthCm] of [
      ["drifthold-117", 188],
      ["midlow-95", 178],
    ] as const) {
      const one = solved(specOf({ model, lengthCm, flexRatio: 1 }));
      const bare = bareBuild(one.build);
      const fine = closingForceN(bare, one.flex, 480);
      expect(Math.abs(closingForceN(bare, one.flex) / fine - 1), model).toBeLessThan(0.01);
      const { tipTangentMm: fromMm, tailTangentMm: toMm } = bare.shape;
      const beam = {
        stations: one.flex.stations,
        fromMm,
        toMm,
        loadMm: bare.mountFromTipMm,
        restHeightMm: (x: number) => profileHeightMm(bare.shape, x, "free"),
      };
      for (const share of [0.3, 0.7]) {
        const [coarse, exact] = [120, 480].map((pieces) => pressedCamber(beam, share * fine, pieces));
        expect(Math.abs((coarse?.heightMm ?? 0) - (exact?.heightMm ?? 1))).toBeLessThan(0.02);
      }
    }
  });

  it("reads the springs where the shop's bench is set to", () => {
    const rules = {
      ...catalog.build.rules,
      springTest: { supports: { frontFromTipMm: 250, rearFromTailMm: 200 }, load: "middle" },
    } as const;
    const elsewhere = solved(specOf(), { ...catalog.build, rules });
    expect(elsewhere.flex.springCentreNPerMm).toBeGreaterThan(flex.springCentreNPerMm);
    expect(elsewhere.core.achievedRatio).toBeCloseTo(1, 2);
  });
});

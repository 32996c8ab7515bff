import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type BeamProblem, type BeamStation, solveBeam, springConstants } from "#engine/flex";
import { cantileverFrequencyHz, coreShearDeflectionMm, integrate } from "#engine/handbook";
import { expectCase, input, mechanicsCase } from "../../fixtures/truth/mechanics";

/** [x in m, EI in N·m²] knots. */
const stations = (knots: readonly (readonly number[])[]): BeamStation[] =>
  knots.map(([x = 0, EI = 0]) => ({ xMm: x * 1e3, bendingStiffnessNmm2: EI * 1e6 }));
const threePoint = (knots: readonly (readonly number[])[], loadM: number, forceN: number) => {
  const list = stations(knots);
  const span = [list[0]?.xMm ?? 0, list.at(-1)?.xMm ?? 0] as const;
  return solveBeam({ stations: list, support: { kind: "simple", xMm: span }, load: { xMm: loadM * 1e3, forceN } });
};
const cantilever = (knots: readonly (readonly number[])[], clampM: number, loadM: number, forceN: number) =>
  solveBeam({
    stations: stations(knots),
    support: { kind: "clamped", xMm: clampM * 1e3 },
    load: { xMm: loadM * 1e3, forceN },
  });

describe("solveBeam on two supports", () => {
  it("meets the uniform beam, F·L³/48EI", () => {
    const found = threePoint(
      [
        [0, 200],
        [1.2, 200],
      ],
      0.6,
      300,
    );
    expectCase("BM-3PT", "delta_mm", found.deflectionMm);
    expectCase("BM-3PT", "k_N_mm", found.springNPerMm);
    expect(found.maxAtMm).toBeCloseTo(600, 4);
  });

  it("meets the load off centre and the greatest deflection beside it", () => {
    expectCase(
      "BM-3PT-OFF",
      "delta_mm",
      threePoint(
        [
          [0, 200],
          [1.2, 200],
        ],
        0.5,
        300,
      ).deflectionMm,
    );
    // The case measures from the support farther from the load.
    const found = threePoint(
      [
        [0, 200],
        [1.2, 200],
      ],
      0.7,
      300,
    );
    expectCase("BM-3PT-OFF-MAX", "x_max_from_far_support_m", found.maxAtMm / 1e3);
    expectCase("BM-3PT-OFF-MAX", "delta_max_mm", found.maxDeflectionMm);
  });

  it("meets the stepped beam, a step being two stations at one x", () => {
    const knots = [
      [0, 80],
      [0.3, 80],
      [0.3, 240],
      [0.9, 240],
      [0.9, 80],
      [1.2, 80],
    ];
    expectCase("BM-STEP", "delta_mm", threePoint(knots, 0.6, 300).deflectionMm);
  });

  it("meets stiffness that grows in a straight line", () => {
    expectCase(
      "BM-LIN",
      "delta_mm",
      threePoint(
        [
          [0, 60],
          [0.6, 300],
          [1.2, 60],
        ],
        0.6,
        300,
      ).deflectionMm,
    );
  });

  it("closes in on tapers of thickness as stations are added", () => {
    for (const [id, power] of [
      ["BM-TAPER3", 3],
      ["BM-TAPER2", 2],
    ] as const) {
      const r = input(id, "t_end_over_t_centre");
      const taper = (pieces: number) =>
        Array.from({ length: pieces + 1 }, (_, i) => {
          const x = (1.2 * i) / pieces;
          return [x, 300 * (r + (1 - r) * (1 - Math.abs(x / 0.6 - 1))) ** power];
        });
      expectCase(id, "delta_mm", threePoint(taper(2000), 0.6, 300).deflectionMm);
    }
  });

  it("meets the ski-like beam", () => {
    const knots = mechanicsCase("BM-SKI").inputs.EI_knots as readonly number[][];
    const found = threePoint(knots, input("BM-SKI", "load_x_m"), input("BM-SKI", "F_N"));
    expectCase("BM-SKI", "delta_mm", found.deflectionMm);
    expectCase("BM-SKI", "k_N_mm", found.springNPerMm);
  });

  it("lets overhangs turn along, straight", () => {
    const problem: BeamProblem = {
      stations: stations([
        [0, 200],
        [1.6, 200],
      ]),
      support: { kind: "simple", xMm: [200, 1400] },
      load: { xMm: 800, forceN: 300 },
    };
    const found = solveBeam(problem);
    expectCase("BM-3PT", "delta_mm", found.deflectionMm);
    // End slope F·L²/16EI times the overhang of 200 mm, upwards.
    expect(found.curve[0]?.deflectionMm).toBeCloseTo((-300 * 1200 ** 2 * 200) / (16 * 200e6), 6);
  });

  it("meets a load that hangs over a support: F·c²(L + c)/3EI", () => {
    const found = solveBeam({
      stations: stations([
        [0, 200],
        [1.5, 200],
      ]),
      support: { kind: "simple", xMm: [0, 1000] },
      load: { xMm: 1300, forceN: 50 },
    });
    expect(found.deflectionMm).toBeCloseTo((50 * 300 ** 2 * 1300) / (3 * 200e6), 6);
  });
});

describe("solveBeam on a clamp", () => {
  it("meets the uniform cantilever and its end slope", () => {
    const found = cantilever(
      [
        [0, 150],
        [0.6, 150],
        [0.7, 150],
      ],
      0,
      0.6,
      50,
    );
    expectCase("BM-CANT", "delta_mm", found.deflectionMm);
    const end = found.curve.at(-1)?.deflectionMm ?? 0;
    expectCase("BM-CANT", "slope_rad", (end - found.deflectionMm) / 100);
  });

  it("meets stepped and straight cantilevers, clamped at either end", () => {
    expectCase(
      "BM-CANT-STEP",
      "delta_mm",
      cantilever(
        [
          [0, 60],
          [0.3, 60],
          [0.3, 240],
          [0.6, 240],
        ],
        0.6,
        0,
        50,
      ).deflectionMm,
    );
    expectCase(
      "BM-CANT-LIN",
      "delta_mm",
      cantilever(
        [
          [0, 240],
          [0.6, 30],
        ],
        0,
        0.6,
        50,
      ).deflectionMm,
    );
  });

  it("meets forebody and afterbody of the ski-like beam, clamped inside", () => {
    const id = "BM-SKI-BAL";
    const knots = mechanicsCase(id).inputs.EI_knots as readonly number[][];
    const clamp = mechanicsCase(id).inputs.clamp_x_m as { afterbody: number; forebody: number };
    // The case counts x from the tail.
    expectCase(id, "c_A_N_mm", cantilever(knots, clamp.afterbody, 0, 20).springNPerMm);
    expectCase(id, "c_B_N_mm", cantilever(knots, clamp.forebody, 1.4, 20).springNPerMm);
    const rest = cantilever(knots, clamp.afterbody, 0, 20).curve.at(-1);
    expect(rest).toEqual({ xMm: 1400, deflectionMm: 0 });
  });
});

describe("solveBeam in twist", () => {
  const twist = (knots: readonly (readonly number[])[]) =>
    solveBeam({
      stations: knots.map(([x = 0, GJ = 0]) => ({
        xMm: x * 1e3,
        bendingStiffnessNmm2: 1e8,
        torsionalStiffnessNmm2: GJ * 1e6,
      })),
      support: { kind: "clamped", xMm: 0 },
      load: { xMm: 600, forceN: 0 },
      torqueNmm: 10_000,
    }).twistRad ?? Number.NaN;
  const degrees = (rad: number) => (rad * 180) / Math.PI;

  it("meets uniform, stepped and straight torsional stiffness", () => {
    expectCase(
      "TW-UNI",
      "deg",
      degrees(
        twist([
          [0, 100],
          [0.6, 100],
        ]),
      ),
    );
    expectCase(
      "TW-STEP",
      "deg",
      degrees(
        twist([
          [0, 50],
          [0.3, 50],
          [0.3, 150],
          [0.6, 150],
        ]),
      ),
    );
    expectCase(
      "TW-LIN",
      "rad",
      twist([
        [0, 40],
        [0.6, 160],
      ]),
    );
  });
});

describe("solveBeam's limits", () => {
  const good: BeamProblem = {
    stations: stations([
      [0, 100],
      [1, 100],
    ]),
    support: { kind: "simple", xMm: [0, 1000] },
    load: { xMm: 400, forceN: 10 },
  };

  it("cannot take stations, supports or loads that make no beam", () => {
    expect(() => solveBeam({ ...good, stations: stations([[0, 100]]) })).toThrow(/stations: 1 given/);
    expect(() =>
      solveBeam({
        ...good,
        stations: stations([
          [1, 1],
          [0, 1],
        ]),
      }),
    ).toThrow(/stations\[1\].xMm/);
    expect(() =>
      solveBeam({
        ...good,
        stations: stations([
          [0, 0],
          [1, 1],
        ]),
      }),
    ).toThrow(/bendingStiffnessNmm2: 0/);
    expect(() => solveBeam({ ...good, support: { kind: "simple", xMm: [0, 1001] } })).toThrow(/support.xMm: 1001/);
    expect(() => solveBeam({ ...good, load: { xMm: -1, forceN: 1 } })).toThrow(/load.xMm: -1/);
    expect(() => solveBeam({ ...good, load: { xMm: 0, forceN: 1 } })).toThrow(/on a support/);
    expect(() => solveBeam({ ...good, torqueNmm: 1 })).toThrow(/torsionalStiffnessNmm2/);
  });

  it("knows the spring without a force", () => {
    const idle = solveBeam({ ...good, load: { xMm: 400, forceN: 0 } });
    expect(idle.deflectionMm).toBe(0);
    expect(idle.springNPerMm).toBeCloseTo(solveBeam(good).springNPerMm, 12);
  });
});

const anyStiffness = fc.array(fc.double({ min: 1e6, max: 5e8, noNaN: true }), { minLength: 2, maxLength: 12 });
const elevenStiffnesses = fc.array(fc.double({ min: 1e6, max: 5e8, noNaN: true }), { minLength: 11, maxLength: 11 });
const beamOf = (values: readonly number[]): BeamStation[] =>
  values.map((bendingStiffnessNmm2, i) => ({ xMm: (1000 * i) / (values.length - 1), bendingStiffnessNmm2 }));

describe("laws of beams", () => {
  it("the load at A bends B as the load at B bends A (Maxwell)", () => {
    const place = fc.integer({ min: 1, max: 9 });
    fc.assert(
      fc.property(elevenStiffnesses, place, place, (values, a, b) => {
        // A station every 100 mm, so that the curve names every place.
        const list = beamOf(values);
        const bend = (from: number, at: number) => {
          const { curve } = solveBeam({
            stations: list,
            support: { kind: "simple", xMm: [0, 1000] },
            load: { xMm: from * 100, forceN: 1 },
          });
          return curve.find((point) => Math.abs(point.xMm - at * 100) < 1e-9)?.deflectionMm ?? Number.NaN;
        };
        expect(bend(a, b) / bend(b, a)).toBeCloseTo(1, 6);
      }),
    );
  });

  it("agree with numerical integration of the unit-load integral", () => {
    fc.assert(
      fc.property(anyStiffness, fc.double({ min: 0.1, max: 0.9, noNaN: true }), (values, share) => {
        const list = beamOf(values);
        const x = 1000 * share;
        const moment = (at: number) => (at < x ? ((1000 - x) * at) / 1000 : (x * (1000 - at)) / 1000);
        let energy = 0;
        list.slice(1).forEach((right, i) => {
          const left = list[i];
          if (!left) return;
          const stiffnessAt = (at: number) =>
            left.bendingStiffnessNmm2 +
            ((right.bendingStiffnessNmm2 - left.bendingStiffnessNmm2) * (at - left.xMm)) / (right.xMm - left.xMm);
          for (const [from, to] of [
            [left.xMm, Math.min(x, right.xMm)],
            [Math.max(x, left.xMm), right.xMm],
          ] as const) {
            if (to > from) energy += integrate((at) => moment(at) ** 2 / stiffnessAt(at), from, to, 400);
          }
        });
        const found = solveBeam({
          stations: list,
          support: { kind: "simple", xMm: [0, 1000] },
          load: { xMm: x, forceN: 1 },
        });
        expect(found.deflectionMm / energy).toBeCloseTo(1, 6);
        const springs = springConstants(
          list.map((station) => station.xMm),
          list.map((station) => station.bendingStiffnessNmm2),
          { frontSupportMm: 0, rearSupportMm: 1000, loadMm: x },
        );
        expect(springs.springCentreNPerMm / found.springNPerMm).toBeCloseTo(1, 8);
        const front = solveBeam({ stations: list, support: { kind: "clamped", xMm: x }, load: { xMm: 0, forceN: 1 } });
        const rear = solveBeam({
          stations: list,
          support: { kind: "clamped", xMm: x },
          load: { xMm: 1000, forceN: 1 },
        });
        expect(springs.springForebodyNPerMm / front.springNPerMm).toBeCloseTo(1, 8);
        expect(springs.springAfterbodyNPerMm / rear.springNPerMm).toBeCloseTo(1, 8);
        expect(springs.balance).toBeCloseTo(rear.springNPerMm / front.springNPerMm, 6);
      }),
      { numRuns: 60 },
    );
  });

  it("stiffening any station never softens the beam", () => {
    fc.assert(
      fc.property(anyStiffness, fc.nat(11), fc.double({ min: 1, max: 4, noNaN: true }), (values, which, factor) => {
        const k = which % values.length;
        const spring = (list: readonly number[]) =>
          solveBeam({
            stations: beamOf(list),
            support: { kind: "simple", xMm: [0, 1000] },
            load: { xMm: 370, forceN: 1 },
          }).springNPerMm;
        const stiffer = values.map((value, i) => (i === k ? value * factor : value));
        expect(spring(stiffer)).toBeGreaterThanOrEqual(spring(values) * (1 - 1e-10));
      }),
    );
  });
});

describe("what the beam leaves out", () => {
  it("is a quarter of a per cent for a wood core and five for foam", () => {
    const sandwich = { forceN: 300, spanMm: 1200, widthMm: 80, coreMm: 10, faceDistanceMm: 10.8 };
    const wood = coreShearDeflectionMm({ ...sandwich, coreShearMpa: input("SH-WOOD", "G_core_MPa") });
    const EI = input("SH-WOOD", "EI_Nmm2") / 1e6;
    const bend = threePoint(
      [
        [0, EI],
        [1.2, EI],
      ],
      0.6,
      300,
    ).deflectionMm;
    expectCase("SH-WOOD", "bend_mm", bend);
    expectCase("SH-WOOD", "shear_mm", wood);
    expectCase("SH-WOOD", "ratio", wood / bend);
    const foam = coreShearDeflectionMm({ ...sandwich, coreShearMpa: input("SH-FOAM", "G_core_MPa") });
    expectCase("SH-FOAM", "shear_mm", foam);
  });

  it("is dynamics, of which the first cantilever frequency is known", () => {
    const id = "VIB-CANT";
    const found = cantileverFrequencyHz(input(id, "EI_Nm2") * 1e6, input(id, "m_per_m_kg"), input(id, "L_m") * 1e3);
    expectCase(id, "f1_Hz", found);
  });
});

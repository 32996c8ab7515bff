/** The parts of the beam, each against a closed form of mechanics (textbook formulas) or a sum worked by hand. */

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  benchMomentMm,
  closingForceN,
  evaluateFlex,
  type FlexStation,
  freeFreeFrequencies,
  pressedCamber,
  type SkiBuild,
  skiBehaviour,
  solveBeam,
  springConstants,
  springTestOf,
  twistPerNmm,
} from "#engine/flex";
import { halfWidthAt } from "#engine/geometry";
import { cantileverFrequencyHz, coreShearDeflectionMm, integrate } from "#engine/handbook";
import { evenlySpaced } from "#engine/math";
import { localSection } from "#lib/engine/flex/local-section";
import { pieceEnergy, pieceOffset, pieceTurn, stiffnessMoments } from "#lib/engine/flex/piece";
import { partlyBonded } from "#lib/engine/flex/plate-bond";
import { samplesOf } from "#lib/engine/flex/spread-samples";
import { withCoreShear } from "#lib/engine/flex/springs";
import { stationPositions, stepPositions } from "#lib/engine/flex/stations";
import { demoBuild, demoModels, designedCore } from "./demo-builds";

const model = demoModels.find((one) => one.id === "midlow-95");
if (!model) throw new Error("no midlow-95");
const build = demoBuild(model, 178);
const core = designedCore(model, build);
const relative = (actual: number, expected: number) => Math.abs(actual / expected - 1);
const EI = 2e8;

describe("integrals over a piece", () => {
  it("J0, J1, J2 of an even piece are 1, 1/2, 1/3", () => {
    const j = new Float64Array(3);
    stiffnessMoments(0, j);
    expect([...j]).toEqual([1, 1 / 2, 1 / 3].map((value) => expect.closeTo(value, 14)));
  });

  it("agree with Gauss's rule for any moment and any growth, on both sides of the series", () => {
    const moment = fc.double({ min: -5, max: 5, noNaN: true });
    const growth = fc.oneof(
      fc.double({ min: -0.06, max: 0.06, noNaN: true }),
      fc.double({ min: -0.8, max: 4, noNaN: true }),
    );
    fc.assert(
      fc.property(moment, moment, growth, fc.double({ min: 1, max: 90, noNaN: true }), (m0, m1, r, h) => {
        const e0 = 3;
        const m = (x: number) => m0 + ((m1 - m0) * x) / h;
        const e = (x: number) => e0 * (1 + (r * x) / h);
        const size = 1e-9 * h * h * 60;
        const [a, b, c] = [h, m0, m1];
        const e1 = e(h);
        expect(Math.abs(pieceEnergy(a, b, c, e0, e1) - integrate((x) => m(x) ** 2 / e(x), 0, h, 20))).toBeLessThan(
          size,
        );
        expect(Math.abs(pieceTurn(a, b, c, e0, e1) - integrate((x) => m(x) / e(x), 0, h, 20))).toBeLessThan(size);
        expect(
          Math.abs(pieceOffset(a, b, c, e0, e1) - integrate((x) => ((h - x) * m(x)) / e(x), 0, h, 20)),
        ).toBeLessThan(size);
      }),
    );
  });
});

describe("springConstants", () => {
  const test = { frontSupportMm: 200, rearSupportMm: 1700, loadMm: 1000 };

  it("of an even beam are 3·EI·L/(a²b²), 3·EI/a³ and 3·EI/b³ (a = 800, b = 700, L = 1500), wherever it is cut", () => {
    for (const xs of [
      [0, 1800],
      [200, 1700],
      [0, 200, 500, 500, 1000, 1300, 1700, 1800],
    ]) {
      const springs = springConstants(
        xs,
        xs.map(() => EI),
        test,
      );
      expect(relative(springs.springCentreNPerMm, (3 * EI * 1500) / (800 ** 2 * 700 ** 2))).toBeLessThan(1e-12);
      expect(relative(springs.springForebodyNPerMm, (3 * EI) / 800 ** 3)).toBeLessThan(1e-12);
      expect(relative(springs.springAfterbodyNPerMm, (3 * EI) / 700 ** 3)).toBeLessThan(1e-12);
      expect(relative(springs.balance, (800 / 700) ** 3)).toBeLessThan(1e-12);
    }
  });

  it("know nothing of what lies outside the supports", () => {
    const inner = springConstants([0, 200, 200, 1700, 1700, 1800], [1, 1, EI, 2 * EI, 7, 7], test);
    const alone = springConstants([200, 1700], [EI, 2 * EI], test);
    for (const key of ["springCentreNPerMm", "springForebodyNPerMm", "springAfterbodyNPerMm", "balance"] as const)
      expect(relative(inner[key], alone[key])).toBeLessThan(1e-9);
  });

  it("agree with the beam of the same stiffness, solved by double integration", () => {
    const stations = [0, 400, 900, 900, 1300, 1800].map((xMm, i) => ({
      xMm,
      bendingStiffnessNmm2: EI * ([1, 3, 4, 6, 5, 2][i] ?? 0),
    }));
    const springs = springConstants(
      stations.map((s) => s.xMm),
      stations.map((s) => s.bendingStiffnessNmm2),
      test,
    );
    const load = { xMm: test.loadMm, forceN: 1 };
    const simple = solveBeam({ stations, support: { kind: "simple", xMm: [200, 1700] }, load });
    const clamped = (xMm: number) =>
      solveBeam({ stations, support: { kind: "clamped", xMm: test.loadMm }, load: { xMm, forceN: 1 } });
    expect(relative(springs.springCentreNPerMm, simple.springNPerMm)).toBeLessThan(1e-9);
    expect(relative(springs.springForebodyNPerMm, clamped(200).springNPerMm)).toBeLessThan(1e-9);
    expect(relative(springs.springAfterbodyNPerMm, clamped(1700).springNPerMm)).toBeLessThan(1e-9);
  });

  it("need the load between the supports", () => {
    for (const loadMm of [200, 1700, 100, 1800])
      expect(() => springConstants([0, 1800], [EI, EI], { ...test, loadMm })).toThrow(`loadMm: ${loadMm} mm`);
  });

  it("with a core that shears: ab/(LS) more at the centre, a/S and b/S at the ends (Allen 1969)", () => {
    const xs = [0, 600, 1800];
    const springs = springConstants(xs, [EI, EI, EI], test);
    const S = 40_000;
    const soft = withCoreShear(springs, xs, [S, S, S], test);
    const centre = (800 * 700) / (1500 * S);
    expect(relative(1 / soft.springCentreNPerMm - 1 / springs.springCentreNPerMm, centre)).toBeLessThan(1e-9);
    expect(relative(1 / soft.springForebodyNPerMm - 1 / springs.springForebodyNPerMm, 800 / S)).toBeLessThan(1e-9);
    expect(relative(1 / soft.springAfterbodyNPerMm - 1 / springs.springAfterbodyNPerMm, 700 / S)).toBeLessThan(1e-9);
    expect(soft.balance).toBeCloseTo(soft.springAfterbodyNPerMm / soft.springForebodyNPerMm, 12);
    expect(relative(soft.coreShearPercent, 100 * centre * soft.springCentreNPerMm)).toBeLessThan(1e-9);
    // Half as stiff ahead of 600 mm: 400 of the 800 mm there shear twice.
    const uneven = withCoreShear(springs, [0, 600, 600, 1800], [S / 2, S / 2, S, S], test);
    expect(relative(1 / uneven.springForebodyNPerMm - 1 / springs.springForebodyNPerMm, 1200 / S)).toBeLessThan(1e-9);
  });

  it("leave the core's shear out under 1 % of bending and count it from there; what is rigid does not shear", () => {
    const xs = [0, 1800];
    const springs = springConstants(xs, [EI, EI], test);
    // ab/(LS)·k = 0.01 at this S.
    const atLimit = ((800 * 700) / 1500) * springs.springCentreNPerMm * 100;
    const under = withCoreShear(springs, xs, [atLimit * 1.001, atLimit * 1.001], test);
    expect(under).toMatchObject(springs);
    expect(under.coreShearPercent).toBeCloseTo(100 / 101, 2);
    const over = withCoreShear(springs, xs, [atLimit / 1.001, atLimit / 1.001], test);
    expect(over.springCentreNPerMm).toBeLessThan(springs.springCentreNPerMm * 0.9905);
    const rigid = [Number.POSITIVE_INFINITY, Number.POSITIVE_INFINITY];
    expect(withCoreShear(springs, xs, rigid, test)).toEqual({ ...springs, coreShearPercent: 0 });
  });
});

describe("the shop's bench", () => {
  it("holds at shoulder and heel and presses at the mount line, unless told otherwise", () => {
    expect(springTestOf(build)).toEqual({
      frontSupportMm: 175,
      rearSupportMm: 1780 - 144,
      loadMm: build.mountFromTipMm,
    });
    const springTest = { frontSupportMm: 1, rearSupportMm: 3, loadMm: 2 };
    expect(springTestOf({ ...build, springTest })).toBe(springTest);
  });

  it("bends by b(x − front)/L up to the load and a(rear − x)/L behind it", () => {
    const on = { ...build, springTest: { frontSupportMm: 200, rearSupportMm: 1700, loadMm: 1000 } };
    const moments = [100, 200, 500, 1000, 1350, 1700, 1750].map((x) => benchMomentMm(on, x));
    const by = [0, 0, (700 * 300) / 1500, (700 * 800) / 1500, (800 * 350) / 1500, 0, 0];
    expect(moments).toEqual(by.map((moment) => expect.closeTo(moment, 9)));
  });
});

describe("coreShearDeflectionMm", () => {
  const load = { forceN: 500, spanMm: 1000, widthMm: 80, coreMm: 10, faceDistanceMm: 11, coreShearMpa: 25 };

  it("is F·L·c/(4·G·b·d²) (Allen 1969): 500·1000·10/(4·25·80·121) = 5.1653 mm", () => {
    expect(coreShearDeflectionMm(load)).toBeCloseTo(5.1653, 4);
  });

  it("names what is not above 0", () => {
    for (const name of Object.keys(load))
      expect(() => coreShearDeflectionMm({ ...load, [name]: 0 })).toThrow(`${name}: 0`);
  });
});

describe("cantileverFrequencyHz", () => {
  it("is (1.8751)²/2π·√(EI/mL⁴): 200 N·m², 1 kg/m, 0.5 m ring at 31.655 Hz (by hand: 0.559593·√3200)", () => {
    expect(cantileverFrequencyHz(2e8, 1, 500)).toBeCloseTo(31.6553, 3);
    expect(() => cantileverFrequencyHz(2e8, 0, 500)).toThrow(/massKgPerM: 0/);
  });
});

describe("solveBeam says what is wrong", () => {
  const stations = [0, 1000].map((xMm) => ({ xMm, bendingStiffnessNmm2: EI, torsionalStiffnessNmm2: 0.5 }));
  const good = { stations, support: { kind: "simple", xMm: [0, 1000] }, load: { xMm: 500, forceN: 10 } } as const;
  const clamped = { kind: "clamped", xMm: 1000 } as const;

  it("and takes what lies on the edge", () => {
    expect(solveBeam({ ...good, load: { xMm: 500, forceN: 0 } }).deflectionMm).toBe(0);
    expect(solveBeam({ ...good, support: clamped, load: { xMm: 0, forceN: 1 } }).deflectionMm).toBeCloseTo(
      1000 ** 3 / (3 * EI),
      9,
    );
    // T·L/GJ over the whole of it.
    expect(solveBeam({ ...good, torqueNmm: 2 }).twistRad).toBeCloseTo(4000, 6);
  });

  it.each([
    ["stations: 1 given", { stations: stations.slice(0, 1) }],
    ["stations[1].xMm: 0 mm comes after 1000 mm", { stations: stations.toReversed() }],
    ["stations[0].bendingStiffnessNmm2: 0", { stations: stations.map((s) => ({ ...s, bendingStiffnessNmm2: 0 })) }],
    [
      "stations[0].torsionalStiffnessNmm2",
      { torqueNmm: 1, stations: stations.map((s) => ({ ...s, torsionalStiffnessNmm2: 0 })) },
    ],
    ["support.xMm: -1 mm is off the beam", { support: { kind: "simple", xMm: [-1, 1000] } }],
    ["support.xMm: 1001 mm is off the beam", { support: { kind: "simple", xMm: [0, 1001] } }],
    ["support.xMm: 1001 mm is off the beam", { support: { kind: "clamped", xMm: 1001 } }],
    ["support.xMm: 800 mm must come before 300", { support: { kind: "simple", xMm: [800, 300] } }],
    ["load.xMm: 1000 mm is on a support", { load: { xMm: 1000, forceN: 1 } }],
    ["load.xMm: 1001 mm is off the beam", { load: { xMm: 1001, forceN: 1 } }],
    ["load.xMm: -1 mm is off the beam", { load: { xMm: -1, forceN: 1 } }],
    ["load.forceN: -1 N", { load: { xMm: 500, forceN: -1 } }],
  ] as const)("%s", (message, wrong) => {
    expect(() => solveBeam({ ...good, ...wrong } as Parameters<typeof solveBeam>[0])).toThrow(message);
  });
});

describe("where sections are taken", () => {
  const zone = (fromMountMm: number, toMountMm: number) =>
    ({
      role: "fabric",
      id: "z",
      material: build.sidewall.material,
      thicknessMm: 0.3,
      extent: { kind: "zone", fromMountMm, toMountMm },
    }) as const;
  const plate = {
    material: build.sidewall.material,
    thicknessMm: 1,
    rubberMm: 0,
    lengthMm: 480,
    widthMm: 60,
    centreMm: 990,
  };
  const mount = build.mountFromTipMm;

  it("it changes suddenly at edges, core, plate and zones, and not at what reaches beyond the ski", () => {
    const busy: SkiBuild = { ...build, plate, layers: [...build.layers, zone(-300, 200), zone(-5000, 5000)] };
    // Edge 60 mm longer than the sidecut: 30 beyond shoulder (175) and heel (1636). Wood from 180 to 1660.
    expect(stepPositions(busy).map((x) => Math.round(x * 1e6) / 1e6)).toEqual([
      145,
      1666,
      180,
      1660,
      750,
      1230,
      mount - 300,
      mount + 200,
    ]);
    expect(stepPositions({ ...build, edge: { ...build.edge, lengthMm: 9000 } })).toEqual([
      build.coreFromMm,
      build.coreToMm,
    ]);
  });

  it("a step is a close pair, and shoulder, heel, mount and knots are stations", () => {
    const profile = { stations: [300.5, 801.25].map((xMm) => ({ xMm, thicknessMm: 10 })) };
    const xs = stationPositions(build, profile, 20);
    const has = (x: number) => xs.some((each) => Math.abs(each - x) < 1e-6);
    for (const x of [0, 89, 1780, 175, 1636, mount, 300.5, 801.25, 144.99, 145.01, 1665.99, 1666.01, 179.99, 180.01])
      expect([x, has(x)]).toEqual([x, true]);
    // Eight more an end, spaced by squares of eighths of the first step of 89 mm.
    for (const k of [1, 2, 3, 4, 5, 6, 7]) {
      const x = 89 * (k / 8) ** 2;
      expect([k, has(x), has(1780 - x)]).toEqual([k, true, true]);
    }
    expect(xs).toEqual(xs.toSorted((a, b) => a - b));
    // 21 even ones, 7 more an end, two corners, the mount, two knots and four steps of two.
    expect(xs).toHaveLength(21 + 14 + 2 + 1 + 2 + 8);
  });
});

describe("samples of a ski", () => {
  const flex = evaluateFlex(build, core);
  const samples = samplesOf(build, flex.stations);

  it("share out deflection and mass", () => {
    const sum = (of: (s: (typeof samples)[number]) => number) => samples.reduce((all, one) => all + of(one), 0);
    expect(sum((s) => s.springShare)).toBeCloseTo(1, 12);
    expect(sum((s) => s.massShare)).toBeCloseTo(1, 12);
    const xs = samples.map((s) => s.xMm);
    expect(xs).toEqual(xs.toSorted((a, b) => a - b));
    // A piece is at most 220 mm long, so the centres of two neighbours are less than 440 apart.
    expect(Math.max(...xs.slice(1).map((x, i) => x - (xs[i] ?? 0)))).toBeLessThan(440);
    // Ends outside the supports do not bend, and weigh.
    for (const end of [samples[0], samples.at(-1)]) {
      expect(end?.springShare).toBe(0);
      expect(end?.massShare).toBeGreaterThan(0.01);
    }
    expect(samples[0]?.xMm).toBeCloseTo(145 / 2, 9);
  });

  it("of an even beam follow ∫m² dx: its part from the support to x is (x/a)³·a/L, and its mass is its length", () => {
    const even = evenlySpaced(0, 1780, 1780).map((xMm) => ({
      ...(flex.stations[0] as FlexStation),
      xMm,
      bendingStiffnessNmm2: EI,
      massGPerM: 900,
    }));
    const { frontSupportMm, rearSupportMm, loadMm } = springTestOf(build);
    const ofEven = samplesOf(build, even);
    const [a, b] = [loadMm - frontSupportMm, rearSupportMm - loadMm];
    const part = (x: number) => {
      if (x <= frontSupportMm) return 0;
      if (x >= rearSupportMm) return 1;
      return x <= loadMm
        ? ((x - frontSupportMm) / a) ** 3 * (a / (a + b))
        : 1 - ((rearSupportMm - x) / b) ** 3 * (b / (a + b));
    };
    const cuts = [0, 145, 180];
    const pieces = Math.ceil((1660 - 180) / 220);
    for (let i = 1; i <= pieces; i++) cuts.push(180 + (1480 * i) / pieces);
    cuts.push(1666, 1780);
    expect(ofEven).toHaveLength(cuts.length - 1);
    ofEven.forEach(({ xMm, springShare, massShare }, i) => {
      const [from = 0, to = 0] = [cuts[i], cuts[i + 1]];
      expect(springShare).toBeCloseTo(part(to) - part(from), 2);
      expect(massShare).toBeCloseTo((to - from) / 1780, 2);
      expect(xMm).toBeGreaterThan(from);
      expect(xMm).toBeLessThan(to);
    });
  });
});

describe("a plate on a foil", () => {
  // Ski of 80 × 10 mm, E 10,000, its bottom at z = 0; on it a plate of 60 × 6 mm, E 70,000, whose middle is 2 mm above it.
  const [skiA, plateA] = [10_000 * 80 * 10, 70_000 * 60 * 6];
  const zPlate = 15;
  const plateOwn = (plateA * 6 ** 2) / 12;
  const skiOwn = (skiA * 10 ** 2) / 12;
  const whole = {
    a: skiA + plateA,
    s: skiA * 5 + plateA * zPlate,
    i: skiOwn + skiA * 25 + plateOwn + plateA * zPlate ** 2,
  };
  const plate = (foilNPerMm2: number, fromMiddleMm: number) => ({
    axialN: plateA,
    heightMm: 0,
    foilNPerMm2,
    fromMiddleMm,
    halfLengthMm: 240,
  });
  const apart = skiOwn + plateOwn;
  const bonded = apart + ((skiA * plateA) / (skiA + plateA)) * (zPlate - 5) ** 2;

  it("that gives no hold is two beams side by side; one that gives all is the bonded section, but for its ends", () => {
    expect(relative(partlyBonded(whole, plate(1e-9, 0), zPlate), apart)).toBeLessThan(1e-6);
    expect(relative(partlyBonded(whole, plate(1e9, 0), zPlate), bonded)).toBeLessThan(1e-9);
    expect(relative(partlyBonded(whole, plate(1e9, 240), zPlate), apart)).toBeLessThan(1e-9);
  });

  it("of any softness holds 1 − cosh ωd/cosh ωl of it (Newmark, Siess & Viest 1951, from memory)", () => {
    for (const [foil, d] of [
      [20, 0],
      [20, 150],
      [400, 60],
    ] as const) {
      const omega = Math.sqrt(foil * (1 / skiA + 1 / plateA) * (bonded / apart));
      const held = 1 - Math.cosh(omega * d) / Math.cosh(omega * 240);
      expect(relative(partlyBonded(whole, plate(foil, d), zPlate), apart + (bonded - apart) * held)).toBeLessThan(1e-9);
    }
  });
});

describe("camber pressed on a bench", () => {
  const L = 1400;
  const stations = (e0: number, e1: number) => [
    { xMm: 0, bendingStiffnessNmm2: e0 },
    { xMm: L, bendingStiffnessNmm2: e1 },
  ];
  const arch = (loadMm: number, e0 = EI, e1 = EI) => ({
    stations: stations(e0, e1),
    fromMm: 0,
    toMm: L,
    loadMm,
    restHeightMm: (x: number) => 5 * (1 - ((2 * x) / L - 1) ** 2),
  });

  it.each([
    ["in the middle", 700, EI, EI],
    ["off the middle", 500, EI, EI],
    ["on a beam that grows stiffer", 800, EI, 3 * EI],
    ["on a beam that grows softer", 800, 3 * EI, EI],
  ])("the arch gives way like a beam on two supports, %s", (_where, loadMm, e0, e1) => {
    const beam = arch(loadMm, e0, e1);
    const { springCentreNPerMm } = springConstants([0, L], [e0, e1], { frontSupportMm: 0, rearSupportMm: L, loadMm });
    const force = 0.4 * springCentreNPerMm * 5;
    const { heightMm, standsFromMm, standsToMm } = pressedCamber(beam, force);
    // The bench gives way by less than a hundredth of the deflection.
    expect(Math.abs(heightMm - (beam.restHeightMm(loadMm) - force / springCentreNPerMm))).toBeLessThan(0.005 * 2);
    expect([standsFromMm, standsToMm]).toEqual([0, L]);
  });

  it("is flat under more than it can bear, and stands right at the load", () => {
    const closing = (48 * EI * 5) / L ** 3;
    const { heightMm, standsFromMm, standsToMm } = pressedCamber(arch(700), 5 * closing);
    expect(heightMm).toBe(0);
    expect([standsFromMm, standsToMm]).toEqual([700, 700]);
    expect(pressedCamber(arch(700), 0).heightMm).toBeCloseTo(5, 9);
  });

  it("of a flat ski takes no force to close, and one above 0.002 mm some", () => {
    const flat = { ...build, shape: { ...build.shape, camberMm: 0.002 } };
    const flex = evaluateFlex(build, core);
    expect(closingForceN(flat, flex)).toBe(0);
    const small = closingForceN({ ...build, shape: { ...build.shape, camberMm: 1 } }, flex);
    const large = closingForceN({ ...build, shape: { ...build.shape, camberMm: 4 } }, flex);
    // One shape at another height: forces grow with it (small deflections), but for the 0.01 mm where it counts as closed.
    expect(large / small).toBeGreaterThan(3.9);
    expect(large / small).toBeLessThan(4.2);
  });
});

describe("a plate that reaches over the spacer", () => {
  it("has spacer beside it, as wide as the ski less the plate (grams per metre by hand)", () => {
    const spacer = { ...build.sidewall.material, label: "spacer", densityKgM3: 500 };
    const material = { ...build.sidewall.material, label: "plate", densityKgM3: 2800 };
    // 100 mm before the wood begins at 180 mm the ski is wider than the plate's 40 mm.
    const plate = { material, thicknessMm: 2, rubberMm: 0, lengthMm: 300, widthMm: 40, centreMm: 170 };
    const at = 150;
    const section = localSection(
      { ...build, layers: build.layers.filter((each) => each.role === "core"), plate, spacer },
      at,
    );
    const widthMm = 2 * halfWidthAt(build.shape, at);
    expect(section.above.massGPerM).toBeCloseTo((2 * (40 * 2800 + (widthMm - 40) * 500)) / 1000, 6);
    expect(section.core.densityWidth).toBeCloseTo(widthMm * 500, 6);
    expect(section.pocketMm).toBe(2);
  });
});

describe("what a ski does as a whole", () => {
  const station = (xMm: number, change: Partial<FlexStation> = {}): FlexStation => ({
    xMm,
    widthMm: 100,
    coreMm: 10,
    thicknessMm: 12,
    bendingStiffnessNmm2: EI,
    torsionalStiffnessNmm2: 1e8,
    neutralAxisMm: 6,
    massGPerM: 900,
    ...change,
  });

  it("rings the same wherever its x begins and however it is cut", () => {
    const at = (from: number, pieces: number) =>
      freeFreeFrequencies(
        evenlySpaced(from, from + 1500, pieces).map((x) =>
          station(x, { bendingStiffnessNmm2: EI * (1 + (x - from) / 1500) }),
        ),
      );
    const one = at(0, 3);
    for (const other of [at(500, 3), at(0, 40), at(0, 1)]) {
      expect(relative(other.bendingHz, one.bendingHz)).toBeLessThan(1e-6);
      expect(relative(other.torsionHz, one.torsionHz)).toBeLessThan(1e-6);
    }
  });

  it("rings lower with more mass: by √(mass of its stations over its whole mass)", () => {
    const flex = evaluateFlex(build, core);
    const plain = skiBehaviour(build, flex);
    const heavy = skiBehaviour(build, { ...flex, massKg: 4 * flex.massKg });
    expect(heavy.bendingHz / plain.bendingHz).toBeCloseTo(0.5, 12);
    expect(heavy.torsionHz / plain.torsionHz).toBeCloseTo(0.5, 12);
    expect(heavy.polarMomentKgM2 / plain.polarMomentKgM2).toBeCloseTo(4, 12);
  });

  it("twists by L/GJ: 100 N·m² over 0.8 m is 2.1817 N·m a degree ahead of the load, over 0.7 m 2.4933 behind", () => {
    const springTest = { frontSupportMm: 200, rearSupportMm: 1700, loadMm: 1000 };
    const flex = { ...evaluateFlex(build, core), stations: evenlySpaced(0, 1780, 7).map((x) => station(x)) };
    const whole = skiBehaviour({ ...build, springTest }, flex);
    expect(whole.twistForebodyNmPerDeg).toBeCloseTo((100 / 0.8) * (Math.PI / 180), 9);
    expect(whole.twistAfterbodyNmPerDeg).toBeCloseTo((100 / 0.7) * (Math.PI / 180), 9);
  });

  it("twist adds up along the ski, whatever lies outside", () => {
    const shaft = [0, 300, 300, 900, 1400].map((x, i) =>
      station(x, { torsionalStiffnessNmm2: 1e7 * ([1, 4, 6, 6, 3][i] ?? 0) }),
    );
    const whole = twistPerNmm(shaft, 0, 1400);
    for (const cut of [150, 300, 650, 900, 1399])
      expect(relative(twistPerNmm(shaft, 0, cut) + twistPerNmm(shaft, cut, 1400), whole)).toBeLessThan(1e-12);
    expect(twistPerNmm(shaft, 400, 800)).toBeCloseTo(400 / 6e7, 14);
  });

  it("weighs and balances as its stations do (trapezia by hand)", () => {
    const flex = evaluateFlex({ ...build, extraMassG: 100 }, core);
    const along = (f: (x: number) => number) =>
      flex.stations.slice(1).reduce((sum, right, i) => {
        const left = flex.stations[i] as FlexStation;
        const m = (x: number) =>
          left.massGPerM + ((right.massGPerM - left.massGPerM) * (x - left.xMm)) / (right.xMm - left.xMm);
        return sum + integrate((x) => m(x) * f(x), left.xMm, right.xMm);
      }, 0) / 1000;
    expect(flex.massKg).toBeCloseTo((along(() => 1) + 100) / 1000, 9);
    expect(flex.balancePointMm).toBeCloseTo(along((x) => x) / along(() => 1), 6);
  });
});

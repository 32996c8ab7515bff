/** The parts of learning, by hand: what is unknown, what was read, how well it agrees, and slopes against differences. */
import { describe, expect, it } from "vitest";
import { type CalibrationSettings, calibrate, type MeasuredSki, predictSki, type Residual } from "#engine/calibration";
import type { Corrections, MaterialLibrary } from "#engine/materials";
import { correctionsOf, factorOf, unknownsOf } from "#lib/engine/calibration/factors";
import { predictBuilt, programmedCore } from "#lib/engine/calibration/predict-ski";
import { prepare } from "#lib/engine/calibration/prepare";
import { materialsIn } from "#lib/engine/calibration/present-materials";
import { qualityOf } from "#lib/engine/calibration/quality";
import { readingSd, readingsOf } from "#lib/engine/calibration/readings";
import { specOf } from "../demo-catalog";
import { nominal, settings } from "./simulated-shop";

const source = "by hand";
const library: MaterialLibrary = {
  woods: [
    { id: "w", label: "W", bendingModulusMpa: 1, densityKgM3: 1, modulusToShearRatio: 16, modulusVariation: 0, source },
  ],
  fabrics: [
    {
      id: "f",
      fibresDeg: [0, 90],
      label: "F",
      arealWeightGM2: 1,
      thicknessMm: 1,
      exMpa: 1,
      eyMpa: 1,
      gxyMpa: 1,
      nuXy: 0,
      densityKgM3: 1,
      isOpaque: false,
      source,
    },
  ],
  sheets: [{ id: "s", label: "S", modulusMpa: 1, shearModulusMpa: 1, densityKgM3: 1, isOpaque: false, source }],
};
const spec = specOf();
const ski = (measured: MeasuredSki["measured"], id = "A-L"): MeasuredSki => ({
  id,
  pair: id.slice(0, 1),
  side: "L",
  spec,
  measured,
});

describe("unknowns", () => {
  it("are a modulus and a density for each material, then the mill's and the camber's offset and all twist", () => {
    const priorSd: CalibrationSettings["priorSd"] = {
      modulus: 0.1,
      density: 0.2,
      sheet: 0.3,
      coreOffsetMm: 0.4,
      camberOffsetMm: 0.5,
      twist: 0.6,
    };
    expect(unknownsOf(library, { ...settings, priorSd })).toEqual([
      { kind: "modulus", material: "w", priorSd: 0.1 },
      { kind: "modulus", material: "f", priorSd: 0.1 },
      { kind: "modulus", material: "s", priorSd: 0.3 },
      { kind: "density", material: "w", priorSd: 0.2 },
      { kind: "density", material: "f", priorSd: 0.2 },
      { kind: "density", material: "s", priorSd: 0.3 },
      { kind: "core-offset", priorSd: 0.4 },
      { kind: "camber-offset", priorSd: 0.5 },
      { kind: "twist", priorSd: 0.6 },
    ]);
    const { sheet: _as, ...alike } = priorSd;
    expect(unknownsOf(library, { ...settings, priorSd: alike }).filter((each) => each.material === "s")).toMatchObject([
      { priorSd: 0.1 },
      { priorSd: 0.2 },
    ]);
  });

  it("become a book: logarithms are raised, offsets stay millimetres", () => {
    const unknowns = unknownsOf(library, settings);
    expect(
      correctionsOf(unknowns, [Math.log(1.1), 0, Math.log(0.9), 0, Math.log(2), 0, 0.3, -0.4, Math.log(0.96)], "B"),
    ).toEqual({
      version: "B",
      moduli: { w: expect.closeTo(1.1, 12), f: 1, s: expect.closeTo(0.9, 12) },
      densities: { w: 1, f: expect.closeTo(2, 12), s: 1 },
      coreOffsetMm: 0.3,
      camberOffsetMm: -0.4,
      twist: expect.closeTo(0.96, 12),
    });
  });

  it("are told as factors with their own deviation, and how much was learnt: 1 − (sd/prior)²", () => {
    expect(factorOf({ kind: "density", material: "w", priorSd: 0.1 }, Math.log(2), 0.05)).toEqual({
      kind: "density",
      material: "w",
      value: expect.closeTo(2, 12),
      sd: expect.closeTo(0.1, 12),
      learnt: expect.closeTo(0.75, 12),
    });
    expect(factorOf({ kind: "core-offset", priorSd: 0.1 }, 0.08, 0.02)).toEqual({
      kind: "core-offset",
      value: 0.08,
      sd: 0.02,
      learnt: expect.closeTo(0.96, 12),
    });
    expect(factorOf({ kind: "camber-offset", priorSd: 0.1 }, 0, 0.2).learnt).toBe(0);
  });
});

describe("readings", () => {
  it("are those there are, ski by ski, marked where they were left out", () => {
    const found = readingsOf(
      [ski({ massKg: 2, springCentreNPerMm: 3 }), ski({ camberMm: 4 }, "B-L")],
      [
        { skiId: "A-L", measure: "massKg", reason: "r" },
        { skiId: "B-L", measure: "massKg", reason: "r" },
      ],
    );
    expect(found.map(({ ski: of, measure, measured, leftOut }) => [of.id, measure, measured, leftOut])).toEqual([
      ["A-L", "massKg", 2, true],
      ["A-L", "springCentreNPerMm", 3, false],
      ["B-L", "camberMm", 4, false],
    ]);
    expect(() => readingsOf([ski({ massKg: Number.NaN })], [])).toThrow("A-L.massKg: NaN");
  });

  it("are trusted to a share of what was computed, camber to millimetres", () => {
    const springs = { springCentreNPerMm: 3, springForebodyNPerMm: 5, springAfterbodyNPerMm: 7 };
    const before = { massKg: 2, camberMm: 4, ...springs, twistNmPerDeg: 2.5 };
    const readingSds = { ...settings, readingSd: { mass: 0.01, spring: 0.02, camberMm: 0.3, twist: 0.04 } };
    const sd = (measure: keyof typeof before) => readingSd(measure, before, readingSds);
    expect([
      sd("massKg"),
      sd("camberMm"),
      sd("springCentreNPerMm"),
      sd("springForebodyNPerMm"),
      sd("springAfterbodyNPerMm"),
      sd("twistNmPerDeg"),
    ]).toEqual([0.02, 0.3, 0.06, 0.1, 0.14, 0.1]);
  });

  it("agree by mean and root mean square: 2 % and −1 % off are 0.5 % and √2.5 %", () => {
    const residual = (change: Partial<Residual>): Residual => ({
      skiId: "A",
      pair: "A",
      measure: "massKg",
      measured: 102,
      predictedBefore: 100,
      predictedAfter: 102,
      studentised: 0,
      leftOut: false,
      ...change,
    });
    const camber = residual({ measure: "camberMm", measured: 5, predictedBefore: 4, predictedAfter: 6 });
    expect(
      qualityOf([
        residual({}),
        residual({ measured: 99, predictedAfter: 100 }),
        residual({ measured: 500, leftOut: true }),
        camber,
      ]),
    ).toEqual([
      {
        measure: "massKg",
        readings: 2,
        biasBefore: expect.closeTo(0.5, 12),
        rmsBefore: expect.closeTo(Math.sqrt(2.5), 12),
        biasAfter: expect.closeTo(-0.5, 12),
        rmsAfter: expect.closeTo(Math.SQRT1_2, 12),
      },
      { measure: "camberMm", readings: 1, biasBefore: 1, rmsBefore: 1, biasAfter: -1, rmsAfter: 1 },
    ]);
    expect(qualityOf([])).toEqual([]);
  });
});

describe("what a fit rests on", () => {
  it("knows every material of the finished ski, plate, foil, mat, spacers, edge and rubber included", () => {
    const found = materialsIn(specOf({ reinforcements: ["metal-pair", "flax"] }), nominal);
    if (!found.ok) throw new Error("no such spec");
    const { rules } = nominal;
    for (const id of [
      "aspen",
      "ash",
      "triax-750",
      rules.mat.fabric,
      rules.plate.material,
      rules.plate.rubber,
      rules.spacers.material,
      rules.sidewall.material,
      rules.edge.material,
      rules.edgeRubber.material,
      "aluminium",
      "flax-biax-300",
      "base",
      "topsheet",
    ])
      expect([id, found.value.has(id)]).toEqual([id, true]);
    for (const id of ["paulownia", "carbon-ud-300"]) expect(found.value.has(id)).toBe(false);
    expect(materialsIn({ ...specOf(), core: "x" }, nominal)).toMatchObject({ ok: false });
  });

  it("slopes are those of the predictions: a central difference of half a per cent agrees within 3 %", () => {
    const one = ski({ massKg: 2 });
    const { unknowns, prepared } = prepare([one], nominal, settings);
    const { programme, slopes, before } = prepared.get(one) ?? expect.fail("not prepared");
    const exact = programmedCore(one, nominal);
    expect(exact.ok && exact.value).toEqual(programme);
    const none: Corrections = { version: "t", moduli: {}, densities: {}, coreOffsetMm: 0, camberOffsetMm: 0 };
    const at = (book: Partial<Corrections>) => {
      const found = predictBuilt(one, programme, { ...nominal, corrections: { ...none, ...book } });
      return found.ok ? found.value : expect.fail("not built");
    };
    const whole = predictSki(one, nominal);
    expect(whole.ok && whole.value).toEqual(before);
    const check = (
      i: number,
      measure: "massKg" | "springCentreNPerMm" | "springForebodyNPerMm" | "camberMm" | "twistNmPerDeg",
      up: Partial<Corrections>,
      down: Partial<Corrections>,
      step: number,
    ) => {
      const slope = (at(up)[measure] - at(down)[measure]) / (2 * step);
      expect(Math.abs((slopes[measure][i] ?? 0) / slope - 1)).toBeLessThan(0.03);
    };
    unknowns.forEach(({ kind, material = "" }, i) => {
      const h = 0.005;
      const both = (key: "moduli" | "densities") =>
        [{ [key]: { [material]: Math.exp(h) } }, { [key]: { [material]: Math.exp(-h) } }] as const;
      if (kind === "modulus") {
        check(i, "springCentreNPerMm", ...both("moduli"), h);
        expect([slopes.massKg[i], slopes.camberMm[i]]).toEqual([0, 0]);
      }
      if (kind === "twist") {
        check(i, "twistNmPerDeg", { twist: Math.exp(h) }, { twist: Math.exp(-h) }, h);
        expect([slopes.springCentreNPerMm[i], slopes.massKg[i], slopes.camberMm[i]]).toEqual([0, 0, 0]);
      }
      if (kind === "density") {
        check(i, "massKg", ...both("densities"), h);
        expect([slopes.springCentreNPerMm[i], slopes.camberMm[i]]).toEqual([0, 0]);
      }
      if (kind === "core-offset") {
        check(i, "springForebodyNPerMm", { coreOffsetMm: 0.01 }, { coreOffsetMm: -0.01 }, 0.01);
        check(i, "massKg", { coreOffsetMm: 0.01 }, { coreOffsetMm: -0.01 }, 0.01);
        expect(slopes.camberMm[i]).toBe(0);
      }
      if (kind === "camber-offset")
        expect([slopes.camberMm[i], slopes.massKg[i], slopes.springCentreNPerMm[i]]).toEqual([1, 0, 0]);
    });
    // Materials that no ski of these holds are no unknowns.
    expect(unknowns.some((each) => each.material === "paulownia")).toBe(false);
    expect(unknowns.map((each) => each.kind)).toContain("camber-offset");
  });

  it("one reading of camber alone moves the camber's offset by its share: y·σ0²/(σ0² + σ²), once", () => {
    const predicted = predictSki({ spec }, nominal);
    if (!predicted.ok) throw new Error("no such spec");
    const fit = calibrate([ski({ camberMm: predicted.value.camberMm + 1 })], nominal, settings, [], "B");
    const [sd0, sd] = [settings.priorSd.camberOffsetMm, settings.readingSd.camberMm];
    expect(fit.corrections.camberOffsetMm).toBeCloseTo(sd0 ** 2 / (sd0 ** 2 + sd ** 2), 9);
    expect(fit.corrections.differenceLeft).toBeUndefined();
    expect(fit.residuals).toMatchObject([
      {
        skiId: "A-L",
        pair: "A",
        measure: "camberMm",
        predictedBefore: predicted.value.camberMm,
        predictedAfter: expect.closeTo(predicted.value.camberMm + fit.corrections.camberOffsetMm, 9),
      },
    ]);
    expect(() =>
      calibrate([{ ...ski({ massKg: 1 }), spec: { ...spec, core: "x" } }], nominal, settings, [], "B"),
    ).toThrow(/A-L/);
  });
});

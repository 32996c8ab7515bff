/** What materials refuse, and the ends of their formulas. Limits are the definitions' own; values by hand. */

import { describe, expect, it } from "vitest";
import {
  atGrainAngle,
  atMoisture,
  axialModulusMpa,
  benchModulusMpa,
  coreVariation,
  curedThicknessMm,
  fibreVolume,
  fibreWeight,
  halpinTsai,
  inParallel,
  inSeries,
  isotropicShear,
  laminateDensityKgM3,
  resinGM2,
  shearCorrection,
  woodDensityKgM3,
} from "#engine/handbook";
import { type Corrections, correctedLibrary, type MaterialLibrary } from "#engine/materials";

const both = { fibreKgM3: 2500, matrixKgM3: 1250 };
const property = { at12: 12, green: 9 };
const reading = { forceN: 100, spanMm: 1000, widthMm: 20, heightMm: 10, deflectionMm: 5 };

describe("refusals name what is wrong", () => {
  it.each<[string, () => unknown]>([
    ["arealWeightGM2: 0", () => curedThicknessMm(0, 2600, 0.5)],
    ["fibreDensityKgM3: 0", () => curedThicknessMm(450, 0, 0.5)],
    ["fibreVolume: 0", () => curedThicknessMm(450, 2600, 0)],
    ["fibreVolume: 1", () => laminateDensityKgM3(1, both)],
    ["fibreVolume: 0", () => laminateDensityKgM3(0, both)],
    ["matrixKgM3: 0", () => laminateDensityKgM3(0.5, { ...both, matrixKgM3: 0 })],
    ["fibreKgM3: Infinity", () => laminateDensityKgM3(0.5, { ...both, fibreKgM3: Number.POSITIVE_INFINITY })],
    ["fibreWeightFraction: 0", () => fibreVolume(0, both)],
    ["fibreWeightFraction: 1", () => fibreVolume(1, both)],
    ["fibreKgM3: 0", () => fibreVolume(0.5, { ...both, fibreKgM3: 0 })],
    ["fibreVolume: 1", () => inParallel(70, 3, 1)],
    ["fibreVolume: 0", () => inSeries(70, 3, 0)],
    ["matrix: 0", () => inSeries(70, 0, 0.5)],
    ["fibre: 0", () => inSeries(0, 3, 0.5)],
    ["xi: 0", () => halpinTsai(70, 3, 0.5, 0)],
    ["fibreVolume: 1", () => halpinTsai(70, 3, 1, 2)],
    ["matrix: -1", () => halpinTsai(70, -1, 0.5, 2)],
    ["specificGravity: 0", () => woodDensityKgM3(0, 12)],
    ["moisturePercent: -1", () => woodDensityKgM3(0.5, -1)],
    ["at12: 0", () => atMoisture({ ...property, at12: 0 }, 12)],
    ["green: 0", () => atMoisture({ ...property, green: 0 }, 12)],
    ["intersectionPercent: 12", () => atMoisture(property, 12, 12)],
    ["moisturePercent: -0.1", () => atMoisture(property, -0.1)],
    ["moisturePercent: 25.1", () => atMoisture(property, 25.1)],
    ["along: 0", () => atGrainAngle({ along: 0, across: 1 }, 0)],
    ["across: 0", () => atGrainAngle({ along: 1, across: 0 }, 0)],
    ["angleDeg: -1", () => atGrainAngle({ along: 2, across: 1 }, -1)],
    ["angleDeg: 90.1", () => atGrainAngle({ along: 2, across: 1 }, 90.1)],
    ["bendingModulusMpa: 0", () => axialModulusMpa(0, 1.1)],
    ["factor: 0.99", () => axialModulusMpa(10, 0.99)],
    ["spanToDepth: 0", () => shearCorrection(0, 16)],
    ["modulusToShearRatio: -1", () => shearCorrection(14, -1)],
    ["stripVariation: -0.1", () => coreVariation(-0.1, 4)],
    ["strips: 0", () => coreVariation(0.1, 0)],
    ["strips: 1.5", () => coreVariation(0.1, 1.5)],
    ...Object.keys(reading).map((name): [string, () => unknown] => [
      `${name}: 0`,
      () => benchModulusMpa({ ...reading, [name]: 0 }),
    ]),
    ["spanMm: Infinity", () => benchModulusMpa({ ...reading, spanMm: Number.POSITIVE_INFINITY })],
  ])("%s", (message, act) => {
    expect(act).toThrow(RangeError);
    expect(act).toThrow(message);
  });
});

describe("at the ends", () => {
  it("what lies on the edge is taken", () => {
    expect(woodDensityKgM3(0.5, 0)).toBe(500);
    expect(atMoisture(property, 0, 24)).toBeCloseTo(12 * (12 / 9) ** 1, 12);
    expect(atMoisture(property, 24, 24)).toBeCloseTo(9, 12);
    expect(axialModulusMpa(10, 1)).toBe(10);
    expect(shearCorrection(14, 0)).toBe(1);
    expect(coreVariation(0, 1)).toBe(0);
    expect(coreVariation(0.2, 4)).toBe(0.1);
    // P·L³/(4·b·h³·δ) = 100·1e9/(4·20·1000·5).
    expect(benchModulusMpa(reading)).toBe(250_000);
  });

  it("a ply of half fibre by volume: 0.5·2500 + 0.5·1250 = 1875 kg/m³, two thirds of it fibre", () => {
    expect(laminateDensityKgM3(0.5, both)).toBe(1875);
    expect(laminateDensityKgM3(0.2, both)).toBe(1500);
    expect(fibreWeight(0.5, both)).toBeCloseTo(2 / 3, 12);
    expect(fibreVolume(2 / 3, both)).toBeCloseTo(0.5, 12);
    expect(curedThicknessMm(500, 2500, 0.5)).toBe(0.4);
    // 0.4 mm · 0.5 · 1250 kg/m³.
    expect(resinGM2(500, 0.5, both)).toBe(250);
    expect(resinGM2(500, 0.8, both)).toBeCloseTo(0.25 * 0.2 * 1250, 12);
  });

  it("mixtures by hand: 70 and 3 at 0.4 are 29.8 side by side, 4.8611 one behind the other", () => {
    expect(inParallel(70, 3, 0.4)).toBeCloseTo(29.8, 12);
    expect(inSeries(70, 3, 0.4)).toBeCloseTo(1 / (0.4 / 70 + 0.6 / 3), 12);
    // η = (70/3 − 1)/(70/3 + 2) = 0.881579; 3·(1 + 2·0.881579·0.4)/(1 − 0.881579·0.4).
    expect(halpinTsai(70, 3, 0.4, 2)).toBeCloseTo((3 * (1 + 0.8 * 0.881579)) / (1 - 0.4 * 0.881579), 4);
    expect(isotropicShear(70, 0.3)).toBeCloseTo(26.923, 3);
  });

  it("equal fibre and matrix are themselves, however they are mixed", () => {
    for (const mix of [inParallel, inSeries]) expect(mix(5, 5, 0.3)).toBeCloseTo(5, 12);
    expect(halpinTsai(5, 5, 0.3, 2)).toBeCloseTo(5, 12);
  });
});

describe("a book of corrections", () => {
  const source = "by hand";
  const library: MaterialLibrary = {
    woods: [
      {
        id: "w",
        label: "W",
        bendingModulusMpa: 10,
        densityKgM3: 100,
        modulusToShearRatio: 16,
        modulusVariation: 0.2,
        source,
      },
    ],
    fabrics: [
      {
        id: "f",
        fibresDeg: [0, 90],
        label: "F",
        arealWeightGM2: 1,
        thicknessMm: 2,
        exMpa: 3,
        eyMpa: 4,
        gxyMpa: 5,
        nuXy: 0.1,
        densityKgM3: 6,
        isOpaque: true,
        source,
      },
    ],
    sheets: [{ id: "s", label: "S", modulusMpa: 7, shearModulusMpa: 8, densityKgM3: 9, isOpaque: false, source }],
  };
  const book = (moduli: Record<string, number>, densities: Record<string, number>): Corrections => ({
    version: "B",
    moduli,
    densities,
    coreOffsetMm: 0,
    camberOffsetMm: 0,
  });

  it("multiplies moduli and densities of the materials it names, and nothing else of them", () => {
    const learnt = correctedLibrary(library, book({ w: 2, f: 3, s: 4 }, { w: 5, f: 6, s: 7 }));
    expect(learnt).toEqual({
      woods: [{ ...library.woods[0], bendingModulusMpa: 20, densityKgM3: 500 }],
      fabrics: [{ ...library.fabrics[0], exMpa: 9, eyMpa: 12, gxyMpa: 15, densityKgM3: 36 }],
      sheets: [{ ...library.sheets[0], modulusMpa: 28, shearModulusMpa: 32, densityKgM3: 63 }],
    });
  });

  it("leaves what it does not name as it is", () => {
    expect(correctedLibrary(library, book({}, {}))).toEqual(library);
    expect(correctedLibrary(library, book({ other: 2 }, { w: 2 })).woods[0]).toEqual({
      ...library.woods[0],
      densityKgM3: 200,
    });
  });
});

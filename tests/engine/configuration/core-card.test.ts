/** What a core card tells the maker: the wood's mass, the pocket, the class on the bench, the mirror of the print. */
import { describe, expect, it } from "vitest";
import {
  benchClass,
  coreMassG,
  isPaperMirrored,
  milledPocket,
  mouldCamberMm,
  stripPlaces,
} from "#engine/configuration";
import type { PlatePocket } from "#engine/flex";
import { facts } from "../../papers/sample";

const { build, core, flex, flexWithPlate } = facts.solved;
const { rules } = facts.catalog;
const play = { ...rules.plate, pocketPlanMm: 1, pocketClearanceMm: 0.1 };

/** Straight sides 100 mm apart, walls of 7 mm: 86 mm of wood, 10 mm thick from 180 to 1660 mm. */
const plank = {
  ...build,
  shape: {
    ...build.shape,
    shoulderWidthMm: 100,
    waistWidthMm: 100,
    heelWidthMm: 100,
    tipLengthMm: 0,
    tailLengthMm: 0,
    sidecutRadiusMm: 1e9,
  },
  columns: build.columns.map((column) => ({ ...column, densityKgM3: 500 })),
};
const level = {
  stations: [
    { xMm: 0, thicknessMm: 10 },
    { xMm: 1780, thicknessMm: 10 },
  ],
};
const { plate, ...bare } = plank;
const given: PlatePocket = { ...(plate as PlatePocket), lengthMm: 480, widthMm: 77, thicknessMm: 0.5, rubberMm: 0.15 };

describe("the wood of a core", () => {
  it("weighs its volume times its density", () => {
    // 86 × 10 × 1480 mm³ at 500 kg/m³ are 636.4 g.
    expect(coreMassG(bare, level, rules)).toBeCloseTo(636.4, 1);
  });

  it("loses the plate's own room", () => {
    // 480 × 77 × (0.5 + 0.15 + 0.1) mm³ at 500 kg/m³ are 13.86 g; slices of 3.7 mm end within one of the plate's ends.
    const lost = 636.4 - coreMassG({ ...bare, plate: given }, level, { plate: play });
    expect(lost).toBeGreaterThan(13.86 * (1 - 4 / 480));
    expect(lost).toBeLessThan(13.86 * (1 + 4 / 480));
  });

  it("is weighed by what the bench measured of its strips", () => {
    // The centre strip takes 17.4 of the 86 mm; its two readings mean 600 kg/m³, the unmeasured one counts nothing.
    const strips = [580, 620, null].map((densityKgM3) => ({ position: "C" as const, densityKgM3 }));
    expect(coreMassG(bare, level, rules, strips)).toBeCloseTo(636.4 + (17.4 * 10 * 1480 * 100) / 1e6, 1);
  });

  it("has seven places, the centre once and the others on both sides alike", () => {
    const half = stripPlaces.slice(0, 3).map(({ position }) => position);
    expect(stripPlaces[3]).toEqual({ position: "C", place: "centre" });
    expect(stripPlaces.slice(4).map(({ position }) => position)).toEqual([...half].reverse());
  });
});

describe("the pocket", () => {
  it("has play around the plate, and room under it for foil and clearance", () => {
    expect(milledPocket({ ...given, centreMm: 955 }, { plate: play })).toEqual({
      fromMm: 955 - 241,
      toMm: 955 + 241,
      widthMm: 79,
      depthMm: 0.75,
    });
  });
});

describe("a class on the bench", () => {
  it("scales the bare ski by the ratio and adds what the plate adds", () => {
    // Bare 4 N/mm at k = 1, plate adds 0.5: k 0.9 reads 4.1, k 1.1 reads 4.9.
    const solved = {
      core: { ...core, achievedRatio: 1 },
      flex: { ...flex, springCentreNPerMm: 4 },
      flexWithPlate: { ...flexWithPlate, springCentreNPerMm: 4.5 },
    };
    const { fromNPerMm, belowNPerMm } = benchClass({ number: 3, label: "", from: 0.9, below: 1.1 }, solved);
    expect(fromNPerMm).toBeCloseTo(4.1, 12);
    expect(belowNPerMm).toBeCloseTo(4.9, 12);
  });
});

describe("the mould and the print", () => {
  it("gives the mould what the ski springs back, less what measured pairs came out too high", () => {
    expect(mouldCamberMm({ camberMm: 4 }, { springBackMm: 1.5 })).toBe(5.5);
    expect(mouldCamberMm({ camberMm: 4 }, { springBackMm: 1.5 }, { camberOffsetMm: 0.5 })).toBe(5);
  });

  it("mirrors the paper for a print that is seen from its own side", () => {
    expect(isPaperMirrored("top")).toBe(true);
    expect(isPaperMirrored("under")).toBe(false);
  });
});

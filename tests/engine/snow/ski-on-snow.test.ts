/** A whole ski on snow: against a chain of bars (tests/support/bar-chain.ts), its own balance, and what must follow from what. */
import { describe, expect, it } from "vitest";
import { halfWidthAt, profileHeightMm } from "#engine/geometry";
import { carvedRadiusM } from "#engine/handbook";
import { type SkiOnSnowInput, skiOnSnow } from "#engine/snow";
import { radians } from "#engine/units";
import { straightSkiShape } from "../../checks/straight-ski";
import { chainOnSnow } from "../../support/bar-chain";
import { catalog, solved, specOf } from "../demo-catalog";

const PACKED = 0.05;
const HARD = 1;
const WEIGHT = 84 * 9.80665;

function skiOf(model: string, flexRatio = 1) {
  const { build, flexWithPlate } = solved(specOf({ model, flexRatio }));
  const stations = flexWithPlate.stations.map(({ xMm, bendingStiffnessNmm2 }) => ({ xMm, bendingStiffnessNmm2 }));
  return { shape: build.shape, stations, mountMm: build.mountFromTipMm, bootSoleMm: 310 };
}

function inputOf(model: string, deg: number, hardnessNPerMm3 = PACKED, flexRatio = 1): SkiOnSnowInput {
  return { ...skiOf(model, flexRatio), weightN: WEIGHT, bed: { hardnessNPerMm3 }, edgeAngle: radians(deg) };
}

const models = catalog.build.models.map((each) => each.id);

/** Linear between stations, straight from the list. */
function stiffnessAt({ stations }: SkiOnSnowInput, xMm: number): number {
  const i = Math.max(
    1,
    stations.findIndex((each) => each.xMm >= xMm),
  );
  const [left, right] = [stations[i - 1], stations[i]];
  if (!left || !right) return stations.at(-1)?.bendingStiffnessNmm2 ?? 0;
  const share = right.xMm === left.xMm ? 0 : (xMm - left.xMm) / (right.xMm - left.xMm);
  return left.bendingStiffnessNmm2 + share * (right.bendingStiffnessNmm2 - left.bendingStiffnessNmm2);
}

describe("a ski on snow", () => {
  it.each([
    ["midlow-95", 0, PACKED],
    ["midlow-95", 45, PACKED],
    ["kerfline-68", 60, HARD],
    ["drifthold-117", 30, 0.005],
  ])("%s at %i° bends as a chain of bars does (hardness %d)", (model, deg, hardness) => {
    const input = inputOf(model, deg, hardness);
    const { shape, mountMm, bootSoleMm } = input;
    const found = skiOnSnow(input);
    const widest = Math.max(shape.shoulderWidthMm, shape.heelWidthMm) / 2;
    const theta = (deg * Math.PI) / 180;
    const bars = 300;
    const h = shape.lengthMm / bars;
    // The sole covers its joints by so much of their own stretch that the whole force is on the chain.
    const covered = (x: number) =>
      Math.max(0, Math.min(x + h / 2, mountMm + bootSoleMm / 2) - Math.max(x - h / 2, mountMm - bootSoleMm / 2)) / h;
    const chain = chainOnSnow(
      {
        fromMm: 0,
        toMm: shape.lengthMm,
        bendingStiffnessNmm2: (x) => stiffnessAt(input, x),
        loadNPerMm: (x) => (covered(x) * WEIGHT) / Math.cos(theta) / bootSoleMm,
        gapMm: (x) =>
          profileHeightMm(shape, Math.min(x, shape.lengthMm), "free") +
          (widest - halfWidthAt(shape, Math.min(x, shape.lengthMm))) * Math.tan(theta),
        widthMm: (x) => 2 * halfWidthAt(shape, Math.min(x, shape.lengthMm)),
        hardnessNPerMm3: hardness,
        edgeAngleRad: theta,
      },
      bars,
    );
    const deepest = Math.max(...chain.map((each) => each.depthMm));
    expect(Math.abs(found.sinkMm / deepest - 1)).toBeLessThan(0.02);
    const peak = Math.max(...chain.map((each) => each.pressureNPerMm));
    expect(Math.abs(found.peakNPerMm / peak - 1)).toBeLessThan(0.02);
    for (const { xMm, downMm, pressureNPerMm } of chain) {
      const i = found.stations.findIndex((each) => each.xMm >= xMm - 1e-9);
      const station = found.stations[i];
      if (!station || Math.abs(station.xMm - xMm) > 1e-6) continue;
      expect(Math.abs(station.downMm - downMm), `down at ${xMm}`).toBeLessThan(0.25);
      expect(Math.abs(station.pressureNPerMm - pressureNPerMm), `pressure at ${xMm}`).toBeLessThan(0.03 * peak);
    }
  });

  it("is in balance on every model, snow and angle: all of the load is carried, under the boot's middle", () => {
    for (const model of models)
      for (const hardness of [0.005, HARD])
        for (const deg of [0, 3, 45]) {
          const input = inputOf(model, deg, hardness);
          const found = skiOnSnow(input);
          const where = `${model} ${hardness} ${deg}`;
          expect(found.loadN, where).toBeCloseTo(WEIGHT / Math.cos((deg * Math.PI) / 180), 6);
          expect(Math.abs(found.carriedN / found.loadN - 1), where).toBeLessThan(1e-6);
          expect(Math.abs(found.carriedAtMm - input.mountMm), where).toBeLessThan(0.01);
          for (const { depthMm, pressureNPerMm } of found.stations) {
            expect(pressureNPerMm, where).toBeGreaterThanOrEqual(0);
            if (depthMm <= 0) expect(pressureNPerMm, where).toBe(0);
          }
        }
  });

  it("comes to the same with a mesh twice and four times as fine", () => {
    for (const [deg, hardness] of [
      [0, PACKED],
      [45, PACKED],
      [60, HARD],
    ] as const) {
      const input = inputOf("midlow-95", deg, hardness);
      const [coarse, fine, finest] = [120, 240, 480].map((pieces) => skiOnSnow(input, pieces));
      if (!coarse || !fine || !finest) expect.fail("not solved");
      for (const [found, allowed] of [
        [coarse, 0.002],
        [fine, 0.001],
      ] as const) {
        expect(Math.abs(found.sinkMm / finest.sinkMm - 1)).toBeLessThan(allowed);
        expect(Math.abs(found.peakNPerMm / finest.peakNPerMm - 1)).toBeLessThan(allowed);
        expect(Math.abs(found.turnRadiusM / finest.turnRadiusM - 1)).toBeLessThan(allowed);
        expect(Math.abs(found.contactMm - finest.contactMm)).toBeLessThan(3);
      }
    }
  });

  it("gives a ski that is the same at both ends a shape that is the same at both ends", () => {
    const shape = { ...straightSkiShape, camberMm: 4 };
    const stations = [0, 850, 1700].map((xMm) => ({ xMm, bendingStiffnessNmm2: xMm === 850 ? 3e8 : 2e7 }));
    const input = { shape, stations, mountMm: 850, bootSoleMm: 300, weightN: WEIGHT, bed: { hardnessNPerMm3: PACKED } };
    for (const deg of [0, 40]) {
      const found = skiOnSnow({ ...input, edgeAngle: radians(deg) });
      const turned = found.stations.toReversed();
      found.stations.forEach((station, i) => {
        expect(station.downMm).toBeCloseTo(turned[i]?.downMm ?? Number.NaN, 6);
      });
      expect(found.contactFromMm + found.contactToMm).toBeCloseTo(1700, 5);
      expect(found.peakAtMm).toBeCloseTo(850, 6);
    }
  });

  it("presses further out the stiffer it is, and sinks and bends less under the boot", () => {
    for (const model of ["kerfline-68", "midlow-95", "drifthold-117"])
      for (const deg of [0, 20, 45]) {
        const [soft, middle, stiff] = [0.8, 1, 1.2].map((k) => skiOnSnow(inputOf(model, deg, PACKED, k)));
        if (!soft || !middle || !stiff) expect.fail("not solved");
        const where = `${model} ${deg}`;
        expect(soft.endsShare, where).toBeLessThan(middle.endsShare);
        expect(middle.endsShare, where).toBeLessThan(stiff.endsShare);
        expect(soft.sinkMm, where).toBeGreaterThan(stiff.sinkMm);
        expect(soft.peakNPerMm, where).toBeGreaterThan(stiff.peakNPerMm);
      }
  });

  it("sinks deeper and bends tighter under a heavier skier, and less on harder snow", () => {
    const input = inputOf("midlow-95", 45);
    const [light, heavy] = [600, 1000].map((weightN) => skiOnSnow({ ...input, weightN }));
    expect(heavy?.sinkMm).toBeGreaterThan(light?.sinkMm ?? Number.NaN);
    expect(heavy?.turnRadiusM).toBeLessThan(light?.turnRadiusM ?? Number.NaN);
    expect(skiOnSnow(inputOf("midlow-95", 45, HARD)).sinkMm).toBeLessThan(skiOnSnow(input).sinkMm);
  });

  it("draws the sidecut's own radius when flat, and on hard snow comes from below to Howe's R·cos θ", () => {
    for (const model of models) {
      const { shape } = skiOf(model);
      const sidecutM = shape.sidecutRadiusMm / 1000;
      expect(Math.abs(skiOnSnow(inputOf(model, 0)).turnRadiusM / sidecutM - 1), model).toBeLessThan(0.002);
      for (const deg of [20, 45, 60]) {
        const carved = carvedRadiusM(sidecutM, radians(deg));
        // Snow that gives under the boot lets the ski bend further than the sidecut asks; ice hardly does.
        const [hard, hardest] = [HARD, 10].map(
          (hardness) => skiOnSnow(inputOf(model, deg, hardness)).turnRadiusM / carved,
        );
        expect(hard, `${model} ${deg}`).toBeLessThan(hardest ?? 0);
        expect(hardest, `${model} ${deg}`).toBeLessThan(1.01);
        expect(hardest, `${model} ${deg}`).toBeGreaterThan(0.93);
      }
    }
  });

  it("refuses a skier without weight and a boot beyond the ski", () => {
    const input = inputOf("midlow-95", 10);
    expect(() => skiOnSnow({ ...input, weightN: 0 })).toThrow(/weightN: 0 N/);
    expect(() => skiOnSnow({ ...input, mountMm: 100 })).toThrow(/loads\[0\]/);
  });
});

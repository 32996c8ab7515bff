import { describe, expect, it } from "vitest";
import { bareBuild, evaluateFlex, type SkiBuild, skiBehaviour, twistBenchNmPerDeg, twistPerNmm } from "#engine/flex";
import { halfWidthAt } from "#engine/geometry";
import { sectionsAlong } from "#lib/engine/flex/evaluate";
import { torsionAlong } from "#lib/engine/flex/torsion-along";
import { twistSectionAt } from "#lib/engine/flex/twist-section";
import { catalog, solved, specOf } from "../demo-catalog";

const skis = (
  [
    ["midlow-95", 178, ["carbon-stringers"]],
    ["kerfline-68", 168, []],
    ["upleigh-92", 174, []],
    ["midlow-84", 174, ["metal-pair"]],
  ] as const
).map(([model, lengthCm, reinforcements]) => solved(specOf({ model, lengthCm, reinforcements, flexRatio: 1 })));

describe("GJ along a ski", () => {
  it("solved at some stations is within 1 % of every station solved, and the twist over a half within 0.1 %", () => {
    for (const { build, core } of skis) {
      const stations = sectionsAlong(build, core.profile, 60);
      const [few = [], all = []] = [torsionAlong(build, stations), torsionAlong(build, stations, 0)].map((valueAt) =>
        stations.map((_, i) => valueAt(i)),
      );
      const inside = stations.map(({ xMm }) => xMm > 30 && xMm < build.shape.lengthMm - 30);
      for (const [i, is] of inside.entries()) {
        if (is) expect(Math.abs((few[i] ?? 0) / (all[i] ?? 1) - 1), `${stations[i]?.xMm}`).toBeLessThan(0.01);
      }
      const turned = (values: readonly number[]) =>
        twistPerNmm(
          stations.map((station, i) => ({ ...station, torsionalStiffnessNmm2: values[i] ?? 0 })),
          build.shape.tipLengthMm,
          build.mountFromTipMm,
        );
      expect(Math.abs(turned(few) / turned(all) - 1)).toBeLessThan(0.001);
    }
  });

  it("metal above and below the wood stiffens the front half a little; as joined thin skins it came out far softer", () => {
    const twist = (reinforcements: readonly string[]) => {
      const { build, flex } = solved(specOf({ model: "midlow-84", lengthCm: 174, reinforcements, flexRatio: 1 }));
      return skiBehaviour(bareBuild(build), flex).twistForebodyNmPerDeg;
    };
    // Independent finite elements of such sections: a few per cent more, not less.
    const change = twist(["metal-pair"]) / twist([]) - 1;
    expect(change).toBeGreaterThan(0.02);
    expect(change).toBeLessThan(0.15);
  });

  it("is multiplied by what twist readings have taught", () => {
    const [one] = skis;
    if (!one) throw new Error("no ski");
    const softer: SkiBuild = { ...one.build, twistFactor: 0.9 };
    const ratio = twistBenchNmPerDeg(softer, evaluateFlex(softer, one.core.profile));
    expect(ratio / twistBenchNmPerDeg(one.build, one.flexWithPlate)).toBeCloseTo(0.9, 9);
  });

  it("is read between clamp and arm, by the shop's setting", () => {
    const rules = {
      ...catalog.build.rules,
      twistTest: { span: { clampFromMountMm: 0, armFromMountMm: 400 }, torqueNm: 8, armMm: 300 },
    } as const;
    const { build, flexWithPlate } = solved(specOf(), { ...catalog.build, rules });
    const { mountFromTipMm } = build;
    expect(build.twistTest).toEqual({
      clampMm: mountFromTipMm,
      armAtMm: mountFromTipMm - 400,
      torqueNm: 8,
      armMm: 300,
    });
    const turn = twistPerNmm(flexWithPlate.stations, mountFromTipMm - 400, mountFromTipMm);
    expect(twistBenchNmPerDeg(build, flexWithPlate)).toBeCloseTo(Math.PI / 180 / turn / 1000, 9);
    const off = { ...rules, twistTest: { ...rules.twistTest, span: { clampFromMountMm: 0, armFromMountMm: 1500 } } };
    expect(() => solved(specOf(), { ...catalog.build, rules: off })).toThrow(/twistTest/);
  });
});

describe("the section that is twisted", () => {
  const [stringers] = skis;
  if (!stringers) throw new Error("no ski");
  const { build } = stringers;
  const x = build.mountFromTipMm - 300;
  const half = halfWidthAt(build.shape, x);
  const { layers } = twistSectionAt(build, x, 10);

  it("is filled from the centre line to the edge, steel outside, without overlap", () => {
    for (const { parts } of layers) {
      let at = 0;
      for (const { fromMm, toMm } of parts) {
        expect(fromMm).toBeCloseTo(at, 9);
        expect(toMm).toBeGreaterThan(fromMm);
        at = toMm;
      }
      expect(at).toBeCloseTo(half, 9);
    }
    const steel = layers.filter(({ parts }) => parts.at(-1)?.inPlaneMpa === build.edge.material.gxyMpa);
    expect(steel.reduce((sum, { thicknessMm }) => sum + thicknessMm, 0)).toBeCloseTo(build.edge.heightMm, 9);
  });

  it("keeps stringers where they lie, with their own G·t", () => {
    const cloth = catalog.build.materials.fabrics.find(({ id }) => id === "carbon-ud-300");
    if (!cloth) throw new Error("no such cloth");
    const bands = layers.filter(({ parts }) => parts.some(({ inPlaneMpa }) => inPlaneMpa === 0));
    let carried = 0;
    for (const { thicknessMm, parts } of bands) {
      const band = parts.find(({ inPlaneMpa, throughMpa }) => inPlaneMpa > 0 && throughMpa === cloth.gxyMpa);
      expect((band?.toMm ?? 0) - (band?.fromMm ?? 0)).toBeCloseTo(20, 9);
      expect(((band?.toMm ?? 0) + (band?.fromMm ?? 0)) / 2).toBeCloseTo(build.shape.waistWidthMm / 4, 9);
      carried += thicknessMm * (band?.inPlaneMpa ?? 0);
    }
    // One above the wood and one below, where the steel reaches a little way up beside it.
    expect(carried).toBeCloseTo(2 * cloth.gxyMpa * cloth.thicknessMm, 6);
  });
});

/**
 * No ski leaves the solver that the bench would send back: a thousand drawn builds, or all of them with `npm run sweep`.
 * The rules are common practice, no source; how a build is read against them is written out in support/builds.
 */
import { describe, expect, it } from "vitest";
import { type FlexSpec, resolveSpec } from "#engine/configuration";
import { evaluateFlex, springConstants, springTestOf } from "#engine/flex";
import { flexBuildOf } from "#lib/engine/configuration/flex-build";
import { flexRefusalOf } from "#lib/engine/configuration/flex-refusal";
import { referenceOf } from "#lib/engine/configuration/reference";
import { benchFaults } from "../../support/builds/bench-faults";
import { allBuilds, drawnBuilds, flexRange } from "../../support/builds/every-build";
import { catalog } from "../demo-catalog";

const { build } = catalog;
const { rules } = build;
const isWhole = process.env.PAIRWRIGHT_SWEEP === "whole";
const stepsOfFlex = Number(process.env.PAIRWRIGHT_SWEEP_STEPS ?? 10);
const builds = isWhole ? allBuilds(build, stepsOfFlex) : drawnBuilds(build, 1000, 20_261_130);
/** What takes long is looked at for every so many only. */
const every = isWhole ? 200 : 20;

const orderOf = (spec: FlexSpec) => {
  const resolved = resolveSpec(spec, build);
  if (!resolved.ok) throw new Error(JSON.stringify(resolved.refusal));
  const { lengthCm, flexRatio } = spec;
  return { resolved: resolved.value, lengthCm, flexRatio, mountOffsetMm: 0 };
};

/** Centre spring over the target's at a ratio of 1, from the whole evaluation of the ski. */
function ratioBuilt(order: ReturnType<typeof orderOf>, found: ReturnType<typeof flexBuildOf>["build"]): number {
  const reference = referenceOf(order.resolved.model, build);
  const scale = found.bare.shape.lengthMm / reference.lengthMm;
  const wanted = springConstants(
    reference.stations.map(({ xMm }) => xMm * scale),
    reference.stations.map(({ bendingStiffnessNmm2 }) => bendingStiffnessNmm2 * scale ** 2),
    springTestOf(found.bare),
  );
  return evaluateFlex(found.bare, found.core.profile).springCentreNPerMm / wanted.springCentreNPerMm;
}

interface Share {
  all: number;
  built: number;
  otherCloth: number;
}

describe("every build of the shop", () => {
  it("keeps the bench rules and the flex, or is refused beside ones that do", { timeout: 7_200_000 }, () => {
    const { from, below } = flexRange(build);
    const tenths = Array.from({ length: 10 }, (): Share => ({ all: 0, built: 0, otherCloth: 0 }));
    const tolerance = rules.bench?.flexTolerance.share ?? Number.NaN;
    let refused = 0;
    let index = 0;
    for (const spec of builds) {
      index += 1;
      const order = orderOf(spec);
      const { build: found, isReached, tried } = flexBuildOf(order, build);
      const name = JSON.stringify(spec);
      const { bare, core } = found;
      expect(benchFaults({ model: order.resolved.model, bare, profile: core.profile }, rules), name).toEqual([]);
      const tenth = tenths[Math.floor((10 * (spec.flexRatio - from)) / (below - from))];
      if (!tenth) throw new Error(name);
      tenth.all += 1;
      if (isReached) {
        tenth.built += 1;
        tenth.otherCloth += found.cloth.isOwn ? 0 : 1;
        expect(Math.abs(core.achievedRatio / spec.flexRatio - 1), name).toBeLessThanOrEqual(tolerance);
        if (index % every === 0) expect(ratioBuilt(order, found) / core.achievedRatio, name).toBeCloseTo(1, 3);
        continue;
      }
      refused += 1;
      if (refused % every !== 1) continue;
      const { softer, stiffer, shorterCm, longerCm } = flexRefusalOf(order, found, tried, build);
      const isBuilt = (change: Partial<FlexSpec>) => flexBuildOf(orderOf({ ...spec, ...change }), build).isReached;
      expect(softer !== null || stiffer !== null, name).toBe(true);
      if (softer)
        expect([softer.flexRatio < spec.flexRatio, isBuilt({ flexRatio: softer.flexRatio })], name).toEqual([
          true,
          true,
        ]);
      if (stiffer)
        expect([stiffer.flexRatio > spec.flexRatio, isBuilt({ flexRatio: stiffer.flexRatio })], name).toEqual([
          true,
          true,
        ]);
      for (const lengthCm of [shorterCm, longerCm])
        if (lengthCm !== null) expect(isBuilt({ lengthCm }), name).toBe(true);
    }
    // What was measured, for whoever asks by name.
    if (isWhole) process.stdout.write(`${JSON.stringify({ builds: index, refused, tenths })}\n`);
    // At the least half of what is asked for at the soft end is built, metal and carbon in every combination included.
    const [softest] = tenths;
    expect((softest?.built ?? 0) / (softest?.all ?? 0)).toBeGreaterThanOrEqual(0.5);
    expect(tenths.reduce((sum, { otherCloth }) => sum + otherCloth, 0)).toBeGreaterThan(0);
  });
});

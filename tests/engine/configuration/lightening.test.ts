/** Pockets in the core. Their sizes and uses are the shop's: common practice, no source; the sums are worked out beside. */
import { describe, expect, it } from "vitest";
import { conflictsOf, coreMassG, resolveSpec, type SpecChoices, solveSpec } from "#engine/configuration";
import { evaluateFlex, thicknessAt } from "#engine/flex";
import { fabricById, woodById } from "#engine/materials";
import { partsFor } from "#engine/parts";
import { priceSpec } from "#engine/pricing";
import { catalog, specOf } from "../demo-catalog";

const { build } = catalog;
const rules = build.rules.lightening;
if (rules === undefined) throw new Error("the demo shop mills pockets");

function built(choices: SpecChoices) {
  const solved = solveSpec(specOf(choices), build);
  if (!solved.ok) throw new Error(JSON.stringify(solved.refusal));
  return solved.value;
}

describe("pockets in the core", () => {
  const whole = built({});
  const hollow = built({ lightening: true });
  const pockets = hollow.build.pockets ?? [];

  it("are two, one on either side of the mat under the binding, clear of it", () => {
    const half = build.rules.mat.lengthMm / 2 + rules.clearOfMatMm;
    const { mountFromTipMm, coreFromMm, coreToMm } = hollow.build;
    expect(pockets.map(({ fromMm, toMm }) => [fromMm, toMm])).toEqual([
      [expect.closeTo(mountFromTipMm - half - 0.35 * (mountFromTipMm - half - coreFromMm), 6), mountFromTipMm - half],
      [mountFromTipMm + half, expect.closeTo(mountFromTipMm + half + 0.35 * (coreToMm - mountFromTipMm - half), 6)],
    ]);
    expect(whole.build.pockets).toBeUndefined();
  });

  it("leave the wood that the shop wants under them, and the flex that was ordered", () => {
    for (const { fromMm, toMm } of pockets)
      for (const x of [fromMm, (fromMm + toMm) / 2, toMm])
        expect(thicknessAt(hollow.core.profile, x)).toBeGreaterThanOrEqual(rules.depthMm + rules.leastUnderMm - 0.05);
    expect(hollow.core.achievedRatio).toBeCloseTo(1, 1);
  });

  it("take their wood from the mass, and add the carbon that bridges them", () => {
    // The same core with and without them: wood out is width × depth × length of aspen and ash strips there, carbon in by area.
    const plain = { ...hollow.build, layers: hollow.build.layers.filter((layer) => !isBridge(layer)) };
    const { pockets: _none, ...filled } = plain;
    const wood = 1000 * (massOf(filled) - massOf(plain));
    const volumeMm3 = pockets.reduce(
      (sum, { fromMm, toMm }) => sum + (toMm - fromMm) * rules.widthMm * rules.depthMm,
      0,
    );
    const [aspen, ash] = ["aspen", "ash"].map((id) => woodById(build.materials, id).densityKgM3) as [number, number];
    expect(wood).toBeGreaterThan(volumeMm3 * aspen * 1e-6);
    expect(wood).toBeLessThan(volumeMm3 * ash * 1e-6);
    const bridge = fabricById(build.materials, rules.bridge.fabric);
    const areaMm2 = pockets.reduce(
      (sum, { fromMm, toMm }) =>
        sum + (toMm - fromMm + 2 * rules.bridge.overlapMm) * (rules.widthMm + 2 * rules.bridge.besideMm),
      0,
    );
    const carbon = 1000 * (massOf(hollow.build) - massOf(plain));
    expect(carbon).toBeCloseTo(areaMm2 * bridge.thicknessMm * bridge.densityKgM3 * 1e-6, 0);
    const milled = coreMassG(hollow.build, hollow.core.profile, build.rules);
    const { pockets: _pockets, ...whole } = hollow.build;
    expect(coreMassG(whole, hollow.core.profile, build.rules) - milled).toBeCloseTo(wood, 0);
  });

  it("soften bending and twist where they lie, and nowhere else", () => {
    const layers = hollow.build.layers.filter((layer) => !isBridge(layer));
    const { pockets: _none, ...filled } = { ...hollow.build, layers };
    const [with_, without] = [{ ...hollow.build, layers }, filled].map((each) =>
      evaluateFlex(each, hollow.core.profile),
    ) as [ReturnType<typeof evaluateFlex>, ReturnType<typeof evaluateFlex>];
    const at = (flex: typeof with_, xMm: number) => {
      const station = flex.stations.reduce((a, b) => (Math.abs(a.xMm - xMm) < Math.abs(b.xMm - xMm) ? a : b));
      return [station.bendingStiffnessNmm2, station.torsionalStiffnessNmm2] as const;
    };
    for (const { fromMm, toMm } of pockets) {
      const [softer, whole] = [at(with_, (fromMm + toMm) / 2), at(without, (fromMm + toMm) / 2)];
      expect(softer[0]).toBeLessThan(whole[0]);
      expect(softer[1]).toBeLessThan(whole[1]);
      expect(softer[0]).toBeGreaterThan(0.7 * whole[0]);
    }
    expect(at(with_, hollow.build.mountFromTipMm)[0]).toBeCloseTo(at(without, hollow.build.mountFromTipMm)[0], 0);
  });

  it("have their bridges on the list of parts, as long and wide as they lie", () => {
    const list = partsFor(specOf({ lightening: true }), hollow, build, catalog.parts);
    const bridges = list.lines.filter(({ fromOption }) => fromOption === "lightening");
    // Pockets 40 mm wide, 8 mm of cloth on the wood at each side and 20 mm beyond each end.
    const [fore, aft] = pockets.map(({ fromMm, toMm }) => Math.round((toMm - fromMm + 40) * 10) / 10);
    expect(bridges.map(({ line, code, pieceCut, label }) => [line, code, pieceCut, label])).toEqual([
      [56, "pocket-bridge-fore", `${fore} × 56 mm`, "Carbon over a core pocket: fore"],
      [56, "pocket-bridge-aft", `${aft} × 56 mm`, "Carbon over a core pocket: aft"],
    ]);
    expect(partsFor(specOf({}), whole, build, catalog.parts).lines.some(({ line }) => line === 56)).toBe(false);
  });

  it("are stringers where the shop's list is older than their own line", () => {
    const older = { ...catalog.parts, lines: catalog.parts.lines.filter(({ code }) => code !== "pocket-bridge") };
    const bridges = partsFor(specOf({ lightening: true }), hollow, build, older).lines.filter(
      ({ fromOption }) => fromOption === "lightening",
    );
    expect(bridges.map(({ line }) => line)).toEqual([27, 27]);
  });

  it("have a line in the price", () => {
    const priced = priceSpec(specOf({ lightening: true }), catalog.priceBook, build, { destination: "collect" });
    expect(priced.ok && priced.value.lines.find(({ code }) => code === "core-pockets")?.lineCents).toBe(9000);
  });

  it("are refused under a moved binding and for a use that needs its wood", () => {
    const conflicts = (choices: SpecChoices) => {
      const spec = { ...specOf({}), ...choices, mount: { offsetMm: choices.mount?.offsetMm ?? 0 } };
      const resolved = resolveSpec(spec, build);
      if (!resolved.ok) throw new Error(JSON.stringify(resolved.refusal));
      return conflictsOf(spec, resolved.value, build).map(({ code, ways }) => [code, ways[0]?.choices]);
    };
    expect(conflicts({ lightening: true, mount: { offsetMm: 40 } })).toEqual([]);
    expect(conflicts({ lightening: true, mount: { offsetMm: -40.5 } })).toEqual([
      ["binding-over-pocket", { lightening: false }],
    ]);
    const noPowder = { ...build, rules: { ...build.rules, lightening: { ...rules, forUses: ["powder"] as const } } };
    const spec = specOf({ lightening: true });
    const resolved = resolveSpec(spec, noPowder);
    expect(resolved.ok && conflictsOf(spec, resolved.value, noPowder).map(({ code }) => code)).toEqual([
      "lightening-not-for-use",
    ]);
    const { lightening: _gone, ...others } = build.rules;
    expect(solveSpec(spec, { ...build, rules: others })).toMatchObject({ ok: false, refusal: { kind: "lightening" } });
  });

  function massOf(ski: typeof hollow.build): number {
    return evaluateFlex(ski, hollow.core.profile).massKg;
  }

  function isBridge(layer: (typeof hollow.build.layers)[number]): boolean {
    return "fromOption" in layer && layer.fromOption === "lightening";
  }
});

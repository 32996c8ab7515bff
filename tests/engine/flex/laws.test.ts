/** Laws of a ski as a beam, tried on the demo's own builds. They are the theory's, so no outside value is needed. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { EngineCatalog } from "#engine/assessment";
import { type PairSpec, referenceOf, solveSpec } from "#engine/configuration";
import {
  type BuildLayer,
  evaluateFlex,
  type LayerMaterial,
  type SkiBuild,
  springConstants,
  springTestOf,
  type ThicknessProfile,
} from "#engine/flex";
import { catalog, solved, specOf } from "../demo-catalog";

const { models } = catalog.build;
const anyModel = fc.constantFrom(...models);

describe("sections along a ski", () => {
  /** A core with a single knee, so that only grid and steps make stations. */
  const plainCore = (build: SkiBuild): ThicknessProfile => ({
    stations: [
      { xMm: build.coreFromMm, thicknessMm: 3 },
      { xMm: build.mountFromTipMm, thicknessMm: 11 },
      { xMm: build.coreToMm, thicknessMm: 3 },
    ],
  });

  it("close in on the ski at second order as stations are added", () => {
    const orders = models.map((model) => {
      const { build } = solved(specOf({ model: model.id }));
      const core = plainCore(build);
      const spring = (gridPieces: number) => evaluateFlex(build, core, { gridPieces }).springCentreNPerMm;
      const finest = spring(2560);
      const [coarse = 0, middle = 0, fine = 0] = [20, 40, 80].map((pieces) => Math.abs(spring(pieces) / finest - 1));
      expect(middle, model.id).toBeLessThan(coarse);
      // Halving the distance quarters the error of a straight line: order 2, blurred by stations that do not move.
      return Math.log2(coarse / fine) / 2;
    });
    const ascending = orders.toSorted((a, b) => a - b);
    expect(ascending[0]).toBeGreaterThan(1.6);
    const median = ascending[Math.floor(ascending.length / 2)] ?? Number.NaN;
    expect(median).toBeGreaterThan(1.8);
    expect(median).toBeLessThan(2.2);
  });

  it("never soften when a layer is made stiffer", () => {
    const stiffer = (material: LayerMaterial, factor: number): LayerMaterial => ({
      ...material,
      exMpa: material.exMpa * factor,
      eyMpa: material.eyMpa * factor,
      gxyMpa: material.gxyMpa * factor,
    });
    fc.assert(
      fc.property(anyModel, fc.nat(20), fc.double({ min: 1, max: 3, noNaN: true }), (model, which, factor) => {
        const { build, core } = solved(specOf({ model: model.id }));
        const place = which % build.layers.length;
        const layers = build.layers.map((layer, i): BuildLayer => {
          if (i !== place || layer.role === "core") return layer;
          return { ...layer, material: stiffer(layer.material, factor) };
        });
        const columns = build.columns.map((column) => ({
          ...column,
          axialModulusMpa: column.axialModulusMpa * factor,
          shearModulusMpa: column.shearModulusMpa * factor,
        }));
        const changed = build.layers[place]?.role === "core" ? { ...build, columns } : { ...build, layers };
        const before = evaluateFlex(build, core.profile);
        const after = evaluateFlex(changed, core.profile);
        after.stations.forEach((station, i) => {
          const was = before.stations[i];
          if (!was) throw new Error("the stations moved");
          expect(station.bendingStiffnessNmm2).toBeGreaterThanOrEqual(was.bendingStiffnessNmm2 * (1 - 1e-9));
          // Solved at some stations and interpolated between, by a ratio that the change moves too.
          expect(station.torsionalStiffnessNmm2).toBeGreaterThanOrEqual(was.torsionalStiffnessNmm2 * (1 - 1e-3));
        });
        expect(after.springCentreNPerMm).toBeGreaterThanOrEqual(before.springCentreNPerMm * (1 - 1e-9));
      }),
      { numRuns: 60 },
    );
  });
});

describe("solving for a flex and predicting back", () => {
  /** Without the bench's rules and other cloths, which come before the exact flex. */
  const { bench: _bench, cloth: _cloth, ...rules } = catalog.build.rules;
  const withStep = (stepMm: number): EngineCatalog["build"] => ({
    ...catalog.build,
    rules: { ...rules, core: { ...rules.core, stepMm } },
  });
  const unrounded = withStep(0);
  const anyOrder = anyModel.chain((model) =>
    fc.record({
      model: fc.constant(model),
      lengthCm: fc.constantFrom(...model.lengths.map((each) => each.lengthCm)),
      flexRatio: fc.double({ min: 0.75, max: 1.4, noNaN: true }),
    }),
  );

  /** Springs of the built core over those of the target curve k·(L/Lref)²·EIref(x·Lref/L), at the build's own positions. */
  function builtOverWanted(spec: PairSpec, build: EngineCatalog["build"]) {
    const model = build.models.find((each) => each.id === spec.model);
    const solution = solveSpec(spec, build);
    if (!model || !solution.ok) throw new Error(`no solution for ${spec.model}`);
    const { flex, core, build: ski } = solution.value;
    const reference = referenceOf(model, build);
    const scale = ski.shape.lengthMm / reference.lengthMm;
    const wanted = springConstants(
      reference.stations.map((station) => station.xMm * scale),
      reference.stations.map((station) => station.bendingStiffnessNmm2 * scale ** 2 * spec.flexRatio),
      springTestOf(ski),
    );
    return {
      limitedBy: core.limitedBy,
      ratios: [
        flex.springCentreNPerMm / wanted.springCentreNPerMm,
        flex.springForebodyNPerMm / wanted.springForebodyNPerMm,
        flex.springAfterbodyNPerMm / wanted.springAfterbodyNPerMm,
      ],
    };
  }

  for (const [name, build, allowed] of [
    ["0.5 % unrounded", unrounded, 0.005],
    ["1 % in the mill's steps of 0.05 mm", withStep(rules.core.stepMm), 0.01],
  ] as const) {
    it(`agrees within ${name}, for all three springs`, () => {
      fc.assert(
        fc.property(anyOrder, ({ model, lengthCm, flexRatio }) => {
          const spec = { ...specOf({ model: model.id }), lengthCm, flexRatio };
          const { ratios, limitedBy } = builtOverWanted(spec, build);
          for (const ratio of ratios) {
            expect(Math.abs(ratio - 1), `${model.id} ${lengthCm} ${limitedBy.join()}`).toBeLessThan(allowed);
          }
        }),
        { numRuns: 60 },
      );
    });
  }
});

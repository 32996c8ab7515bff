/** Edges of the flex classes: half-open, a ratio on an edge belongs to the class above it. */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { benchClass, solveSpec } from "#engine/configuration";
import { flexClassOf } from "#lib/engine/configuration/flex-class";
import { specOf } from "../demo-catalog";

const { flexClasses } = loadCatalog().build;

describe("flex classes", () => {
  it.each([
    [0.619_999, undefined],
    [0.62, 1],
    [0.759_9, 1],
    [0.76, 1],
    [0.78, 2],
    [0.800_1, 2],
    [0.9, 2],
    [0.92, 3],
    [0.94, 3],
    [0.941, 3],
    [1.079_9, 3],
    [1.08, 4],
    [1.25, 5],
    [1.449_9, 5],
    [1.45, undefined],
    [1.471, undefined],
  ])("k %d: class %s", (ratio, own) => {
    expect(flexClassOf(ratio, flexClasses)?.number).toBe(own);
  });
});

describe("a class at the bench", () => {
  const catalog = loadCatalog().build;
  const ski = solveSpec(specOf({ flexRatio: 1.25 }), catalog);
  if (!ski.ok) throw new Error(ski.refusal.code);
  const stout = flexClassOf(1.25, flexClasses);
  if (!stout) throw new Error("1.25 has no class");
  const target = ski.value.flexWithPlate.springCentreNPerMm;

  it("by its edges alone begins within a per cent of the target of a ski ordered at its edge", () => {
    const { fromNPerMm } = benchClass(stout, ski.value);
    expect(Math.abs(fromNPerMm / target - 1)).toBeLessThan(0.01);
  });

  it("takes in what the quality check allows such a ski: 7 % to either side of its target", () => {
    const { fromNPerMm, belowNPerMm } = benchClass(stout, ski.value, 7);
    expect(fromNPerMm).toBeCloseTo(0.93 * target, 9);
    expect(belowNPerMm).toBeGreaterThan(1.07 * target);
  });

  it("is not widened where the target lies in its middle", () => {
    const middle = solveSpec(specOf({ flexRatio: 1 }), catalog);
    const own = flexClassOf(1, flexClasses);
    if (!middle.ok || !own) throw new Error("class 3 is gone");
    expect(benchClass(own, middle.value, 5)).toEqual(benchClass(own, middle.value));
  });
});

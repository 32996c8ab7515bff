/** Edges of the flex classes: half-open, a ratio on an edge belongs to the class above it; "near" is within 0.02. */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { flexClassOf, nearFlexClassOf } from "#lib/engine/configuration/flex-class";

const { flexClasses } = loadCatalog().build;

describe("flex classes", () => {
  it.each([
    [0.619_999, undefined, 1],
    [0.62, 1, undefined],
    [0.759_9, 1, undefined],
    [0.76, 1, 2],
    [0.78, 2, 1],
    [0.800_1, 2, undefined],
    [0.9, 2, 3],
    [0.92, 3, 2],
    [0.94, 3, 2],
    [0.941, 3, undefined],
    [1.079_9, 3, 4],
    [1.08, 4, 3],
    [1.25, 5, 4],
    [1.449_9, 5, undefined],
    [1.45, undefined, 5],
    [1.471, undefined, undefined],
  ])("k %d: class %s, near %s", (ratio, own, near) => {
    expect(flexClassOf(ratio, flexClasses)?.number).toBe(own);
    expect(nearFlexClassOf(ratio, flexClasses)?.number).toBe(near);
  });
});

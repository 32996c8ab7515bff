/** Edges of the flex classes: half-open, a ratio on an edge belongs to the class above it. */
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import { flexClassOf } from "#lib/engine/configuration/flex-class";

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

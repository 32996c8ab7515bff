/** Steel along the contact length or all round: what it changes on the ski and on the list. Midlow 95 at 178 cm. */
import { describe, expect, it } from "vitest";
import { type BuildCatalog, solveSpec } from "#engine/configuration";
import { partsFor } from "#engine/parts";
import { catalog, specOf } from "../demo-catalog";

function wrapped(edgeWrap: "partial" | "full") {
  const models = catalog.build.models.map((model) => ({ ...model, shape: { ...model.shape, edgeWrap } }));
  const build: BuildCatalog = { ...catalog.build, models };
  const spec = specOf({ model: "midlow-95", lengthCm: 178 });
  const solved = solveSpec(spec, build);
  if (!solved.ok) throw new Error(solved.refusal.code);
  const { lines } = partsFor(spec, solved.value, build, catalog.parts);
  return {
    edge: solved.value.build.edge,
    cutOf: (code: string) => lines.find((line) => line.code === code)?.cut ?? "",
  };
}

describe("edges", () => {
  // From 30 mm ahead of the shoulder to 10 mm past contact (ISO 6289 gauge at 1691) a side; all round half of the outline's 3,675 (the shop's own drawing of this ski) a side.
  it.each([
    ["partial", 1556, "inside along the edges", "two pieces of 1556 mm"],
    ["full", 1837.5, "inside all round", "one piece of 3675 mm all round"],
  ] as const)("%s: %d mm a side", (wrap, sideMm, base, steel) => {
    const { edge, cutOf } = wrapped(wrap);
    expect(Math.abs(edge.lengthMm - sideMm)).toBeLessThan(1);
    for (const code of ["base-left", "base-right"]) expect(cutOf(code)).toContain(base);
    for (const code of ["edge-left", "edge-right"]) {
      const mm = Number(/of ([\d ,.]+) mm/.exec(cutOf(code))?.[1]?.replace(/[^\d.]/g, ""));
      expect(Math.abs(mm - Number(/\d{4}/.exec(steel)?.[0]))).toBeLessThanOrEqual(2);
      expect(cutOf(code)).toContain(wrap === "full" ? "one piece" : "two pieces");
    }
  });
});

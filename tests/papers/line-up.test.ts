/** The whole demo line-up through the real engine: whatever can be ordered can be printed. */
import path from "node:path";
import { describe, expect, it } from "vitest";
import { catalogFromRelease } from "#catalog";
import { readJsonFiles, releaseSchemas } from "#catalog/files";
import { type PairSpec, solveSpec } from "#engine/configuration";
import { measure } from "#engine/geometry";
import { partsFor } from "#engine/parts";
import { type BuildSheetFacts, composeBuildSheet, composeKitList } from "#papers";
import { drawDocument } from "../../lib/papers/draw";
import { collisions, pdfPages, readers } from "./pdf-text";
import { facts } from "./sample";

const released = catalogFromRelease(readJsonFiles(path.resolve("content", "catalog"), releaseSchemas));
const active = released.build.models.filter((model) => model.state === "active");

function factsFor(modelId: string, lengthCm: number, reinforcements: readonly string[] = []): BuildSheetFacts {
  const { build: catalog } = released;
  const model = catalog.models.find((m) => m.id === modelId);
  const [left, right] = catalog.baseColours.map((colour) => colour.id);
  const spec: PairSpec = {
    ...facts.spec,
    model: modelId,
    lengthCm,
    core: model?.core.blend ?? "",
    reinforcements,
    graphic: { ...facts.spec.graphic, windows: [] },
    base: { left: left ?? "", right: right ?? "", inlay: "none" },
  };
  const solved = solveSpec(spec, catalog);
  if (!solved.ok) throw new Error(JSON.stringify(solved.refusal));
  const { shape } = solved.value.build;
  const parts = partsFor(spec, solved.value, catalog, released.parts);
  return { ...facts, catalog, spec, shape, measures: measure(shape), solved: solved.value, parts, strips: null };
}

describe("every active model-length", () => {
  const all = active.flatMap((model) =>
    model.lengths.map((length) => [model.id, length.lengthCm, length.mould] as const),
  );

  it("is the whole line-up of 33", () => {
    expect(all).toHaveLength(33);
  });

  it.each(all)("%s at %d cm has a complete sheet", (model, lengthCm, mould) => {
    const data = composeBuildSheet(factsFor(model, lengthCm));
    expect(data.identity.find((row) => row.label === "Mould")?.value).toContain(mould);
    expect(data.core.stations).toHaveLength(9);
    const xs = data.core.stations.map((s) => s.xMm);
    expect(xs).toEqual([...new Set(xs)].toSorted((a, b) => a - b));
    expect(data.core.stations.every((s) => s.plannedMm > 1 && s.plannedMm < 20)).toBe(true);
    expect(data.core.pocket?.fromMm).toBeGreaterThan(data.core.wood.fromMm);
    expect(data.core.pocket?.toMm).toBeLessThan(data.core.wood.toMm);
    expect(data.stack.at(0)?.role).toBe("base");
    expect(data.stack.at(-1)?.role).toBe("topsheet");
    expect(data.cuts.length).toBeGreaterThan(20);
    expect(data.qc.every((row) => !/NaN|undefined|Infinity/.test(row.target))).toBe(true);
  });
});

describe("sheets at the ends of the line-up", () => {
  // Narrowest and shortest, widest and longest, most layers, lightest.
  it.each([
    ["kerfline-68", 150, []],
    ["drifthold-117", 196, ["carbon-stringers"]],
    ["ridgefold-106", 192, ["metal-pair"]],
    ["upleigh-92", 158, []],
  ] as const)("%s at %d cm fits both papers", async (model, lengthCm, reinforcements) => {
    const sheet = factsFor(model, lengthCm, reinforcements);
    for (const paper of ["A4", "LETTER"] as const) {
      const bytes = await drawDocument("build-sheet", composeBuildSheet(sheet), paper);
      const pages = pdfPages(bytes);
      if (readers.hasPdftotext) expect(collisions(bytes)).toEqual([]);
      // One page a part; a long stack may send resin and press to a page of their own.
      expect(pages.length).toBeGreaterThanOrEqual(7);
      expect(pages.length).toBeLessThanOrEqual(8);
      expect(pages.filter((text) => text.includes("3 · Drawing: core"))).toHaveLength(1);
      expect(pages.join(" ")).not.toMatch(/NaN|undefined|Infinity|\[object/);
      const kit = pdfPages(
        await drawDocument("kit-list", composeKitList({ ...sheet, cautions: facts.cautions }), paper),
      ).join(" ");
      expect(kit).toContain(`${sheet.parts.lines.length} lines`);
    }
  });
});

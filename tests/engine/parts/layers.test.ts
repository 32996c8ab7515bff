/** The ski's layers and the parts list, one to the other: no layer without its parts, no part of the ski without its layer. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { milledPocket, type SpecChoices, solveSpec } from "#engine/configuration";
import { laidLayers, type PartLine, partsFor } from "#engine/parts";
import { catalog, solved, specOf } from "../demo-catalog";

function worked(choices: SpecChoices) {
  const spec = specOf(choices);
  const ski = solved(spec);
  const { lines } = partsFor(spec, ski, catalog.build, catalog.parts);
  return { ski, lines, layers: laidLayers(ski.build, spec.tipTailProtectors) };
}

const isPiece = ({ unit, layers }: PartLine) => layers !== undefined && (unit === "piece" || unit === "set");

/** Every layer has a line with a size, every line names layers that are there. */
function expectOneList(choices: SpecChoices) {
  const { lines, layers } = worked(choices);
  const ids = layers.map(({ id }) => id);
  expect(new Set(ids).size).toBe(ids.length);
  for (const id of ids) {
    const sized = lines.filter((line) => line.layers?.includes(id) && line.lengthMm !== undefined);
    expect(sized.length, `${id} of ${JSON.stringify(choices)}`).toBeGreaterThan(0);
  }
  for (const line of lines.filter(isPiece)) {
    expect(line.layers?.length, line.code).toBeGreaterThan(0);
    for (const id of line.layers ?? []) expect(ids, line.code).toContain(id);
  }
  // A part that goes into the press between the skins belongs to a layer, whatever it is called.
  const laidUp = lines.filter(
    ({ station, mandatoryScan, unit }) => station === "lay-up" && mandatoryScan && unit === "piece",
  );
  expect(laidUp.filter(({ layers: of }) => of === undefined).map(({ code }) => code)).toEqual([]);
}

const windows = [{ fromXMm: 400, toXMm: 600, halfWidthMm: 15 }];

describe("one list of layers and parts", () => {
  it.each<[string, SpecChoices]>([
    ...catalog.build.models.map((model): [string, SpecChoices] => [
      model.name,
      { model: model.id, core: model.core.blend },
    ]),
    ...catalog.build.reinforcements.map((each): [string, SpecChoices] => [each.label, { reinforcements: [each.id] }]),
    ["a window", { core: "aspen-ash-window", graphic: { kind: "house", layout: "same", windows } }],
    ["letters", { base: { left: "black", right: "yellow", inlay: "counterchange", inlayText: "FERN" } }],
    ["a drawn inlay of an older order", { base: { left: "black", right: "bone", inlay: "complex", inlayText: "ELK" } }],
    ["protectors", { tipTailProtectors: true }],
    ["another mount line", { mount: { offsetMm: -20 } }],
    ["pockets in the core", { lightening: true }],
    ["a magnesium plate", { plate: "magnesium" }],
    ["a core of one's own", { core: "own:poplar.maple.aspen.aspen" }],
  ])("%s", (_, choices) => expectOneList(choices));

  it("any model, length and set of options", () => {
    fc.assert(
      fc.property(
        fc.constantFrom(...catalog.build.models),
        fc.nat(),
        fc.subarray(catalog.build.reinforcements.map(({ id }) => id)),
        fc.double({ min: 0.65, max: 1.44, noNaN: true }),
        fc.boolean(),
        (model, at, reinforcements, flexRatio, tipTailProtectors) => {
          const lengthCm = model.lengths[at % model.lengths.length]?.lengthCm ?? 0;
          const core = model.core.blend;
          const choices = { model: model.id, lengthCm, core, reinforcements, flexRatio, tipTailProtectors };
          fc.pre(solveSpec(specOf(choices), catalog.build).ok);
          expectOneList(choices);
        },
      ),
      { numRuns: 30 },
    );
  });

  it("metal: a foil between each sheet and its cloth, each with its line and as large as the cloth", () => {
    for (const choices of [{ model: "kerfline-68" }, { reinforcements: ["metal-pair"] }] satisfies SpecChoices[]) {
      const { layers, lines } = worked(choices);
      const roles = layers.map(({ role }) => role);
      expect(roles.filter((role) => role === "metal")).toHaveLength(2);
      expect(roles.join(" ")).toMatch(/fabric rubber metal core .* metal rubber fabric/);
      const cloth = lines.find(({ code }) => code === "bottom-fabric");
      for (const code of ["metal-rubber-lower", "metal-rubber-upper"]) {
        const foil = lines.find((line) => line.code === code);
        expect(foil).toMatchObject({ quantityLeft: 1, quantityRight: 1, thicknessMm: 0.15, mandatoryScan: true });
        expect([foil?.lengthMm, foil?.widthMm]).toEqual([cloth?.lengthMm, cloth?.widthMm]);
      }
    }
    expect(worked({}).lines.some(({ code }) => code.startsWith("metal"))).toBe(false);
  });

  it("a second cloth on one side has a line of its own", () => {
    const spec = specOf();
    const ski = solved(spec);
    const [thin, thick] = ["triax-450", "triax-750"].map((id) =>
      catalog.build.materials.fabrics.find((each) => each.id === id),
    );
    if (!thin || !thick) throw new Error("the demo's cloths are gone");
    const layers = ski.build.layers.flatMap((layer) =>
      layer.role === "fabric" && layer.id === "bottom-1"
        ? [layer, { ...layer, id: "bottom-more", material: { ...layer.material, id: thin.id, label: thin.label } }]
        : [layer],
    );
    const { lines } = partsFor(spec, { ...ski, build: { ...ski.build, layers } }, catalog.build, catalog.parts);
    const under = lines.filter(({ line }) => line === 24);
    expect(under.map(({ code, material }) => [code, material])).toEqual([
      ["bottom-fabric", thick.label],
      ["bottom-fabric-bottom-more", thin.label],
    ]);
    const twice = ski.build.layers.flatMap((layer) =>
      layer.role === "fabric" && layer.id === "bottom-1" ? [layer, { ...layer, id: "bottom-more" }] : [layer],
    );
    const both = partsFor(spec, { ...ski, build: { ...ski.build, layers: twice } }, catalog.build, catalog.parts);
    expect(both.lines.filter(({ line }) => line === 24)).toMatchObject([
      { quantityLeft: 2, quantityRight: 2, layers: ["bottom-1", "bottom-more"] },
    ]);
  });

  it("the plate and its rubber lie in their pocket, of every model", () => {
    for (const model of catalog.build.models) {
      const { ski, lines } = worked({ model: model.id, core: model.core.blend });
      const { plate } = ski.build;
      if (!plate) throw new Error("a finished ski without its plate");
      const pocket = milledPocket(plate, catalog.build.rules);
      for (const code of ["plate", "plate-rubber"]) {
        const found = lines.find((line) => line.code === code);
        expect(found?.lengthMm).toBeLessThan(pocket.toMm - pocket.fromMm);
        expect(found?.widthMm).toBeLessThan(pocket.widthMm);
      }
      expect(plate.thicknessMm + plate.rubberMm).toBeLessThan(pocket.depthMm);
    }
  });

  it("some fifty pieces stay in a plain pair", () => {
    // 14 strips, 4 walls, 4 spacers, 2 plates with rubber and mat, 2 bases, 2 sets of steel with 4 joints, 8 foils, 4 cloths, 2 tops.
    const pieces = worked({})
      .lines.filter(isPiece)
      .reduce((sum, line) => sum + line.quantityLeft + line.quantityRight, 0);
    expect(pieces).toBe(14 + 4 + 4 + 6 + 2 + 2 + 4 + 8 + 4 + 2);
  });
});

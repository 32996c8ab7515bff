/** The stack of one ski, layer by layer from the base, and its corrections of scatter: by hand from the catalogue's placements. */
import { describe, expect, it } from "vitest";
import { type SpecChoices, skiBuildFor, spreadOf } from "#engine/configuration";
import { catalog, solved, specOf } from "../demo-catalog";

const { build } = catalog;
const cloth = (id: string) => build.materials.fabrics.find((each) => each.id === id) ?? expect.fail(id);
const sheet = (id: string) => build.materials.sheets.find((each) => each.id === id) ?? expect.fail(id);

function layers(choices: SpecChoices) {
  const ski = skiBuildFor(specOf(choices), build);
  if (!ski.ok) throw new Error(JSON.stringify(ski.refusal));
  return ski.value.layers;
}
const layer = (choices: SpecChoices, id: string) => layers(choices).find((each) => "id" in each && each.id === id);

describe("what is ordered lies in its place", () => {
  it.each(build.reinforcements.map((each) => [each.id, each] as const))("%s", (id, { placement }) => {
    if (placement.kind === "metal-pair") {
      const metal = sheet(placement.sheet);
      const rubber = sheet(build.rules.edgeRubber.material);
      for (const face of ["bottom", "top"]) {
        expect(layer({ reinforcements: [id] }, `${id}-${face}`)).toMatchObject({
          role: "metal",
          thicknessMm: placement.thicknessMm,
          extent: { kind: "full" },
          material: { label: metal.label, exMpa: metal.modulusMpa },
        });
        expect(layer({ reinforcements: [id] }, `${id}-rubber-${face}`)).toMatchObject({
          role: "rubber",
          thicknessMm: placement.rubberMm,
          extent: { kind: "full" },
          material: { label: rubber.label, gxyMpa: rubber.shearModulusMpa },
        });
      }
      return;
    }
    const fabric = cloth(placement.fabric);
    const { label, exMpa, eyMpa, gxyMpa, nuXy, densityKgM3, fibresDeg } = fabric;
    for (const face of ["bottom", "top"] as const) {
      const found = layer({ reinforcements: [id] }, `${id}-${face}`);
      if (!placement.faces.includes(face)) expect(found).toBeUndefined();
      else
        expect(found).toEqual({
          role: "fabric",
          id: `${id}-${face}`,
          material: { id: fabric.id, label, exMpa, eyMpa, gxyMpa, nuXy, densityKgM3, fibresDeg },
          fromOption: id,
          thicknessMm: fabric.thicknessMm,
          extent:
            placement.kind === "stringers"
              ? { kind: "bands", count: placement.perFace, bandWidthMm: placement.bandWidthMm }
              : { kind: "full" },
        });
    }
  });

  it("the model's own layers keep their thickness: sheets as the lay-up says, cloths as cured", () => {
    for (const model of build.models) {
      const own = layers({ model: model.id }).filter((each) => each.role !== "mat");
      expect(own.map((each) => each.role)).toEqual(model.layup.map((each) => each.role));
      model.layup.forEach((given, i) => {
        const built = own[i];
        if (given.role === "core" || built?.role === "core" || !built) return;
        expect(built.thicknessMm).toBe(given.role === "fabric" ? cloth(given.material).thicknessMm : given.thicknessMm);
        expect(built.material.label).toBe(
          given.role === "fabric" ? cloth(given.material).label : sheet(given.material).label,
        );
      });
    }
  });

  it("the mat lies on the wood, as thick and as stiff as its cloth", () => {
    const mat = cloth(build.rules.mat.fabric);
    expect(layer({}, "binding-mat")).toMatchObject({
      role: "mat",
      thicknessMm: mat.thicknessMm,
      material: { label: mat.label, exMpa: mat.exMpa },
    });
  });

  it("a touring plate is another one, where the rules say so", () => {
    const plateOf = (model: string) => {
      const ski = skiBuildFor(specOf({ model }), build);
      return ski.ok ? ski.value.plate : undefined;
    };
    const own = build.rules.plate.byUse?.touring ?? expect.fail("no touring plate");
    expect(plateOf("upleigh-92")).toMatchObject({
      thicknessMm: own.thicknessMm,
      material: { label: sheet(own.material).label },
    });
    expect(plateOf("midlow-95")).toMatchObject({
      thicknessMm: build.rules.plate.thicknessMm,
      material: { label: sheet(build.rules.plate.material).label },
      rubber: { label: sheet(build.rules.plate.rubber).label },
    });
  });
});

describe("how sure a spec is", () => {
  const book = (differenceLeft?: { spring: number; mass: number }) => ({
    ...build,
    corrections: {
      version: "B",
      moduli: {},
      densities: {},
      coreOffsetMm: 0,
      camberOffsetMm: 0,
      ...(differenceLeft ? { differenceLeft } : {}),
    },
  });
  const model = (shop: ReturnType<typeof book>) =>
    spreadOf(solved(specOf(), shop), shop)?.bySource.find((each) => each.source === "model");

  it("is worked out once for a solution and a mount line", () => {
    const one = solved(specOf());
    expect(spreadOf(one, build)).toBe(spreadOf(one, build));
    expect(spreadOf(solved(specOf({ mount: { offsetMm: 20 } })), build)).not.toBe(spreadOf(one, build));
  });

  it("the model leaves out no more than the book's own fit did: the less of the two", () => {
    const { modelSpring, modelMass } = build.rules.scatter ?? expect.fail("no scatter");
    expect(model(book())?.springCentre).toBe(modelSpring);
    expect(model(book({ spring: modelSpring / 2, mass: modelMass * 2 }))?.springCentre).toBe(modelSpring / 2);
    expect(model(book({ spring: modelSpring * 2, mass: modelMass }))?.springCentre).toBe(modelSpring);
    const grams = (mass: number) => model(book({ spring: modelSpring, mass }))?.massG ?? 0;
    expect(grams(modelMass / 2) / grams(modelMass * 2)).toBeCloseTo(0.5, 9);
  });
});

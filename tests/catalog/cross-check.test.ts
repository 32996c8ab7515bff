/** Every disagreement between two files of a release, told by file, place, value and words. */
import { describe, expect, it } from "vitest";
import { CatalogError, type CatalogProblem, catalogFromRelease, loadCatalog, withCorrections } from "#catalog";

// biome-ignore lint/suspicious/noExplicitAny: a release is changed here in ways that no type allows.
type Any = any;
const catalog = loadCatalog();

function problems(change: (files: Any) => void): readonly CatalogProblem[] {
  const files = structuredClone(catalog.release) as Any;
  change(files);
  try {
    catalogFromRelease(files);
    return [];
  } catch (error) {
    if (error instanceof CatalogError) return error.problems;
    throw error;
  }
}

const none = (kind: string) => `there is no ${kind} of this name`;

describe("files that do not agree", () => {
  it.each<[string, (files: Any) => void, Partial<CatalogProblem>]>([
    [
      "a model's core",
      (f) => {
        f["models.json"].models[1].core.blend = "oak";
      },
      { file: "models.json", path: "models.1.core.blend", value: "oak", message: none("core blend") },
    ],
    [
      "a core for other uses",
      (f) => {
        f["models.json"].models[0].core.blend = "paulownia-poplar";
      },
      {
        file: "models.json",
        path: "models.0.core.blend",
        value: "paulownia-poplar",
        message: `this blend is not for "${catalog.build.models[0]?.use}"`,
      },
    ],
    [
      "a base sheet",
      (f) => {
        f["models.json"].models[2].layup[0].material = "tin";
      },
      { file: "models.json", path: "models.2.layup.0.material", value: "tin", message: none("sheet") },
    ],
    [
      "a cloth of the lay-up",
      (f) => {
        f["models.json"].models[2].layup.find((l: Any) => l.role === "fabric").material = "hemp";
      },
      { file: "models.json", value: "hemp", message: none("fabric") },
    ],
    [
      "a mould on the floor",
      (f) => {
        f["models.json"].models[0].lengths[1].mould = "X-1";
      },
      { file: "models.json", path: "models.0.lengths.1.mould", value: "X-1", message: none("mould on the floor") },
    ],
    [
      "a wood",
      (f) => {
        f["blends.json"].blends[3].strips.O = "oak";
      },
      { file: "blends.json", path: "blends.3.strips.O", value: "oak", message: none("wood") },
    ],
    [
      "a reinforcement's cloth",
      (f) => {
        f["reinforcements.json"].reinforcements[1].placement.fabric = "hemp";
      },
      {
        file: "reinforcements.json",
        path: "reinforcements.1.placement.fabric",
        value: "hemp",
        message: none("fabric"),
      },
    ],
    [
      "a reinforcement's metal",
      (f) => {
        f["reinforcements.json"].reinforcements.find((r: Any) => r.placement.kind === "metal-pair").placement.sheet =
          "tin";
      },
      { file: "reinforcements.json", value: "tin", message: none("sheet") },
    ],
    ...(
      [
        "sidewall.material",
        "edge.material",
        "edgeRubber.material",
        "spacers.material",
        "plate.material",
        "plate.rubber",
        "plate.byUse.touring.material",
      ] as const
    ).map((path): [string, (files: Any) => void, Partial<CatalogProblem>] => [
      path,
      (f) => {
        const keys = path.split(".");
        const last = keys.pop() ?? "";
        keys.reduce((inner, key) => inner[key], f["build-rules.json"])[last] = "tin";
      },
      { file: "build-rules.json", path, value: "tin", message: none("sheet") },
    ]),
    [
      "the mat's cloth",
      (f) => {
        f["build-rules.json"].mat.fabric = "hemp";
      },
      { file: "build-rules.json", path: "mat.fabric", value: "hemp", message: none("fabric") },
    ],
    [
      "a model without a price",
      (f) => {
        delete f["price-books.json"].priceBooks[0].modelCents["midlow-95"];
      },
      {
        file: "price-books.json",
        path: "priceBooks.0.modelCents.midlow-95",
        value: undefined,
        message: `${catalog.priceBooks[0]?.id} has no price for "midlow-95"`,
      },
    ],
    [
      "a price without a model",
      (f) => {
        f["price-books.json"].priceBooks[1].modelCents.ghost = 100_000;
      },
      { file: "price-books.json", path: "priceBooks.1.modelCents.ghost", value: "ghost", message: none("model") },
    ],
    [
      "a reinforcement without a price",
      (f) => {
        delete f["price-books.json"].priceBooks[0].optionCents.flax;
      },
      {
        path: "priceBooks.0.optionCents.flax",
        value: undefined,
        message: `${catalog.priceBooks[0]?.id} has no price for "flax"`,
      },
    ],
    [
      "a core without its price",
      (f) => {
        delete f["price-books.json"].priceBooks[0].optionCents["core-window"];
      },
      { path: "priceBooks.0.optionCents.core-window" },
    ],
  ])("%s", (_what, change, expected) => {
    expect(problems(change)[0]).toMatchObject(expected);
  });

  it("two lengths on one mould: the later is told of the model that has it", () => {
    const found = problems((f) => {
      f["models.json"].models[1].lengths[0].mould = f["models.json"].models[0].lengths[0].mould;
    });
    expect(found).toEqual([
      {
        file: "models.json",
        path: "models.1.lengths.0.mould",
        value: catalog.build.models[0]?.lengths[0]?.mould,
        message: `this mould is already one of ${catalog.build.models[0]?.id}`,
      },
    ]);
  });

  it("a book of corrections for a material that nobody has", () => {
    const book = (moduli: Record<string, number>, densities: Record<string, number>) => ({
      version: "CB-1",
      moduli,
      densities,
      coreOffsetMm: 0,
      camberOffsetMm: 0,
    });
    const told = (...args: Parameters<typeof book>) => {
      try {
        return withCorrections(catalog, book(...args));
      } catch (error) {
        return error instanceof CatalogError ? error.problems : error;
      }
    };
    expect(told({ hemp: 1.1 }, {})).toEqual([
      { file: "corrections.json", path: "moduli.hemp", value: "hemp", message: none("material") },
    ]);
    expect(told({}, { hemp: 1.1 })).toEqual([
      { file: "corrections.json", path: "densities.hemp", value: "hemp", message: none("material") },
    ]);
    const learnt = withCorrections(catalog, book({ ash: 1.1, "triax-750": 1.1, steel: 1 }, {}));
    expect(learnt.build.corrections?.moduli.ash).toBe(1.1);
    expect(learnt.hash).not.toBe(catalog.hash);
    expect([learnt.copy, learnt.safety]).toEqual([catalog.copy, catalog.safety]);
  });

  it("a file that is no part of a release, and a release that is none", () => {
    expect(
      problems((f) => {
        f["extra.json"] = {};
      }),
    ).toEqual([{ file: "extra.json", path: "", value: undefined, message: "is not part of a release" }]);
    for (const nothing of [null, "x", 5]) expect(() => catalogFromRelease(nothing)).toThrow(CatalogError);
  });

  it("a field beside those that are known is named where it stands, with its value", () => {
    expect(
      problems((f) => {
        f["fit.json"].extra = 5;
      }),
    ).toMatchObject([{ file: "fit.json", path: "extra", value: 5, message: "unknown field" }]);
  });
});

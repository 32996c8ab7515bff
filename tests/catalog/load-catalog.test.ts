/** The catalogue at the door: what is read, what is refused and how it says so. */
import { cpSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import {
  CatalogError,
  type CatalogProblem,
  catalogFromRelease,
  engineCatalog,
  loadCatalog,
  priceBookNamed,
  priceBookOn,
} from "#catalog";
import { keptOnCancellation } from "#engine/floor";
import { priceSpec } from "#engine/pricing";
import { isoDate } from "#engine/units";
import { plainSpec } from "../engine/pricing/plain-spec";

type Json = Record<string, unknown>;

/** Loads a copy of content in which one file was changed, and tells what is wrong with it. */
function problemsAfter(file: string, change: (content: never) => unknown): readonly CatalogProblem[] {
  const root = mkdtempSync(path.join(os.tmpdir(), "content-"));
  onTestFinished(() => rmSync(root, { recursive: true }));
  cpSync("content", root, { recursive: true });
  const at = path.join(root, file);
  const content = JSON.parse(readFileSync(at, "utf8")) as never;
  const changed = change(content) ?? content;
  writeFileSync(at, typeof changed === "string" ? changed : JSON.stringify(changed));
  try {
    loadCatalog(root);
    return [];
  } catch (error) {
    if (error instanceof CatalogError) return error.problems;
    throw error;
  }
}

describe("loadCatalog", () => {
  it("reads the demo shop: eight models, one retired, and 33 active model-lengths, each on its own mould", () => {
    const { build } = loadCatalog();
    const active = build.models.filter((model) => model.state === "active");
    expect([build.models.length, active.length]).toEqual([8, 7]);
    const moulds = active.flatMap((model) => model.lengths.map((length) => length.mould));
    expect(moulds).toHaveLength(33);
    expect(new Set(moulds).size).toBe(33);
  });

  it("freezes everything", () => {
    const { build } = loadCatalog();
    const model = build.models[0] as unknown as { shape: { waistWidthMm: number } };
    expect(() => {
      model.shape.waistWidthMm = 1;
    }).toThrow(TypeError);
  });

  it("names file, path and value of a number beyond its limit", () => {
    const [problem] = problemsAfter("catalog/models.json", (file: { models: { shape: Json }[] }) => {
      for (const model of file.models.slice(0, 1)) model.shape.waistWidthMm = 680;
    });
    expect(problem).toMatchObject({ file: "models.json", path: "models.0.shape.waistWidthMm", value: 680 });
    expect(problem?.message).toContain("160");
  });

  it("names field, value and limit of what extra capacity costs, and reads it beside a release", () => {
    const before = loadCatalog();
    const problems = problemsAfter("catalog/remedies.json", (file: { overtime: Json; secondPress: Json }) => {
      file.overtime.centsPerPersonHour = -1;
      file.overtime.minutesAnEvening = 400;
      file.secondPress.kind = "lukewarm";
    });
    expect(problems.map(({ path, value, message }) => [path, value, message])).toEqual([
      ["overtime.centsPerPersonHour", -1, "Overtime, cents an hour -1 is below 0"],
      ["overtime.minutesAnEvening", 400, "Minutes an evening 400 is above 360"],
      ["secondPress.kind", "lukewarm", expect.stringContaining("is not one of heated, cold")],
    ]);
    // Money of the shop's own, in no pair's release: nothing that was sold depends on it.
    expect(Object.keys(before.release as Json)).not.toContain("remedies.json");
  });

  it("names field, value and limit of what guests may ask for, and reads it beside a release", () => {
    const problems = problemsAfter("catalog/doors.json", (file: { sheet: Json; quote: Json }) => {
      file.sheet.each = 0;
      file.quote.all = 19;
    });
    expect(problems.map(({ path, value, message }) => [path, value, message])).toEqual([
      ["sheet.each", 0, "sheet, one guest an hour 0 is below 1"],
      ["quote.all", 19, "quote: all guests together may not ask for less than one of them"],
    ]);
    expect(Object.keys(loadCatalog().release as Json)).not.toContain("doors.json");
  });

  it("names an unknown field, a missing file and a file that is not JSON", () => {
    expect(problemsAfter("catalog/fit.json", (file: Json) => ({ ...file, lenghtPerCm: 0.5 }))).toMatchObject([
      { file: "fit.json", path: "lenghtPerCm", value: 0.5, message: "unknown field" },
    ]);
    expect(problemsAfter("catalog/shop.json", () => "{")).toMatchObject([{ file: "shop.json" }]);
    expect(() => loadCatalog("no-such-folder")).toThrow(/models.json: cannot be read/);
  });

  it("lists all problems at once", () => {
    const problems = problemsAfter("catalog/blends.json", (file: { blends: { strips: Json }[] }) => {
      for (const blend of file.blends.slice(0, 2)) blend.strips.C = "oak";
    });
    expect(problems.map((problem) => problem.path)).toEqual(["blends.0.strips.C", "blends.1.strips.C"]);
    expect(problems[0]).toMatchObject({ file: "blends.json", value: "oak" });
  });

  it.each([
    [
      "a mould of two model-lengths",
      "catalog/models.json",
      (file: { models: { lengths: Json[] }[] }) => {
        for (const length of file.models[1]?.lengths.slice(0, 1) ?? []) length.mould = "K68-150";
      },
      "models.1.lengths.0.mould",
    ],
    [
      "a fabric that no file knows",
      "catalog/reinforcements.json",
      (file: { reinforcements: { id: string; placement: Json }[] }) => {
        for (const each of file.reinforcements) if (each.id === "flax") each.placement.fabric = "hemp";
      },
      "reinforcements.2.placement.fabric",
    ],
    [
      "an option without a price",
      "catalog/price-books.json",
      (file: { priceBooks: { optionCents: Json }[] }) => {
        for (const book of file.priceBooks.slice(0, 1)) delete book.optionCents.flax;
      },
      "priceBooks.0.optionCents.flax",
    ],
    [
      "a sidewall of nothing",
      "catalog/build-rules.json",
      (file: { sidewall: Json }) => {
        file.sidewall.material = "cork";
      },
      "sidewall.material",
    ],
    [
      "a hole between flex classes",
      "catalog/flex-classes.json",
      (file: { flexClasses: Json[] }) => {
        for (const each of file.flexClasses.slice(0, 1)) each.below = 0.77;
      },
      "flexClasses.0.below",
    ],
    [
      "words with a broken place",
      "copy/refusals.json",
      (file: Json) => {
        file["no-price"] = "{item has no price";
      },
      "no-price",
    ],
  ] as const)("cannot use %s", (_what, file, change, at) => {
    const problems = problemsAfter(file, change as (content: never) => unknown);
    expect(problems.map((problem) => problem.path)).toEqual([at]);
  });
});

describe("the shop's time zone and currency", () => {
  it("are the shop file's for the floor and for every price book", () => {
    const moved = structuredClone(loadCatalog().release) as { "shop.json": Json };
    moved["shop.json"].timeZone = "Asia/Kathmandu";
    const { shop, floor, priceBooks } = catalogFromRelease(moved);
    expect(floor.hours.timeZone).toBe("Asia/Kathmandu");
    expect(priceBooks.map(({ currency }) => currency)).toEqual(priceBooks.map(() => shop.currency));
  });

  it("are refused a second home in content", () => {
    const zone = problemsAfter("catalog/floor.json", (file: { hours: Json }) => {
      file.hours.timeZone = "America/Denver";
    });
    expect(zone).toMatchObject([{ file: "floor.json", path: "hours.timeZone", value: "America/Denver" }]);
    const currency = problemsAfter("catalog/price-books.json", (file: { priceBooks: Json[] }) => {
      for (const book of file.priceBooks.slice(1)) book.currency = "USD";
    });
    expect(currency).toMatchObject([{ file: "price-books.json", path: "priceBooks.1.currency", value: "USD" }]);
  });
});

describe("catalogFromRelease", () => {
  it("rebuilds the same catalogue from what was stored, whatever the order of its members", () => {
    const now = loadCatalog();
    const stored = JSON.parse(JSON.stringify(now.release)) as Json;
    const turned = Object.fromEntries(Object.entries(stored).toReversed());
    const again = catalogFromRelease(turned);
    expect(again.hash).toBe(now.hash);
    expect(engineCatalog(again, priceBookNamed(again, "PB-3"))).toEqual(
      engineCatalog(now, priceBookNamed(now, "PB-3")),
    );
  });

  it("has another hash as soon as one value differs, and still gives the old price", () => {
    const now = loadCatalog();
    const old = structuredClone(now.release) as { "price-books.json": { priceBooks: { modelCents: Json }[] } };
    for (const book of old["price-books.json"].priceBooks) book.modelCents["midlow-95"] = 150_000;
    const stored = catalogFromRelease(old);
    expect(stored.hash).not.toBe(now.hash);
    const price = priceSpec(plainSpec, priceBookNamed(stored, "PB-3"), stored.build, { destination: "home" });
    expect(price).toMatchObject({ ok: true, value: { exTaxCents: 150_000 } });
  });

  it("reads a release from before the base roll had rules, as it was built", () => {
    const old = structuredClone(loadCatalog().release) as { "parts.json": { cut: Json } };
    const { baseRollWidthMm: _width, baseNestMarginMm: _margin, ...cut } = old["parts.json"].cut;
    const stored = catalogFromRelease({ ...old, "parts.json": { ...old["parts.json"], cut } });
    expect(stored.parts.cut).toMatchObject({ baseRollWidthMm: 300, baseNestMarginMm: 10 });
  });

  it("reads a release from when zone and currency stood in three files, as the same shop", () => {
    const now = loadCatalog();
    const old = structuredClone(now.release) as {
      "floor.json": { hours: Json };
      "price-books.json": { priceBooks: Json[] };
    };
    old["floor.json"].hours.timeZone = "America/Denver";
    for (const book of old["price-books.json"].priceBooks) book.currency = "USD";
    const stored = catalogFromRelease(old);
    expect(stored.hash).not.toBe(now.hash);
    expect(stored.floor).toEqual(now.floor);
    expect(stored.priceBooks).toEqual(now.priceBooks);
    expect([stored.floor.hours.timeZone, stored.priceBooks[0]?.currency]).toEqual(["America/Denver", "USD"]);
  });

  it("cannot read what is not a release", () => {
    expect(() => catalogFromRelease(null)).toThrow(CatalogError);
    expect(() => catalogFromRelease({ ...loadCatalog().release, "notes.json": {} })).toThrow(/not part of a release/);
  });
});

describe("priceBookOn", () => {
  const catalog = loadCatalog();

  it("changes to the next book on its own first day", () => {
    expect(priceBookOn(catalog, isoDate("2027-02-28")).id).toBe("PB-3");
    expect(priceBookOn(catalog, isoDate("2027-03-01")).id).toBe("PB-4");
  });

  it("cannot price a day before the first book", () => {
    expect(() => priceBookOn(catalog, isoDate("2020-01-01"))).toThrow(/2020-01-01/);
    expect(() => priceBookNamed(catalog, "PB-9")).toThrow(/PB-9/);
  });

  it("asks 40 more for every model in PB-4 and the same for every option", () => {
    const [old, next] = [priceBookNamed(catalog, "PB-3"), priceBookNamed(catalog, "PB-4")];
    for (const [model, cents] of Object.entries(old.modelCents)) expect(next.modelCents[model]).toBe(cents + 4_000);
    expect(next.optionCents).toEqual(old.optionCents);
  });
});

describe("the shop's cancellation ladder", () => {
  it("keeps 577.50 of 1925 once the core is milled, and gives back 385.00 of the deposit", () => {
    const amounts = { totalCents: 192_500, artFeeCents: 15_000 };
    const kept = keptOnCancellation(loadCatalog().shop.cancellation, "core-milled", amounts);
    expect([kept, 96_250 - kept]).toEqual([57_750, 38_500]);
  });
});

/** The catalogue's small tools, by hand: one text for one value, how a problem is told, words, books by their day. */
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { describe, expect, it, onTestFinished } from "vitest";
import { CatalogError, engineCatalog, loadCatalog, priceBookNamed, priceBookOn } from "#catalog";
import { canonicalJson, sha256Of } from "#catalog/canonical-json";
import { readCopy } from "#catalog/copy";
import { deepFreeze } from "#catalog/deep-freeze";
import { isoDate } from "#engine/units";

describe("canonicalJson", () => {
  it("is one text for one value, whatever the order of its members; lists keep theirs", () => {
    expect(canonicalJson({ b: [{ d: 1, c: null }, "x"], a: { z: 1, y: [2, 1] } })).toBe(
      '{"a":{"y":[2,1],"z":1},"b":[{"c":null,"d":1},"x"]}',
    );
    expect(canonicalJson({ B: 1, a: 2, _: 3 })).toBe('{"B":1,"_":3,"a":2}');
  });

  it("has the SHA-256 that the standard gives (FIPS 180-4: of the text {} it is 44136fa3…)", () => {
    expect(sha256Of({})).toBe("44136fa355b3678a1146ad16f7e8649e94fb4fc21fe77e8310c060f61caaff8a");
    expect(sha256Of({ a: 1, b: 2 })).toBe(sha256Of({ b: 2, a: 1 }));
    expect(sha256Of([1, 2])).not.toBe(sha256Of([2, 1]));
  });
});

describe("a problem of the catalogue", () => {
  const told = (value: unknown, at = "models.0") =>
    new CatalogError([{ file: "f.json", path: at, value, message: "is wrong" }]).message.split("\n")[1];

  it("names file and place, and shows a value in at most 80 letters", () => {
    expect(told(5)).toBe("  f.json at models.0: is wrong (it is 5)");
    expect(told(undefined)).toBe("  f.json at models.0: is wrong");
    expect(told(null, "")).toBe("  f.json: is wrong (it is null)");
    // With its quotes 80 letters are whole; 81 are cut to 77 and a mark.
    expect(told("x".repeat(78))).toBe(`  f.json at models.0: is wrong (it is "${"x".repeat(78)}")`);
    expect(told("x".repeat(79))).toBe(`  f.json at models.0: is wrong (it is "${"x".repeat(76)}…)`);
    expect(told(() => 1)).toContain("it is () => 1");
  });

  it("lists all of them under one head", () => {
    const error = new CatalogError([1, 2].map((value) => ({ file: "f.json", path: "", value, message: "m" })));
    expect(error.name).toBe("CatalogError");
    expect(error.message.split("\n")).toEqual([
      "The catalogue cannot be used:",
      "  f.json: m (it is 1)",
      "  f.json: m (it is 2)",
    ]);
  });
});

describe("words", () => {
  function folderWith(files: Readonly<Record<string, string>>): string {
    const folder = mkdtempSync(path.join(os.tmpdir(), "copy-"));
    onTestFinished(() => rmSync(folder, { recursive: true }));
    mkdirSync(path.join(folder, "deeper"));
    for (const [name, text] of Object.entries(files)) writeFileSync(path.join(folder, name), text);
    return folder;
  }
  const refusals = JSON.stringify({ unknown: "Something is wrong" });

  it("are the JSON files of a folder by name, refusals beside them", () => {
    const copy = readCopy(folderWith({ "refusals.json": refusals, "desk.json": '{"a":"b"}', "notes.txt": "{" }));
    expect(copy).toEqual({
      refusals: { unknown: "Something is wrong" },
      pages: { refusals: { unknown: "Something is wrong" }, desk: { a: "b" } },
    });
  });

  it("need refusals, and every file must be read and hold", () => {
    expect(() => readCopy(folderWith({ "desk.json": '{"a":"b"}' }))).toThrow("refusals.json: is missing");
    expect(() => readCopy(folderWith({ "refusals.json": "{" }))).toThrow("refusals.json: cannot be read");
    expect(() => readCopy(folderWith({ "refusals.json": refusals, "desk.json": '{"a":""}' }))).toThrow("desk.json");
    expect(() => readCopy(folderWith({ "refusals.json": "{}" }))).toThrow('needs words for "unknown"');
  });
});

describe("price books", () => {
  const catalog = loadCatalog();
  const [first] = catalog.priceBooks;
  const books = (...days: readonly string[]) => ({
    priceBooks: days.map((day) => ({ ...(first ?? expect.fail("no book")), id: day, effectiveFrom: isoDate(day) })),
  });

  it("hold from their first day on until the next begins", () => {
    const shop = books("2026-01-10", "2026-03-01");
    const on = (day: string) => priceBookOn(shop, isoDate(day)).id;
    expect(["2026-01-10", "2026-02-28", "2026-03-01", "2030-01-01"].map(on)).toEqual([
      "2026-01-10",
      "2026-01-10",
      "2026-03-01",
      "2026-03-01",
    ]);
    expect(() => on("2026-01-09")).toThrow("day 2026-01-09 is before the first price book, 2026-01-10");
    expect(() => priceBookNamed(shop, "PB-0")).toThrow('price book "PB-0"');
  });

  it("stand by their first day, earliest first, in the shop's currency", () => {
    const days = catalog.priceBooks.map((book) => book.effectiveFrom);
    expect(days.length).toBeGreaterThan(1);
    expect(days).toEqual(days.toSorted());
    for (const book of catalog.priceBooks) expect(book.currency).toBe(catalog.shop.currency);
  });

  it("go to the engine one at a time, without releases and terms", () => {
    const one = engineCatalog(catalog, first ?? expect.fail("no book"));
    expect(Object.keys(one).sort()).toEqual(["build", "finish", "fit", "parts", "priceBook"]);
    expect(Object.keys(one.finish).sort()).toEqual(["bevels", "structureBySnow", "structureUnanswered"]);
    expect([one.priceBook, one.build, one.fit, one.parts]).toEqual([first, catalog.build, catalog.fit, catalog.parts]);
  });
});

describe("deepFreeze", () => {
  it("freezes to the last list and hands the same value back", () => {
    const value = { a: [{ b: { c: 1 } }], d: null, e: "x" };
    expect(deepFreeze(value)).toBe(value);
    for (const part of [value, value.a, value.a[0], value.a[0]?.b]) expect(Object.isFrozen(part)).toBe(true);
  });
});

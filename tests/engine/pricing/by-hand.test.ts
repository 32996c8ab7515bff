/** Lines, refusals and joins of prices by hand, on a small invented book. */
import { describe, expect, it } from "vitest";
import { loadCatalog, priceBookNamed } from "#catalog";
import type { PairSpec } from "#engine/configuration";
import {
  comparePrices,
  joinPrices,
  type Price,
  type PriceBook,
  type PriceTerms,
  priceSpec,
  splitByLargestRemainder,
} from "#engine/pricing";
import { plainSpec } from "./plain-spec";

const catalog = loadCatalog();
const book = priceBookNamed(catalog, "PB-3");
const { build } = catalog;
const price = (spec: Partial<PairSpec> = {}, terms: Partial<PriceTerms> = {}, by: PriceBook = book) =>
  priceSpec({ ...plainSpec, ...spec }, by, build, { destination: "home", ...terms });
const priced = (...args: Parameters<typeof price>): Price => {
  const found = price(...args);
  if (!found.ok) throw new Error(JSON.stringify(found.refusal));
  return found.value;
};
const codes = (found: Price) => found.lines.map((line) => line.code);

describe("lines", () => {
  it("of a pair name the model with its length, and are goods; extras and the rush are services", () => {
    const found = priced(
      {},
      { extras: [{ code: "designer-hour", quantity: 2 }], rush: { reason: "r", approvedBy: "o" } },
    );
    const hour = book.optionCents["designer-hour"];
    expect(
      found.lines.map(({ code, label, quantity, unitCents, lineCents, taxClass }) => [
        code,
        label,
        quantity,
        unitCents,
        lineCents,
        taxClass,
      ]),
    ).toEqual([
      ["midlow-95", "Midlow 95, 178 cm", 1, book.modelCents["midlow-95"], book.modelCents["midlow-95"], "goods"],
      ["designer-hour", hour?.label, 2, hour?.cents, 2 * (hour?.cents ?? 0), "service"],
      ["rush", book.rush.label, 1, expect.any(Number), expect.any(Number), "service"],
    ]);
    expect([found.priceBook, found.currency, found.destination]).toEqual(["PB-3", book.currency, "home"]);
  });

  it("charge a flex outside the classes that the book includes, whatever the class", () => {
    // Classes from 0.62 to 1.45; a book that includes them all charges what lies outside them alone.
    const all = { ...book, flexClassesIncluded: [1, 2, 3, 4, 5] as PriceBook["flexClassesIncluded"] };
    const outside = (flexRatio: number) => codes(priced({ flexRatio }, {}, all)).includes("flex-outside-classes");
    expect([0.61, 0.62, 1, 1.44, 1.45].map(outside)).toEqual([true, false, false, false, true]);
    const three = { ...book, flexClassesIncluded: [3] as PriceBook["flexClassesIncluded"] };
    expect(
      [0.91, 0.92, 1.07, 1.08].map((flexRatio) =>
        codes(priced({ flexRatio }, {}, three)).includes("flex-outside-classes"),
      ),
    ).toEqual([true, false, false, true]);
  });

  it("charge an own picture once, as a pair's where it is drawn for both skis", () => {
    const own = (layout: PairSpec["graphic"]["layout"]) =>
      codes(priced({ graphic: { kind: "own", layout, windows: [] } }))[1];
    expect((["same", "mirrored", "alternate", "continuing", "independent"] as const).map(own)).toEqual([
      "graphic-own",
      "graphic-own",
      "graphic-own",
      "graphic-own-pair",
      "graphic-own-pair",
    ]);
  });

  it("charge a mount beyond the limit either way", () => {
    const limit = build.rules.mountOffsetReviewMm;
    expect(
      [limit, limit + 1, -limit, -limit - 1].map((offsetMm) =>
        codes(priced({ mount: { offsetMm } })).includes("mount-review"),
      ),
    ).toEqual([false, true, false, true]);
  });
});

describe("no price", () => {
  const refused = (...args: Parameters<typeof price>) => {
    const found = price(...args);
    return found.ok ? null : found.refusal;
  };
  const no = (path: string, item: string) => ({ code: "no-price", path, item, priceBook: "PB-3" });
  const without = (code: string): PriceBook => ({
    ...book,
    optionCents: Object.fromEntries(Object.entries(book.optionCents).filter(([key]) => key !== code)),
  });

  it("is told by the place and the item", () => {
    expect(refused({ model: "x" })).toEqual(no("model", "x"));
    expect(refused({}, {}, { ...book, modelCents: {} })).toEqual(no("model", "midlow-95"));
    expect(refused({ core: "x" })).toEqual(no("core", "x"));
    expect(refused({ reinforcements: ["x"] })).toEqual(no("reinforcements.0", "x"));
    expect(refused({ reinforcements: ["flax"] }, {}, without("flax"))).toEqual(no("option", "flax"));
    expect(
      refused(
        {},
        {
          extras: [
            { code: "designer-hour", quantity: 1 },
            { code: "x", quantity: 1 },
          ],
        },
      ),
    ).toEqual(no("extras.1.code", "x"));
  });

  it("is told of a discount: too many, unknown, without reason or approval, too high", () => {
    const why = { reason: "r", approvedBy: "o" };
    const given = (...discounts: NonNullable<PriceTerms["discounts"]>) => refused({}, { discounts });
    expect(given({ code: "pro-deal", ...why }, { code: "pro-deal", ...why })).toEqual({
      code: "too-many-discounts",
      path: "discounts",
      given: 2,
      most: 1,
    });
    expect(given({ code: "x", ...why })).toEqual({
      code: "unknown-discount",
      path: "discounts.0.code",
      discount: "x",
      known: book.discounts.map((each) => each.code),
    });
    for (const half of [{ reason: " " }, { approvedBy: "" }])
      expect(given({ code: "pro-deal", ...why, ...half })).toEqual({
        code: "discount-without-reason",
        path: "discounts.0.reason",
        discount: "pro-deal",
      });
    expect(given({ code: "pro-deal", ...why, basisPoints: 2001 })).toEqual({
      code: "discount-too-high",
      path: "discounts.0.basisPoints",
      discount: "pro-deal",
      basisPoints: 2001,
      mostBasisPoints: 2000,
    });
    expect(given({ code: "pro-deal", ...why, basisPoints: 2000 })).toBeNull();
  });
});

describe("prices joined", () => {
  const line = (change: object) => ({ ...priced().lines[0], ...change }) as Price["lines"][number];
  const of = (...lines: Price["lines"]): Price => ({ ...priced(), lines });

  it("put lines together that agree in code, label, unit price, reason and approval, and no others", () => {
    const joined = joinPrices([
      of(line({})),
      of(line({})),
      of(line({ unitCents: 1 })),
      of(line({ label: "other" })),
      of(line({ reason: "r" })),
      of(line({ approvedBy: "o" })),
      of(line({ code: "c" })),
    ]);
    expect(joined.lines.map((each) => each.quantity)).toEqual([2, 1, 1, 1, 1, 1]);
    expect(joined.lines[0]).toEqual({
      ...line({}),
      quantity: 2,
      lineCents: 2 * line({}).lineCents,
      taxCents: 2 * line({}).taxCents,
    });
  });

  it("name every book once and refuse another place or currency", () => {
    expect(joinPrices([priced(), priced(), { ...priced(), priceBook: "PB-4" }]).priceBook).toBe("PB-3, PB-4");
    expect(() => joinPrices([priced(), { ...priced(), destination: "abroad" }])).toThrow(
      /abroad does not go with home/,
    );
    expect(() => joinPrices([priced(), { ...priced(), currency: "XXX" as never }])).toThrow(RangeError);
  });
});

describe("prices compared", () => {
  it("show every line of the new one, then what fell away", () => {
    const before = priced({ reinforcements: ["flax"], tipTailProtectors: true });
    const after = priced({ reinforcements: ["basalt"], tipTailProtectors: true });
    const cents = (code: string) => book.optionCents[code]?.cents ?? 0;
    const found = comparePrices(before, after);
    expect(
      found.lines.map(({ code, change, beforeCents, afterCents, differenceCents }) => [
        code,
        change,
        beforeCents,
        afterCents,
        differenceCents,
      ]),
    ).toEqual([
      ["midlow-95", "same", 159_000, 159_000, 0],
      ["basalt", "added", 0, cents("basalt"), cents("basalt")],
      ["tip-tail-protectors", "same", cents("tip-tail-protectors"), cents("tip-tail-protectors"), 0],
      ["flax", "removed", cents("flax"), 0, -cents("flax")],
    ]);
    expect(found.lines.map((each) => each.label)).toEqual([
      ...after.lines.map((each) => each.label),
      before.lines[1]?.label,
    ]);
    expect(found).toMatchObject({
      exTaxBeforeCents: before.exTaxCents,
      exTaxAfterCents: after.exTaxCents,
      exTaxDifferenceCents: after.exTaxCents - before.exTaxCents,
      totalDifferenceCents: after.totalCents - before.totalCents,
    });
  });
});

describe("shares by largest remainder", () => {
  it("a negative part takes a negative share: 10 among 3, 3, −1 is 6, 6, −2; nothing is shared as nothing", () => {
    // 10·3/5 = 6, 10·(−1)/5 = −2.
    expect(splitByLargestRemainder(10, [3, 3, -1])).toEqual([6, 6, -2]);
    // 7·(2, 2, −1)/3 = 4.67, 4.67, −2.33: floors 4, 4, −3 leave 2 for the remainders 2/3, 2/3, 2/3, the earlier first.
    expect(splitByLargestRemainder(7, [2, 2, -1])).toEqual([5, 5, -3]);
    expect(splitByLargestRemainder(0, [0, 0])).toEqual([0, 0]);
    expect(() => splitByLargestRemainder(5, [1, -1])).toThrow(/weights sum to 0/);
  });
});

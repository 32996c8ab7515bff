/** Prices of the demo shop (price book PB-3 and its rules, invented; every sum is worked beside the expectation). */
import { describe, expect, it } from "vitest";
import { loadCatalog, priceBookNamed } from "#catalog";
import type { PairSpec } from "#engine/configuration";
import {
  artFeeCents,
  comparePrices,
  type Price,
  type PriceBook,
  type PriceTerms,
  priceSpec,
  rushBeside,
} from "#engine/pricing";
import { cents } from "#engine/units";
import { plainSpec } from "./plain-spec";

const catalog = loadCatalog();
const book = priceBookNamed(catalog, "PB-3");

function priced(spec: Partial<PairSpec>, terms: Partial<PriceTerms> = {}, by: PriceBook = book): Price {
  const result = priceSpec({ ...plainSpec, ...spec }, by, catalog.build, { destination: "collect", ...terms });
  if (!result.ok) throw new Error(JSON.stringify(result.refusal));
  return result.value;
}

/** Midlow 95, carbon stringers, own graphic mirrored, letters counterchanged. */
const q212: Partial<PairSpec> = {
  reinforcements: ["carbon-stringers"],
  graphic: { kind: "own", layout: "mirrored", windows: [] },
  base: { left: "black", right: "yellow", inlay: "counterchange", inlayText: "RIDGE" },
};

describe("priceSpec", () => {
  it("prices the pair of scenario 10 at 1590 + 90 + 150 + 95 = 1925, with half as deposit", () => {
    const price = priced(q212);
    expect(price.lines.map((line) => [line.code, line.lineCents])).toEqual([
      ["midlow-95", 159_000],
      ["carbon-stringers", 9_000],
      ["graphic-own", 15_000],
      ["inlay-counterchange", 9_500],
    ]);
    expect(price.exTaxCents).toBe(192_500);
    expect(price.depositCents).toBe(96_250);
    expect(artFeeCents(price)).toBe(15_000);
  });

  it("says that other glass than the model's own is included, and takes nothing for it", () => {
    const [own, other] = [priced(q212), priced(q212, { isOtherCloth: true })];
    expect(other.lines.filter((line) => !own.lines.some(({ code }) => code === line.code))).toMatchObject([
      { code: "cloth-for-flex", quantity: 1, unitCents: 0, lineCents: 0, taxCents: 0 },
    ]);
    expect({ ...other, lines: own.lines }).toEqual(own);
  });

  it("takes for it what a book says, and neither says nor takes anything by a book of before", () => {
    const { "cloth-for-flex": included, ...before } = book.optionCents;
    if (included === undefined) throw new Error("the demo's book includes glass");
    const charging = { ...book, optionCents: { ...before, "cloth-for-flex": { ...included, cents: 1500 } } };
    // 1925 + 15 = 1940.
    expect(priced(q212, { isOtherCloth: true }, charging).exTaxCents).toBe(194_000);
    expect(priced(q212, {}, charging).exTaxCents).toBe(192_500);
    expect(priced(q212, { isOtherCloth: true }, { ...book, optionCents: before })).toEqual(priced(q212));
  });

  it("adds tax at home on the ex-tax total alone: 6 % of 1925 is 115.50", () => {
    const home = priced(q212, { destination: "home" });
    expect([home.taxCents, home.shippingCents, home.totalCents]).toEqual([11_550, 6_500, 210_550]);
    expect(home.balanceCents).toBe(114_300);
    const domestic = priced(q212, { destination: "domestic" });
    expect([domestic.taxCents, domestic.shippingCents]).toEqual([0, 6_500]);
    // Abroad from 180 (price book).
    expect(priced(q212, { destination: "abroad" }).shippingCents).toBe(18_000);
  });

  it("shows 1965 and the one changed line when the quote of scenario 10 is priced anew on PB-4", () => {
    const comparison = comparePrices(priced(q212), priced(q212, {}, priceBookNamed(catalog, "PB-4")));
    expect([comparison.exTaxBeforeCents, comparison.exTaxAfterCents]).toEqual([192_500, 196_500]);
    const changed = comparison.lines.filter((line) => line.change !== "same");
    expect(changed).toEqual([
      {
        code: "midlow-95",
        label: "Midlow 95, 178 cm",
        change: "changed",
        beforeCents: 159_000,
        afterCents: 163_000,
        differenceCents: 4_000,
      },
    ]);
  });

  it("names what came and what went between two specifications", () => {
    const comparison = comparePrices(priced(q212), priced({ ...q212, reinforcements: ["flax"] }));
    expect(comparison.lines.filter((line) => line.change !== "same").map((line) => [line.code, line.change])).toEqual([
      ["flax", "added"],
      ["carbon-stringers", "removed"],
    ]);
    expect(comparison.exTaxDifferenceCents).toBe(-2_000);
  });

  it("charges metal where it is an option, and not where the model is built with it", () => {
    const metal = { reinforcements: ["metal-pair"] };
    expect(priced(metal).exTaxCents).toBe(159_000 + 18_000);
    expect(priced({ ...metal, model: "kerfline-68", lengthCm: 168 }).exTaxCents).toBe(169_000);
  });

  it("charges each thing that a spec asks for by its own line", () => {
    const codes = (spec: Partial<PairSpec>) =>
      priced(spec)
        .lines.map((line) => line.code)
        .slice(1);
    expect(codes({ flexRatio: 0.77 })).toEqual(["flex-outside-classes"]);
    expect(codes({ flexRatio: 1.25 })).toEqual(["flex-outside-classes"]);
    expect(codes({ flexRatio: 1.2 })).toEqual([]);
    expect(codes({ core: "birch-cherry-window" })).toEqual(["core-window"]);
    expect(codes({ mount: { offsetMm: 35 } })).toEqual(["mount-review"]);
    expect(codes({ mount: { offsetMm: -30 } })).toEqual([]);
    expect(codes({ tipTailProtectors: true })).toEqual(["tip-tail-protectors"]);
    expect(codes({ graphic: { kind: "own", layout: "continuing", windows: [] } })).toEqual(["graphic-own-pair"]);
    expect(codes({ base: { left: "black", right: "bone", inlay: "complex" } })).toEqual(["inlay-complex"]);
  });

  it("asks 288.75 for the rush of scenario 21, 15 % of 1925, and never less than 200", () => {
    const rush = { reason: "season opening", approvedBy: "owner" };
    const line = priced(q212, { rush }).lines.at(-1);
    expect(line).toMatchObject({ code: "rush", lineCents: 28_875, ...rush });
    const cheap = { ...book, modelCents: { "midlow-95": 100_000 } };
    expect(priced({}, { rush }, cheap).lines.at(-1)?.lineCents).toBe(20_000);
    // Asked for beside a price that was accepted before, it comes to the same cent as inside one, wherever the skis go.
    for (const destination of ["home", "domestic", "abroad", "collect"] as const) {
      const before = priced(q212, { destination });
      const inside = priced(q212, { destination, rush });
      expect(before.totalCents + rushBeside(before, book).totalCents).toBe(inside.totalCents);
    }
  });

  it("puts no cent of a club's single roundings on the fee", () => {
    // Two pairs of 1 000.08 bear 60.00 each (6 % is 60.0048). 15 % of 2 000.16 is 300.02; 6 % of the whole is 138.01 with
    // the fee (138.0108) and 120.01 without it (120.0096): the fee adds 18.00, not what the two roundings left over.
    const joined = { exTaxCents: cents(200_016), taxCents: cents(12_000), destination: "home" } as const;
    expect(rushBeside(joined, book)).toEqual({ feeCents: 30_002, taxCents: 1_800, totalCents: 31_802 });
  });

  it("takes a discount as a negative line with its reason, on the whole price or the model alone", () => {
    const given = (code: string) => ({ discounts: [{ code, reason: "second winter", approvedBy: "desk" }] });
    // 5 % of 1925 = 96.25
    expect(priced(q212, given("repeat-order")).lines.at(-1)).toMatchObject({
      code: "repeat-order",
      lineCents: -9_625,
      reason: "second winter",
      approvedBy: "desk",
    });
    // 20 % of 1590 = 318
    expect(priced(q212, given("pro-deal")).lines.at(-1)?.lineCents).toBe(-31_800);
  });

  it("cannot stack discounts, exceed a ceiling, leave out a reason, or invent a code", () => {
    const refusal = (discounts: NonNullable<PriceTerms["discounts"]>) => {
      const result = priceSpec(plainSpec, book, catalog.build, { destination: "home", discounts });
      return result.ok ? null : result.refusal;
    };
    const why = { reason: "guide", approvedBy: "owner" };
    expect(
      refusal([
        { code: "pro-deal", ...why },
        { code: "repeat-order", ...why },
      ]),
    ).toMatchObject({
      code: "too-many-discounts",
      given: 2,
      most: 1,
    });
    expect(refusal([{ code: "pro-deal", ...why, basisPoints: 2_001 }])).toMatchObject({ code: "discount-too-high" });
    expect(refusal([{ code: "pro-deal", ...why, basisPoints: 1_000 }])).toBeNull();
    expect(refusal([{ code: "repeat-order", ...why, basisPoints: 400 }])).toMatchObject({ code: "discount-too-high" });
    expect(refusal([{ code: "repeat-order", reason: " ", approvedBy: "desk" }])).toMatchObject({
      code: "discount-without-reason",
    });
    expect(refusal([{ code: "friend", ...why }])).toMatchObject({ code: "unknown-discount", discount: "friend" });
  });

  it("cannot price what the book does not know", () => {
    const result = priceSpec({ ...plainSpec, model: "other" }, book, catalog.build, { destination: "home" });
    expect(result).toMatchObject({ ok: false, refusal: { code: "no-price", path: "model", item: "other" } });
    const stray = priceSpec({ ...plainSpec, reinforcements: ["flax", "hemp"] }, book, catalog.build, {
      destination: "home",
    });
    expect(stray).toMatchObject({ ok: false, refusal: { code: "no-price", path: "reinforcements.1", item: "hemp" } });
    const noHours = { destination: "home", extras: [{ code: "designer-hour", quantity: 0 }] } as const;
    expect(() => priceSpec(plainSpec, book, catalog.build, noHours)).toThrow(/quantity 0 of designer-hour/);
  });
});

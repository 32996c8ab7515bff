/** A quote is made of what its asker saw, or refused with what is different. */
import { describe, expect, it } from "vitest";
import { assess, type Context, createQuote, differencesOf, type QuoteSeen, type SheetId, saveSheet } from "#services";
import { filledSheet } from "../support/builders/sale";
import { must, openShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

async function seenBy(ctx: Context, sheetId: SheetId): Promise<QuoteSeen> {
  const { assessment, dateRange } = must(await assess(ctx, { sheetId }));
  const { p50 = "", p90 = "" } = dateRange ?? {};
  return { version: 1, spec: assessment.spec, totalCents: assessment.price?.totalCents ?? null, dates: { p50, p90 } };
}

describe("a quote of what was seen", () => {
  it("is made when the sheet is what the page showed, whatever else was saved meanwhile", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const sheetId = await filledSheet(shop);
    const seen = await seenBy(desk, sheetId);
    must(await saveSheet(desk, { sheetId, patch: { notes: "calls again" }, baseVersion: 99 }));
    // A browser may come to another last digit of the flex; nobody sees that.
    const flexRatio = (seen.spec?.flexRatio ?? 0) * (1 + 2 ** -52);
    const spec = seen.spec && { ...seen.spec, flexRatio };
    const { quote } = must(await createQuote(desk, { sheetId, seen: { ...seen, spec } }));
    expect(quote.price.totalCents).toBe(seen.totalCents);
  });

  it("is refused with every difference when the sheet has moved, makes nothing, and can be asked for again", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const sheetId = await filledSheet(shop);
    const seen = await seenBy(desk, sheetId);
    const patch = { "choices.model": "midlow-95", "choices.lengthCm": null, "choices.destination": "abroad" };
    must(await saveSheet(shop.as(shop.secondDesk), { sheetId, patch, baseVersion: 99 }));
    const refused = await createQuote(desk, { sheetId, seen });
    if (refused.ok) throw new Error("a quote was made of what nobody saw");
    expect(refused.refusal.code).toBe("sheet-changed");
    const differences = differencesOf(refused.refusal);
    const now = await seenBy(desk, sheetId);
    const model = differences.find(({ path }) => path === "choices.model");
    expect(model).toEqual({ path: "choices.model", seen: seen.spec?.model, now: "midlow-95" });
    const length = differences.find(({ path }) => path === "choices.lengthCm");
    expect(length).toEqual({ path: "choices.lengthCm", seen: seen.spec?.lengthCm, now: now.spec?.lengthCm });
    const price = differences.find(({ path }) => path === "price");
    expect(price).toEqual({ path: "price", seen: seen.totalCents, now: now.totalCents });
    expect(await db().quote.count()).toBe(0);
    must(await createQuote(desk, { sheetId, seen: now }));
  });

  it("compares the day that was told, and nothing that was not shown", async () => {
    const shop = await openShop(db());
    const desk = shop.as(shop.desk);
    const sheetId = await filledSheet(shop);
    const seen = await seenBy(desk, sheetId);
    const early = { p50: "2026-11-11", p90: "2026-11-12" };
    const refused = await createQuote(desk, { sheetId, seen: { ...seen, dates: early } });
    if (refused.ok) throw new Error("a day was told that is not kept");
    expect(differencesOf(refused.refusal)).toEqual([{ path: "date", seen: early, now: seen.dates }]);
    must(await createQuote(desk, { sheetId, seen: { version: 1, spec: null, totalCents: null, dates: null } }));
    expect(differencesOf({ code: "sheet-closed", differences: [{ path: "price", seen: 1, now: 2 }] })).toEqual([]);
  });
});

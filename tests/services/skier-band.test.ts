import { describe, expect, it } from "vitest";
import { type QuoteView, skierBand } from "@/lib/services";
import { acceptedQuote, quotedSheet } from "../support/builders/sale";
import { must, openShop, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

/** One order a skier, each a kilogram heavier and under a number of their own. */
async function order(shop: TestShop, i: number): Promise<void> {
  await acceptedQuote(shop, {
    phone: `303 555 02${String(i).padStart(2, "0")}`,
    name: `Skier ${i}`,
    answers: { "typed.mass": { unit: "kg", kg: 75 + i } },
    choices: { "choices.model": "midlow-95", "choices.lengthCm": 178, "choices.flexRatio": 1 },
  });
}

describe("skierBand", () => {
  it("says nothing below ten orders; from ten on, the first and ninth of them by rank, as by hand", async () => {
    const shop = await openShop(db());
    const ctx = shop.as(shop.desk);
    for (let i = 0; i < 9; i++) await order(shop, i);
    // Open quotes are nobody's skis yet.
    const { quote } = await quotedSheet(shop, {
      choices: { "choices.model": "midlow-95", "choices.lengthCm": 178, "choices.flexRatio": 1 },
    });
    expect(must(await skierBand(ctx))).toBeNull();
    await order(shop, 9);
    const band = must(await skierBand(ctx));
    expect(band).toMatchObject({ from: "orders", count: 10 });
    expect(band?.lowPercent).toBeCloseTo(bendPercent(quote, 75), 9);
    expect(band?.highPercent).toBeCloseTo(bendPercent(quote, 83), 9);
    expect(JSON.stringify(band)).not.toContain("Skier");
  }, 120_000);
});

/** By hand: (m + 9) kg · 9.80665 over the frozen spring and the span, 1780 − 175 − 144 = 1461 mm. */
function bendPercent(quote: QuoteView, massKg: number): number {
  return (100 * (massKg + 9) * 9.80665) / (quote.fit.springCentreNPerMm * 1461);
}

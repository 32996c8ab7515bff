import { describe, expect, it } from "vitest";
import { skierBand } from "#services";
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
    await quotedSheet(shop, {
      choices: { "choices.model": "midlow-95", "choices.lengthCm": 178, "choices.flexRatio": 1 },
    });
    expect(must(await skierBand(ctx))).toBeNull();
    await order(shop, 9);
    const band = must(await skierBand(ctx));
    expect(band).toMatchObject({ from: "orders", count: 10 });
    // (75 + 9)/(75 + 9) and (83 + 9)/84, all in class 3 with k = 1.
    expect(band?.lowRatio).toBeCloseTo(1, 9);
    expect(band?.highRatio).toBeCloseTo(92 / 84, 9);
    expect(JSON.stringify(band)).not.toContain("Skier");
  }, 120_000);
});

import { describe, expect, it } from "vitest";
import { assess } from "#services";
import { filledSheet } from "../../support/builders/sale";
import { must, openShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

describe("scenario 4: very tall, light", () => {
  it("shows the seller's questions when height alone and mass alone want lengths more than 16 cm apart", async () => {
    const shop = await openShop(db());
    const sheetId = await filledSheet(shop, {
      answers: {
        "typed.height": { unit: "cm", cm: 203 },
        "typed.mass": { unit: "kg", kg: 70 },
        "choices.model": "midlow-95",
      },
    });
    const { assessment } = must(await assess(shop.as(shop.desk), { sheetId }));
    // L* = 203 − 8 + 12 tanh((−16.792 + 8)/12) = 187.5; height alone 178 + 0.8 · 28 = 200.4, mass alone 178 − 0.8 · 5 = 174
    expect(assessment.spec).toMatchObject({ model: "midlow-95", lengthCm: 186 });
    const flag = assessment.recommendation?.flags.find(
      (candidate) => /height/.test(candidate.code) && /mass/.test(candidate.code),
    );
    expect(flag?.script).toMatch(/\?/);
  });
});

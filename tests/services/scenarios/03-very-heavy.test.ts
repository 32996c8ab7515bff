import { describe, expect, it } from "vitest";
import { assess, createQuote } from "#services";
import { filledSheet } from "../../support/builders/sale";
import { must, openShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

describe("scenario 3: very heavy", () => {
  it("stops for a review instead of selling a 192 in class 5", async () => {
    const shop = await openShop(db());
    const sheetId = await filledSheet(shop, {
      answers: {
        "typed.height": { unit: "cm", cm: 188 },
        "typed.mass": { unit: "kg", kg: 128 },
        "answers.ability": "expert",
        "answers.temperament": "fast",
        "choices.model": "ridgefold-106",
      },
    });
    const { assessment, stoppedBy } = must(await assess(shop.as(shop.desk), { sheetId }));
    // k = (137/84)^0.8 · 1.10 · 1.06 = 1.72; L* = 188 − 5 + 13 tanh((9.681 + 5)/13) = 193.5
    expect(assessment.spec?.flexRatio).toBeCloseTo(1.72, 2);
    expect(stoppedBy.map(({ code }) => code)).toEqual(["flex-out-of-range"]);
    expect(await createQuote(shop.as(shop.desk), { sheetId })).toMatchObject({
      ok: false,
      refusal: { code: "sale-blocked" },
    });
  });
});

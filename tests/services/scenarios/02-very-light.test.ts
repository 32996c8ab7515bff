import { describe, expect, it } from "vitest";
import { acknowledgeFlag, askReview, assess, createQuote, deskOverview, turnDown } from "#services";
import { filledSheet } from "../../support/builders/sale";
import { must, openShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

const light = {
  "typed.height": { unit: "cm", cm: 152 },
  "typed.mass": { unit: "kg", kg: 44 },
  "answers.ability": "improving",
  "answers.temperament": "calm",
  "answers.offPistePercent": 0,
};

describe("scenario 2: very light", () => {
  it("offers no quote, goes to the owner, and records the outcome", async () => {
    const shop = await openShop(db());
    const sheetId = await filledSheet(shop, { answers: light });
    const desk = shop.as(shop.desk);
    const { stoppedBy, assessment } = must(await assess(desk, { sheetId }));
    // L* for Pathwick 75: o = −9.5 + 4.6 + 0.2·(44 − 56.605) − 3 − 2 = −12.421; 152 − 11 + 13 tanh(−1.421/13) = 139.6: 138 is built.
    // k = (53/84)^0.8 · 0.94 · 0.95 = 0.618 < 0.62
    const codes = stoppedBy.map((refusal) => refusal.code);
    expect(codes).toEqual(["flex-out-of-range"]);
    expect(assessment.recommendation?.choices[0]).toMatchObject({ model: "pathwick-75", lengthCm: 138 });
    expect(
      assessment.recommendation?.flags.filter((flag) => flag.blocks === "sale").every((flag) => flag.script !== ""),
    ).toBe(true);
    expect(await createQuote(desk, { sheetId })).toMatchObject({ ok: false, refusal: { code: "sale-blocked" } });

    must(await askReview(desk, { sheetId, note: "44 kg, frontside: can we go softer?" }));
    expect(must(await deskOverview(shop.as(shop.owner))).reviews.map((review) => review.sheetId)).toEqual([sheetId]);

    for (const code of codes) must(await acknowledgeFlag(desk, { sheetId, code, reason: "looks fine to me" }));
    expect(await createQuote(desk, { sheetId })).toMatchObject({ ok: false, refusal: { code: "sale-blocked" } });

    const closed = must(await turnDown(desk, { sheetId, reason: "no cloth here is soft enough for this skier" }));
    expect(closed).toMatchObject({ state: "turned-down", turnedDown: "no cloth here is soft enough for this skier" });
  });
});

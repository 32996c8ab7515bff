import { describe, expect, it } from "vitest";
import {
  acceptQuote,
  acknowledgeFlag,
  allowSale,
  assess,
  createQuote,
  readOrder,
  readQuote,
  readSheet,
  saveSheet,
} from "#services";
import { filledSheet } from "../support/builders/sale";
import { must, openShop, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

/** k = (137/84)^0.8 · 1.10 · 1.06 = 1.72: outside every class. */
const heavy = {
  "typed.height": { unit: "cm", cm: 188 },
  "typed.mass": { unit: "kg", kg: 128 },
  "answers.ability": "expert",
  "answers.temperament": "fast",
  "answers.offPistePercent": 75,
};

describe("a stopped sheet that the owner lets go on", () => {
  it("is quoted with the reason, which stands on the quote, the order and in the record", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const owner = shop.as(shop.owner);
    const sheetId = await filledSheet(shop, { answers: { ...heavy, "choices.flexRatio": 1.4 } });
    const before = must(await assess(owner, { sheetId }));
    expect(before.liftable).toEqual(["flex-out-of-range"]);
    expect(await createQuote(owner, { sheetId })).toMatchObject({ ok: false, refusal: { code: "sale-blocked" } });

    const reason = "The pair of last year was 1.4 too, and is liked";
    must(await allowSale(owner, { sheetId, reason: ` ${reason} ` }));
    const after = must(await assess(owner, { sheetId }));
    expect([after.stoppedBy, after.liftable]).toEqual([[], []]);
    // Nothing about the skis is changed by it.
    expect(after.assessment.spec).toEqual(before.assessment.spec);

    const { quote } = must(await createQuote(shop.as(shop.desk), { sheetId }));
    expect(quote.flagAcks).toMatchObject([{ code: "flex-out-of-range", reason, byOwner: true }]);
    const accepted = must(
      await acceptQuote(shop.as(shop.desk), { quoteId: quote.quoteId, how: "phone", name: "Kim Larch" }),
    );
    const order = must(await readOrder(shop.as(shop.desk), { orderId: accepted.orderId }));
    expect(order.allowed).toMatchObject([{ code: "flex-out-of-range", reason }]);
    expect(order.allowed[0]?.message).toMatch(/flex ratio of 1\.724/);
    const events = await db().event.findMany({ where: { kind: "sale-allowed", subjectId: sheetId } });
    expect(events.map(({ data }) => data)).toEqual([{ codes: ["flex-out-of-range"], reason }]);
  });

  it("is a flex chosen by hand outside every class, too", async () => {
    const shop = await openShop(db());
    const owner = shop.as(shop.owner);
    const sheetId = await filledSheet(shop, { answers: { "choices.flexRatio": 1.46 } });
    expect(must(await assess(owner, { sheetId })).liftable).toEqual(["flex-out-of-range"]);
    must(await allowSale(owner, { sheetId, reason: "Asked for twice, and understood" }));
    const { quote } = must(await createQuote(owner, { sheetId }));
    expect(must(await readQuote(owner, { quoteId: quote.quoteId })).spec.flexRatio).toBe(1.46);
  });

  it("cannot be let go by the desk, a maker, the skier's own link or a passer-by", async () => {
    const shop = await openShop(db());
    const sheetId = await filledSheet(shop, { answers: heavy });
    for (const ctx of [shop.as(shop.desk), shop.as(shop.maker), shop.visitor])
      expect(await allowSale(ctx, { sheetId, reason: "it will do" })).toMatchObject({
        ok: false,
        refusal: { code: "not-allowed", action: "quote.override" },
      });
    must(await acknowledgeFlag(shop.as(shop.desk), { sheetId, code: "flex-out-of-range", reason: "it will do" }));
    expect(await createQuote(shop.as(shop.desk), { sheetId })).toMatchObject({ refusal: { code: "sale-blocked" } });
  });

  it("needs a reason without anything medical, and something to lift: a missing answer is none", async () => {
    const shop = await openShop(db());
    const owner = shop.as(shop.owner);
    const sheetId = await filledSheet(shop, { answers: heavy });
    expect(await allowSale(owner, { sheetId, reason: "  " })).toMatchObject({ refusal: { code: "reason-length" } });
    expect(await allowSale(owner, { sheetId, reason: "a new knee" })).toMatchObject({
      refusal: { code: "health-words" },
    });
    const plain = await filledSheet(shop, { phone: "303 555 0177" });
    expect(await allowSale(owner, { sheetId: plain, reason: "why not" })).toMatchObject({
      refusal: { code: "nothing-to-allow" },
    });
    const { version } = must(await readSheet(owner, { sheetId: plain }));
    must(await saveSheet(owner, { sheetId: plain, patch: { "answers.ability": null }, baseVersion: version }));
    expect(await allowSale(owner, { sheetId: plain, reason: "why not" })).toMatchObject({
      refusal: { code: "nothing-to-allow" },
    });
  });

  it("that was quoted meanwhile stays as it was", async () => {
    const shop = await openShop(db());
    const sheetId = await filledSheet(shop, {});
    must(await createQuote(shop.as(shop.desk), { sheetId }));
    expect(await allowSale(shop.as(shop.owner), { sheetId, reason: "why not" })).toMatchObject({
      refusal: { code: "sheet-closed" },
    });
  });
});

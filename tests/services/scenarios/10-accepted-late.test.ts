import { describe, expect, it } from "vitest";
import { acceptQuote, honourOldPrice, previewReprice, readOrder, readQuote, repriceQuote } from "#services";
import { quotedSheet } from "../../support/builders/sale";
import { daysAfter, must, openShop, stockWood } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { midlow95 } from "./midlow-95";

const db = databaseForTests();

/** Ten in the morning in Denver; PB-4 comes into force on 1 March 2027. */
const made = new Date("2027-02-10T17:00:00.000Z");

describe("scenario 10: quote accepted late", () => {
  it("holds the acceptance on day 23, shows 1,965 with the changed line, and sells it re-accepted", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { quote } = await quotedSheet(shop, { ...midlow95, now: made });
    expect(quote.price).toMatchObject({ priceBook: "PB-3", exTaxCents: 192_500 });
    const late = shop.as(shop.desk, daysAfter(made, 23));
    const accept = { quoteId: quote.quoteId, how: "phone", name: "Robin Alder" } as const;
    expect(await acceptQuote(late, accept)).toMatchObject({ ok: false, refusal: { code: "quote-expired" } });

    const offer = must(await previewReprice(late, { quoteId: quote.quoteId }));
    expect(offer.after).toMatchObject({ priceBook: "PB-4", exTaxCents: 196_500 });
    const changedLines = offer.comparison.lines.filter((line) => line.change !== "same");
    expect(changedLines.map((line) => [line.code, line.differenceCents])).toEqual([["midlow-95", 4000]]);

    const { quote: again } = must(await repriceQuote(late, { quoteId: quote.quoteId }));
    expect(again).toMatchObject({ number: `${quote.number} r2`, state: "open", replaces: { quoteId: quote.quoteId } });
    expect(must(await readQuote(late, { quoteId: quote.quoteId })).state).toBe("replaced");
    expect(again.dateRange.basis.at).not.toBe(quote.dateRange.basis.at);
    const accepted = must(await acceptQuote(late, { ...accept, quoteId: again.quoteId }));
    expect(must(await readOrder(late, { orderId: accepted.orderId })).price).toEqual(again.price);
  });

  it("lets only the owner honour the old price, with a reason", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { quote } = await quotedSheet(shop, { ...midlow95, now: made });
    const { quoteId } = quote;
    const day23 = daysAfter(made, 23);
    const honour = { quoteId, reason: "they wrote in time, we read it late" };
    expect(await honourOldPrice(shop.as(shop.desk, day23), honour)).toMatchObject({
      ok: false,
      refusal: { code: "owner-needed" },
    });
    must(await honourOldPrice(shop.as(shop.owner, day23), honour));
    const accepted = must(await acceptQuote(shop.as(shop.desk, day23), { quoteId, how: "phone", name: "Robin Alder" }));
    const order = must(await readOrder(shop.as(shop.desk, day23), { orderId: accepted.orderId }));
    expect(order.price).toMatchObject({ priceBook: "PB-3", exTaxCents: 192_500 });
    expect(must(await readQuote(shop.as(shop.desk, day23), { quoteId })).honoured).toMatchObject({
      by: "Ola Owner",
      reason: honour.reason,
    });
  });

  it("accepts until the end of the shop's twenty-first day and no longer", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { quote } = await quotedSheet(shop, { ...midlow95, now: made });
    expect(quote.validUntilDay).toBe("2027-03-03");
    const accept = { quoteId: quote.quoteId, how: "phone", name: "Robin Alder" } as const;
    // Denver is seven hours behind UTC in winter.
    const midnight = new Date("2027-03-04T07:00:00.000Z");
    expect(await acceptQuote(shop.as(shop.desk, midnight), accept)).toMatchObject({
      ok: false,
      refusal: { code: "quote-expired" },
    });
    must(await acceptQuote(shop.as(shop.desk, new Date(midnight.getTime() - 1)), accept));
  });
});

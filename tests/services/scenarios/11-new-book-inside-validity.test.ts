import { describe, expect, it } from "vitest";
import { acceptQuote, deskOverview, listQuotes, readOrder } from "#services";
import { quotedSheet } from "../../support/builders/sale";
import { daysAfter, must, openShop, stockWood } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { midlow95 } from "./midlow-95";

const db = databaseForTests();

const made = new Date("2027-02-20T17:00:00.000Z");

describe("scenario 11: price book changes inside validity", () => {
  it("still sells 1,925 on PB-3 on day 15, and lists open quotes on the old book until then", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { quote } = await quotedSheet(shop, { ...midlow95, now: made });
    const day15 = shop.as(shop.desk, daysAfter(made, 15));
    const onOld = must(await listQuotes(day15, { onOldBook: true }));
    expect(onOld.rows.map((row) => row.number)).toEqual([quote.number]);
    expect(must(await deskOverview(day15)).counts.quotesOnOldBook).toBe(1);
    const accepted = must(await acceptQuote(day15, { quoteId: quote.quoteId, how: "phone", name: "Robin Alder" }));
    const order = must(await readOrder(day15, { orderId: accepted.orderId }));
    expect(order.price).toEqual(quote.price);
    expect(order.price).toMatchObject({ priceBook: "PB-3", exTaxCents: 192_500 });
    expect(must(await listQuotes(day15, { onOldBook: true })).rows).toEqual([]);
  });
});

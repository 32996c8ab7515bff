import { describe, expect, it } from "vitest";
import { acceptQuote, readOrder, readQuote } from "#services";
import { quotedSheet } from "../../support/builders/sale";
import { must, openShop, stockWood } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

describe("scenario 9: staff convert one quote at the same second", () => {
  it("makes one order, one pair, one strip set and one deposit request of fifty attempts, and links the losers to it", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { quote } = await quotedSheet(shop);
    const staff = [shop.desk, shop.secondDesk, shop.owner];
    const attempts = await Promise.all(
      Array.from({ length: 50 }, (_, index) =>
        acceptQuote(shop.as(staff[index % 3] ?? shop.desk), {
          quoteId: quote.quoteId,
          how: "phone",
          name: `Caller ${index}`,
        }),
      ),
    );
    const winners = attempts.filter((attempt) => attempt.ok);
    const losers = attempts.filter((attempt) => !attempt.ok);
    expect(winners).toHaveLength(1);
    const won = must(winners[0] ?? attempts[0] ?? raise());
    expect(losers).toHaveLength(49);
    for (const lost of losers) {
      expect(lost).toMatchObject({
        refusal: { code: "quote-already-accepted", orderId: won.orderId, orderNumber: won.orderNumber },
      });
    }
    expect(await db().order.count()).toBe(1);
    expect(await db().pair.count()).toBe(1);
    expect(await db().ski.count()).toBe(2);
    expect(await db().payment.count({ where: { kind: "deposit" } })).toBe(1);
    expect(await db().strip.count({ where: { state: "reserved" } })).toBe(14);
    const { history } = must(await readQuote(shop.as(shop.desk), { quoteId: quote.quoteId }));
    expect(history.filter((event) => event.kind === "quote-accepted")).toHaveLength(1);
    expect(history.filter((event) => event.kind === "acceptance-refused")).toHaveLength(49);
    expect(must(await readOrder(shop.as(shop.desk), { orderId: won.orderId })).payments).toHaveLength(1);
  });

  it("shares strips out so that none is held twice when many quotes are accepted at once", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const quotes = [];
    for (let index = 0; index < 5; index += 1) {
      quotes.push(await quotedSheet(shop, { phone: `303 555 01${10 + index}`, name: `Caller ${index}` }));
    }
    const accepted = await Promise.all(
      quotes.map(({ quote }) =>
        acceptQuote(shop.as(shop.desk), { quoteId: quote.quoteId, how: "phone", name: "Caller" }),
      ),
    );
    for (const outcome of accepted) must(outcome);
    const held = await db().strip.findMany({ where: { state: "reserved" } });
    expect(held).toHaveLength(5 * 14);
    const places = held.map((strip) => `${strip.heldByPairId} ${strip.side} ${strip.position} ${strip.place}`);
    expect(new Set(places).size).toBe(5 * 14);
  });
});

function raise(): never {
  throw new Error("there was no attempt");
}

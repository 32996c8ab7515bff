import { describe, expect, it } from "vitest";
import { guestByToken } from "#auth";
import {
  acceptQuote,
  artworkBytes,
  cancelOrder,
  createQuote,
  deskOverview,
  editPair,
  findByPhone,
  honourOldPrice,
  issueProof,
  listDrafts,
  listOrders,
  listQuotes,
  lockSpecification,
  type QuoteId,
  readOrder,
  readPair,
  readProgress,
  readQuote,
  readSheet,
  recordDeposit,
  reissueLink,
  repriceQuote,
  revokeLink,
  search,
  shipOrder,
  startOperation,
} from "#services";
import { acceptedQuote, quotedSheet } from "../support/builders/sale";
import { must, openShop, shopNow, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const denied = { ok: false, refusal: { code: "not-allowed" } };

describe("who may do what", () => {
  it("cannot be done by a passer-by, and a maker cannot see prices, addresses or customers", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { quote } = await quotedSheet(shop, { phone: "303 555 0150" });
    const { quoteId, sheetId } = quote;
    const order = await acceptedQuote(shop, { phone: "303 555 0151" });
    const { orderId } = order;
    const pairId = order.pairs[0]?.pairId ?? raise();
    const operationId = must(await readPair(shop.as(shop.maker), { pairId })).operations[0]?.operationId ?? raise();
    for (const ctx of [shop.visitor, shop.as(shop.maker)]) {
      expect(await readSheet(ctx, { sheetId })).toMatchObject(denied);
      expect(await createQuote(ctx, { sheetId })).toMatchObject(denied);
      expect(await readQuote(ctx, { quoteId })).toMatchObject(denied);
      expect(await acceptQuote(ctx, { quoteId, how: "online", name: "X" })).toMatchObject(denied);
      expect(await repriceQuote(ctx, { quoteId })).toMatchObject(denied);
      expect(await honourOldPrice(ctx, { quoteId, reason: "x" })).toMatchObject(denied);
      expect(await readOrder(ctx, { orderId })).toMatchObject(denied);
      expect(await readProgress(ctx, { pairId })).toMatchObject(denied);
      expect(await recordDeposit(ctx, { orderId, method: "demo-card" })).toMatchObject(denied);
      expect(await lockSpecification(ctx, { pairId })).toMatchObject(denied);
      expect(await issueProof(ctx, { pairId })).toMatchObject(denied);
      expect(await editPair(ctx, { pairId, choices: {}, reason: "x", revision: 1 })).toMatchObject(denied);
      expect(await cancelOrder(ctx, { orderId, reason: "x" })).toMatchObject(denied);
      expect(await shipOrder(ctx, { orderId })).toMatchObject(denied);
      expect(await listDrafts(ctx, {})).toMatchObject(denied);
      expect(await listQuotes(ctx, {})).toMatchObject(denied);
      expect(await listOrders(ctx, {})).toMatchObject(denied);
      expect(await findByPhone(ctx, { phone: "303 555 0151" })).toMatchObject(denied);
      expect(await deskOverview(ctx)).toMatchObject(denied);
      expect(await reissueLink(ctx, { kind: "quote", id: quoteId })).toMatchObject(denied);
    }
    expect(await readPair(shop.visitor, { pairId })).toMatchObject(denied);
    expect(await startOperation(shop.visitor, { operationId, version: 1 })).toMatchObject(denied);
    expect(await startOperation(shop.as(shop.desk), { operationId, version: 1 })).toMatchObject(denied);
    expect(await artworkBytes(shop.visitor, { artworkId: "none" as never, size: "full" })).toMatchObject(denied);
  });

  it("shows a maker nothing of money, and lets a maker find pairs only", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const order = await acceptedQuote(shop, { name: "Robin Alder" });
    const pairId = order.pairs[0]?.pairId ?? raise();
    const seen = JSON.stringify(must(await readPair(shop.as(shop.maker), { pairId })));
    expect(/.{0,40}(cents|price|deposit-received|address|Alder).{0,40}/i.exec(seen)?.[0] ?? "").toBe("");
    expect(must(await search(shop.as(shop.maker), { text: "Alder" }))).toEqual([]);
    const hits = must(await search(shop.as(shop.maker), { text: order.pairs[0]?.serial ?? "" }));
    expect(hits.map((hit) => hit.kind)).toEqual(["pair"]);
  });

  it("opens a quote to its link until the link is revoked, and opens no other quote", async () => {
    const shop = await openShop(db());
    const mine = await quotedSheet(shop, { phone: "303 555 0150" });
    const other = await quotedSheet(shop, { phone: "303 555 0151" });
    const guest = (await guestByToken(mine.token, shopNow))?.actor ?? raise();
    const ctx = shop.as(guest);
    expect(must(await readQuote(ctx, { quoteId: mine.quote.quoteId })).number).toBe(mine.quote.number);
    expect(await readQuote(ctx, { quoteId: other.quote.quoteId })).toMatchObject(denied);
    expect(await readQuote(ctx, { quoteId: "nothing" as QuoteId })).toMatchObject(denied);
    must(await revokeLink(shop.as(shop.desk), { kind: "quote", id: mine.quote.quoteId }));
    expect(await guestByToken(mine.token, shopNow)).toBeNull();
    const { token } = must(await reissueLink(shop.as(shop.desk), { kind: "quote", id: mine.quote.quoteId }));
    expect(await guestByToken(token, shopNow)).not.toBeNull();
  });
});

function raise(): never {
  throw new Error("it is not there");
}

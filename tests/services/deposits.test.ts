/** A deposit from the order's page and from the desk, as tests/support/deposit-rules.ts has it. */
import { beforeEach, describe, expect, it } from "vitest";
import { guestByToken } from "#auth";
import { type Context, cancelOrder, type OrderId, readOrder, recordDeposit } from "#services";
import { acceptedQuote } from "../support/builders/sale";
import { must, openShop, shopNow, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { depositRows } from "../support/deposit-rules";

const db = databaseForTests();

describe("a deposit, by method and by who says it is there", () => {
  let shop: TestShop;
  let orderId: OrderId;
  let actors: Readonly<Record<"skier" | "visitor" | "maker" | "desk" | "owner", Context>>;

  beforeEach(async () => {
    shop = await openShop(db());
    const accepted = await acceptedQuote(shop);
    orderId = accepted.orderId;
    const skier = (await guestByToken(accepted.token, shopNow))?.actor;
    if (skier === undefined) throw new Error("the order's link is closed");
    const { desk, maker, owner } = shop;
    actors = {
      skier: shop.as(skier),
      visitor: shop.visitor,
      maker: shop.as(maker),
      desk: shop.as(desk),
      owner: shop.as(owner),
    };
  });

  const deposit = () => db().payment.findFirstOrThrow({ where: { orderId, kind: "deposit" } });

  it("is asked of the skier and the office alone, and only announced by the skier", async () => {
    const before = await deposit();
    expect(before.state).toBe("requested");
    for (const who of ["visitor", "maker"] as const) {
      for (const { method } of depositRows) {
        const answer = await recordDeposit(actors[who], { orderId, method, reference: "receipt 1" });
        expect([who, method, answer]).toMatchObject([who, method, { refusal: { code: "not-allowed" } }]);
      }
    }
    expect(await deposit()).toEqual(before);
    // A skier's bank transfer, cash or "later" is announced, with a reference or without.
    for (const { method, reference, skier } of depositRows) {
      if (skier !== "announced") continue;
      const said = { orderId, method, ...(reference === null ? {} : { reference }) };
      expect(must(await recordDeposit(actors.skier, said))).toMatchObject({ paidAt: null, clockStarted: false });
      expect(await deposit()).toMatchObject({ state: "requested", method, receivedAt: null });
      const order = must(await readOrder(actors.desk, { orderId }));
      expect(order.waitingFor).toContain("deposit");
      expect(await db().order.findUniqueOrThrow({ where: { id: orderId } })).toMatchObject({ depositPaidAt: null });
    }
    expect(await db().event.count({ where: { subjectId: orderId, kind: "deposit-received" } })).toBe(0);
  });

  it("is there when the desk has a reference, once, and not before", async () => {
    const missing = { code: "reference-missing", path: "reference" };
    for (const method of ["bank-transfer", "counter"] as const) {
      for (const reference of [undefined, "", "  "]) {
        const said = { orderId, method, ...(reference === undefined ? {} : { reference }) };
        expect(await recordDeposit(actors.desk, said)).toMatchObject({ refusal: missing });
      }
    }
    const said = { orderId, method: "bank-transfer", reference: " statement 7 " } as const;
    expect(must(await recordDeposit(actors.desk, said)).paidAt).toBe(shopNow.toISOString());
    expect(await deposit()).toMatchObject({
      state: "received",
      method: "bank-transfer",
      reference: "statement 7",
      receivedAt: shopNow,
      takenByName: "Desk 1",
    });
    for (const who of ["skier", "desk", "owner"] as const) {
      const again = await recordDeposit(actors[who], { orderId, method: "demo-card" });
      expect(again).toMatchObject({ refusal: { code: "deposit-already-paid" } });
    }
  });

  it("cannot be taken on a cancelled order, by whatever method and whoever says so", async () => {
    must(await cancelOrder(actors.desk, { orderId, reason: "moved abroad" }));
    const before = await deposit();
    for (const who of ["skier", "desk", "owner"] as const) {
      for (const { method } of depositRows) {
        const answer = await recordDeposit(actors[who], { orderId, method, reference: "receipt 7" });
        expect([who, method, answer]).toMatchObject([
          who,
          method,
          { refusal: { code: "order-closed", state: "cancelled" } },
        ]);
      }
    }
    expect(await deposit()).toEqual(before);
    expect(await db().order.findUniqueOrThrow({ where: { id: orderId } })).toMatchObject({ depositPaidAt: null });
  });
});

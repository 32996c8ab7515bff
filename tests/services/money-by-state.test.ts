/** The acts themselves against orders in every state: those of the table go through, the others change nothing. */
import { describe, expect, it } from "vitest";
import { type MoneyAct, moneyAllowed, type OrderState, states } from "#engine/floor";
import { type OrderId, recordDeposit, recordReceipt, recordRefund, waiveRush } from "#services";
import { acceptedQuote } from "../support/builders/sale";
import { openShop, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

/** What an act needs besides the state: who is owed what. */
const acts: Readonly<
  Record<MoneyAct, (shop: TestShop, orderId: OrderId) => Promise<{ readonly ok: boolean; readonly refusal?: unknown }>>
> = {
  "announce-deposit": (shop, orderId) => recordDeposit(shop.as(shop.desk), { orderId, method: "pay-later" }),
  "take-deposit": (shop, orderId) =>
    recordDeposit(shop.as(shop.desk), { orderId, method: "counter", reference: "receipt 1" }),
  "take-rush": (shop, orderId) =>
    recordReceipt(shop.as(shop.desk), { orderId, what: "rush", method: "counter", reference: "receipt 2" }),
  "take-balance": (shop, orderId) =>
    recordReceipt(shop.as(shop.desk), { orderId, what: "balance", method: "counter", reference: "receipt 3" }),
  "waive-rush": (shop, orderId) => waiveRush(shop.as(shop.owner), { orderId, reason: "a favour" }),
  "pay-refund": (shop, orderId) =>
    recordRefund(shop.as(shop.desk), { orderId, method: "bank-transfer", reference: "transfer 9" }),
};

describe("every act on an order in every state", () => {
  it.each(Object.keys(acts) as MoneyAct[])("%s does what the table says", async (act) => {
    const shop = await openShop(db());
    const { orderId } = await acceptedQuote(shop);
    const isDeposit = act === "take-deposit" || act === "announce-deposit";
    const asked = { orderId, kind: act === "pay-refund" ? "refund" : "rush", state: "requested", cents: 5000 };
    await db().payment.create({ data: { id: "asked", ...asked, requestedAt: new Date(0) } });
    await db().order.update({
      where: { id: orderId },
      data: { rushCents: 5000, ...(isDeposit ? {} : { depositPaidAt: new Date(0) }) },
    });
    const first = await db().payment.findMany({ where: { orderId } });
    const differing: string[] = [];
    for (const state of states.order as readonly OrderState[]) {
      await db().payment.deleteMany({ where: { orderId } });
      await db().payment.createMany({ data: first });
      await db().order.update({ where: { id: orderId }, data: { state } });
      const answer = await acts[act](shop, orderId);
      const isTouched = JSON.stringify(await db().payment.findMany({ where: { orderId } })) !== JSON.stringify(first);
      const may = moneyAllowed(act, state).ok;
      if (answer.ok !== may || isTouched !== may) differing.push(`${act} while ${state}: ${JSON.stringify(answer)}`);
    }
    expect(differing).toEqual([]);
  });
});

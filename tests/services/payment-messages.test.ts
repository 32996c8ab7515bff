/**
 * Money of a guest counts by a signed message alone. The signature is checked against Node's own HMAC, made here by hand from
 * the same key: SHA-256 over the very bytes of the body, hexadecimal.
 */
import { createHmac } from "node:crypto";
import fc from "fast-check";
import { beforeEach, describe, expect, it } from "vitest";
import { config } from "#config";
import { cancelOrder, type OrderId, readOrder, receivePaymentMessage, recordDeposit } from "#services";
import { paymentKey, readMessage, type signMessage } from "#services/money/payment-message";
import { asDemo, guestWith } from "../support/builders/online";
import { acceptedQuote } from "../support/builders/sale";
import { must, openShop, shopNow, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { depositRows } from "../support/deposit-rules";

const db = databaseForTests();
const minutes = (n: number) => new Date(shopNow.getTime() + n * 60_000);

describe("a message of the payment service", () => {
  let shop: TestShop;
  let orderId: OrderId;
  let token: string;
  let message: Parameters<typeof signMessage>[0];

  beforeEach(async () => {
    shop = await openShop(db());
    const order = await acceptedQuote(shop);
    ({ orderId, token } = order);
    const asked = await db().payment.findFirstOrThrow({ where: { orderId, kind: "deposit" } });
    message = {
      id: "service-0001",
      shop: config().publicOrigin,
      paymentId: asked.id,
      cents: asked.cents,
      currency: "USD",
      paidAt: shopNow.toISOString(),
      sentAt: shopNow.toISOString(),
      reference: "charge 77",
    };
  });

  const signed = (changes: Partial<typeof message> = {}, key: Buffer = paymentKey()) => {
    const body = JSON.stringify({ ...message, ...changes });
    return { body, signature: createHmac("sha256", key).update(body).digest("hex") };
  };
  const refused = async (sent: { readonly body: string; readonly signature: string }, now = shopNow) => {
    const answer = await receivePaymentMessage({ ...shop.visitor, now }, sent);
    return answer.ok ? "taken" : answer.refusal.code;
  };
  const deposit = () => db().payment.findFirstOrThrow({ where: { orderId, kind: "deposit" } });

  it("is taken once, whoever brings it, and says in the record that the service said so", async () => {
    expect(await refused(signed())).toBe("taken");
    expect(await deposit()).toMatchObject({
      state: "received",
      method: "payment-service",
      reference: "charge 77",
      takenByName: "payment service",
    });
    expect(await refused(signed())).toBe("payment-replayed");
    // The same money under another number of the service is still the same money.
    expect(await refused(signed({ id: "service-0002" }))).toBe("deposit-already-paid");
    expect(await db().event.count({ where: { subjectId: orderId, kind: "deposit-received" } })).toBe(1);
  });

  it("is taken once of twenty that come in the same instant", async () => {
    const answers = await Promise.all(Array.from({ length: 20 }, () => refused(signed())));
    expect(answers.filter((answer) => answer === "taken")).toHaveLength(1);
    expect(answers.filter((answer) => !["taken", "payment-replayed", "deposit-already-paid"].includes(answer))).toEqual(
      [],
    );
  });

  it("is refused when it is altered anywhere, by a key not ours, without a signature, or by a guest's own words", async () => {
    const right = signed();
    await fc.assert(
      fc.asyncProperty(fc.nat({ max: right.body.length - 1 }), fc.integer({ min: 32, max: 126 }), async (at, code) => {
        const body = `${right.body.slice(0, at)}${String.fromCharCode(code)}${right.body.slice(at + 1)}`;
        fc.pre(body !== right.body);
        expect(readMessage({ ...right, body }, paymentKey(), shopNow)).toMatchObject({
          refusal: { code: "payment-not-signed" },
        });
      }),
      { numRuns: 60 },
    );
    for (const signature of ["", "0".repeat(64), right.signature.toUpperCase(), `${right.signature}0`]) {
      expect(await refused({ ...right, signature })).toBe("payment-not-signed");
    }
    expect(await refused(signed({}, Buffer.from("another shop's key, as long as ours is")))).toBe("payment-not-signed");
    expect((await deposit()).state).toBe("requested");
  });

  it.each([
    ["of another shop", { shop: "https://skis.example" }, 0, "payment-foreign"],
    ["more than five minutes old", {}, 5.01, "payment-too-late"],
    ["from more than five minutes ahead", {}, -5.01, "payment-too-late"],
    ["just in time", {}, 5, "taken"],
    ["for money nobody asked for", { paymentId: "nothing" }, 0, "payment-unknown"],
    ["a cent short", { cents: 1 }, 0, "payment-amount"],
    ["in another currency", { currency: "EUR" }, 0, "payment-amount"],
    ["without a number of its own", { id: "" }, 0, "payment-unreadable"],
  ] as const)("%s is judged by that", async (_what, changes, after, code) => {
    expect(await refused(signed(changes), minutes(after))).toBe(code);
    expect((await deposit()).state).toBe(code === "taken" ? "received" : "requested");
  });

  it("comes too late for a cancelled order, whose history says that it came", async () => {
    must(await cancelOrder(shop.as(shop.desk), { orderId, reason: "moved abroad" }));
    expect(await refused(signed())).toBe("order-closed");
    const { history } = must(await readOrder(shop.as(shop.desk), { orderId }));
    expect(history.at(-1)).toMatchObject({ kind: "payment-message-refused", data: { code: "order-closed" } });
  });

  it("of the demonstration card exists in the demo alone, for skier and desk", async () => {
    const skier = await guestWith(shop, token);
    for (const ctx of [skier, shop.as(shop.desk), shop.as(shop.owner)]) {
      expect(await recordDeposit(ctx, { orderId, method: "demo-card" })).toMatchObject({
        refusal: { code: "method-not-offered", path: "method" },
      });
    }
    expect((await deposit()).state).toBe("requested");
    await asDemo(db());
    must(await recordDeposit(skier, { orderId, method: "demo-card" }));
    expect(await deposit()).toMatchObject({ state: "received", method: "demo-card", takenByName: "payment service" });
    expect(await db().paymentMessage.count()).toBe(1);
  });

  it("is the only way in which a skier's word is money", async () => {
    const skier = await guestWith(shop, token);
    for (const { method, reference } of depositRows) {
      await recordDeposit(skier, { orderId, method, ...(reference === null ? {} : { reference }) });
      expect([method, (await deposit()).state]).toEqual([method, "requested"]);
    }
  });
});

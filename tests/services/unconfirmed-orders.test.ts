/**
 * An order of a guest takes no place and no strips until somebody is known to stand behind it; what gives it one, and that it
 * does so once. A working rule of the shop, no source.
 */
import { beforeEach, describe, expect, it } from "vitest";
import { systemActor } from "#auth";
import { openPairs } from "#data/pairs";
import { isoDate } from "#engine/units";
import {
  acceptQuote,
  approveHardDate,
  confirmByCode,
  confirmOrder,
  deskOverview,
  editPair,
  listUnconfirmed,
  lockSpecification,
  readOrder,
  readProgress,
  recordDeposit,
  releaseUnconfirmed,
  renewEstimates,
  sendCodeAgain,
  stripsShort,
  sweepSlots,
} from "#services";
import { asDemo, codeIn, guestWith, onlineOrder } from "../support/builders/online";
import { acceptedQuote, quotedSheet } from "../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const email = "wren@mail.example";

describe("an order that a guest places", () => {
  let shop: TestShop;

  beforeEach(async () => {
    shop = await openShop(db());
    await stockWood(db());
  });

  const heldStrips = () => db().strip.count({ where: { state: "reserved" } });
  const revision = async () => (await db().counter.findUnique({ where: { name: "queue-revision" } }))?.value ?? 0;

  it("stands as to be confirmed: no place, no strips, no hold that could lapse, nothing of it in the queue", async () => {
    const before = await revision();
    const order = await onlineOrder(shop, { email });
    expect(order.isConfirmed).toBe(false);
    expect(await heldStrips()).toBe(0);
    expect(await openPairs(db())).toEqual([]);
    expect(await revision()).toBe(before);
    const row = await db().order.findUniqueOrThrow({ where: { id: order.orderId } });
    expect(row).toMatchObject({ state: "waiting", confirmedAt: null, softHoldUntil: null });
    const later = shop.as(systemActor("the clock"), daysAfter(shopNow, 30));
    expect(must(await sweepSlots(later))).toEqual({ lost: 0 });
    expect(must(await renewEstimates(later))).toEqual({ moved: 0 });
    const overview = must(await deskOverview(shop.as(shop.desk)));
    expect(overview.counts).toMatchObject({ ordersToConfirm: 1, depositsWaiting: 0 });
    const pairId = order.pairs[0]?.pairId ?? raise();
    expect(must(await stripsShort(shop.as(shop.maker), { pairId })).isShort).toBe(false);
    const guest = await guestWith(shop, order.token);
    const seen = must(await readProgress(guest, { pairId }));
    expect(seen.unconfirmed).toEqual({ sentTo: "w…@mail.example", codeUntil: "2026-11-12T17:00:00.000Z" });
    expect(seen.steps.slice(0, 3).map(({ key, state }) => [key, state])).toEqual([
      ["accepted", "done"],
      ["confirmed", "now"],
      ["ready-to-build", "to-come"],
    ]);
  });

  it("does not make others' dates later, however many there are", async () => {
    const mine = await acceptedQuote(shop, { phone: "303 555 0150" });
    const first = await datesOfOneMore();
    for (let n = 0; n < 5; n += 1) await onlineOrder(shop, { name: `Nobody ${n}`, phone: `303 555 011${n}` });
    expect(await datesOfOneMore()).toEqual(first);
    expect((await openPairs(db())).map(({ orderId }) => orderId)).toEqual([mine.orderId]);

    async function datesOfOneMore() {
      const { quote } = await quotedSheet(shop, { phone: "303 555 0160" });
      return [quote.dateRange.p50, quote.dateRange.p90];
    }
  });

  it("is told the day as if it were placed now, which moves while it is not", async () => {
    const order = await onlineOrder(shop, { email });
    const pairId = order.pairs[0]?.pairId ?? raise();
    const guest = await guestWith(shop, order.token);
    const alone = must(await readProgress(guest, { pairId })).dateRange;
    for (let n = 0; n < 6; n += 1) await acceptedQuote(shop, { phone: `303 555 012${n}` });
    const behind = must(await readProgress(guest, { pairId })).dateRange;
    expect(behind.p90 > alone.p90).toBe(true);
    const placed = must(
      await confirmOrder(shop.as(shop.desk), { orderId: order.orderId, reason: "spoke on the phone" }),
    );
    expect(placed).toMatchObject({ from: behind.p50, to: behind.p90 });
    const after = must(await readProgress(guest, { pairId }));
    expect(after.unconfirmed).toBeNull();
    expect(after.dateHistory.map(({ why }) => why)).toEqual(["order-made", "order-confirmed"]);
  });

  it("takes its place behind those who have one when staff say how they know, and not without", async () => {
    const order = await onlineOrder(shop);
    const desk = shop.as(shop.desk, daysAfter(shopNow, 1));
    const first = await acceptedQuote(shop, { phone: "303 555 0150" });
    expect(await confirmOrder(desk, { orderId: order.orderId, reason: " " })).toMatchObject({
      refusal: { code: "reason-length" },
    });
    for (const ctx of [shop.visitor, shop.as(shop.maker), await guestWith(shop, order.token)]) {
      expect(await confirmOrder(ctx, { orderId: order.orderId, reason: "me" })).toMatchObject({
        refusal: { code: "not-allowed" },
      });
    }
    must(await confirmOrder(desk, { orderId: order.orderId, reason: "called back" }));
    expect((await openPairs(db())).map(({ orderId }) => orderId)).toEqual([first.orderId, order.orderId]);
    expect(await heldStrips()).toBe(28);
    const view = must(await readOrder(desk, { orderId: order.orderId }));
    expect(view.confirmed).toEqual({ at: desk.now.toISOString(), how: "staff", by: "Desk 1" });
    // Five working days from Wednesday 11 November: to the end of the 18th.
    const row = await db().order.findUniqueOrThrow({ where: { id: order.orderId } });
    expect(row.softHoldUntil?.toISOString()).toBe("2026-11-19T07:00:00.000Z");
    expect(await confirmOrder(desk, { orderId: order.orderId, reason: "again" })).toMatchObject({
      refusal: { code: "order-confirmed" },
    });
  });

  it("is confirmed by the deposit of the demonstration card, by itself", async () => {
    await asDemo(db());
    const order = await onlineOrder(shop);
    const guest = await guestWith(shop, order.token);
    must(await recordDeposit(guest, { orderId: order.orderId, method: "demo-card" }));
    const view = must(await readOrder(shop.as(shop.desk), { orderId: order.orderId }));
    expect(view.confirmed).toMatchObject({ how: "money", by: "payment service" });
    expect(await heldStrips()).toBe(14);
    // An announcement is no money.
    const second = await onlineOrder(shop, { phone: "303 555 0178", name: "Bram Heath" });
    const other = await guestWith(shop, second.token);
    must(await recordDeposit(other, { orderId: second.orderId, method: "bank-transfer" }));
    expect(must(await readOrder(shop.as(shop.desk), { orderId: second.orderId })).confirmed).toBeNull();
    must(
      await recordDeposit(shop.as(shop.desk), { orderId: second.orderId, method: "bank-transfer", reference: "st 1" }),
    );
    expect(must(await readOrder(shop.as(shop.desk), { orderId: second.orderId })).confirmed).toMatchObject({
      how: "money",
    });
    expect(await heldStrips()).toBe(28);
  });

  it("places once of fifty who confirm it in one instant, by staff, code and money", async () => {
    const order = await onlineOrder(shop, { email });
    const { orderId } = order;
    const guest = await guestWith(shop, order.token);
    const code = await codeIn(db(), orderId);
    const all = await Promise.all(
      Array.from({ length: 50 }, (_, n) => {
        if (n % 3 === 0) return confirmOrder(shop.as(shop.desk), { orderId, reason: `call ${n}` });
        if (n % 3 === 1) return confirmByCode(guest, { orderId, code });
        return recordDeposit(shop.as(shop.owner), { orderId, method: "counter", reference: `receipt ${n}` });
      }),
    );
    const deposits = all.filter((answer, n) => n % 3 === 2 && answer.ok);
    expect(deposits).toHaveLength(1);
    expect(await db().event.count({ where: { subjectId: orderId, kind: "order-confirmed" } })).toBe(1);
    expect(await heldStrips()).toBe(14);
    expect(await db().event.count({ where: { kind: "pair-placed" } })).toBe(1);
    const refusals = all.flatMap((answer) => (answer.ok ? [] : [answer.refusal.code]));
    const expected = ["order-confirmed", "deposit-already-paid", "code-over"];
    expect(refusals.filter((code) => !expected.includes(code))).toEqual([]);
  });

  it("cannot be given a hard date, and an edit takes no strips for it", async () => {
    const order = await onlineOrder(shop);
    const owner = shop.as(shop.owner);
    const hard = { orderId: order.orderId, version: 1, revision: 0, on: isoDate("2027-01-29"), planB: "a loan pair" };
    expect(await approveHardDate(owner, hard)).toMatchObject({ refusal: { code: "order-not-confirmed" } });
    const pairId = order.pairs[0]?.pairId ?? raise();
    must(await lockSpecification(owner, { pairId }));
    must(await editPair(owner, { pairId, choices: { lengthCm: 166 }, reason: "shorter", revision: 1 }));
    expect(await heldStrips()).toBe(0);
    // What is placed is what is ordered now.
    must(await confirmOrder(owner, { orderId: order.orderId, reason: "called" }));
    expect(await heldStrips()).toBe(14);
  });

  it("is called off by staff with others at once, for one reason, and only while nobody stands behind it", async () => {
    const mark = { share: "s".repeat(32), mark: "aaaa1111" };
    const flood = [];
    for (let n = 0; n < 4; n += 1) {
      flood.push(await onlineOrder(shop, { name: `Nobody ${n}`, phone: `303 555 011${n}`, visitor: mark }));
    }
    const real = await onlineOrder(shop, { email });
    must(await confirmOrder(shop.as(shop.desk), { orderId: real.orderId, reason: "called" }));
    const listed = must(await listUnconfirmed(shop.as(shop.desk)));
    expect(listed.orders.map(({ mark, ofMark }) => [mark, ofMark])).toEqual(Array(4).fill(["aaaa1111", 4]));
    const letters = await db().outboxMessage.count();
    const orderIds = [...flood, real].map(({ orderId }) => orderId);
    expect(await releaseUnconfirmed(shop.as(shop.desk), { orderIds, reason: " " })).toMatchObject({
      refusal: { code: "reason-missing" },
    });
    const done = must(await releaseUnconfirmed(shop.as(shop.desk), { orderIds, reason: "a flood" }));
    expect(done).toEqual({ released: 4, kept: 1 });
    expect(await db().order.count({ where: { state: "cancelled", cancelReason: "a flood" } })).toBe(4);
    expect(await db().pair.count({ where: { state: "cancelled" } })).toBe(4);
    expect(await db().event.count({ where: { kind: "order-cancelled" } })).toBe(4);
    expect(await db().outboxMessage.count()).toBe(letters);
    expect(await heldStrips()).toBe(14);
    expect(must(await listUnconfirmed(shop.as(shop.desk))).orders).toEqual([]);
  });

  it("has its place at once where the desk spoke with who buys, whoever presses the button", async () => {
    const { quote, token } = await quotedSheet(shop, { phone: "303 555 0151" });
    const guest = await guestWith(shop, token);
    const order = must(await acceptQuote(guest, { quoteId: quote.quoteId, how: "online", name: "Robin Alder" }));
    expect(order.isConfirmed).toBe(true);
    expect(must(await readOrder(shop.as(shop.desk), { orderId: order.orderId })).confirmed?.how).toBe("desk");
    expect(await heldStrips()).toBe(14);
  });
});

describe("the code by letter", () => {
  let shop: TestShop;

  beforeEach(async () => {
    shop = await openShop(db());
    await stockWood(db());
  });

  it("is in the letter alone, and is taken however it is typed", async () => {
    const order = await onlineOrder(shop, { email });
    const code = await codeIn(db(), order.orderId);
    expect(code).toMatch(/^[2-9A-HJKMNP-Z]{4}-[2-9A-HJKMNP-Z]{4}$/);
    const bare = code.replace("-", "");
    const rows = JSON.stringify([await db().contactCode.findMany(), await db().order.findMany()]);
    const events = await db().event.findMany();
    expect(`${rows}${JSON.stringify(events.map(({ data }) => data))}`).not.toMatch(new RegExp(`${code}|${bare}`));
    const guest = await guestWith(shop, order.token);
    must(await confirmByCode(guest, { orderId: order.orderId, code: ` ${bare.toLowerCase()} ` }));
    expect(must(await readOrder(shop.as(shop.desk), { orderId: order.orderId })).confirmed).toMatchObject({
      how: "letter",
    });
  });

  it("counts for its own order alone, five wrong tries and two days", async () => {
    const order = await onlineOrder(shop, { email });
    const other = await onlineOrder(shop, { email, phone: "303 555 0178", name: "Bram Heath" });
    const { orderId } = order;
    const guest = await guestWith(shop, order.token);
    const right = await codeIn(db(), orderId);
    expect(await confirmByCode(guest, { orderId: other.orderId, code: right })).toMatchObject({
      refusal: { code: "not-allowed" },
    });
    const wrong = await codeIn(db(), other.orderId);
    const left: unknown[] = [];
    for (let n = 0; n < 6; n += 1) {
      const answer = await confirmByCode(guest, { orderId, code: wrong });
      left.push(answer.ok ? "confirmed" : (answer.refusal.left ?? answer.refusal.code));
    }
    expect(left).toEqual([4, 3, 2, 1, 0, "code-over"]);
    expect(await confirmByCode(guest, { orderId, code: right })).toMatchObject({ refusal: { code: "code-over" } });
    // Another letter has another code; the one before counts no more.
    must(await sendCodeAgain(guest, { orderId }));
    const next = await codeIn(db(), orderId);
    expect(next).not.toBe(right);
    const late = { ...guest, now: new Date(shopNow.getTime() + 48 * 3_600_000) };
    expect(await confirmByCode(late, { orderId, code: next })).toMatchObject({ refusal: { code: "code-over" } });
    must(await confirmByCode(guest, { orderId, code: next }));
  });

  it("is written five times a day at most, and never without an address", async () => {
    const order = await onlineOrder(shop, { email });
    const guest = await guestWith(shop, order.token);
    for (let n = 0; n < 4; n += 1) must(await sendCodeAgain(guest, { orderId: order.orderId }));
    expect(await sendCodeAgain(guest, { orderId: order.orderId })).toMatchObject({
      refusal: { code: "too-many-letters" },
    });
    const mute = await onlineOrder(shop, { phone: "303 555 0178", name: "Bram Heath" });
    const silent = await guestWith(shop, mute.token);
    expect(await sendCodeAgain(silent, { orderId: mute.orderId })).toMatchObject({ refusal: { code: "no-address" } });
    // What was typed where an address belongs gets no letter, and nobody hears that one went.
    await db().order.updateMany({ where: { id: mute.orderId }, data: { buyerEmail: "ask my sister" } });
    expect(await sendCodeAgain(silent, { orderId: mute.orderId })).toMatchObject({ refusal: { code: "no-address" } });
    expect(await db().contactCode.count({ where: { orderId: mute.orderId } })).toBe(0);
  });
});

function raise(): never {
  throw new Error("it is not there");
}

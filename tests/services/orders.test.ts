import { describe, expect, it } from "vitest";
import {
  cancelOrder,
  finishOperation,
  type PairId,
  queueBoard,
  readOrder,
  readPair,
  readQuote,
  recordDeposit,
  recordReceipt,
  shipOrder,
  startOperation,
  undoOperation,
} from "#services";
import { acceptedQuote, quotedSheet, releasedOrder } from "../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

async function operationAt(shop: TestShop, pairId: PairId, station: string) {
  const { operations } = must(await readPair(shop.as(shop.maker), { pairId }));
  return operations.find((operation) => operation.station === station) ?? raise();
}

describe("money", () => {
  it("adds up to the cent on every quote of the demo's skiers", async () => {
    const shop = await openShop(db());
    for (const [index, destination] of ["home", "domestic", "abroad", "collect"].entries()) {
      const { quote } = await quotedSheet(shop, {
        phone: `303 555 016${index}`,
        choices: { "choices.destination": destination, "choices.reinforcements": ["carbon-stringers"] },
      });
      const { price } = must(await readQuote(shop.as(shop.desk), { quoteId: quote.quoteId }));
      expect(price.lines.reduce((sum, line) => sum + line.lineCents, 0)).toBe(price.exTaxCents);
      expect(price.exTaxCents + price.shippingCents + price.taxCents).toBe(price.totalCents);
      expect(price.depositCents + price.balanceCents).toBe(price.totalCents);
    }
  });

  it("takes a deposit once when two desks book it in the same instant", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { orderId } = await acceptedQuote(shop);
    const both = await Promise.all(
      [shop.desk, shop.secondDesk].map((actor) =>
        recordDeposit(shop.as(actor), { orderId, method: "counter", reference: "receipt" }),
      ),
    );
    expect(both.filter((outcome) => outcome.ok)).toHaveLength(1);
    expect(both.find((outcome) => !outcome.ok)).toMatchObject({ refusal: { code: "deposit-already-paid" } });
  });

  it("takes the balance after the deposit, once, by staff alone, and nothing stays open", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { orderId } = await acceptedQuote(shop);
    const desk = shop.as(shop.desk);
    const rest = { orderId, what: "balance", method: "bank-transfer", reference: "transfer 7" } as const;
    expect(await recordReceipt(shop.as(shop.maker), rest)).toMatchObject({ refusal: { code: "not-allowed" } });
    expect(await recordReceipt(desk, rest)).toMatchObject({ refusal: { code: "deposit-first" } });
    expect(await recordReceipt(desk, { ...rest, what: "rush" })).toMatchObject({ refusal: { code: "rush-not-asked" } });
    must(await recordDeposit(desk, { orderId, method: "counter", reference: "receipt 1" }));
    // Midlow 84 collected: 1 540.00 and 6 % tax 92.40; half of 1 540.00 is the deposit.
    const before = must(await readOrder(desk, { orderId })).money;
    expect(before).toEqual({ totalCents: 163_240, rush: null, paidCents: 77_000, openCents: 86_240 });
    expect(must(await recordReceipt(desk, rest))).toMatchObject({ paidCents: 163_240, openCents: 0 });
    expect(await recordReceipt(desk, rest)).toMatchObject({ refusal: { code: "nothing-open" } });
    const { payments, history } = must(await readOrder(desk, { orderId }));
    expect(payments.map(({ kind, state, cents }) => [kind, state, cents])).toEqual([
      ["deposit", "received", 77_000],
      ["balance", "received", 86_240],
    ]);
    expect(history.at(-1)).toMatchObject({ kind: "balance-received", data: { cents: 86_240 } });
  });

  // "Balance before shipping" is the usual term (common practice, no source).
  it("ships nothing unpaid, unless an owner says why", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { orderId } = await releasedOrder(shop);
    await db().order.update({
      where: { id: orderId },
      data: { state: "ready", pairs: { updateMany: { where: {}, data: { state: "ready" } } } },
    });
    const desk = shop.as(shop.desk);
    const owner = shop.as(shop.owner);
    const unpaid = { refusal: { code: "balance-open", path: "unpaidReason", open: "862.40", currency: "USD" } };
    expect(await shipOrder(desk, { orderId })).toMatchObject(unpaid);
    expect(await shipOrder(desk, { orderId, unpaidReason: "a friend of mine" })).toMatchObject(unpaid);
    expect(await shipOrder(owner, { orderId, unpaidReason: "  " })).toMatchObject(unpaid);
    expect(must(await readOrder(desk, { orderId })).state).toBe("ready");

    const sent = must(await shipOrder(owner, { orderId, tracking: "LF-7", unpaidReason: "pays at the hut" }));
    expect(sent.state).toBe("shipped");
    expect(sent.history.find(({ kind }) => kind === "order-shipped")?.data).toEqual({
      tracking: "LF-7",
      openCents: 86_240,
      unpaidReason: "pays at the hut",
    });
    // The reason is the shop's own: what the customer is told names the parcel alone.
    const [told] = await db().outboxMessage.findMany({ where: { kind: "order-shipped" } });
    expect(told?.data).toEqual({ tracking: "LF-7" });
  });

  it("ships a paid order from the desk, and nothing of a reason is kept", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { orderId } = await releasedOrder(shop);
    await db().order.update({
      where: { id: orderId },
      data: { state: "ready", pairs: { updateMany: { where: {}, data: { state: "ready" } } } },
    });
    const desk = shop.as(shop.desk);
    must(await recordReceipt(desk, { orderId, what: "balance", method: "counter", reference: "receipt 3" }));
    const sent = must(await shipOrder(desk, { orderId }));
    expect(sent.history.find(({ kind }) => kind === "order-shipped")?.data).toEqual({ tracking: null });
  });

  it("keeps 30 % after the core is milled and gives the rest of the deposit back", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { orderId, pairs } = await releasedOrder(shop);
    const pairId = pairs[0]?.pairId ?? raise();
    for (const [day, station] of ["release", "strips", "core-glue", "sidewalls", "profile"].entries()) {
      const now = daysAfter(shopNow, day + 1);
      const { operationId, version } = await operationAt(shop, pairId, station);
      const running = must(await startOperation(shop.as(shop.maker, now), { operationId, version }));
      must(await finishOperation(shop.as(shop.maker, now), { operationId, version: running.version }));
    }
    const cancelled = must(
      await cancelOrder(shop.as(shop.desk, daysAfter(shopNow, 6)), { orderId, reason: "broke a leg" }),
    );
    // Midlow 84: 1,540 ex tax; deposit half = 770; 30 % = 462 kept, 308 back (the shop's own ladder, core milled).
    expect(cancelled.cancelled).toMatchObject({ feeCents: 46_200, refundCents: 30_800 });
    expect(cancelled.state).toBe("cancelled");
  });

  it("puts every strip back when nothing was cut", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { orderId } = await releasedOrder(shop);
    expect(await db().strip.count({ where: { state: "reserved" } })).toBe(14);
    must(await cancelOrder(shop.as(shop.desk), { orderId, reason: "changed their mind" }));
    expect(await db().strip.count({ where: { state: "free", heldByPairId: null } })).toBe(await db().strip.count());
  });
});

describe("the floor", () => {
  it("lets one of two makers start the same work", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { pairs } = await releasedOrder(shop);
    const { operationId, version } = await operationAt(shop, pairs[0]?.pairId ?? raise(), "release");
    const both = await Promise.all([1, 2].map(() => startOperation(shop.as(shop.maker), { operationId, version })));
    expect(both.filter((outcome) => outcome.ok)).toHaveLength(1);
    expect(both.find((outcome) => !outcome.ok)).toMatchObject({ refusal: { code: "already-started", by: "Mo Maker" } });
  });

  it("cannot skip a station nor a cure, and says what it waits for", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const pairId = (await releasedOrder(shop)).pairs[0]?.pairId ?? raise();
    const later = await operationAt(shop, pairId, "core-glue");
    const skipped = await startOperation(shop.as(shop.maker), {
      operationId: later.operationId,
      version: later.version,
    });
    expect(skipped).toMatchObject({ ok: false, refusal: { code: "operation-blocked", waitingFor: [2] } });
    for (const station of ["release", "strips", "core-glue"]) {
      const { operationId, version } = await operationAt(shop, pairId, station);
      const running = must(await startOperation(shop.as(shop.maker), { operationId, version }));
      must(await finishOperation(shop.as(shop.maker), { operationId, version: running.version }));
    }
    const walls = await operationAt(shop, pairId, "sidewalls");
    const early = await startOperation(shop.as(shop.maker), {
      operationId: walls.operationId,
      version: walls.version,
    });
    expect(early).toMatchObject({ ok: false, refusal: { code: "too-early", minutes: 60 } });
  });

  it("takes a tick back with a reason until later work has begun", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const pairId = (await releasedOrder(shop)).pairs[0]?.pairId ?? raise();
    const maker = shop.as(shop.maker);
    const first = await operationAt(shop, pairId, "release");
    const running = must(await startOperation(maker, { operationId: first.operationId, version: first.version }));
    const done = must(await finishOperation(maker, { operationId: first.operationId, version: running.version }));
    const undo = { operationId: first.operationId, version: done.version, reason: "wrong pair" };
    expect(must(await undoOperation(maker, undo)).state).toBe("running");
    expect((await operationAt(shop, pairId, "strips")).state).toBe("blocked");
  });
});

describe("the promise", () => {
  it("stands in the record every time it is fixed, and never changes without an event", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const { orderId } = await releasedOrder(shop);
    const order = must(await readOrder(shop.as(shop.desk), { orderId }));
    const told = order.history.filter((event) => event.kind === "promise-fixed" || event.kind === "promise-changed");
    expect(told.map((event) => event.data.promisedOn)).toEqual([order.promisedOn]);
    const board = must(await queueBoard(shop.as(shop.desk), {}));
    expect(board.pairs[0]).toMatchObject({ promisedOn: order.promisedOn, state: "released" });
    expect(board.pressPlan.flatMap((day) => day.slots)).toHaveLength(1);
  });

  it("is the same range for the same queue", async () => {
    const shop = await openShop(db());
    await stockWood(db());
    const first = await quotedSheet(shop, { phone: "303 555 0150" });
    const second = await quotedSheet(shop, { phone: "303 555 0151" });
    const { basis: _first, ...a } = first.quote.dateRange;
    const { basis: _second, ...b } = second.quote.dateRange;
    expect(a).toEqual(b);
  });
});

function raise(): never {
  throw new Error("it is not there");
}

/** Writers that must be the first: each writes once, where the row still stands as it was read, and nothing otherwise. */
import { describe, expect, it } from "vitest";
import { bumpQueue, currentQueueRevision, nextNumber } from "#data/counters";
import { floorChangeIn, floorChangesInForce, insertFloorChange, withdrawFloorChange } from "#data/floor-changes";
import { clearIncidentHolds, insertPairHolds } from "#data/holds";
import { insertLots, usableLots } from "#data/lots";
import {
  announcePayment,
  listOrderRecords,
  markDepositPaid,
  moveOrder,
  orderById,
  receivePayment,
  updateOrder,
  waivePayment,
} from "#data/orders";
import {
  breakOffOperations,
  endMaterialHolds,
  moveOperation,
  movePair,
  moveProof,
  pairById,
  setOperationStates,
  setPressSlot,
  updatePair,
} from "#data/pairs";
import {
  consumeStrips,
  countStrips,
  detachUsedStrips,
  freeStrips,
  holdStrip,
  insertStrips,
  releaseStrips,
  scrapSkiStrips,
  stripsHeldBy,
} from "#data/strips";
import { acceptedQuote } from "../support/builders/sale";
import { daysAfter, openShop, shopNow, strips } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const later = daysAfter(shopNow, 1);

function there<T>(value: T | null | undefined): T {
  if (value === null || value === undefined) throw new Error("it is not there");
  return value;
}

async function anOrder() {
  const shop = await openShop(db());
  const { orderId, pairs } = await acceptedQuote(shop, { phone: "303 555 0150" });
  const pairId = there(pairs[0]).pairId;
  const order = async () => there(await orderById(db(), orderId));
  const pair = async () => there(await pairById(db(), pairId));
  return { orderId, pairId, order, pair };
}

describe("an order's row", () => {
  it("is written once, where state and version are still those that were read", async () => {
    const { orderId, order } = await anOrder();
    const { version, depositCents, payments } = await order();
    expect(await updateOrder(db(), orderId, version + 1, { promisedOn: "2026-12-24" })).toBe(false);
    expect(await updateOrder(db(), orderId, version, { promisedOn: "2026-12-24" })).toBe(true);
    expect(await updateOrder(db(), orderId, version, { promisedOn: "2026-12-25" })).toBe(false);
    expect(await order()).toMatchObject({ promisedOn: "2026-12-24", version: version + 1, depositCents });
    expect(await moveOrder(db(), orderId, { state: "ready", version: version + 1 }, "shipped")).toBe(false);
    expect(await moveOrder(db(), orderId, { state: "waiting", version }, "released")).toBe(false);
    expect(
      await moveOrder(db(), orderId, { state: "waiting", version: version + 1 }, "released", {
        promisedOn: "2026-12-26",
      }),
    ).toBe(true);
    expect(await order()).toMatchObject({ state: "released", promisedOn: "2026-12-26", version: version + 2 });

    const { id } = there(payments.find(({ kind }) => kind === "deposit"));
    await announcePayment(db(), id, "bank-transfer");
    const received = { method: "counter", reference: "r-1", at: later, by: "Desk 1" };
    expect(await receivePayment(db(), id, received)).toBe(true);
    expect(await receivePayment(db(), id, { ...received, reference: "r-2" })).toBe(false);
    expect(await waivePayment(db(), id)).toBe(false);
    await announcePayment(db(), id, "pay-later");
    expect((await order()).payments.find((each) => each.id === id)).toMatchObject({
      state: "received",
      method: "counter",
      reference: "r-1",
      receivedAt: later,
      takenByName: "Desk 1",
    });
    await markDepositPaid(db(), orderId, later);
    await markDepositPaid(db(), orderId, daysAfter(later, 1));
    expect(await order()).toMatchObject({ depositPaidAt: later, version: version + 3 });
  });

  it("is listed by state, by what it waits for and by name, serial or number", async () => {
    const { orderId, pairId, order, pair } = await anOrder();
    const { number, customer } = await order();
    const { serial, version } = await pair();
    const found = async (filter: Parameters<typeof listOrderRecords>[1]) =>
      (await listOrderRecords(db(), filter, { skip: 0, take: 5 })).total;
    expect(await found({})).toBe(1);
    expect([await found({ state: "waiting" }), await found({ state: "ready" })]).toEqual([1, 0]);
    expect([await found({ text: customer.name.toUpperCase() }), await found({ text: serial.toLowerCase() })]).toEqual([
      1, 1,
    ]);
    expect([
      await found({ text: "zzz" }),
      await found({ text: "zzz", number }),
      await found({ text: "zzz", number: number + 1 }),
    ]).toEqual([0, 1, 0]);
    const waits = async () => {
      const all = ["deposit", "specification-lock", "proof", "rights"] as const;
      const totals = await Promise.all(all.map((waitingFor) => found({ waitingFor })));
      return all.filter((_, index) => totals[index] === 1);
    };
    expect(await waits()).toEqual(["deposit", "specification-lock"]);
    await updatePair(db(), pairId, version, { proofNeeded: true, rightsNeeded: true });
    expect(await waits()).toEqual(["deposit", "specification-lock", "proof", "rights"]);
    await moveProof(db(), pairId, { proofState: "none", version: version + 1 }, "approved", { specLockedAt: later });
    expect(await waits()).toEqual(["deposit", "rights"]);
    await markDepositPaid(db(), orderId, later);
    await updatePair(db(), pairId, version + 2, { rightsAt: later });
    expect(await waits()).toEqual([]);
  });
});

describe("a pair's row", () => {
  it("is written once, where state and version are still those that were read", async () => {
    const { pairId, pair } = await anOrder();
    const { version } = await pair();
    expect(await updatePair(db(), pairId, version + 1, { mould: "other" })).toBe(false);
    expect(await movePair(db(), pairId, { state: "ready" }, "shipped")).toBe(false);
    expect(await movePair(db(), pairId, { state: "waiting", version: version + 1 }, "released")).toBe(false);
    expect(await movePair(db(), pairId, { state: "waiting" }, "released")).toBe(true);
    expect(await moveProof(db(), pairId, { proofState: "approved", version: version + 1 }, "none")).toBe(false);
    expect(await moveProof(db(), pairId, { proofState: "none", version }, "issued")).toBe(false);
    expect(await setPressSlot(db(), pairId, version, { at: later, press: "p" })).toBe(false);
    expect(await setPressSlot(db(), pairId, version + 1, { at: later, press: "p" })).toBe(true);
    expect(await pair()).toMatchObject({
      state: "released",
      proofState: "none",
      pressSlotAt: later,
      pressSlotPress: "p",
      version: version + 2,
    });
    expect(await setPressSlot(db(), pairId, version + 2, null)).toBe(true);
    expect(await pair()).toMatchObject({ pressSlotAt: null, pressSlotPress: null });
  });

  it("has operations that move from the state they are in alone", async () => {
    const { pair } = await anOrder();
    const [one, two] = (await pair()).operations.filter(({ state }) => state === "blocked");
    const first = there(one);
    const second = there(two);
    const states = async () => {
      const { operations } = await pair();
      return [first, second].map(({ id }) => there(operations.find((each) => each.id === id)).state);
    };
    expect(await setOperationStates(db(), [first.id, second.id], "ready", "blocked")).toBe(false);
    expect(await setOperationStates(db(), [first.id], "blocked", "ready")).toBe(true);
    expect(await states()).toEqual(["ready", "blocked"]);
    expect(await moveOperation(db(), first.id, { state: "ready", version: first.version }, "running")).toBe(false);
    expect(await moveOperation(db(), first.id, { state: "ready", version: first.version + 1 }, "running")).toBe(true);
    expect(await breakOffOperations(db(), [first.id, second.id])).toBe(false);
    expect(await states()).toEqual(["redo", "blocked"]);
  });

  it("is held until its own holds end, each kind by its own station", async () => {
    const { pairId, pair } = await anOrder();
    const { version } = await pair();
    const hold = {
      pairId,
      reason: "material",
      station: "kit",
      expectedOn: null,
      note: "",
      incidentId: null,
      madeAt: shopNow,
      madeByName: "x",
    } as const;
    await insertPairHolds(db(), []);
    await insertPairHolds(db(), [
      { ...hold, id: "h-1" },
      { ...hold, id: "h-2", reason: "decision" },
      { ...hold, id: "h-3", station: "print" },
    ]);
    const open = async () =>
      (await db().pairHold.findMany({ where: { clearedAt: null }, orderBy: { id: "asc" } })).map(({ id }) => id);
    expect((await pair()).version).toBe(version + 1);
    await endMaterialHolds(db(), pairId, "kit", { at: later, by: "Mo" });
    expect(await open()).toEqual(["h-2", "h-3"]);
    expect(await db().pairHold.findUnique({ where: { id: "h-1" } })).toMatchObject({
      clearedAt: later,
      clearedByName: "Mo",
    });
    expect(await clearIncidentHolds(db(), "no-such", { at: later, by: "Mo" })).toBe(0);
    expect(await open()).toEqual(["h-2", "h-3"]);
  });
});

describe("wood", () => {
  it("is free, then one pair's, then used, and nobody else's meanwhile", async () => {
    const { pairId } = await anOrder();
    const [a, b, c] = strips("aspen", 3, 9000, 430).map((strip, index) => ({
      ...strip,
      measuredAt: daysAfter(shopNow, -index),
    }));
    await insertStrips(db(), [there(a), there(b), there(c)]);
    const free = async (leastMm = 0) => (await freeStrips(db(), ["aspen"], leastMm)).map(({ id }) => id);
    expect(await free()).toEqual(["aspen-003", "aspen-002", "aspen-001"]);
    const { lengthMm } = there(a);
    expect([await free(lengthMm), await free(lengthMm + 1)]).toEqual([["aspen-003", "aspen-002", "aspen-001"], []]);
    expect(await freeStrips(db(), ["ash"], 0)).toEqual([]);
    const place = { pairId, position: "I", place: "left" } as const;
    expect(await holdStrip(db(), "aspen-001", { ...place, side: "L" })).toBe(true);
    expect(await holdStrip(db(), "aspen-001", { ...place, side: "R" })).toBe(false);
    expect(await holdStrip(db(), "aspen-002", { ...place, side: "R" })).toBe(true);
    expect(
      (await stripsHeldBy(db(), pairId)).map(({ id, side, position, place: at, state }) => [
        id,
        side,
        position,
        at,
        state,
      ]),
    ).toEqual([
      ["aspen-001", "L", "I", "left", "reserved"],
      ["aspen-002", "R", "I", "left", "reserved"],
    ]);
    const counted = (await countStrips(db())).flatMap(({ state, count }) => Array(count).fill(state));
    expect(counted.sort()).toEqual(["free", "reserved", "reserved"]);
    await scrapSkiStrips(db(), pairId, "L");
    expect((await stripsHeldBy(db(), pairId)).map(({ id }) => id)).toEqual(["aspen-002"]);
    expect(await releaseStrips(db(), pairId)).toBe(1);
    expect(await free()).toEqual(["aspen-003", "aspen-002"]);
    expect(await holdStrip(db(), "aspen-003", { ...place, side: "L" })).toBe(true);
    await detachUsedStrips(db(), pairId);
    expect(await stripsHeldBy(db(), pairId)).toHaveLength(1);
    await consumeStrips(db(), pairId);
    expect(await releaseStrips(db(), pairId)).toBe(0);
    expect((await stripsHeldBy(db(), pairId)).map(({ state }) => state)).toEqual(["used"]);
    await detachUsedStrips(db(), pairId);
    expect(await stripsHeldBy(db(), pairId)).toEqual([]);
    expect(await free()).toEqual(["aspen-002"]);
  });

  it("and what else is bought lies in lots that hold something and are still good, oldest first", async () => {
    const lot = { material: "resin", quantity: 5, unit: "kg", location: "x", receivedAt: shopNow, expiresAt: null };
    await insertLots(db(), [
      { ...lot, id: "1", number: "new", receivedAt: later },
      { ...lot, id: "2", number: "old" },
      { ...lot, id: "3", number: "empty", quantity: 0 },
      { ...lot, id: "4", number: "over", expiresAt: later },
      { ...lot, id: "5", number: "good", expiresAt: daysAfter(later, 1) },
      { ...lot, id: "6", number: "glue", material: "glue" },
    ]);
    expect((await usableLots(db(), ["resin"], later)).map(({ number }) => number)).toEqual(["good", "old", "new"]);
  });
});

describe("a change of the floor", () => {
  it("counts until it is over or taken back, and is taken back once", async () => {
    const change = {
      kind: "shop-closed",
      data: { kind: "shop-closed" },
      fromAt: shopNow,
      reason: "x",
      incidentId: null,
      source: "what-if",
      costCents: null,
      madeByName: "x",
    } as const;
    await insertFloorChange(db(), { ...change, id: "a", toAt: daysAfter(later, 1), madeAt: later });
    await insertFloorChange(db(), { ...change, id: "b", toAt: later, madeAt: shopNow });
    await insertFloorChange(db(), { ...change, id: "c", toAt: daysAfter(later, 2), madeAt: shopNow });
    const inForce = async () => (await floorChangesInForce(db(), later)).map(({ id }) => id);
    expect(await inForce()).toEqual(["c", "a"]);
    const how = { at: later, by: "Ola", reason: "no more" };
    expect(await withdrawFloorChange(db(), "a", how)).toBe(true);
    expect(await withdrawFloorChange(db(), "a", { ...how, by: "Mo" })).toBe(false);
    expect(await inForce()).toEqual(["c"]);
    expect(await db().floorChange.findUnique({ where: { id: "a" } })).toMatchObject({
      withdrawnAt: later,
      withdrawnByName: "Ola",
      withdrawReason: "no more",
    });
  });

  it("needs the instants of its kind", () => {
    const read = (data: object, fromAt: Date | null, toAt: Date | null) =>
      floorChangeIn({ id: "x", data, fromAt, toAt } as never, (at) => at.getTime() / 60_000);
    const [from, to] = [shopNow.getTime() / 60_000, later.getTime() / 60_000];
    expect(read({ kind: "shop-closed" }, shopNow, later)).toEqual({
      kind: "shop-closed",
      fromMinute: from,
      toMinute: to,
    });
    expect(read({ kind: "extra-press" }, shopNow, null)).toEqual({
      kind: "extra-press",
      fromMinute: from,
      toMinute: null,
    });
    expect(read({ kind: "extra-person" }, shopNow, later)).toEqual({
      kind: "extra-person",
      fromMinute: from,
      toMinute: to,
    });
    expect(read({ kind: "rework-factor", factor: 2 }, null, null)).toEqual({ kind: "rework-factor", factor: 2 });
    expect(() => read({ kind: "shop-closed" }, null, later)).toThrow(/fromAt.*needs it/);
    expect(() => read({ kind: "shop-closed" }, shopNow, null)).toThrow(/toAt.*needs it/);
    expect(() => read({ kind: "extra-press" }, null, null)).toThrow(/fromAt/);
  });
});

describe("numbers", () => {
  it("follow one another, each sequence from its own first", async () => {
    expect([await nextNumber(db(), "quote"), await nextNumber(db(), "quote")]).toEqual([101, 102]);
    expect([await nextNumber(db(), "order"), await nextNumber(db(), "pair"), await nextNumber(db(), "club")]).toEqual([
      301, 401, 21,
    ]);
    expect([await nextNumber(db(), "incident"), await nextNumber(db(), "incident")]).toEqual([1, 2]);
    expect(await currentQueueRevision(db())).toBe(0);
    expect([await bumpQueue(db()), await bumpQueue(db()), await currentQueueRevision(db())]).toEqual([1, 2, 2]);
  });
});

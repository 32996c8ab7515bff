import { describe, expect, it } from "vitest";
import { systemActor } from "#auth";
import { recordEvents } from "#data/events";
import { isoDate } from "#engine/units";
import {
  approveHardDate,
  changePromise,
  editPair,
  freezePressSlots,
  type KeptOrder,
  type KeptPromises,
  lockSpecification,
  type PairId,
  previewHardDate,
  previewMove,
  queueBoard,
  readKeptPromises,
  readOrder,
  readProgress,
  readQueueOrder,
  recordDeposit,
  releasePressSlot,
  renewEstimates,
  sweepSlots,
} from "#services";
import { acceptedQuote, releasedOrder } from "../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { fewRuns, releasedPairs } from "./scenarios/released-pairs";

const db = databaseForTests();

describe("a place in the queue", () => {
  it("is kept five working days unpaid, then given up once, and taken anew when the deposit comes", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    await stockWood(db());
    const { orderId, pairs } = await acceptedQuote(shop);
    const sweep = (days: number) => sweepSlots(shop.as(systemActor("slots"), daysAfter(shopNow, days)));
    // Accepted on Tuesday 10 November 2026: five working days end with Tuesday the 17th.
    expect(must(await sweep(7)).lost).toBe(0);
    expect(must(await sweep(8)).lost).toBe(1);
    expect(must(await sweep(8)).lost).toBe(0);
    const later = shop.as(shop.desk, daysAfter(shopNow, 9));
    const board = must(await queueBoard(later));
    expect(board.waitingOn.map(({ pairId }) => pairId)).toContain(pairs[0]?.pairId);
    expect(board.pressPlan.flatMap(({ slots }) => slots)).toEqual([]);

    must(await recordDeposit(later, { orderId, method: "counter", reference: "receipt 3" }));
    const kinds = must(await readOrder(later, { orderId })).history.map(({ kind }) => kind);
    expect(kinds.filter((kind) => kind.startsWith("slot-"))).toEqual(["slot-lost", "slot-given"]);
    expect(must(await sweep(30)).lost).toBe(0);
    expect(await sweepSlots(later)).toMatchObject({ refusal: { code: "not-allowed" } });
  });
});

describe("a press slot", () => {
  it("of the next three working days is fixed once, cannot be moved, and is given back when its time has passed", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    await stockWood(db());
    await releasedPairs(shop, 3);
    const freeze = (days: number) => freezePressSlots(shop.as(systemActor("slots"), daysAfter(shopNow, days)));
    // With nothing done yet the pairs come to the press on the third working day or later: look again the day after.
    const first = must(await freeze(1));
    expect(first.fixed).toBeGreaterThan(0);
    expect(must(await freeze(1))).toEqual({ fixed: 0, given: 0 });
    const fixed = await db().pair.findMany({ where: { pressSlotAt: { not: null } } });
    // Wednesday 11 November 2026: three working days end with Friday the 13th.
    expect(fixed.every(({ pressSlotAt }) => (pressSlotAt?.toISOString() ?? "") < "2026-11-14T06:59")).toBe(true);
    const desk = shop.as(shop.desk, daysAfter(shopNow, 1));
    expect(await previewMove(desk, { pairId: fixed[0]?.id as PairId, before: null })).toMatchObject({
      refusal: { code: "place-fixed" },
    });
    const held = { pairId: fixed[0]?.id as PairId, version: fixed[0]?.version ?? 0 };
    expect(await releasePressSlot(desk, { ...held, reason: "a club comes first" })).toMatchObject({
      refusal: { code: "not-allowed" },
    });
    const owner = shop.as(shop.owner, daysAfter(shopNow, 1));
    expect(await releasePressSlot(owner, { ...held, reason: " " })).toMatchObject({
      refusal: { code: "reason-missing", path: "reason" },
    });
    must(await releasePressSlot(owner, { ...held, reason: "a club comes first" }));
    expect(await releasePressSlot(owner, { ...held, reason: "again" })).toMatchObject({
      refusal: { code: "no-press-slot" },
    });
    must(await previewMove(desk, { pairId: held.pairId, before: null }));
    // The clock does not undo what the owner decided on the same day.
    expect(must(await freeze(1)).fixed).toBe(0);
    // Nobody laid the pairs up: a week later the slots are given back, and new ones fixed.
    expect(must(await freeze(8)).given).toBe(fixed.length - 1);
    expect(await freezePressSlots(desk)).toMatchObject({ refusal: { code: "not-allowed" } });
  });
});

describe("a promise", () => {
  it("moves only with a reason, by somebody, from one date to another", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    await stockWood(db());
    const { orderId } = await releasedOrder(shop);
    const desk = shop.as(shop.desk);
    const order = must(await readOrder(desk, { orderId }));
    const to = { orderId, version: order.version, on: isoDate("2027-01-15") };
    expect(await changePromise(desk, { ...to, reason: " " })).toMatchObject({ refusal: { code: "reason-missing" } });
    expect(await changePromise(desk, { ...to, on: isoDate("2026-11-01"), reason: "x" })).toMatchObject({
      refusal: { code: "date-past", path: "on" },
    });
    // A slip of the hand in the year would have every date of the queue reckoned to it.
    expect(await changePromise(desk, { ...to, on: isoDate("2072-01-15"), reason: "x" })).toMatchObject({
      refusal: { code: "date-too-far", path: "on", value: "2072-01-15", days: 366, today: "2026-11-10" },
    });
    expect(await previewHardDate(desk, { orderId, on: isoDate("2072-01-15") })).toMatchObject({
      refusal: { code: "date-too-far", path: "on" },
    });
    must(await changePromise(desk, { ...to, reason: "the customer agreed on the phone" }));
    const after = must(await readOrder(desk, { orderId }));
    expect(after).toMatchObject({ promisedOn: "2027-01-15", promiseClass: "promise" });
    expect(after.history.find(({ kind }) => kind === "promise-changed")).toMatchObject({
      by: "Desk 1",
      data: { from: order.promisedOn, promisedOn: "2027-01-15", reason: "the customer agreed on the phone" },
    });
    expect(await changePromise(desk, { ...to, on: isoDate("2027-01-18"), reason: "again" })).toMatchObject({
      refusal: { code: "changed-meanwhile" },
    });
  });

  it("is counted as kept or not from what was told at its start", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    await stockWood(db());
    await releasedPairs(shop, 2);
    const kept = must(await readKeptPromises(shop.as(shop.owner)));
    expect(kept).toMatchObject({ open: 2, overdue: 0, months: [] });
    expect(kept.orders).toHaveLength(2);
    expect(kept.orders.every(({ p50, p80, p90 }) => p50 !== null && p80 !== null && p50 <= p80 && p80 <= p90)).toBe(
      true,
    );
    expect(kept.all).toMatchObject({ onTime: { orders: 0, kept: 0 }, meanLateness: null });

    // One is ready early. Until its day has passed it counts as little as the one that is not ready.
    const [early, never] = kept.orders as [KeptOrder, KeptOrder];
    const data = { from: "building" };
    const subject = { subjectKind: "order", subjectId: early.orderId } as const;
    const by = { actorKind: "system", actorId: null, actorName: "test" } as const;
    await recordEvents(db(), [{ at: daysAfter(shopNow, 5), kind: "order-ready", ...subject, ...by, data }]);
    const at = async (day: string) =>
      must(await readKeptPromises(shop.as(shop.owner, new Date(`${day}T18:00:00.000Z`))));
    const p90 = ({ all }: KeptPromises) => all.shares.find(({ level }) => level === "p90");
    expect(p90(await at(shopNow.toISOString().slice(0, 10)))).toMatchObject({ orders: 0, kept: 0 });
    const last = [early.p90, never.p90].sort().at(-1);
    const dayAfter = await at(
      daysAfter(new Date(`${last}T00:00:00Z`), 1)
        .toISOString()
        .slice(0, 10),
    );
    // What should be kept is what was told with the two days: nine of ten or more.
    const told = (early.shares?.p90 ?? 0) + (never.shares?.p90 ?? 0);
    expect(told).toBeGreaterThanOrEqual(1.8);
    expect(p90(dayAfter)).toMatchObject({ orders: 2, kept: 1, expected: told / 2 });
    expect(dayAfter).toMatchObject({ open: 1, overdue: 1, all: { onTime: { orders: 2, kept: 1 } } });
    expect(dayAfter.months.map(({ month }) => month)).toEqual(["2026-11"]);
    expect((await at("2027-06-01")).overdue).toBe(1);
    expect(await readKeptPromises(shop.as(shop.maker))).toMatchObject({ refusal: { code: "not-allowed" } });
  });
});

describe("a hard date", () => {
  it("approved while something is waited for stays when the clock starts, with its place and its range told", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    await stockWood(db());
    const { orderId, pairs } = await acceptedQuote(shop);
    const owner = shop.as(shop.owner);
    const on = isoDate("2027-02-26");
    const { version } = must(await readOrder(owner, { orderId }));
    const { revision, fits } = must(await previewHardDate(owner, { orderId, on }));
    expect(fits).toBe("now");
    must(await approveHardDate(owner, { orderId, version, revision, on, planB: "a loan pair" }));
    const { places } = must(await readQueueOrder(owner));
    expect(places).toMatchObject([{ isByHand: true, promisedOn: on }]);

    must(await lockSpecification(owner, { pairId: pairs[0]?.pairId as PairId }));
    must(await recordDeposit(owner, { orderId, method: "counter", reference: "receipt 4" }));
    const started = must(await readOrder(owner, { orderId }));
    expect(started).toMatchObject({ state: "released", promisedOn: on, promiseClass: "hard-date" });
    const [kept] = must(await readKeptPromises(owner)).orders;
    expect(kept).toMatchObject({ orderId, promisedOn: on, changes: [] });
    expect(kept !== undefined && kept.p50 !== null && kept.p50 <= kept.p90 && kept.p90 < on).toBe(true);
    const { dateHistory } = must(await readProgress(owner, { pairId: pairs[0]?.pairId as PairId }));
    expect(dateHistory.map(({ why, to }) => [why, to]).at(-1)).toEqual(["hard-date", on]);
  });

  it("stays when the pair is changed, if it can be kept; else it becomes a promise that says so", async () => {
    const shop = fewRuns(await openShop(db()), 20);
    await stockWood(db());
    const { orderId, pairs } = await releasedOrder(shop, { choices: { "choices.model": "midlow-95" } });
    const pairId = pairs[0]?.pairId as PairId;
    const owner = shop.as(shop.owner);
    const on = isoDate("2027-02-26");
    const read = async () => must(await readOrder(owner, { orderId }));
    const { revision } = must(await previewHardDate(owner, { orderId, on }));
    must(
      await approveHardDate(owner, { orderId, version: (await read()).version, revision, on, planB: "a loan pair" }),
    );
    const longer = { pairId, reason: "another length after all", revision: 1 };
    must(await editPair(owner, { ...longer, choices: { lengthCm: 186 } }));
    expect(await read()).toMatchObject({ promisedOn: on, promiseClass: "hard-date" });

    const soon = isoDate("2026-11-12");
    must(await changePromise(owner, { orderId, version: (await read()).version, on: soon, reason: "asked for" }));
    must(await editPair(owner, { ...longer, revision: 2, choices: { lengthCm: 170 } }));
    const after = await read();
    expect(after.promiseClass).toBe("promise");
    expect(`${after.promisedOn}` > soon).toBe(true);
    const last = after.history.filter(({ kind }) => kind === "promise-changed").at(-1);
    expect(last?.data).toMatchObject({
      from: soon,
      class: "promise",
      reason: expect.stringContaining("cannot be kept"),
    });
  });
});

describe("an estimate", () => {
  it("is worked out anew once a shop day until the clock starts, and its later date is told", async () => {
    const shop = fewRuns(await openShop(db()), 200);
    await stockWood(db());
    const { orderId, pairs } = await acceptedQuote(shop);
    const renew = (days: number) => renewEstimates(shop.as(systemActor("estimates"), daysAfter(shopNow, days)));
    const desk = shop.as(shop.desk);
    const first = must(await readOrder(desk, { orderId }));
    expect(must(await renew(0)).moved).toBe(0);
    // Ten calendar days later an order that has still not begun cannot be told the same day.
    expect(must(await renew(10)).moved).toBe(1);
    expect(must(await renew(10)).moved).toBe(0);
    const later = must(await readOrder(desk, { orderId }));
    expect(later.estimate.p90 > first.estimate.p90).toBe(true);
    expect(later.version).toBe(first.version);
    const { dateHistory } = must(await readProgress(desk, { pairId: pairs[0]?.pairId as PairId }));
    expect(dateHistory.map(({ why, to }) => [why, to])).toEqual([
      ["order-made", first.estimate.p90],
      ["estimate-renewed", later.estimate.p90],
    ]);
    must(await lockSpecification(desk, { pairId: pairs[0]?.pairId as PairId }));
    must(await recordDeposit(desk, { orderId, method: "counter", reference: "receipt 5" }));
    expect(must(await renew(20)).moved).toBe(0);
    expect(await renewEstimates(desk)).toMatchObject({ refusal: { code: "not-allowed" } });
  });
});

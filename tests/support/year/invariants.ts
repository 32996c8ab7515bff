/** What must hold at any moment of the year, read from the rows and the board; nothing is asked of the code that wrote them. */
import { expect } from "vitest";
import { storedPrice } from "#schemas/stored/index";
import { queueBoard } from "#services";
import { floorCatalog } from "#shop/floor/recipe";
import { must } from "../builders/shop";
import type { YearShop } from "./year-shop";

/** The way of a pair over the floor: what must be done before each station. */
const before: Readonly<Record<string, readonly string[]>> = {
  strips: ["release"],
  "core-glue": ["strips"],
  sidewalls: ["core-glue"],
  profile: ["sidewalls"],
  "base-cut": ["release"],
  edges: ["base-cut"],
  print: ["release"],
  kit: ["release"],
  "lay-up": ["profile", "edges", "print", "kit"],
  press: ["lay-up"],
  trim: ["press"],
  finish: ["trim"],
  check: ["finish"],
};

export async function expectNothingBroken(shop: YearShop, now: Date, strips: number): Promise<void> {
  await expectMoneyAddsUp(shop);
  await expectPromisesAreLogged(shop);
  await expectFloorInOrder(shop);
  await expectStripsInOrder(shop, strips);
  await expectNothingLost(shop, now);
}

async function expectMoneyAddsUp({ db }: YearShop): Promise<void> {
  for (const order of await db.order.findMany({ include: { payments: true } })) {
    const price = storedPrice.parse(order.price);
    const sum = (values: readonly number[]) => values.reduce((all, value) => all + value, 0);
    const goods = sum(price.lines.map(({ lineCents }) => lineCents));
    expect(goods).toBe(price.exTaxCents);
    expect(sum(price.lines.map(({ taxCents }) => taxCents))).toBe(price.taxCents);
    expect(goods + price.shippingCents + price.taxCents).toBe(order.totalCents);
    const deposits = order.payments.filter(({ kind }) => kind === "deposit");
    expect(deposits.map(({ cents }) => cents)).toEqual([order.depositCents]);
    expect(deposits[0]?.state === "received").toBe(order.depositPaidAt !== null);
    if (order.state === "cancelled") {
      const paid = order.depositPaidAt === null ? 0 : order.depositCents;
      expect(order.refundCents).toBeLessThanOrEqual(paid);
    }
  }
}

/** Every promise is what its events say, link by link, each with a reason and somebody who did it. */
async function expectPromisesAreLogged({ db }: YearShop): Promise<void> {
  const events = await db.event.findMany({
    where: { kind: { in: ["promise-fixed", "promise-changed"] } },
    orderBy: { seq: "asc" },
  });
  const told = new Map<string, string>();
  for (const { kind, subjectId, actorName, data } of events) {
    const { promisedOn, from, reason } = data as Readonly<Record<string, string | null>>;
    expect(from ?? null).toBe(told.get(subjectId) ?? null);
    expect(kind).toBe(told.has(subjectId) ? "promise-changed" : "promise-fixed");
    expect(reason).toMatch(/\S/);
    expect(actorName).toMatch(/\S/);
    told.set(subjectId, promisedOn ?? "");
  }
  for (const { id, promisedOn, clockStartedAt } of await db.order.findMany()) {
    expect(promisedOn).toBe(told.get(id) ?? null);
    expect(promisedOn === null).toBe(clockStartedAt === null);
  }
}

async function expectFloorInOrder({ db }: YearShop): Promise<void> {
  const operations = await db.operation.findMany({ include: { pair: { include: { order: true } } } });
  for (const { id, number, capacity } of floorCatalog().stations) {
    const running = operations.filter(({ station, state }) => station === id && state === "running");
    expect(running.length, `running at station ${number}`).toBeLessThanOrEqual(capacity);
  }
  const byPair = new Map<string, (typeof operations)[number][]>();
  for (const operation of operations)
    byPair.set(operation.pairId, [...(byPair.get(operation.pairId) ?? []), operation]);
  for (const operation of operations.filter(({ startedAt }) => startedAt !== null)) {
    const { station, startedAt, finishedAt, pair } = operation;
    expect((pair.order.clockStartedAt as Date) <= (startedAt as Date)).toBe(true);
    if (finishedAt !== null) expect(finishedAt > (startedAt as Date)).toBe(true);
    for (const earlier of before[station] ?? []) {
      const done = byPair.get(pair.id)?.filter((each) => each.station === earlier && each.finishedAt !== null) ?? [];
      const inTime = done.some((each) => (each.finishedAt as Date) <= (startedAt as Date));
      expect(inTime, `${pair.serial}: station ${station} begun before ${earlier} was done`).toBe(true);
    }
  }
}

/** A strip lies in one pair or in none, a place of a core has one strip, and no strip comes or goes. */
async function expectStripsInOrder({ db }: YearShop, count: number): Promise<void> {
  const strips = await db.strip.findMany({ include: { heldBy: true } });
  expect(strips).toHaveLength(count);
  const places = strips
    .filter(({ heldByPairId }) => heldByPairId !== null)
    .map(({ heldByPairId, side, position, place }) => [heldByPairId, side, position, place].join(" "));
  expect(new Set(places).size).toBe(places.length);
  for (const { state, heldBy } of strips) {
    if (state === "free") expect(heldBy).toBeNull();
    if (state === "reserved") expect(["waiting", "released", "building"]).toContain(heldBy?.state);
  }
}

async function expectNothingLost(shop: YearShop, now: Date): Promise<void> {
  const { db } = shop;
  const pairs = await db.pair.findMany({ include: { order: true, skis: true }, orderBy: { serialNumber: "asc" } });
  // Serials are handed out one after the other: none twice and none missing.
  expect(pairs.map(({ serialNumber }) => serialNumber)).toEqual(
    pairs.map((_, index) => (pairs[0]?.serialNumber ?? 0) + index),
  );
  expect(new Set(pairs.map(({ serial }) => serial)).size).toBe(pairs.length);
  const skis = pairs.flatMap((pair) => pair.skis);
  expect(new Set(skis.map(({ serial }) => serial)).size).toBe(skis.length);
  for (const pair of pairs) expect(pair.skis.filter(({ state }) => state !== "scrapped")).toHaveLength(2);
  expect(await db.order.count()).toBe(await db.quote.count({ where: { state: "accepted" } }));

  const board = must(await queueBoard(shop.desk(now), { days: 1 }));
  const open = pairs.filter(({ state }) => ["waiting", "released", "building"].includes(state)).map(({ id }) => id);
  expect(board.pairs.map(({ pairId }) => pairId as string).sort()).toEqual([...open].sort());
  const listed = new Set([...board.waitingOn, ...board.blocked].map(({ pairId }) => pairId));
  for (const { pairId, plannedReady, serial } of board.pairs) {
    expect(plannedReady !== null || listed.has(pairId), `${serial} is in the plan or on a list`).toBe(true);
  }
}

/** One row that cannot be read harms its own page and nothing else, and somebody is told. */
import { describe, expect, it } from "vitest";
import { bumpQueue } from "#data/counters";
import { transaction } from "#data/transaction";
import {
  deskOverview,
  findPairByCode,
  leadTimeToday,
  listOrders,
  type PairId,
  queueBoard,
  readOrder,
  readPair,
  search,
} from "#services";
import { must, openShop, shopNow, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { fewRuns, releasedPairs } from "./scenarios/released-pairs";

const db = databaseForTests();

async function shopWithTwoPairs() {
  const shop = fewRuns(await openShop(db()), 30);
  await stockWood(db());
  const orders = await releasedPairs(shop, 2);
  const [bad, good] = orders.map(({ pairs }) => pairs[0]) as [
    { readonly pairId: PairId; readonly serial: string },
    { readonly pairId: PairId; readonly serial: string },
  ];
  return { desk: shop.as(shop.desk), orders, bad, good };
}

describe("a pair whose specification cannot be read", () => {
  it("says so on its own page and on the desk, keeps its place in the plan, and stops nobody else", async () => {
    const { desk, orders, bad, good } = await shopWithTwoPairs();
    const before = must(await queueBoard(desk));
    const lead = must(await leadTimeToday(desk));
    await db().$executeRaw`UPDATE pairs SET spec = jsonb_set(spec, '{lengthCm}', '"long"') WHERE id = ${bad.pairId}`;
    // Whatever was worked out before is out of date: all that follows is read and planned anew.
    await transaction(db(), bumpQueue);

    const board = must(await queueBoard(desk));
    const own = board.pairs.find(({ pairId }) => pairId === bad.pairId);
    const was = before.pairs.find(({ pairId }) => pairId === bad.pairId);
    expect(own).toMatchObject({ isUnreadable: true, mould: was?.mould, plannedReady: was?.plannedReady });
    expect(board.pairs.find(({ pairId }) => pairId === good.pairId)).toMatchObject({ isUnreadable: false });
    expect(board.pressPlan.flatMap(({ slots }) => slots).map(({ serial }) => serial)).toContain(bad.serial);
    expect(board.unreadable).toEqual([
      { table: "pairs", row: bad.serial, column: "spec", why: expect.stringMatching(/^lengthCm: /) },
    ]);
    expect(must(await leadTimeToday(desk))).toEqual(lead);

    const refused = { ok: false, refusal: { code: "unreadable-row", row: bad.serial, column: "spec" } };
    expect(await readPair(desk, { pairId: bad.pairId })).toMatchObject(refused);
    expect(await findPairByCode(desk, { code: bad.serial })).toMatchObject(refused);
    expect(await readOrder(desk, { orderId: orders[0]?.orderId as never })).toMatchObject(refused);
    expect(must(await readPair(desk, { pairId: good.pairId })).serial).toBe(good.serial);
    expect(must(await deskOverview(desk)).unreadable).toMatchObject([{ row: bad.serial, column: "spec" }]);
    expect(must(await search(desk, { text: bad.serial })).map(({ title }) => title)).toContain(bad.serial);
    const listed = must(await listOrders(desk, {}));
    expect(listed.rows.map(({ serials }) => serials)).toEqual([[good.serial]]);
    expect(listed.unreadable).toMatchObject([{ row: bad.serial, column: "spec" }]);
  });

  it("is planned with its model's usual work when the catalogue has no such ski", async () => {
    const { desk, bad } = await shopWithTwoPairs();
    await db().$executeRaw`UPDATE pairs SET spec = jsonb_set(spec, '{model}', '"gone"') WHERE id = ${bad.pairId}`;
    const board = must(await queueBoard(desk));
    const why = expect.stringContaining("no gone at");
    expect(board.unreadable).toEqual([{ table: "pairs", row: bad.serial, column: "spec", why }]);
    expect(board.pairs.find(({ pairId }) => pairId === bad.pairId)?.modelName).not.toBe("gone");
  });

  it("keeps its place when an operation of it says nothing known", async () => {
    const { desk, bad } = await shopWithTwoPairs();
    await db().operation.updateMany({ where: { pairId: bad.pairId, station: "strips" }, data: { state: "lost" } });
    const board = must(await queueBoard(desk));
    expect(board.unreadable).toMatchObject([{ table: "operations", column: "state" }]);
    expect(board.pairs.map(({ serial }) => serial)).toContain(bad.serial);
  });
});

describe("an order whose price cannot be read", () => {
  it("stands on the desk's list and not among the others", async () => {
    const { desk, orders, good } = await shopWithTwoPairs();
    const { orderId, orderNumber } = orders[0] as (typeof orders)[number];
    await db().$executeRaw`UPDATE orders SET price = '{"lines": 3}' WHERE id = ${orderId}`;
    expect(await readOrder(desk, { orderId })).toMatchObject({
      ok: false,
      refusal: { code: "unreadable-row", table: "orders", row: orderNumber, column: "price" },
    });
    expect(must(await deskOverview(desk)).unreadable).toMatchObject([{ row: orderNumber, column: "price" }]);
    expect(must(await queueBoard(desk)).unreadable).toEqual([]);
    // The list asks for no price by line, so it still shows both.
    expect(must(await listOrders(desk, {})).rows.flatMap(({ serials }) => serials)).toContain(good.serial);
  });
});

describe("a change of the floor that does not say what it is", () => {
  it("changes nothing and stands on the desk's list", async () => {
    const { desk, bad, good } = await shopWithTwoPairs();
    const made = { reason: "repair", source: "what-if", madeAt: shopNow, madeByName: "Owner" };
    await db().floorChange.create({ data: { id: "odd", kind: "press-down", data: { kind: "press-down" }, ...made } });
    await db().floorChange.create({
      data: { id: "endless", kind: "press-down", data: { kind: "press-down", press: "press-1" }, ...made },
    });
    expect(must(await queueBoard(desk)).pairs.map(({ serial }) => serial)).toEqual([bad.serial, good.serial]);
    const told = must(await deskOverview(desk)).unreadable.map(({ row, column }) => `${row} ${column}`);
    expect(told.sort()).toEqual(["endless fromAt", "odd data"]);
  });
});

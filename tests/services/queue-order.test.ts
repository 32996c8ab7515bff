import { describe, expect, it } from "vitest";
import {
  applyMove,
  applyOrder,
  type PairId,
  previewMove,
  readOrder,
  readQueueOrder,
  suggestOrder,
  undoMove,
} from "#services";
import { must, openShop, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { fewRuns, releasedPairs } from "./scenarios/released-pairs";

const db = databaseForTests();

describe("the order of the queue", () => {
  it("is moved only after its effect was shown, with a reason, and comes back as it was", async () => {
    const shop = fewRuns(await openShop(db()), 30);
    await stockWood(db());
    const orders = await releasedPairs(shop, 4);
    const ids = orders.map(({ pairs }) => pairs[0]?.pairId as PairId);
    const desk = shop.as(shop.desk);
    const order = async () => must(await readQueueOrder(desk)).places.map(({ pairId }) => pairId);
    const start = await order();
    expect([...start].sort()).toEqual([...ids].sort());
    const [first, , , last] = start as [PairId, PairId, PairId, PairId];

    const preview = must(await previewMove(desk, { pairId: last, before: first }));
    expect([preview.fromPosition, preview.toPosition]).toEqual([4, 1]);
    expect(await order()).toEqual(start);
    const promisedBefore = must(await readOrder(desk, { orderId: orders[0]?.orderId as never })).promisedOn;

    const move = { pairId: last, before: first, revision: preview.revision };
    expect(await applyMove(desk, { ...move, reason: " " })).toMatchObject({
      refusal: { code: "reason-missing", path: "reason" },
    });
    expect(await applyMove(shop.as(shop.maker), { ...move, reason: "because" })).toMatchObject({
      refusal: { code: "not-allowed" },
    });
    const { decisionId } = must(await applyMove(desk, { ...move, reason: "a birthday" }));
    expect((await order())[0]).toBe(last);
    expect(await applyMove(desk, { ...move, reason: "again" })).toMatchObject({ refusal: { code: "queue-changed" } });
    // A place is not a promise.
    expect(must(await readOrder(desk, { orderId: orders[0]?.orderId as never })).promisedOn).toBe(promisedBefore);

    must(await undoMove(desk, { decisionId }));
    expect(await order()).toEqual(start);
    expect(await undoMove(desk, { decisionId })).toMatchObject({ refusal: { code: "already-undone" } });
    const [entry] = must(await readQueueOrder(desk)).moves;
    expect(entry).toMatchObject({ reason: "a birthday", by: "Desk 1", undone: { by: "Desk 1" } });
  });

  it("is looked for by the shop's computer: never worse by its own measure, given by the owner alone, and taken back", async () => {
    const shop = fewRuns(await openShop(db()), 30);
    await stockWood(db());
    await releasedPairs(shop, 4);
    const owner = shop.as(shop.owner);
    const order = async () => must(await readQueueOrder(owner)).places.map(({ pairId }) => pairId);
    const start = await order();
    const found = must(await suggestOrder(owner));
    const cost = ({ lateMinutes, changeoverMinutes }: typeof found.before) => lateMinutes + changeoverMinutes;
    expect(found.places.length === 0 || cost(found.after) < cost(found.before)).toBe(true);
    expect(found.effect?.crossing ?? []).toEqual([]);
    expect(await order()).toEqual(start);

    // The order turned round by hand stands for whatever was found.
    const places = start.map((pairId, index) => ({ pairId, placeMinute: 30_000_000 - index }));
    const input = { revision: found.revision, places, reason: "moulds" };
    expect(await applyOrder(shop.as(shop.desk), input)).toMatchObject({ refusal: { code: "not-allowed" } });
    const { decisionId } = must(await applyOrder(owner, input));
    expect(await order()).toEqual([...start].reverse());
    expect(await applyOrder(owner, input)).toMatchObject({ refusal: { code: "queue-changed" } });
    must(await undoMove(owner, { decisionId }));
    expect(await order()).toEqual(start);
  });
});

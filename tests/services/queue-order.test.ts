import { describe, expect, it } from "vitest";
import { applyMove, type PairId, previewMove, readOrder, readQueueOrder, undoMove } from "@/lib/services";
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
});

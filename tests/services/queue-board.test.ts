/** The press plan and the list of who is blocked. What must stand there follows from what was done to each pair. */
import { describe, expect, it } from "vitest";
import { insertFloorChange } from "#data/floor-changes";
import { insertPairHolds } from "#data/holds";
import type { PairId } from "#services";
import { queueBoard } from "#services";
import { acceptedQuote } from "../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { fewRuns, releasedPairs } from "./scenarios/released-pairs";

const db = databaseForTests();

describe("the board", () => {
  it("leaves a pair that waits for its customer out of the press plan and off the drawing, and says what it waits for", async () => {
    const shop = fewRuns(await openShop(db()), 30);
    await stockWood(db());
    const [released] = await releasedPairs(shop, 1);
    const waiting = await acceptedQuote(shop, { phone: "303 555 0199", name: "Late Payer" });
    const board = must(await queueBoard(shop.as(shop.desk)));
    const releasedId = released?.pairs[0]?.pairId as PairId;
    const waitingId = waiting.pairs[0]?.pairId as PairId;
    expect(board.pressPlan.flatMap(({ slots }) => slots).map(({ pairId }) => pairId)).toEqual([releasedId]);
    expect(new Set(board.board.rows.flatMap(({ bars }) => bars).map(({ pairId }) => pairId))).toEqual(
      new Set([releasedId]),
    );
    const [blocked] = board.blocked;
    expect(board.blocked).toHaveLength(1);
    expect(blocked?.pairId).toBe(waitingId);
    expect(blocked?.reasons).toContainEqual(expect.objectContaining({ kind: "customer", condition: "deposit" }));
  });

  it("says which hold, which station that is down, and which lost slot stops a pair", async () => {
    const shop = fewRuns(await openShop(db()), 30);
    await stockWood(db());
    const orders = await releasedPairs(shop, 3);
    const [held, free, lost] = orders.map(({ pairs }) => pairs[0]?.pairId as PairId) as [PairId, PairId, PairId];
    const made = { madeAt: shopNow, madeByName: "Owner" };
    const note = "steel is late";
    await insertPairHolds(db(), [
      {
        id: "hold",
        pairId: held,
        reason: "material",
        station: "edges",
        expectedOn: "2026-11-20",
        note,
        incidentId: null,
        ...made,
      },
    ]);
    await db().order.update({ where: { id: orders[2]?.orderId ?? "" }, data: { slotLostAt: shopNow } });
    const reasons = async () =>
      new Map(must(await queueBoard(shop.as(shop.owner))).blocked.map((pair) => [pair.pairId, pair.reasons] as const));
    const before = await reasons();
    expect(before.get(held)).toMatchObject([{ kind: "material", station: "edges", expectedOn: "2026-11-20", note }]);
    expect(before.get(lost)).toMatchObject([{ kind: "no-slot" }]);
    expect(before.has(free)).toBe(false);

    // The first station of every route is down until tomorrow: the pair that is ready there has to wait for it.
    const toAt = daysAfter(shopNow, 1);
    await insertFloorChange(db(), {
      id: "down",
      kind: "station-down",
      data: { kind: "station-down", station: "release" },
      fromAt: shopNow,
      toAt,
      reason: "no power",
      incidentId: null,
      source: "incident",
      costCents: null,
      ...made,
    });
    const after = await reasons();
    expect(after.get(free)).toMatchObject([{ kind: "away", station: "release", until: toAt.toISOString() }]);
    const { board } = must(await queueBoard(shop.as(shop.owner)));
    expect(board.changes).toMatchObject([{ kind: "station-down", reason: "no power" }]);
    expect(board.rows.find(({ station }) => station === "release")?.down.length).toBeGreaterThan(0);
  });
});

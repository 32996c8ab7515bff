import { describe, expect, it } from "vitest";
import { isoDate } from "#engine/units";
import { applyWhatIf, askWhatIf, listFloorChanges, withdrawChange } from "#services";
import { must, openShop, stockWood } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { fewRuns, releasedPairs } from "./released-pairs";

const db = databaseForTests();

describe("scenario 39: what if one more is hired at the press", () => {
  it("shows before and after, its cost a week and who is rescued, and stores nothing until it is applied", async () => {
    const shop = fewRuns(await openShop(db()));
    await stockWood(db());
    await releasedPairs(shop, 3);
    const owner = shop.as(shop.owner);
    const rows = async () => ({
      changes: await db().floorChange.count(),
      events: await db().event.count(),
      revision: (await db().counter.findUnique({ where: { name: "queue-revision" } }))?.value,
      moves: await db().planMove.count(),
    });
    const before = await rows();
    // 20 working days after 10 November 2026; Thanksgiving and the day after are closed.
    const whatIf = { kind: "hire", stations: ["lay-up", "press"], from: isoDate("2026-12-10") } as const;
    const answer = must(await askWhatIf(owner, whatIf));
    expect(answer).toMatchObject({ canApply: true });
    expect(answer.costCentsPerWeek).toBeGreaterThan(0);
    expect(answer.ordersRescued).toBe(new Set(answer.effect.rescued.map(({ orderId }) => orderId)).size);
    expect(answer.effect.oneMore?.before.workingDays.p90).toBeGreaterThan(0);
    expect(await rows()).toEqual(before);

    const apply = { changeId: "hire-1", whatIf, reason: "the season is sold out" };
    expect(await applyWhatIf(shop.as(shop.desk), apply)).toMatchObject({ refusal: { code: "not-allowed" } });
    expect(await applyWhatIf(owner, { ...apply, reason: "" })).toMatchObject({ refusal: { code: "reason-missing" } });
    expect(await rows()).toEqual(before);
    // Sent twice, stored once.
    must(await applyWhatIf(owner, apply));
    must(await applyWhatIf(owner, apply));
    const [change, ...others] = must(await listFloorChanges(owner));
    expect(others).toEqual([]);
    expect(change).toMatchObject({
      kind: "extra-person",
      source: "what-if",
      reason: "the season is sold out",
      madeBy: "Ola Owner",
      // Midnight in Denver in winter is seven hours behind (tz database).
      fromAt: "2026-12-10T07:00:00.000Z",
      toAt: null,
    });
    const events = await db().event.findMany({ where: { subjectKind: "floor" } });
    expect(events.map(({ kind }) => kind)).toEqual(["floor-changed"]);

    if (change === undefined) throw new Error("no change");
    const { floorChangeId } = change;
    must(await withdrawChange(owner, { floorChangeId, reason: "nobody was found" }));
    expect(await withdrawChange(owner, { floorChangeId, reason: "again" })).toMatchObject({
      refusal: { code: "changed-meanwhile" },
    });
    expect(must(await listFloorChanges(owner))).toEqual([]);
  });
});

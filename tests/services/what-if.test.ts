import { describe, expect, it } from "vitest";
import { isoDate } from "#engine/units";
import {
  applyWhatIf,
  askWhatIf,
  type FloorChangeId,
  listFloorChanges,
  type WhatIfInput,
  withdrawChange,
} from "#services";
import { must, openShop, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { fewRuns, releasedPairs } from "./scenarios/released-pairs";

const db = databaseForTests();
const day = isoDate;

async function shopWith(pairs: number) {
  const shop = fewRuns(await openShop(db()), 40);
  await stockWood(db());
  await releasedPairs(shop, pairs);
  return shop;
}

describe("what if", () => {
  it("moves what must move, in the direction it must", async () => {
    const shop = await shopWith(3);
    const owner = shop.as(shop.owner);
    const one = async (input: WhatIfInput) => {
      const { effect } = must(await askWhatIf(owner, input));
      const { oneMore } = effect;
      if (oneMore === null) throw new Error("no range for one more");
      return { effect, before: oneMore.before.workingDays, after: oneMore.after.workingDays, dates: oneMore };
    };
    // Closed until Christmas Eve: nothing that is not begun leaves before.
    const closed = await one({ kind: "closure", from: day("2026-11-11"), until: day("2026-12-24") });
    expect(closed.dates.after.p50 > "2026-12-24").toBe(true);
    for (const { after } of closed.effect.moved) expect(after.p50 > "2026-12-24").toBe(true);
    expect(closed.effect.moved).toHaveLength(3);
    // Material eight weeks away: 10 November + 56 days = 5 January.
    const late = await one({ kind: "supplier-lead", station: "sidewalls", weeks: 8 });
    for (const { after } of late.effect.moved) expect(after.p50 > "2027-01-05").toBe(true);
    expect(late.effect.moved).toHaveLength(3);
    // Eight more pairs before it: one more waits longer. Work done again more often takes longer on average.
    const club = await one({ kind: "club-order", pairs: 8 });
    expect(club.after.p50).toBeGreaterThan(club.before.p50);
    const rework = await one({ kind: "rework", factor: 8 });
    expect(rework.after.p90).toBeGreaterThan(rework.before.p90);
    expect(rework.effect.expectedLate.after).toBeGreaterThan(rework.effect.expectedLate.before);
    // Once more of nothing: factor 1 changes no run at all.
    const same = await one({ kind: "rework", factor: 1 });
    expect(same.after).toEqual(same.before);
    expect(same.effect.moved).toEqual([]);
    expect(await db().floorChange.count()).toBe(0);
  });

  it("names the field and its limit", async () => {
    const shop = await shopWith(1);
    const owner = shop.as(shop.owner);
    const wrong: readonly (readonly [WhatIfInput, string])[] = [
      [{ kind: "hire", stations: [], from: day("2026-11-11") }, "stations"],
      [{ kind: "hire", stations: ["nowhere"], from: day("2026-11-11") }, "stations"],
      [{ kind: "second-press", from: day("2026-11-09") }, "from"],
      [{ kind: "closure", from: day("2026-11-11"), until: day("2026-11-10") }, "until"],
      [{ kind: "closure", from: day("2026-11-11"), until: day("2028-11-10") }, "until"],
      [{ kind: "club-order", pairs: 0 }, "pairs"],
      [{ kind: "club-order", pairs: 25 }, "pairs"],
      [{ kind: "rework", factor: 11 }, "factor"],
      [{ kind: "drop-mould", mould: "none", from: day("2026-11-11"), until: day("2026-11-12") }, "mould"],
      [{ kind: "supplier-lead", station: "sidewalls", weeks: 27 }, "weeks"],
    ];
    for (const [input, path] of wrong) {
      expect(await askWhatIf(owner, input), path).toMatchObject({ refusal: { code: "invalid-field", path } });
    }
  });

  it("applies only what can be made so, for the owner alone", async () => {
    const shop = await openShop(db());
    const owner = shop.as(shop.owner);
    const closure = { kind: "closure", from: day("2027-08-02"), until: day("2027-08-13") } as const;
    const apply = { changeId: "august", whatIf: closure, reason: "everybody is away" };
    const denied = { refusal: { code: "not-allowed" } };
    for (const actor of [shop.maker, shop.desk]) expect(await applyWhatIf(shop.as(actor), apply)).toMatchObject(denied);
    expect(await askWhatIf(shop.as(shop.maker), closure)).toMatchObject(denied);
    expect(await listFloorChanges(shop.as(shop.maker))).toMatchObject(denied);
    const club = { ...apply, whatIf: { kind: "club-order", pairs: 8 } as const };
    expect(await applyWhatIf(owner, club)).toMatchObject({ refusal: { code: "invalid-field", path: "kind" } });
    must(await applyWhatIf(owner, apply));
    const [change] = must(await listFloorChanges(owner));
    // Both days included; Denver in summer is six hours behind (tz database).
    expect(change).toMatchObject({ fromAt: "2027-08-02T06:00:00.000Z", toAt: "2027-08-14T06:00:00.000Z" });
    const withdraw = { floorChangeId: "august" as FloorChangeId, reason: "" };
    expect(await withdrawChange(shop.as(shop.desk), { ...withdraw, reason: "x" })).toMatchObject(denied);
    expect(await withdrawChange(owner, withdraw)).toMatchObject({ refusal: { code: "reason-missing" } });
  });
});

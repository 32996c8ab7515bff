import { beforeEach, describe, expect, it } from "vitest";
import { systemActor } from "#auth";
import { stationOf } from "#engine/floor";
import {
  approveFloorBook,
  type Context,
  leadTimeToday,
  openContext,
  type PairId,
  readFloorLearning,
  readOrder,
  readPair,
  readPromiseRisk,
} from "#services";
import { handbookCatalog } from "#shop/catalogue/current";
import { floorCatalog } from "#shop/floor/recipe";
import { daysAfter, must, openShop, shopNow, stockWood } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { fewRuns, releasedPairs } from "./scenarios/released-pairs";

const db = databaseForTests();
const denied = { ok: false, refusal: { code: "not-allowed" } };

// Tables are emptied between tests; the process must notice that there is no book any more.
beforeEach(async () => {
  await openContext(systemActor("test"), shopNow);
});

/** Later than the work that is written below. */
const then = daysAfter(shopNow, 42);

/**
 * Every station of these pairs was worked at for `pace` times its usual minutes, each pair on a day of its own from Monday
 * 16 November 2026, 09:00 in Denver.
 */
async function workedThrough(pairIds: readonly PairId[], pace: number): Promise<void> {
  const { heatUpMinutes, dwellMinutes, coolMinutes, unloadMinutes } = floorCatalog().pressProgramme;
  for (const [index, pairId] of pairIds.entries()) {
    const operations = await db().operation.findMany({ where: { pairId } });
    const day = 6 + Math.floor(index / 4) * 7 + (index % 4);
    const startedAt = new Date(daysAfter(shopNow, day).getTime() - 3_600_000);
    for (const { id, station } of operations) {
      const { minutes, crewNeeded, uses } = stationOf(handbookCatalog().floor, station);
      const shut = uses.includes("press") ? heatUpMinutes + dwellMinutes + coolMinutes + unloadMinutes : 0;
      const took = Math.round((pace * minutes.typ) / crewNeeded) + shut;
      const finishedAt = new Date(startedAt.getTime() + took * 60_000);
      const by = { startedByName: `Maker ${index}`, finishedByName: `Maker ${index}` };
      await db().operation.update({ where: { id }, data: { state: "done", startedAt, finishedAt, ...by } });
    }
  }
}

async function pairsOf(shop: Awaited<ReturnType<typeof openShop>>, count: number): Promise<readonly PairId[]> {
  await stockWood(db());
  const pairs = await releasedPairs(shop, count);
  return pairs.map((order) => order.pairs[0]?.pairId ?? raise());
}

describe("a book for the floor", () => {
  it("is the owner's to approve, with a reason, and dates are made with it while promises stay", async () => {
    const shop = fewRuns(await openShop(db()), 40);
    const pairs = await pairsOf(shop, 12);
    const [last, ...worked] = [pairs.at(-1) ?? raise(), ...pairs.slice(0, -1)];
    await workedThrough(worked, 2);
    const owner: Context = { ...shop.as(shop.owner, then), promiseRuns: 40 };
    const seen = must(await readFloorLearning(owner));
    expect(seen.learning).toMatchObject({ pairs: 11, enoughPairs: true });
    const edges = seen.learning.stations.find(({ station }) => station === "edges") ?? raise();
    expect(edges).toMatchObject({ visits: 11, tooShort: 0, forgotten: 0, takenMeanMinutes: 120 });
    expect(edges.learntMeanMinutes / edges.assumedMeanMinutes).toBeGreaterThan(1.3);
    expect(seen.now.stations.find(({ station }) => station === "edges")?.minutes).toEqual(edges.assumed);

    const { fingerprint } = seen;
    const reason = "Read with the press lead";
    for (const ctx of [shop.visitor, shop.as(shop.maker, then), shop.as(shop.desk, then)])
      expect(await approveFloorBook(ctx, { fingerprint, reason })).toMatchObject(denied);
    for (const ctx of [shop.visitor, shop.as(shop.maker, then)])
      expect(await readFloorLearning(ctx)).toMatchObject(denied);
    expect(await approveFloorBook(owner, { fingerprint, reason: " " })).toMatchObject({
      refusal: { code: "invalid-field", path: "reason" },
    });
    expect(await approveFloorBook(owner, { fingerprint: "of another day", reason })).toMatchObject({
      refusal: { code: "floor-record-changed" },
    });

    const { orderId } = must(await readPair(owner, { pairId: last }));
    const promised = must(await readOrder(owner, { orderId })).promisedOn;
    const before = must(await leadTimeToday(owner));
    expect(must(await approveFloorBook(owner, { fingerprint, reason }))).toEqual({ version: "FB-1" });
    const after = must(await leadTimeToday(owner));
    expect(after.workingDays.p50).toBeGreaterThan(before.workingDays.p50);
    expect(must(await readOrder(owner, { orderId })).promisedOn).toBe(promised);

    const again = must(await readFloorLearning(owner));
    const learnt = seen.learning.proposal.stations.find(({ station }) => station === "edges")?.minutes;
    expect(again.now.stations.find(({ station }) => station === "edges")?.minutes).toEqual(learnt);
    expect(again.books).toMatchObject([{ version: "FB-1", reason, approvedBy: "Ola Owner", summary: { pairs: 11 } }]);
    // The same days teach the same again, not twice as much.
    expect(again.learning.stations).toEqual(seen.learning.stations);
    expect(again.learning.proposal.version).toBe("FB-2");
    // Whoever still has the old page approves nothing.
    expect(await approveFloorBook(owner, { fingerprint, reason })).toMatchObject({
      refusal: { code: "floor-record-changed" },
    });
    expect(await db().event.count({ where: { kind: "floor-book-approved" } })).toBe(1);
  });

  it("needs pairs that came through, and leaves out what was no work", async () => {
    const shop = await openShop(db());
    const pairs = await pairsOf(shop, 2);
    await workedThrough(pairs, 1);
    const [first = raise()] = await db().operation.findMany({ where: { pairId: pairs[0] ?? "", station: "edges" } });
    const startedAt = first.startedAt ?? raise();
    await db().operation.update({
      where: { id: first.id },
      data: { finishedAt: new Date(startedAt.getTime() + 1000) },
    });
    const [second = raise()] = await db().operation.findMany({ where: { pairId: pairs[1] ?? "", station: "edges" } });
    await db().operation.update({
      where: { id: second.id },
      data: { finishedAt: daysAfter(second.startedAt ?? raise(), 1) },
    });
    const owner = shop.as(shop.owner, then);
    const { learning } = must(await readFloorLearning(owner));
    expect(learning.stations.find(({ station }) => station === "edges")).toMatchObject({
      visits: 0,
      tooShort: 1,
      forgotten: 1,
    });
    expect(learning.leftOut.map(({ why }) => why).sort()).toEqual(["forgotten", "too-short"]);
    expect(learning.personDays.failures).toBe(0);
    const away = (id: string, madeAt: Date, withdrawnAt: Date | null) =>
      db().floorChange.create({
        data: {
          id,
          kind: "person-away",
          data: { kind: "person-away", person: "c1" },
          fromAt: daysAfter(shopNow, 13),
          toAt: daysAfter(shopNow, 15),
          reason: "ill",
          source: "incident",
          madeAt,
          madeByName: "Ola Owner",
          withdrawnAt,
        },
      });
    // From Monday 23 November 10:00 for two days: the plan knew of the one entered two weeks before. Of the other, which ended
    // after one day, that day is lost.
    await away("planned", daysAfter(shopNow, -1), null);
    await away("ill", daysAfter(shopNow, 13), daysAfter(shopNow, 14));
    expect(must(await readFloorLearning(owner)).learning.personDays.failures).toBe(1);
    const now = must(await readFloorLearning(owner));
    expect(await approveFloorBook(owner, { fingerprint: now.fingerprint, reason: "too early" })).toMatchObject({
      refusal: { code: "too-few-pairs-through", pairs: 2, least: 8 },
    });
  });
});

describe("promises that fail together", () => {
  it("are told from the futures that dates are made of, to those who may see promises", async () => {
    const shop = fewRuns(await openShop(db()), 60);
    expect(must(await readPromiseRisk(shop.as(shop.desk)))).toBeNull();
    await pairsOf(shop, 4);
    expect(await readPromiseRisk(shop.as(shop.maker))).toMatchObject(denied);
    const risk = must(await readPromiseRisk(shop.as(shop.owner))) ?? raise();
    expect(risk.promises).toBe(4);
    expect(risk.runs).toBeGreaterThanOrEqual(60);
    expect(risk.histogram.reduce((sum, runs) => sum + runs, 0)).toBe(risk.runs);
    expect(risk.oneOfTwenty).toBeGreaterThanOrEqual(risk.oneOfTen);
    expect(risk.oneOfTen).toBeGreaterThanOrEqual(0);
  });
});

function raise(): never {
  throw new Error("not there");
}

import fc from "fast-check";
import { describe, expect, it } from "vitest";
import type { Db } from "#data/client";
import { pairById } from "#data/pairs";
import { insertStrips } from "#data/strips";
import { noteText } from "#papers/build-sheet/compose-notes";
import { decideStrips, type PairId, readOrder, readPair, readStripStock, stripsShort } from "#services";
import { pairNotes } from "#services/papers/pair-notes";
import { releasedOrder, type SaleOptions } from "../../support/builders/sale";
import { daysAfter, must, openShop, shopNow, strips, type TestShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();
const later = daysAfter(shopNow, 1);
const midlow: SaleOptions = { choices: { "choices.model": "midlow-95", "choices.lengthCm": 178 } };

const makerOf = (shop: TestShop) => ({ ...shop.as(shop.maker, later), promiseRuns: 20 });

async function ordered(shop: TestShop, phone: string): Promise<{ orderId: string; pairId: PairId }> {
  const order = await releasedOrder(shop, { ...midlow, phone });
  return { orderId: order.orderId, pairId: order.pairs[0]?.pairId as PairId };
}

/** Three alike ash strips and one that is far off: one of four is lacking within 5 %. */
async function lackOneAsh(): Promise<void> {
  const [far] = strips("ash", 1, 16_900, 700);
  const three = strips("ash", 3, 13_200, 670).map((strip) => ({ ...strip, id: `late-${strip.id}` }));
  await insertStrips(db(), [...three, ...(far === undefined ? [] : [{ ...far, id: "far-ash" }])]);
}

describe("scenario 20: strips are short", () => {
  it("offers another species, a later order's strips, and waiting; the choice is logged and stock told what to buy", async () => {
    const shop = await openShop(db());
    const ctx = makerOf(shop);
    await insertStrips(db(), [
      ...strips("aspen", 80, 8910, 426),
      ...strips("ash", 4, 13_200, 670),
      ...strips("maple", 12, 13_850, 705),
    ]);
    const other = await ordered(shop, "303 555 0110");
    await db().order.update({ where: { id: other.orderId }, data: { promisedOn: "2027-02-12" } });
    await lackOneAsh();
    const { pairId } = await ordered(shop, "303 555 0111");

    const short = must(await stripsShort(ctx, { pairId, expectedOn: "2026-11-23" }));
    expect(short.isShort).toBe(true);
    expect(short.why).toEqual([{ code: "spread-too-wide", position: "I", limitPercent: 5 }]);
    expect(short.options.map(({ id }) => id)).toEqual(["other-species:I:maple", `take-from:${other.pairId}`, "wait"]);
    // Nothing was begun and the batch comes in nine working days: the pair's own day moves by working days.
    expect(short.waiting?.movedWorkingDays ?? 0).toBeGreaterThan(2);
    expect(must(await readStripStock(ctx)).short).toMatchObject([{ pairId, held: 0, needed: 14 }]);

    const decision = { pairId, version: short.version, reason: "the other one is due in February" };
    must(await decideStrips(ctx, { ...decision, option: `take-from:${other.pairId}` }));
    const pair = must(await readPair(ctx, { pairId }));
    expect(pair.strips).toHaveLength(14);
    expect(pair.strips.filter(({ position }) => position === "I").every(({ species }) => species === "ash")).toBe(true);
    expect(pair.history.find(({ kind }) => kind === "strips-decided")?.data).toMatchObject({
      option: { kind: "take-from" },
      reason: "the other one is due in February",
    });
    const robbed = must(await readPair(ctx, { pairId: other.pairId }));
    expect(robbed.strips).toHaveLength(0);
    expect(robbed.history.some(({ kind }) => kind === "strips-given-away")).toBe(true);
    const history = must(await readOrder(shop.as(shop.desk, later), { orderId: other.orderId as never })).history;
    expect(history.some(({ kind }) => kind === "promise-changed")).toBe(false);
    const stock = must(await readStripStock(ctx));
    expect(stock.short.map((each) => each.pairId)).toEqual([other.pairId]);
    // 8 ash in all, 4 of them held: 136 are lacking to the 140 that a rack keeps (common practice, no source).
    expect(stock.species.find(({ species }) => species === "ash")).toMatchObject({ free: 4, reserved: 4, toBuy: 136 });
  });

  it("costs next to nothing in mass and flex to lay maple outside, where the outline mills it away", async () => {
    const shop = await openShop(db());
    const ctx = makerOf(shop);
    await insertStrips(db(), [
      ...strips("aspen", 6, 8910, 426),
      ...strips("ash", 8, 13_200, 670),
      ...strips("maple", 8, 13_850, 705),
    ]);
    const { pairId } = await ordered(shop, "303 555 0112");
    const short = must(await stripsShort(ctx, { pairId }));
    const outside = short.options.find(({ id }) => id === "other-species:O:maple");
    if (outside?.kind !== "other-species") throw new Error(`no maple outside among ${JSON.stringify(short.options)}`);
    // A plain sum over whole strips says +45 g and +1 %, and that for the smaller step from ash (worked out beforehand);
    // weighed by the width that the outline leaves it must be well below.
    expect(outside.massG).toBeGreaterThan(0);
    expect(outside.massG).toBeLessThan(22);
    expect(Math.abs(outside.ratioPercent)).toBeLessThan(1);
    expect(outside.isDenseOutside).toBe(true);
    must(await decideStrips(ctx, { pairId, version: short.version, option: outside.id, reason: "no aspen" }));
    const { strips: held } = must(await readPair(ctx, { pairId }));
    expect(held.filter(({ position }) => position === "O").map(({ species }) => species)).toEqual(
      Array(4).fill("maple"),
    );
    const record = await pairById(db(), pairId);
    expect(record === null ? [] : (await pairNotes(db(), record)).map(noteText)).toEqual([
      expect.stringMatching(/^Strips at O: maple instead of aspen\. Mill the core .*mm against the table\.$/),
    ]);
    const again = must(await stripsShort(ctx, { pairId }));
    const late = { pairId, version: again.version, option: "wait", expectedOn: "2026-12-01", reason: "late" };
    expect(await decideStrips(ctx, late)).toMatchObject({ ok: false, refusal: { code: "strips-not-short" } });
  });

  it("makes a core of softer strips thicker, and waits for a batch until it has come", async () => {
    const shop = await openShop(db());
    const ctx = makerOf(shop);
    await insertStrips(db(), [...strips("aspen", 40, 8910, 426), ...strips("ash", 8, 10_400, 600)]);
    const { pairId } = await ordered(shop, "303 555 0113");
    const short = must(await stripsShort(ctx, { pairId }));
    expect(short.why).toMatchObject([{ code: "off-target" }]);
    const thicker = short.options.find(({ kind }) => kind === "other-thickness");
    if (thicker?.kind !== "other-thickness") throw new Error("no other thickness");
    expect(thicker.modulusPercent).toBeLessThan(-3);
    expect(thicker.thicknessMm).toBeGreaterThan(0);
    const wait = { pairId, version: short.version, option: "wait", reason: "a batch is on its way" };
    expect(await decideStrips(ctx, wait)).toMatchObject({ ok: false, refusal: { path: "expectedOn" } });
    expect(await decideStrips(ctx, { ...wait, expectedOn: "2072-11-25" })).toMatchObject({
      refusal: { path: "expectedOn" },
    });
    must(await decideStrips(ctx, { ...wait, expectedOn: "2026-11-25" }));
    const waits = must(await stripsShort(ctx, { pairId }));
    expect(waits.waitsUntil).toBe("2026-11-25");
    await insertStrips(
      db(),
      strips("ash", 8, 13_200, 670).map((strip) => ({ ...strip, id: `batch-${strip.id}` })),
    );
    const come = must(await stripsShort(ctx, { pairId }));
    expect(come.options.map(({ id }) => id)).toEqual(["as-ordered", "wait"]);
    must(await decideStrips(ctx, { pairId, version: come.version, option: "as-ordered", reason: "it has come" }));
    expect(must(await readPair(ctx, { pairId })).strips).toHaveLength(14);
    expect(await db().pairHold.count({ where: { pairId, clearedAt: null } })).toBe(0);
    const stale = { pairId, version: come.version, option: "as-ordered", reason: "again" };
    expect(await decideStrips(ctx, stale)).toMatchObject({ ok: false, refusal: { code: "strips-not-short" } });
    expect(await decideStrips(shop.as(shop.desk, later), stale)).toMatchObject({
      ok: false,
      refusal: { code: "not-allowed" },
    });
  });

  it("never holds a strip twice nor fills a place twice, whatever is decided", async () => {
    const shop = await openShop(db());
    const ctx = makerOf(shop);
    await insertStrips(db(), [
      ...strips("aspen", 24, 8910, 426),
      ...strips("ash", 6, 13_200, 670),
      ...strips("maple", 5, 13_850, 705),
    ]);
    const pairs: PairId[] = [];
    for (const [index, due] of ["2027-01-08", "2027-01-20", "2027-02-10"].entries()) {
      const { pairId, orderId } = await ordered(shop, `303 555 012${index}`);
      await db().order.update({ where: { id: orderId }, data: { promisedOn: due } });
      pairs.push(pairId);
    }
    const step = fc.record({ pair: fc.nat({ max: 2 }), pick: fc.nat({ max: 7 }) });
    await fc.assert(
      fc.asyncProperty(fc.array(step, { minLength: 1, maxLength: 3 }), async (steps) => {
        for (const { pair, pick } of steps) {
          const pairId = pairs[pair] as PairId;
          const { isShort, options, version } = must(await stripsShort(ctx, { pairId }));
          if (!isShort) continue;
          const option = options[pick % options.length]?.id ?? "wait";
          must(await decideStrips(ctx, { pairId, version, option, expectedOn: "2026-12-04", reason: "tried" }));
          await holdsOnce(db());
        }
      }),
      { numRuns: 6 },
    );
    await holdsOnce(db());
  });
});

async function holdsOnce(client: Db): Promise<void> {
  const held = await client.strip.findMany({ where: { heldByPairId: { not: null } } });
  const places = held.map((strip) => [strip.heldByPairId, strip.side, strip.position, strip.place].join(" "));
  expect(new Set(places).size).toBe(places.length);
  expect(held.every(({ state }) => state === "reserved")).toBe(true);
  const perPair = [...new Set(held.map((strip) => strip.heldByPairId))].map(
    (pairId) => held.filter((strip) => strip.heldByPairId === pairId).length,
  );
  expect(perPair.every((count) => count === 14)).toBe(true);
}

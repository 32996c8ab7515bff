import { describe, expect, it } from "vitest";
import { pairById } from "#data/pairs";
import { noteText } from "#papers/build-sheet/compose-notes";
import {
  buildSheetDocument,
  findPairByCode,
  finishOperation,
  type PairId,
  previewRework,
  readOrder,
  readPair,
  startOperation,
  startRework,
} from "#services";
import { pairNotes } from "#services/papers/pair-notes";
import { releasedOrder, type SaleOptions } from "../../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood, type TestShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";

const db = databaseForTests();

const counterchanged: SaleOptions = {
  choices: {
    "choices.model": "midlow-95",
    "choices.lengthCm": 178,
    "choices.base": { left: "black", right: "yellow", inlay: "counterchange", inlayText: "ROBIN" },
  },
};

/** Ticks one station, whichever of its visits is ready. */
async function work(shop: TestShop, pairId: PairId, station: string, now: Date): Promise<void> {
  const maker = { ...shop.as(shop.maker, now), promiseRuns: 20 };
  const { operations } = must(await readPair(maker, { pairId }));
  const ready = operations.find((operation) => operation.station === station && operation.state === "ready");
  if (ready === undefined) throw new Error(`station ${station} is not ready`);
  const running = must(await startOperation(maker, { operationId: ready.operationId, version: ready.version }));
  must(await finishOperation(maker, { operationId: running.operationId, version: running.version }));
}

async function pressedPair(shop: TestShop) {
  await stockWood(db());
  const order = await releasedOrder(shop, counterchanged);
  const pairId = order.pairs[0]?.pairId as PairId;
  for (const [index, station] of [
    "release",
    "strips",
    "core-glue",
    "sidewalls",
    "profile",
    "base-cut",
    "edges",
    "print",
    "kit",
    "lay-up",
    "press",
  ].entries())
    await work(shop, pairId, station, daysAfter(shopNow, index + 1));
  const ctx = { ...shop.as(shop.maker, daysAfter(shopNow, 13)), promiseRuns: 40 };
  return { order, pairId, ctx };
}

const weighing = { C: 1, I: 1, M: 1, O: 1 } as const;

describe("scenario 19: one ski must be built again", () => {
  it("routes only R again from station 2, with wood like L's, letters of L's colour, L parked, a new serial, and the promise kept", async () => {
    const shop = await openShop(db());
    const { order, pairId, ctx } = await pressedPair(shop);
    must(await buildSheetDocument(ctx, { pairId, paper: "A4" }));
    const before = must(await readPair(ctx, { pairId }));
    const promised = before.promisedOn;
    const input = { pairId, side: "R", fromStation: "strips", fault: "void-after-press" } as const;

    const preview = must(await previewRework(ctx, input));
    expect(preview.stations.map(({ station }) => station)).toEqual([
      "strips",
      "core-glue",
      "sidewalls",
      "profile",
      "base-cut",
      "edges",
      "print",
      "kit",
      "lay-up",
      "press",
    ]);
    expect(preview.letters).toEqual({ text: "ROBIN", sheetColour: "black" });
    expect(preview.strips).toMatchObject({ isFound: true, count: 7 });
    // Two bonds and a press cycle with its rest again: two working days at the very least (waits of 4–24 h and a rest of
    // 24 h or more; common practice, no source).
    expect(preview.effect.own?.movedWorkingDays).toBeGreaterThanOrEqual(2);
    expect(must(await readPair(ctx, { pairId })).skis).toHaveLength(2);

    const start = { ...input, version: preview.version, note: "void at the tip", location: "rack 3, left" };
    must(await startRework(ctx, start));
    const after = must(await readPair(ctx, { pairId }));
    expect(after.skis.map(({ serial, state, location }) => [serial.slice(8, -2), state, location])).toEqual([
      ["L", "held", "rack 3, left"],
      ["R", "scrapped", null],
      ["R2", "good", null],
    ]);
    const again = after.operations.filter(({ visit }) => visit === 1);
    expect(again.map(({ station, side }) => [station, side])).toEqual(
      ["strips", "core-glue", "sidewalls", "profile", "base-cut", "edges", "print", "kit", "lay-up", "press"].map(
        (station) => [station, "R"],
      ),
    );
    expect(again.filter(({ state }) => state === "ready").map(({ station }) => station)).toEqual([
      "strips",
      "base-cut",
      "print",
      "kit",
    ]);
    expect(after.operations.filter(({ visit }) => visit === 0).filter(({ state }) => state === "done")).toHaveLength(
      11,
    );

    // The new ski may differ from its twin by 1.5 % (the shop's own limit), summed here without the program's weights.
    const sum = (side: "L" | "R") =>
      after.strips
        .filter((strip) => strip.side === side)
        .reduce((all, { modulusMpa, position }) => all + weighing[position] * modulusMpa, 0);
    expect(after.strips.filter(({ side }) => side === "R")).toHaveLength(7);
    expect(Math.abs(sum("R") / sum("L") - 1)).toBeLessThan(0.015);
    const ids = (pair: typeof after, side: "L" | "R") =>
      pair.strips.filter((strip) => strip.side === side).map(({ stripId }) => stripId);
    expect(ids(after, "L")).toEqual(ids(before, "L"));
    const scrapped = await db().strip.findMany({ where: { id: { in: ids(before, "R") } } });
    expect(scrapped.every(({ state, heldByPairId }) => state === "used" && heldByPairId === null)).toBe(true);

    expect(after.prints).toMatchObject([{ voided: { reason: `${before.skis[1]?.serial} is built again` } }]);
    const record = await pairById(db(), pairId);
    const [old, serial] = [before.skis[0]?.serial, after.skis[2]?.serial];
    expect(record === null ? [] : (await pairNotes(db(), record)).map(noteText)).toEqual([
      `Only ${serial} is built: stations 2, 3, 4, 5, 6, 7, 8, 9, 10, 11.`,
      `${old} is parked: rack 3, left.`,
      "Cut an extra letter set from a spare black sheet.",
    ]);
    expect(must(await buildSheetDocument(ctx, { pairId, paper: "A4" })).bytes.length).toBeGreaterThan(1000);

    expect(after.promisedOn).toBe(promised);
    const history = must(await readOrder(shop.as(shop.desk, ctx.now), { orderId: order.orderId })).history;
    expect(history.some(({ kind }) => kind === "promise-changed")).toBe(false);
    const started = after.history.find(({ kind }) => kind === "rework-started");
    expect(started?.data).toMatchObject({ from: 2, fault: "void-after-press" });
    expect(after.history.some(({ kind }) => kind === "ski-scrapped")).toBe(true);
    const scan = must(await findPairByCode(ctx, { code: before.skis[1]?.serial ?? "" }));
    expect(scan).toMatchObject({ side: "R", isScrapped: true });

    expect(await startRework(ctx, { ...start, version: after.version })).toMatchObject({
      ok: false,
      refusal: { code: "rework-under-way" },
    });
  });

  it("is ticked visit by visit, joins the other ski again at the trimming, and ends ready", async () => {
    const shop = await openShop(db());
    const { pairId, ctx } = await pressedPair(shop);
    const { version } = must(await readPair(ctx, { pairId }));
    const input = { pairId, side: "R", fromStation: "strips", fault: "void-after-press" } as const;
    must(await startRework(ctx, { ...input, version, note: "void at the tip", location: "rack 3" }));
    const isReady = async (station: string) =>
      must(await readPair(ctx, { pairId })).operations.some(
        (each) => each.station === station && each.state === "ready",
      );
    for (const [index, station] of ["base-cut", "edges", "print", "kit", "strips", "core-glue", "sidewalls"].entries())
      await work(shop, pairId, station, daysAfter(ctx.now, index + 1));
    // Everything but the core's milling is done a second time: the first visit of station 5 must not open the lay-up.
    expect(await isReady("lay-up")).toBe(false);
    await work(shop, pairId, "profile", daysAfter(ctx.now, 9));
    expect(await isReady("lay-up")).toBe(true);
    for (const [index, station] of ["lay-up", "press", "trim", "finish"].entries())
      await work(shop, pairId, station, daysAfter(ctx.now, 12 + 2 * index));
    const joined = must(await readPair(ctx, { pairId }));
    expect(joined.skis.map(({ state }) => state)).toEqual(["good", "scrapped", "good"]);
    await work(shop, pairId, "check", daysAfter(ctx.now, 22));
    expect(must(await readPair(ctx, { pairId })).state).toBe("ready");
  });

  it("opens a pair that was ready again, and refuses what has not been reached, what is stale, and who may not", async () => {
    const shop = await openShop(db());
    const { pairId, ctx } = await pressedPair(shop);
    const { version } = must(await readPair(ctx, { pairId }));
    const input = { pairId, side: "L", fromStation: "trim", fault: "topsheet-nicked" } as const;
    expect(await previewRework(ctx, input)).toMatchObject({ ok: false, refusal: { code: "station-not-reached" } });
    const from8 = { ...input, fromStation: "print", note: "nicked" };
    expect(await startRework(ctx, { ...from8, version: version + 1 })).toMatchObject({
      ok: false,
      refusal: { code: "changed-meanwhile" },
    });
    expect(await startRework(ctx, { ...from8, version, note: " " })).toMatchObject({
      ok: false,
      refusal: { code: "reason-missing", path: "note" },
    });
    expect(await startRework(shop.as(shop.desk, ctx.now), { ...from8, version })).toMatchObject({
      ok: false,
      refusal: { code: "not-allowed" },
    });
    for (const [index, station] of ["trim", "finish", "check"].entries())
      await work(shop, pairId, station, daysAfter(ctx.now, 2 * index + 2));
    const late = { ...ctx, now: daysAfter(ctx.now, 8) };
    const ready = must(await readPair(late, { pairId }));
    expect(ready.state).toBe("ready");
    const begun = must(await startRework(late, { ...from8, version: ready.version }));
    expect(begun.strips).toBeNull();
    expect(begun.effect.ready?.p90 ?? "").toMatch(/^2026-1[12]-/);
    const open = must(await readPair(late, { pairId }));
    expect(open.state).toBe("building");
    expect(open.strips).toHaveLength(14);
    expect(open.operations.filter(({ visit }) => visit === 1).map(({ station }) => station)).toEqual([
      "print",
      "kit",
      "lay-up",
      "press",
      "trim",
      "finish",
      "check",
    ]);
  });

  it("lets the pair wait for wood when no strips are like the other ski's", async () => {
    const shop = await openShop(db());
    const { pairId, ctx } = await pressedPair(shop);
    await db().strip.updateMany({ where: { state: "free" }, data: { modulusMpa: 6000 } });
    const { version } = must(await readPair(ctx, { pairId }));
    const input = { pairId, side: "R", fromStation: "strips", fault: "void-after-press" } as const;
    const begun = must(await startRework(ctx, { ...input, version, note: "void" }));
    expect(begun.strips).toEqual({ isFound: false, limitPercent: 1.5 });
    const holds = await db().pairHold.findMany({ where: { pairId } });
    expect(holds).toMatchObject([{ reason: "material", station: "core-glue", clearedAt: null }]);
  });
});

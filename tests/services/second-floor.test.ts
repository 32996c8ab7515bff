/**
 * One pair goes the whole way on another shop's floor (tests/fixtures/floors/nine-stations.json): other ids and numbers, walls
 * bonded to the blank and milled with it, two presses, no print of its own. Whatever leaned on the demo's stations would
 * stumble here. What is expected follows from the fixture by hand.
 */
import { rmSync } from "node:fs";
import { afterAll, beforeAll, describe, expect, it, vi } from "vitest";
import type * as Catalogs from "#catalog";
import type { SheetChoices } from "#engine/assessment";
import type { Context, PairId } from "#services";
import { pdfPages } from "../papers/pdf-text";
import { daysAfter, must, shopNow, type TestShop } from "../support/builders/shop";
import { contentWithFloor } from "../support/content-with-floor";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const content = contentWithFloor("nine-stations");
const runs = 20;

type Services = typeof import("#services");
type Sales = typeof import("../support/builders/sale");
type Shops = typeof import("../support/builders/shop");

let services: Services;
let sales: Sales;
let shops: Shops;

// The programme reads its content once a process: it is loaded anew here, reading the other folder, and once more behind us.
beforeAll(async () => {
  vi.resetModules();
  vi.doMock("#catalog", async (original) => {
    const catalogs = await original<typeof Catalogs>();
    return { ...catalogs, loadCatalog: () => catalogs.loadCatalog(content) };
  });
  services = await import("#services");
  sales = await import("../support/builders/sale");
  shops = await import("../support/builders/shop");
});

afterAll(() => {
  vi.doUnmock("#catalog");
  vi.resetModules();
  rmSync(content, { recursive: true });
});

const way = ["papers", "blanks", "walls", "router", "bottoms", "tray", "resin", "hot", "bench"] as const;

interface Pair {
  readonly shop: TestShop;
  readonly pairId: PairId;
}

const maker = (shop: TestShop, now: Date): Context => ({ ...shop.as(shop.maker, now), promiseRuns: runs });
const desk = (shop: TestShop, now: Date): Context => ({ ...shop.as(shop.desk, now), promiseRuns: runs });

async function visitAt({ shop, pairId }: Pair, station: string, now: Date) {
  const { operations } = must(await services.readPair(maker(shop, now), { pairId }));
  const visit = operations.filter((each) => each.station === station).at(-1);
  if (visit === undefined) throw new Error(`the pair has no visit at "${station}"`);
  return visit;
}

async function start(pair: Pair, station: string, now: Date, press?: string) {
  const { operationId, version } = await visitAt(pair, station, now);
  return services.startOperation(maker(pair.shop, now), {
    operationId,
    version,
    ...(press === undefined ? {} : { press }),
  });
}

async function finish(pair: Pair, station: string, now: Date) {
  const { operationId, version } = await visitAt(pair, station, now);
  return services.finishOperation(maker(pair.shop, now), { operationId, version });
}

async function work(pair: Pair, stations: readonly string[], from: Date, press?: string): Promise<Date> {
  let now = from;
  for (const station of stations) {
    now = daysAfter(now, 1);
    must(await start(pair, station, now, station === "hot" ? press : undefined));
    must(await finish(pair, station, now));
  }
  return now;
}

async function ready(pair: Pair, now: Date): Promise<readonly string[]> {
  const { operations } = must(await services.readPair(maker(pair.shop, now), { pairId: pair.pairId }));
  return operations.filter(({ state }) => state === "ready").map(({ station }) => station);
}

async function openShop(): Promise<TestShop> {
  const shop = await shops.openShop(db());
  await shops.stockWood(db());
  return { ...shop, as: (actor, now) => ({ ...shop.as(actor, now), promiseRuns: runs }) };
}

async function releasedPair(shop: TestShop, phone: string) {
  const order = await sales.releasedOrder(shop, { phone });
  const pairId = order.pairs[0]?.pairId;
  if (pairId === undefined) throw new Error("the order has no pair");
  return { shop, pairId, orderId: order.orderId };
}

async function text(document: Promise<Awaited<ReturnType<Services["buildSheetDocument"]>>>): Promise<string> {
  return pdfPages(must(await document).bytes).join(" ");
}

describe("a pair on another floor", () => {
  it("is quoted, promised, planned on two presses, built, built again, shipped; its papers name its stations", async () => {
    const shop = await openShop();

    // Sheet, quote, order: nothing is promised before the clock starts.
    const sheetId = await sales.filledSheet(shop);
    const assessed = must(await services.assess(desk(shop, shopNow), { sheetId }));
    const names = new Set(must(await services.queueBoard(desk(shop, shopNow))).stations.map(({ station }) => station));
    expect([...names]).toEqual([...way]);
    for (const { station } of assessed.dateRange?.drivers ?? []) {
      if (station !== undefined) expect(way as readonly string[]).toContain(station);
    }
    const { quote } = must(await services.createQuote(desk(shop, shopNow), { sheetId }));
    const accepted = must(
      await services.acceptQuote(desk(shop, shopNow), { quoteId: quote.quoteId, how: "phone", name: "Robin Alder" }),
    );
    const { orderId } = accepted;
    const pairId = accepted.pairs[0]?.pairId as PairId;
    const pair = { shop, pairId };
    const gates = must(await services.readPair(maker(shop, shopNow), { pairId })).gates;
    expect(gates.waitingFor).toEqual(["deposit", "specification-lock"]);
    expect(must(await services.readOrder(desk(shop, shopNow), { orderId })).promisedOn).toBeNull();

    // Gates: the clock starts, a day is promised, the plan has a press for it.
    must(await services.lockSpecification(desk(shop, shopNow), { pairId }));
    must(await services.recordDeposit(desk(shop, shopNow), { orderId, method: "counter", reference: "receipt 1" }));
    const order = must(await services.readOrder(desk(shop, shopNow), { orderId }));
    expect(order).toMatchObject({ state: "released", promiseClass: "promise" });
    expect(order.promisedOn).not.toBeNull();
    // The same model twice more: of two presses neither stands idle, and one mould is in one press at a time.
    const second = await releasedPair(shop, "303 555 0102");
    const third = await releasedPair(shop, "303 555 0103");
    const board = must(await services.queueBoard(desk(shop, shopNow), { days: 14 }));
    const slots = board.pressPlan.flatMap((day) => day.slots);
    expect(new Set(slots.map((slot) => slot.pairId))).toEqual(new Set([pairId, second.pairId, third.pairId]));
    expect(slots.every(({ press }) => ["North press", "South press"].includes(press))).toBe(true);

    // Papers, before anything has begun.
    const sheet = await text(services.buildSheetDocument(maker(shop, shopNow), { pairId, paper: "A4" }));
    for (const name of [
      "Papers to the bench",
      "Blank glued up",
      "Walls bonded to the blank",
      "Blank and walls milled to thickness",
      "Bottoms cut and edged",
      "Cloths and printed topsheets on the tray",
      "Laid up wet",
      "In the press",
      "Trimmed, ground, measured, packed",
    ]) {
      expect(sheet).toContain(name);
    }
    expect(sheet.indexOf("Walls bonded")).toBeLessThan(sheet.indexOf("Blank and walls milled"));
    // Grinding and measuring are one bench here, number 90.
    expect(sheet).toMatch(/Tune\s*station 90/i);
    expect(sheet).not.toContain("Print and sublimate");
    const serial = must(await services.readPair(maker(shop, shopNow), { pairId })).serial;
    const kit = await text(services.kitListDocument(maker(shop, shopNow), { pairId, paper: "A4" }));
    expect(kit).toContain(serial);
    expect(kit).toContain("Topsheet");
    expect(await text(services.labelsDocument(maker(shop, shopNow), { pairId, paper: "A4" }))).toContain(`${serial}-L`);
    const confirmation = await text(services.orderDocument(desk(shop, shopNow), { orderId, paper: "A4" }));
    expect(confirmation).toContain("up to the start of Walls bonded to the blank");
    expect(confirmation).toContain("up to the start of Cloths and printed topsheets on the tray");

    // Built: only what the floor allows.
    expect(await start(pair, "walls", shopNow)).toMatchObject({
      refusal: { code: "operation-blocked", waitingFor: [20] },
    });
    expect(await ready(pair, shopNow)).toEqual(["papers"]);
    let now = await work(pair, ["papers"], shopNow);
    expect(await ready(pair, now)).toEqual(["blanks", "bottoms", "tray"]);
    now = await work(pair, ["blanks"], now);
    // The glue holds the blank for at least 90 minutes.
    const early = await start(pair, "walls", new Date(now.getTime() + 89 * 60_000));
    expect(early).toMatchObject({ refusal: { code: "too-early" } });
    now = await work(pair, ["walls", "router", "bottoms"], now);
    expect(await start(pair, "resin", now)).toMatchObject({ refusal: { code: "operation-blocked", waitingFor: [60] } });
    now = await work(pair, ["tray", "resin"], now);
    // Both presses are free: which one has to be said, and one that is taken takes no second pair.
    await work(second, way.slice(0, 7), shopNow);
    const later = daysAfter(now, 2);
    expect(await start(pair, "hot", later)).toMatchObject({ refusal: { code: "press-missing" } });
    must(await start(pair, "hot", later, "north"));
    expect(await start(second, "hot", later, "north")).toMatchObject({
      refusal: { code: "station-full", place: "North press", occupants: [`${serial} (Mo Maker)`] },
    });
    must(await start(second, "hot", later));
    expect((await visitAt(second, "hot", later)).pressName).toBe("South press");
    must(await finish(pair, "hot", later));
    // Rests beside the press for twelve hours at least.
    expect(await start(pair, "bench", daysAfter(later, 0.4))).toMatchObject({ refusal: { code: "too-early" } });
    now = daysAfter(later, 1);

    // One ski again: everything from the blank on, in the order of this floor.
    const again = { pairId, side: "R", fromStation: "blanks", fault: "void-after-press" } as const;
    const preview = must(await services.previewRework(maker(shop, now), again));
    expect(preview.stations.map(({ number }) => number)).toEqual([20, 30, 40, 50, 60, 70, 80]);
    must(
      await services.startRework(maker(shop, now), {
        ...again,
        version: preview.version,
        note: "void",
        location: "rack",
      }),
    );
    expect(await ready(pair, now)).toEqual(["blanks", "bottoms", "tray"]);
    const redone = await text(services.buildSheetDocument(maker(shop, now), { pairId, paper: "A4" }));
    expect(redone).toContain("stations 20, 30, 40, 50, 60, 70, 80");
    now = await work(pair, way.slice(1), now, "north");
    const built = must(await services.readPair(maker(shop, now), { pairId }));
    expect(built.state).toBe("ready");
    expect(built.skis.filter(({ state }) => state === "good").map(({ side, build }) => [side, build])).toEqual([
      ["L", 1],
      ["R", 2],
    ]);
    const progress = must(await services.readProgress(desk(shop, now), { pairId }));
    expect(progress.steps.map(({ key }) => key)).toEqual([
      "accepted",
      "ready-to-build",
      "core",
      "base",
      "press",
      "check",
      "shipped",
    ]);

    const owner = shop.as(shop.owner, now);
    must(await services.shipOrder(owner, { orderId, unpaidReason: "collected, pays at the counter" }));
    expect(must(await services.readOrder(owner, { orderId })).state).toBe("shipped");
  });

  it("closes each part of the specification where its own stations use it, and keeps what they have used", async () => {
    const shop = await openShop();
    const { pairId, orderId } = await releasedPair(shop, "303 555 0104");
    const pair = { shop, pairId };
    const stage = async (now: Date) => must(await services.readOrder(desk(shop, now), { orderId })).ifCancelled?.stage;
    const editing = (choices: SheetChoices, now: Date) => services.previewEdit(desk(shop, now), { pairId, choices });
    const thick = { flexRatio: 1.2 };
    let now = await work(pair, ["papers", "blanks"], shopNow);
    expect(await stage(now)).toBe("locked");
    expect(await editing({ core: "beech-poplar" }, now)).toMatchObject({
      refusal: { code: "edit-too-late", part: "core", stationNumber: 20 },
    });
    now = await work(pair, ["walls"], now);
    expect(await stage(now)).toBe("core-milled");
    expect((await editing(thick, now)).ok).toBe(true);
    now = await work(pair, ["router"], now);
    expect(await editing(thick, now)).toMatchObject({
      refusal: { code: "edit-too-late", part: "flex", stationNumber: 40 },
    });
    now = await work(pair, ["tray"], now);
    expect(await stage(now)).toBe("sheets-cut");
    now = await work(pair, ["bottoms", "resin", "hot"], now, "south");
    expect(await stage(now)).toBe("pressed");
    must(await services.cancelOrder(desk(shop, now), { orderId, reason: "changed their mind" }));
    expect(must(await services.readOrder(desk(shop, now), { orderId })).state).toBe("cancelled");
  });

  it("has no way for a print on its own", async () => {
    const { currentCatalog } = await import("#shop/catalogue/current");
    const { promiseRuns } = await import("#engine/routing");
    const { shopMinuteOf } = await import("#shop/time/shop-time");
    const { floor } = currentCatalog();
    const situation = { floor, changes: [], pairs: [], now: shopMinuteOf(shopNow, floor.hours.timeZone) };
    const route = {
      kind: "print-only",
      mould: null,
      mouldFamily: null,
      extraMinutes: [],
      hasOwnGraphic: true,
    } as const;
    expect(promiseRuns(situation, { route, waitingOn: [] }, { runs: 1, seed: 1 })).toMatchObject({
      ok: false,
      refusal: { code: "unknown-station", station: "print" },
    });
  });
});

/** What stands in the way of beginning work. The rules are the shop's own: common practice, no source. */
import { describe, expect, it } from "vitest";
import { isoDate } from "#engine/units";
import {
  applyWhatIf,
  closeIncident,
  type FloorChangeId,
  finishOperation,
  type IncidentId,
  type PairId,
  queueBoard,
  readPair,
  reportBreakdown,
  startOperation,
  startRework,
  undoOperation,
  withdrawChange,
} from "#services";
import { releasedOrder } from "../support/builders/sale";
import { daysAfter, must, openShop, shopNow, stockWood, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";

const db = databaseForTests();
const beforePress = [
  "release",
  "strips",
  "core-glue",
  "sidewalls",
  "profile",
  "base-cut",
  "edges",
  "print",
  "kit",
] as const;

async function shopWith(count: number) {
  const shop = await openShop(db());
  await stockWood(db());
  const pairs: { readonly pairId: PairId; readonly serial: string }[] = [];
  for (let index = 0; index < count; index += 1) {
    const order = await releasedOrder(shop, { phone: `303 555 02${10 + index}` });
    for (const { pairId } of order.pairs) pairs.push({ pairId, serial: (await pairNow(shop, pairId, shopNow)).serial });
  }
  return { shop, pairs };
}

const maker = (shop: TestShop, now: Date) => ({ ...shop.as(shop.maker, now), promiseRuns: 20 });
const owner = (shop: TestShop, now: Date) => ({ ...shop.as(shop.owner, now), promiseRuns: 20 });

async function pairNow(shop: TestShop, pairId: PairId, now: Date) {
  return must(await readPair(maker(shop, now), { pairId }));
}

async function visitAt(shop: TestShop, pairId: PairId, station: string, now: Date) {
  const visit = (await pairNow(shop, pairId, now)).operations.filter((each) => each.station === station).at(-1);
  if (visit === undefined) throw new Error(`no station ${station}`);
  return visit;
}

async function start(shop: TestShop, pairId: PairId, station: string, now: Date, press?: string) {
  const { operationId, version } = await visitAt(shop, pairId, station, now);
  const input = press === undefined ? { operationId, version } : { operationId, version, press };
  return startOperation(maker(shop, now), input);
}

async function work(shop: TestShop, pairId: PairId, stations: readonly string[], from: Date): Promise<Date> {
  let now = from;
  for (const station of stations) {
    now = daysAfter(now, 1);
    const { operationId, version } = must(await start(shop, pairId, station, now));
    must(await finishOperation(maker(shop, now), { operationId, version }));
  }
  return now;
}

function breakdown(shop: TestShop, now: Date, press: string) {
  const until = daysAfter(now, 3);
  const input = { kind: "press-down", press, from: now.toISOString(), until: until.toISOString() } as const;
  return reportBreakdown(maker(shop, now), { reportId: `down ${press}`, breakdown: input, note: "No heat" });
}

describe("room at a station", () => {
  it("names who is there, and is free again when that is finished or taken back", async () => {
    const { shop, pairs } = await shopWith(2);
    const [first, second] = pairs as [(typeof pairs)[0], (typeof pairs)[0]];
    const running = must(await start(shop, first.pairId, "release", shopNow));
    expect(await start(shop, second.pairId, "release", shopNow)).toMatchObject({
      ok: false,
      refusal: {
        code: "station-full",
        place: "1 Release, build sheet, kit list",
        capacity: 1,
        occupants: [`${first.serial} (Mo Maker)`],
      },
    });
    expect((await visitAt(shop, second.pairId, "release", shopNow)).state).toBe("ready");
    const { operationId, version } = running;
    must(await undoOperation(maker(shop, shopNow), { operationId, version, reason: "wrong pair" }));
    must(await start(shop, second.pairId, "release", shopNow));
  });

  it("takes as many pairs as its benches, three at the clamps, and not one more", async () => {
    const { shop, pairs } = await shopWith(4);
    let now = shopNow;
    for (const { pairId } of pairs) now = await work(shop, pairId, ["release", "strips"], now);
    const outcomes = [];
    for (const { pairId } of pairs) outcomes.push(await start(shop, pairId, "core-glue", now));
    expect(outcomes.map(({ ok }) => ok)).toEqual([true, true, true, false]);
    expect(outcomes[3]).toMatchObject({ refusal: { code: "station-full", capacity: 3 } });
  });

  it("lets one of two makers have the last bench when both start in the same instant", async () => {
    const { shop, pairs } = await shopWith(2);
    const both = await Promise.all(pairs.map(({ pairId }) => start(shop, pairId, "release", shopNow)));
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(both.find(({ ok }) => !ok)).toMatchObject({ refusal: { code: "station-full" } });
  });
});

describe("a pair that is held", () => {
  it("waits for late material at its station and all that follow, not on the other branches, until the day", async () => {
    const { shop, pairs } = await shopWith(1);
    const pairId = pairs[0]?.pairId as PairId;
    const report = {
      reportId: "late",
      breakdown: {
        kind: "supplier-late",
        station: "base-cut",
        material: "base sheet",
        expectedOn: isoDate("2026-11-20"),
      },
      note: "base sheet, lorry",
    } as const;
    must(await reportBreakdown(maker(shop, shopNow), report));
    const now = await work(shop, pairId, ["release"], shopNow);
    expect(await start(shop, pairId, "base-cut", now)).toMatchObject({
      refusal: { code: "pair-held-until", station: 6, until: "2026-11-20", note: "base sheet, lorry" },
    });
    expect((await pairNow(shop, pairId, now)).holds).toMatchObject([{ station: "base-cut", reason: "material" }]);
    must(await start(shop, pairId, "print", now));
    // 20 November, 08:00 in Denver (UTC−7 in winter, tz database).
    must(await start(shop, pairId, "base-cut", new Date("2026-11-20T15:00:00.000Z")));
  });

  it("waits for a decision until it is made: the rebuild of one ski begins, and its work may start", async () => {
    const { shop, pairs } = await shopWith(1);
    const pairId = pairs[0]?.pairId as PairId;
    const now = await work(shop, pairId, ["release", "strips"], shopNow);
    const rebuild = { pairId, side: "R", fromStation: "strips", fault: "core-wrong" } as const;
    const report = {
      reportId: "knot",
      breakdown: { kind: "ski-rebuild", ...rebuild },
      note: "knot in the window",
    } as const;
    must(await reportBreakdown({ ...shop.as(shop.desk, now), promiseRuns: 20 }, report));
    expect(await start(shop, pairId, "core-glue", now)).toMatchObject({
      refusal: { code: "pair-held", station: 2, note: "knot in the window" },
    });
    const { version } = await pairNow(shop, pairId, now);
    must(await startRework(maker(shop, now), { ...rebuild, version, note: "begun" }));
    expect(must(await start(shop, pairId, "strips", now))).toMatchObject({ visit: 1, side: "R", state: "running" });
  });
});

describe("the press", () => {
  it("is told when it is down and until when, lay-up is not begun for it, and it is taken when it is back", async () => {
    const { shop, pairs } = await shopWith(1);
    const pairId = pairs[0]?.pairId as PairId;
    const now = await work(shop, pairId, beforePress, shopNow);
    const down = must(await breakdown(shop, now, "press-1"));
    // Three days later by the shop's clock: 10:00 in Denver.
    const refusal = { code: "out-of-use", what: "Press 1", until: "2026-11-22 10:00", reason: "No heat" };
    expect(await start(shop, pairId, "lay-up", now)).toMatchObject({ refusal });
    const later = daysAfter(now, 2.99);
    must(await start(shop, pairId, "lay-up", later));
    const laidUp = await visitAt(shop, pairId, "lay-up", later);
    must(await finishOperation(maker(shop, later), laidUp));
    expect(await start(shop, pairId, "press", later)).toMatchObject({ refusal });
    must(await closeIncident(maker(shop, later), { incidentId: down.incidentId as IncidentId, version: down.version }));
    expect(must(await start(shop, pairId, "press", later)).pressName).toBe("Press 1");
  });

  it("is chosen when several are free, recorded on the visit and told with the event, and forgotten when taken back", async () => {
    const { shop, pairs } = await shopWith(2);
    const [one, two] = pairs.map(({ pairId }) => pairId) as [PairId, PairId];
    let now = await work(shop, one, [...beforePress, "lay-up"], shopNow);
    now = await work(shop, two, [...beforePress, "lay-up"], now);
    const from = isoDate(now.toISOString().slice(0, 10));
    const change = { changeId: "second", whatIf: { kind: "second-press", from }, reason: "hired" } as const;
    must(await applyWhatIf(owner(shop, now), change));
    now = daysAfter(now, 1);
    expect(await start(shop, one, "press", now)).toMatchObject({ refusal: { code: "press-missing", path: "press" } });
    expect(await start(shop, one, "press", now, "press-9")).toMatchObject({
      refusal: { code: "invalid-field", path: "press" },
    });
    const { presses } = await pairNow(shop, one, now);
    expect(presses.map(({ press, name, takenBy }) => [press, name, takenBy])).toEqual([
      ["press-1", "Press 1", null],
      ["press-second", "Second press", null],
    ]);

    const first = must(await start(shop, one, "press", now, "press-second"));
    expect(first.pressName).toBe("Second press");
    expect(await start(shop, two, "press", now, "press-second")).toMatchObject({
      refusal: { code: "station-full", place: "Second press", occupants: [`${pairs[0]?.serial} (Mo Maker)`] },
    });
    // One is free: it needs no asking.
    expect(must(await start(shop, two, "press", now)).pressName).toBe("Press 1");
    const told = (await pairNow(shop, one, now)).history.filter(({ kind }) => kind === "operation-started").at(-1);
    expect(told?.data).toMatchObject({ station: 11, press: "Second press" });

    const undone = { operationId: first.operationId, version: first.version, reason: "the other press" };
    expect(must(await undoOperation(maker(shop, now), undone)).pressName).toBeNull();
    must(await start(shop, one, "press", now, "press-second"));
    // Given back while a pair is in it: the pair stays in it, the board and its history stand.
    must(await withdrawChange(owner(shop, now), { floorChangeId: "second" as FloorChangeId, reason: "given back" }));
    must(await queueBoard(maker(shop, now), {}));
    const pressed = await visitAt(shop, one, "press", now);
    must(await finishOperation(maker(shop, now), pressed));
    expect((await visitAt(shop, one, "press", now)).pressName).toBe("Second press");
    expect(must(await queueBoard(maker(shop, now), {})).pairs).toHaveLength(2);
  });
});

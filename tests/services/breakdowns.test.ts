import { describe, expect, it, vi } from "vitest";
import { isoDate } from "#engine/units";
import {
  type BreakdownInput,
  chooseOption,
  closeIncident,
  finishOperation,
  type IncidentId,
  listIncidents,
  type PairId,
  previewBreakdown,
  queueBoard,
  readIncident,
  readPair,
  reportBreakdown,
  startOperation,
} from "#services";
import * as current from "#shop/catalogue/current";
import { must, openShop, stockWood, type TestShop } from "../support/builders/shop";
import { databaseForTests } from "../support/db";
import { fewRuns, releasedPairs } from "./scenarios/released-pairs";

const db = databaseForTests();

const hours = { from: "2026-11-16T14:30:00.000Z", until: "2026-11-18T23:30:00.000Z" };
const down: BreakdownInput = { kind: "press-down", press: "press-1", ...hours };

async function shopWith(pairs: number) {
  const shop: TestShop = fewRuns(await openShop(db()), 20);
  await stockWood(db());
  const orders = await releasedPairs(shop, pairs);
  const ids = orders.flatMap((order) => order.pairs.map(({ pairId }) => pairId));
  return { shop, ids };
}

describe("what broke", () => {
  it("names the field and its limit, and stores nothing", async () => {
    const { shop } = await shopWith(1);
    const maker = shop.as(shop.maker);
    const pairId = "nobody" as PairId;
    const today = isoDate("2026-11-10");
    const wrong: readonly (readonly [BreakdownInput, string])[] = [
      [{ ...down, press: "press-9" }, "press"],
      [{ ...down, until: hours.from }, "until"],
      [{ ...down, from: "soon" }, "from"],
      [{ ...down, from: "2026-11-01T14:30:00.000Z", until: "2026-11-02T14:30:00.000Z" }, "until"],
      [{ ...down, until: "2028-11-18T23:30:00.000Z" }, "until"],
      [{ kind: "person-away", person: "x", ...hours }, "person"],
      [{ kind: "supplier-late", station: "nowhere", material: "edges", expectedOn: today }, "station"],
      [{ kind: "supplier-late", station: "edges", material: " ", expectedOn: today }, "material"],
      [{ kind: "supplier-late", station: "edges", material: "edges", expectedOn: isoDate("2026-11-09") }, "expectedOn"],
      [{ kind: "supplier-late", station: "edges", material: "edges", expectedOn: isoDate("2027-11-12") }, "expectedOn"],
      [{ kind: "proof-late", pairId, expectedOn: today }, "pairId"],
      [{ kind: "ski-rebuild", pairId, side: "L", fromStation: "strips", fault: "core-wrong" }, "pairId"],
    ];
    for (const [input, path] of wrong) {
      const refusal = { refusal: { code: "invalid-field", path } };
      expect(await previewBreakdown(maker, input), path).toMatchObject(refusal);
      expect(await reportBreakdown(maker, { reportId: "r", breakdown: input, note: "" }), path).toMatchObject(refusal);
    }
    expect(await db().incident.count()).toBe(0);
    expect(await db().pairHold.count()).toBe(0);
  });

  it("holds the pairs that have not passed the station until the day, and lets them go when it is over", async () => {
    const { shop, ids } = await shopWith(2);
    const maker = shop.as(shop.maker);
    const breakdown: BreakdownInput = {
      kind: "supplier-late",
      station: "edges",
      material: "edges",
      expectedOn: isoDate("2027-01-11"),
    };
    const incident = must(await reportBreakdown(maker, { reportId: "late", breakdown, note: "edges are at sea" }));
    // Nothing that needs edges can be ready before the day they come.
    for (const each of incident.effect.moved) expect(each.after.p50 > "2027-01-11").toBe(true);
    expect(incident.effect.moved).toHaveLength(2);
    const holds = await db().pairHold.findMany({ orderBy: { pairId: "asc" } });
    expect(holds.map(({ pairId }) => pairId)).toEqual([...ids].sort());
    expect(holds[0]).toMatchObject({ reason: "material", station: "edges", expectedOn: "2027-01-11", clearedAt: null });
    const { incidentId } = incident;
    must(await closeIncident(shop.as(shop.desk), { incidentId, version: 1 }));
    expect(await db().pairHold.count({ where: { clearedAt: null } })).toBe(0);
    expect(await closeIncident(maker, { incidentId, version: 1 })).toMatchObject({
      refusal: { code: "changed-meanwhile" },
    });
    const kinds = must(await readIncident(maker, { incidentId })).history.map(({ kind }) => kind);
    expect(kinds).toEqual(["incident-reported", "incident-closed"]);
  });

  it("begins the rebuild of one ski when a maker says so, and stops the pair when the desk does", async () => {
    const { shop, ids } = await shopWith(1);
    const pairId = ids[0] as PairId;
    const maker = shop.as(shop.maker);
    const breakdown: BreakdownInput = {
      kind: "ski-rebuild",
      pairId,
      side: "R",
      fromStation: "strips",
      fault: "core-wrong",
    };
    const report = { breakdown, note: "knot in the window" };
    expect(await reportBreakdown(maker, { reportId: "early", ...report })).toMatchObject({
      refusal: { code: "invalid-field", path: "fromStation" },
    });
    for (const station of ["release", "strips"]) {
      const { operations } = must(await readPair(maker, { pairId }));
      const operation = operations.find((each) => each.station === station);
      if (operation === undefined) throw new Error("no operation");
      const running = must(await startOperation(maker, operation));
      must(await finishOperation(maker, running));
    }
    must(await reportBreakdown(shop.as(shop.desk), { reportId: "desk", ...report }));
    expect(await db().pairHold.findMany()).toMatchObject([{ pairId, reason: "decision", station: "strips" }]);
    expect(await db().operation.count({ where: { pairId, visit: 1 } })).toBe(0);
    const incident = must(await reportBreakdown(maker, { reportId: "maker", ...report }));
    expect(incident.input).toEqual(breakdown);
    expect(await db().operation.count({ where: { pairId, station: "strips", visit: 1 } })).toBe(1);
    expect(await db().pairHold.count({ where: { incidentId: "maker" } })).toBe(0);
  });

  it("applies the option that was shown: its hours, its cost, who and why", async () => {
    const { shop } = await shopWith(2);
    const owner = shop.as(shop.owner);
    const { incidentId, options } = must(
      await reportBreakdown(owner, { reportId: "down", breakdown: down, note: "no heat" }),
    );
    const overtime = options.find(({ way }) => way === "overnight-cure");
    const choice = { incidentId, version: 1, option: "overnight-cure", reason: "cheapest" };
    expect(overtime?.procedure).toBe(current.currentCatalog().remedies.overnightCure.procedure);
    // Once the shop names no written procedure any more, nothing cures with nobody there, whatever was offered before.
    const { remedies, ...catalog } = current.currentCatalog();
    const unnamed = { ...remedies, overnightCure: { ...remedies.overnightCure, procedure: null } };
    const named = vi.spyOn(current, "currentCatalog").mockReturnValue({ ...catalog, remedies: unnamed });
    expect(await chooseOption(owner, choice)).toMatchObject({ ok: false, refusal: { code: "no-procedure" } });
    named.mockRestore();
    const decided = must(await chooseOption(owner, choice));
    // Ten evenings of two hours for two people at 42.00 an hour: the demo shop's own rate.
    expect(overtime?.costCents).toBe(10 * 2 * 2 * 4200);
    expect(decided.chosen).toMatchObject({ option: "overnight-cure", reason: "cheapest", costCents: 168_000 });
    const stored = await db().floorChange.findMany({ where: { source: "option" }, orderBy: { fromAt: "asc" } });
    expect(stored).toHaveLength(1);
    // From 16:30 to 18:30, minutes 990 and 1,110 of the day.
    expect(stored[0]).toMatchObject({
      kind: "overtime",
      data: { kind: "overtime", stations: ["lay-up", "press"], daily: { fromMinute: 990, toMinute: 1_110 } },
      costCents: 168_000,
    });
    // The evening of the day the press is back: 16:30 in Denver is 23:30 UTC in winter (tz database). Ten working days from
    // Wednesday 18 November on, without Saturdays, Sundays and 26 and 27 November: the last is Thursday 3 December.
    expect(stored[0]?.fromAt?.toISOString()).toBe("2026-11-18T23:30:00.000Z");
    expect(stored[0]?.toAt?.toISOString()).toBe("2026-12-04T01:30:00.000Z");
    const { board } = must(await queueBoard(owner, { days: 28 }));
    expect(board.changes.find(({ kind }) => kind === "overtime")?.what).toBe("10, 11, 16:30–18:30");
    const evenings = board.days.filter(({ overtime }) => overtime.length > 0).map(({ date }) => date);
    expect(evenings).toEqual(
      ["18", "19", "20", "23", "24", "25", "30"]
        .map((day) => `2026-11-${day}`)
        .concat("2026-12-01", "2026-12-02", "2026-12-03"),
    );
  });

  it("lets any of the staff report, only the owner choose, and nobody else look", async () => {
    const { shop } = await shopWith(1);
    const { incidentId } = must(
      await reportBreakdown(shop.as(shop.desk), { reportId: "down", breakdown: down, note: "" }),
    );
    const denied = { refusal: { code: "not-allowed" } };
    const choice = { incidentId, version: 1, option: "wait", reason: "x" };
    for (const actor of [shop.desk, shop.maker])
      expect(await chooseOption(shop.as(actor), choice)).toMatchObject(denied);
    const guest = shop.visitor;
    expect(await previewBreakdown(guest, down)).toMatchObject(denied);
    expect(await reportBreakdown(guest, { reportId: "g", breakdown: down, note: "" })).toMatchObject(denied);
    expect(await closeIncident(guest, { incidentId, version: 1 })).toMatchObject(denied);
    expect(await listIncidents(guest)).toMatchObject(denied);
    expect(await readIncident(guest, { incidentId })).toMatchObject(denied);
    expect(must(await listIncidents(shop.as(shop.maker)))).toHaveLength(1);
    const nobody = "nobody" as IncidentId;
    expect(await readIncident(shop.as(shop.owner), { incidentId: nobody })).toMatchObject({
      refusal: { code: "not-found" },
    });
    expect(await chooseOption(shop.as(shop.owner), { ...choice, option: "sell the press" })).toMatchObject({
      refusal: { code: "invalid-field", path: "option" },
    });
  });
});

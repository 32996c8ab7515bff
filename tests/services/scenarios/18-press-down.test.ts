import { describe, expect, it } from "vitest";
import { bumpQueue } from "#data/counters";
import { orderById } from "#data/orders";
import { transaction } from "#data/transaction";
import { shopMinute } from "#engine/routing";
import { type IsoDate, isoDate } from "#engine/units";
import {
  type BreakdownInput,
  chooseOption,
  closeIncident,
  listNotices,
  type OrderId,
  previewBreakdown,
  readIncident,
  reportBreakdown,
} from "#services";
import { givePlaces } from "#services/planning/order/places";
import { setPromise } from "#services/promises/set-promise";
import { must, openShop, stockWood } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { fewRuns, releasedPairs } from "./released-pairs";

const db = databaseForTests();

/** Monday to Wednesday of the week in which the first pairs reach the press: three working days. */
const down: BreakdownInput = {
  kind: "press-down",
  press: "press-1",
  from: "2026-11-16T14:30:00.000Z",
  until: "2026-11-18T23:30:00.000Z",
};

describe("scenario 18: press down three days", () => {
  it("replans, shows slack used and promises crossed with ways on; the owner picks; letters wait; no promise moves", async () => {
    const shop = fewRuns(await openShop(db()), 150);
    await stockWood(db());
    const orders = await releasedPairs(shop, 11);
    const desk = shop.as(shop.desk);
    const owner = shop.as(shop.owner);
    const maker = shop.as(shop.maker);

    // The owner gave nine their places by hand: they go first and have weeks in hand. The last two were promised for the very
    // day that nine of ten runs reach.
    const tight = orders.slice(-2);
    const loose = orders.slice(0, -2);
    const promise = async (orderId: OrderId, on: IsoDate) => {
      const order = await orderById(db(), orderId);
      if (order === null) throw new Error("the order is not there");
      await transaction(db(), async (tx) => {
        await bumpQueue(tx);
        await setPromise(owner, tx, order, { on, class: "promise", reason: "agreed on the phone" });
      });
    };
    for (const { orderId } of loose) await promise(orderId, isoDate("2027-03-01"));
    const places = loose.map(({ pairs: [pair] }, index) => ({
      pairId: pair?.pairId ?? raise(),
      placeMinute: shopMinute(isoDate("2026-11-10"), index),
    }));
    await transaction(db(), (tx) => givePlaces(owner, tx, { decisionId: "first", reason: "as they came", places }));
    const { moved } = must(await previewBreakdown(desk, down)).effect;
    for (const { orderId } of tight) {
      await promise(orderId, moved.find((each) => each.orderId === orderId)?.before.p90 ?? raise());
    }
    const promises = () => db().order.findMany({ select: { id: true, promisedOn: true }, orderBy: { id: "asc" } });
    const promisedBefore = await promises();

    // Looking stores nothing.
    const { effect, options } = must(await previewBreakdown(maker, down));
    expect(effect.pairs).toBe(11);
    expect(await db().incident.count()).toBe(0);
    expect(await db().floorChange.count()).toBe(0);
    const crossing = effect.crossing.map(({ orderId }) => orderId).sort();
    expect(crossing).toEqual(tight.map(({ orderId }) => orderId).sort());
    for (const each of effect.crossing) expect(each.slackWorkingDays).toBeLessThan(0);
    // The others move too, and stay safe: that is slack used.
    const used = effect.moved.filter((each) => !crossing.includes(each.orderId));
    expect(used.length).toBeGreaterThanOrEqual(4);
    for (const each of used) expect(each.standingAfter).toBe("safe");
    expect(options.map(({ way }) => way)).toEqual([
      "wait",
      "overtime",
      "overnight-cure",
      "second-press",
      "swap-with-slack",
    ]);
    const wait = options.find(({ way }) => way === "wait") ?? raise();
    expect(wait).toMatchObject({ costCents: 0, saved: 0 });
    expect(wait.crossing).toHaveLength(2);
    // A press that stands in for the one that is down, and pairs that go first, leave fewer promises broken.
    for (const way of ["second-press", "swap-with-slack"]) {
      const option = options.find((each) => each.way === way) ?? raise();
      expect(option.expectedLate, way).toBeLessThan(wait.expectedLate);
    }

    // The same form sent twice is one incident.
    const report = { reportId: "report-1", breakdown: down, note: "heating plate burnt" };
    const [incident] = await Promise.all([reportBreakdown(maker, report), reportBreakdown(maker, report)]).then((all) =>
      all.map((outcome) => must(outcome)),
    );
    if (incident === undefined) throw new Error("no incident");
    expect(await db().incident.count()).toBe(1);
    expect(await db().floorChange.count({ where: { source: "incident" } })).toBe(1);
    expect(incident).toMatchObject({ number: "INC-1", state: "open", note: "heating plate burnt" });
    expect(await db().notice.count()).toBe(0);

    const choice = { incidentId: incident.incidentId, version: 1, option: "wait", reason: "parts come on Thursday" };
    expect(await chooseOption(desk, choice)).toMatchObject({ refusal: { code: "not-allowed" } });
    expect(await chooseOption(owner, { ...choice, reason: " " })).toMatchObject({
      refusal: { code: "reason-missing" },
    });
    const decided = must(await chooseOption(owner, choice));
    expect(await chooseOption(owner, choice)).toMatchObject({ refusal: { code: "changed-meanwhile" } });
    expect(decided.chosen).toMatchObject({ option: "wait", costCents: 0, by: "Ola Owner" });
    expect(decided.history.map(({ kind }) => kind)).toEqual(["incident-reported", "incident-decided"]);
    expect(decided.history[1]?.data).toMatchObject({ reason: "parts come on Thursday", notices: 2 });

    // One letter for each order that still crosses: drafted, not sent, with what a delay notice must say.
    const letters = must(await listNotices(desk));
    expect(letters.map(({ orderId }) => orderId).sort()).toEqual(crossing);
    for (const letter of letters) {
      expect(letter).toMatchObject({ state: "draft", kind: "delay" });
      expect(letter.body).toMatch(/promised for \d+ \w+ 20\d\d/);
      expect(letter.body).toContain("press was out of order");
      expect(letter.body).toContain("accept the new date, or cancel");
      expect(letter.body).toContain("17 November 2026");
    }
    expect(await db().outboxMessage.count({ where: { kind: { startsWith: "notice-" } } })).toBe(0);
    expect(await promises()).toEqual(promisedBefore);

    // The press is back early: its change no longer counts.
    const closed = must(await closeIncident(maker, { incidentId: incident.incidentId, version: 2 }));
    expect(closed.state).toBe("closed");
    expect(await db().floorChange.count({ where: { withdrawnAt: null } })).toBe(0);
    expect(must(await readIncident(maker, { incidentId: incident.incidentId })).notices).toEqual([]);
    expect(must(await previewBreakdown(desk, down)).effect.expectedLate.before).toBeCloseTo(
      effect.expectedLate.before,
      9,
    );
  });
});

function raise(): never {
  throw new Error("not there");
}

import { describe, expect, it } from "vitest";
import { addWorkingDays } from "#engine/routing";
import { isoDate } from "#engine/units";
import {
  acceptQuote,
  approveHardDate,
  approveProof,
  changePromise,
  createQuote,
  issueProof,
  lockSpecification,
  type OrderId,
  type PairId,
  previewHardDate,
  readOrder,
  readProgress,
  readQueueOrder,
  recordDeposit,
  recordReceipt,
  waiveRush,
} from "#services";
import { floorCatalog } from "#shop/floor/recipe";
import { filledSheet } from "../../support/builders/sale";
import { must, openShop, stockWood, type TestShop } from "../../support/builders/shop";
import { databaseForTests } from "../../support/db";
import { midlow95 } from "./midlow-95";
import { ownPicture } from "./own-picture";
import { fewRuns, releasedPairs } from "./released-pairs";

const db = databaseForTests();

/** Fourteen working days on from Tuesday 10 November 2026. */
const wished = addWorkingDays(floorCatalog().hours, isoDate("2026-11-10"), 14);

/** The order over 1,925 of scenario 10, its picture and all, with its clock running. */
async function hurriedOrder(shop: TestShop): Promise<OrderId> {
  const desk = shop.as(shop.desk);
  const sheetId = await filledSheet(shop, { ...midlow95, phone: "303 555 7777", name: "Last Skier" });
  await ownPicture(desk, sheetId, "Last Skier");
  const { quote } = must(await createQuote(desk, { sheetId }));
  expect(quote.price.exTaxCents).toBe(192_500);
  const accept = { quoteId: quote.quoteId, how: "phone", name: "Last Skier" } as const;
  const { orderId, pairs } = must(await acceptQuote(desk, accept));
  for (const { pairId } of pairs) {
    must(await lockSpecification(desk, { pairId }));
    const { revision } = must(await issueProof(desk, { pairId }));
    must(await approveProof(desk, { pairId, revision, name: "Last Skier" }));
  }
  must(await recordDeposit(desk, { orderId, method: "counter", reference: "receipt 9" }));
  return orderId;
}

async function promise(shop: TestShop, orderId: OrderId, day: string, reason: string): Promise<void> {
  const desk = shop.as(shop.desk);
  const { version } = must(await readOrder(desk, { orderId }));
  must(await changePromise(desk, { orderId, version, on: isoDate(day), reason }));
}

// Fourteen pairs before it, the last two with slack; the fee of 15 %, at least 200.00, is common practice, no source.
async function fullShop(shop: TestShop) {
  await stockWood(db(), 600);
  const before = await releasedPairs(shop, 14);
  const slack = before.slice(-2);
  for (const { orderId } of slack) await promise(shop, orderId, "2026-12-23", "no hurry");
  const orderId = await hurriedOrder(shop);
  await promise(shop, orderId, "2027-01-29", "not before the season");
  return { orderId, before, slack: slack.map(({ pairs }) => pairs[0]?.serial) };
}

describe("scenario 21: a rush displaces", () => {
  it("moves the two with slack, who keep their promises, for 288.75, with an owner and a plan B", async () => {
    const shop = fewRuns(await openShop(db()), 60);
    const { orderId, before, slack } = await fullShop(shop);
    const owner = shop.as(shop.owner);
    const promised = async () => {
      const days: unknown[] = [];
      for (const each of before) days.push(must(await readOrder(owner, { orderId: each.orderId })).promisedOn);
      return days;
    };
    const daysBefore = await promised();

    const shown = must(await previewHardDate(owner, { orderId, on: wished }));
    expect(shown.p95.now > wished).toBe(true);
    expect(shown).toMatchObject({ fits: "by-moving", breaksPromises: [], feeCents: 28_875 });
    expect(shown.p95.moved <= wished).toBe(true);
    expect(shown.movedSerials.some((serial) => slack.includes(serial))).toBe(true);
    const givingWay = shown.effect?.moved.filter(({ serial }) => shown.movedSerials.includes(serial)) ?? [];
    expect(givingWay).toHaveLength(shown.movedSerials.length);
    expect(givingWay.every(({ standingAfter }) => standingAfter === "safe")).toBe(true);

    const { version } = must(await readOrder(owner, { orderId }));
    const wish = { orderId, version, revision: shown.revision, on: wished };
    const withPlan = { ...wish, planB: "a loan pair and a card" };
    expect(await approveHardDate(shop.as(shop.desk), withPlan)).toMatchObject({ refusal: { code: "not-allowed" } });
    expect(await approveHardDate(owner, { ...wish, planB: " " })).toMatchObject({
      refusal: { code: "plan-b-missing" },
    });
    must(await approveHardDate(owner, withPlan));

    const after = must(await readOrder(owner, { orderId }));
    expect(after).toMatchObject({
      promisedOn: wished,
      promiseClass: "hard-date",
      hardDate: { planB: "a loan pair and a card", rushCents: 28_875 },
    });
    // 6 % tax at home on 1 925.00 is 115.50, on 2 213.75 with the fee 132.825, half up 132.83: the fee adds 17.33.
    expect(shown.feeTaxCents).toBe(1_733);
    expect(after.payments.filter(({ kind }) => kind === "rush")).toMatchObject([{ state: "requested", cents: 30_608 }]);
    // 1 925.00 + 115.50 and the fee; half of 1 925.00 is paid. Nobody has paid the fee: the day stands all the same.
    expect(after.money).toEqual({
      totalCents: 204_050 + 30_608,
      rush: { taxCents: 1_733, totalCents: 30_608, paidAt: null },
      paidCents: 96_250,
      openCents: 204_050 + 30_608 - 96_250,
    });
    const skier = must(await readProgress(owner, { pairId: after.pairs[0]?.pairId as PairId }));
    expect(skier).toMatchObject({ promiseClass: "hard-date", money: after.money });
    expect(await promised()).toEqual(daysBefore);
    const { places } = must(await readQueueOrder(owner));
    const standings = places.filter(({ serial }) => slack.includes(serial)).map(({ standing }) => standing);
    expect(standings).toEqual(["safe", "safe"]);
    // The place is reserved, the date holds where it now stands, and the fee is asked for once.
    const again = must(await previewHardDate(owner, { orderId, on: wished }));
    expect(again).toMatchObject({ fits: "now", feeCents: 0, movedSerials: [] });

    const desk = shop.as(shop.desk);
    const fee = { orderId, what: "rush", method: "counter" } as const;
    expect(await recordReceipt(desk, fee)).toMatchObject({ refusal: { code: "reference-missing" } });
    const both = await Promise.all(
      [shop.desk, shop.secondDesk].map((actor) => recordReceipt(shop.as(actor), { ...fee, reference: "receipt 10" })),
    );
    expect(both.filter(({ ok }) => ok)).toHaveLength(1);
    expect(await recordReceipt(desk, { ...fee, reference: "receipt 11" })).toMatchObject({
      refusal: { code: "nothing-open" },
    });
    const paid = must(await readOrder(owner, { orderId }));
    expect(paid.money).toMatchObject({ paidCents: 96_250 + 30_608, openCents: 204_050 - 96_250 });
    expect(paid.money.rush?.paidAt).toBe(desk.now.toISOString());
    expect(paid.history.filter(({ kind }) => kind === "rush-received")).toMatchObject([
      { data: { method: "counter", cents: 30_608, reference: "receipt 10" } },
    ]);
  });

  it("refuses where a promise would break, unless the owner overrides with a reason", async () => {
    const shop = fewRuns(await openShop(db()), 60);
    const { orderId, before } = await fullShop(shop);
    const owner = shop.as(shop.owner);
    const first = before[0];
    if (first === undefined) throw new Error("nobody is before it");
    const serial = first.pairs[0]?.serial ?? "";
    const { places } = must(await readQueueOrder(owner));
    // The first one's promise has no slack left: its nine-of-ten day itself.
    const tight = places.find((place) => place.serial === serial)?.expected?.p90 ?? "";
    await promise(shop, first.orderId, tight, "they asked for it");

    // A day that only the very first place can keep: what the nearest day says is possible.
    const nearest = must(await previewHardDate(owner, { orderId, on: isoDate("2026-11-11") }));
    expect(nearest).toMatchObject({ fits: "not-at-all", feeCents: 0 });
    const on = nearest.p95.moved;
    const shown = must(await previewHardDate(owner, { orderId, on }));
    expect(shown.fits).toBe("by-moving");
    expect(shown.breaksPromises).toContain(serial);

    const { version } = must(await readOrder(owner, { orderId }));
    const wish = { orderId, version, revision: shown.revision, on, planB: "a loan pair" };
    expect(await approveHardDate(owner, { ...wish, on: isoDate("2026-11-11") })).toMatchObject({
      refusal: { code: "date-not-possible", path: "on" },
    });
    expect(await approveHardDate(owner, wish)).toMatchObject({ refusal: { code: "promises-would-break" } });
    expect(must(await readOrder(owner, { orderId })).promiseClass).toBe("promise");

    must(await approveHardDate(owner, { ...wish, overrideReason: "the first skier was asked and agrees" }));
    const { history } = must(await readOrder(owner, { orderId }));
    expect(history.find(({ kind }) => kind === "hard-date-approved")?.data).toMatchObject({
      on,
      override: "the first skier was asked and agrees",
    });
    expect(must(await readOrder(owner, { orderId: first.orderId })).promisedOn).toBe(tight);

    // The fee is the owner's to give up, once and with a reason: the price is what it was, the day stands, no fee again.
    const waive = { orderId, reason: "our own press was down" };
    expect(await waiveRush(shop.as(shop.desk), waive)).toMatchObject({ refusal: { code: "not-allowed" } });
    expect(await waiveRush(owner, { orderId, reason: " " })).toMatchObject({ refusal: { code: "reason-missing" } });
    expect(must(await waiveRush(owner, waive))).toMatchObject({ totalCents: 204_050, rush: null });
    expect(await waiveRush(owner, waive)).toMatchObject({ refusal: { code: "rush-not-asked" } });
    expect(await recordReceipt(owner, { orderId, what: "rush", method: "counter", reference: "r" })).toMatchObject({
      refusal: { code: "rush-not-asked" },
    });
    const waived = must(await readOrder(owner, { orderId }));
    expect(waived).toMatchObject({ promisedOn: on, promiseClass: "hard-date" });
    expect(waived.payments.find(({ kind }) => kind === "rush")?.state).toBe("waived");
    expect(waived.history.find(({ kind }) => kind === "rush-waived")?.data).toMatchObject({ reason: waive.reason });
    expect(must(await previewHardDate(owner, { orderId, on }))).toMatchObject({ feeCents: 0 });
  });
});

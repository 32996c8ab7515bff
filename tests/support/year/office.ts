/** What the shop does day by day and when something breaks. */
import { expect } from "vitest";
import {
  type BreakdownInput,
  changePromise,
  chooseOption,
  closeIncident,
  deliverOrder,
  dropNotice,
  freezePressSlots,
  type IncidentId,
  listNotices,
  type OrderId,
  type PairId,
  queueBoard,
  readOrder,
  readPair,
  recordReceipt,
  reportBreakdown,
  sendNotice,
  shipOrder,
  startRework,
  sweepSlots,
} from "#services";
import { must } from "../builders/shop";
import type { Agenda } from "./agenda";
import { dateAt, workingTime, type YearShop } from "./year-shop";

/** Places that lapse, press starts that are fixed, and what is ready on its way. */
export async function morning(shop: YearShop, agenda: Agenda, now: Date): Promise<void> {
  must(await sweepSlots(shop.clock(now)));
  must(await freezePressSlots(shop.clock(now)));
  for (const { id } of await shop.db.order.findMany({ where: { state: "ready" }, orderBy: { number: "asc" } })) {
    const orderId = id as OrderId;
    const rest = { orderId, what: "balance", method: "bank-transfer", reference: `transfer ${id}` } as const;
    must(await recordReceipt(shop.desk(now), rest));
    await shop.change(shop.desk(now), (ctx) => shipOrder(ctx, { orderId, tracking: `LF-${id}` }));
    const arrives = workingTime(dateAt(now), 3, 12);
    agenda.enter(arrives, async () => {
      await shop.change(shop.desk(arrives), (ctx) => deliverOrder(ctx, { orderId }));
    });
  }
}

/** Whoever will probably be late is told a new day; an order is told once a week at most. */
export async function tellTheLate(shop: YearShop, now: Date): Promise<number> {
  const { pairs } = must(await queueBoard(shop.desk(now), { days: 1 }));
  const late = pairs.filter(
    ({ standing, expected, promisedOn }) => standing === "late" && expected?.p90 !== promisedOn,
  );
  for (const { orderId, expected } of late) {
    const { version } = must(await readOrder(shop.desk(now), { orderId }));
    const on = expected?.p90;
    if (on === undefined) continue;
    const change = { orderId, version, on, reason: "told on the phone, agreed" };
    await shop.change(shop.desk(now), (ctx) => changePromise(ctx, change));
  }
  return late.length;
}

/** Reported by a maker, decided by the owner for the way that leaves the fewest late, letters answered, and over in time. */
export async function breaks(
  shop: YearShop,
  agenda: Agenda,
  breakdown: BreakdownInput,
  times: { readonly now: Date; readonly over: Date },
): Promise<void> {
  const { now, over } = times;
  const report = { reportId: shop.maker(now).newId(), breakdown, note: `${breakdown.kind} in the year` };
  const { options, version } = await shop.change(shop.maker(now), (ctx) => reportBreakdown(ctx, report));
  const [best] = [...options].sort((a, b) => a.expectedLate - b.expectedLate || a.costCents - b.costCents);
  if (best === undefined) throw new Error(`${breakdown.kind}: no way on`);
  const incidentId = report.reportId as IncidentId;
  const choice = { incidentId, version, option: best.way, reason: "fewest late" };
  const decided = await shop.change(shop.owner(now), (ctx) => chooseOption(ctx, choice));
  for (const [index, letter] of must(await listNotices(shop.desk(now))).entries()) {
    if (letter.state !== "draft") continue;
    const { noticeId, body } = letter;
    const answer = { noticeId, version: letter.version };
    if (index === 0) must(await sendNotice(shop.desk(now), { ...answer, body }));
    else must(await dropNotice(shop.desk(now), { ...answer, reason: "told on the phone" }));
  }
  agenda.enter(over, async () => {
    await shop.change(shop.maker(over), (ctx) => closeIncident(ctx, { incidentId, version: decided.version }));
  });
}

/** The first pair that is pressed and not yet ready gets one ski built again. Returns the pair; null when there is none. */
export async function buildsOneSkiAgain(shop: YearShop, now: Date, side: "L" | "R"): Promise<PairId | null> {
  const pressed = await shop.db.operation.findFirst({
    where: { station: "press", state: "done", visit: 0, pair: { state: "building", skis: { every: { build: 1 } } } },
    orderBy: { finishedAt: "asc" },
  });
  if (pressed === null) return null;
  const pairId = pressed.pairId as PairId;
  const { version } = must(await readPair(shop.maker(now), { pairId }));
  const input = {
    pairId,
    side,
    fromStation: "print",
    fault: "topsheet-nicked",
    version,
    note: "nicked at the trimming",
  } as const;
  const begun = await shop.change(shop.maker(now), (ctx) => startRework(ctx, input));
  expect(begun.stations.length).toBeGreaterThan(0);
  return pairId;
}

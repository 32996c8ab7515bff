/**
 * A hard date: the day by which 95 of 100 runs are ready, reserved by a place in the queue and approved by the owner, with a
 * plan for the case that it fails all the same. Where others must give way, they keep their promises and a rush fee is due.
 */

import history from "#content/copy/history.json";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { insertPayment, type OrderRecord } from "#data/orders";
import { transaction } from "#data/transaction";
import { isOneOf, openPairStates } from "#engine/floor";
import { rushBeside } from "#engine/pricing";
import {
  type GivenPlace,
  inQueueOrder,
  pairRank,
  placesFor,
  prepareRuns,
  type QueueSituation,
  queueRanges,
  withPlaces,
} from "#engine/routing";
import type { OrderId } from "#engine/units";
import { accept, fill, type IsoDate, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { findOrder } from "#services/orders/find-order";
import { changed } from "#services/orders/gates";
import { setPromise } from "#services/promises/set-promise";
import { eventOf } from "#services/record";
import { currentCatalog } from "#shop/catalogue/current";
import { floorCatalog } from "#shop/floor/recipe";
import { queueEffect } from "#shop/queue/effect";
import { completeRuns, liveRuns, previewRuns } from "#shop/queue/runs";
import { farthestDays, isTooFar, shopDay } from "#shop/time/shop-time";
import { givePlaces } from "../order/places";
import type { HardDatePreview } from "./views";

const w = history.promises;

interface Plan {
  readonly preview: HardDatePreview;
  readonly places: readonly GivenPlace[];
}

/** What the date would take. Refuses `order-closed`, `no-slot`, `date-past`, `date-too-far`. */
export async function previewHardDate(
  ctx: Context,
  input: { readonly orderId: OrderId; readonly on: IsoDate },
): Promise<Outcome<HardDatePreview>> {
  const found = await findOrder(ctx, ctx.db, "promise.change", input.orderId);
  if (!found.ok) return found;
  const planned = await plan(ctx, found.value, input.on);
  return planned.ok ? accept(planned.value.preview) : planned;
}

/**
 * Fixes the hard date as it was shown. Owner only. Refuses `plan-b-missing`, `queue-changed`, `date-not-possible`,
 * `promises-would-break` (unless overridden with a reason), `changed-meanwhile`.
 */
export async function approveHardDate(
  ctx: Context,
  input: {
    readonly orderId: OrderId;
    readonly version: number;
    readonly revision: number;
    readonly on: IsoDate;
    readonly planB: string;
    readonly overrideReason?: string;
  },
): Promise<Outcome<{ readonly on: IsoDate; readonly feeCents: number }>> {
  const found = await findOrder(ctx, ctx.db, "promise.hard", input.orderId);
  if (!found.ok) return found;
  const order = found.value;
  const planB = input.planB.trim();
  if (planB === "") return refuse({ code: "plan-b-missing", path: "planB" });
  const planned = await plan(ctx, order, input.on);
  if (!planned.ok) return planned;
  const { preview, places } = planned.value;
  const override = input.overrideReason?.trim() ?? "";
  if (preview.fits === "not-at-all") {
    return refuse({ code: "date-not-possible", path: "on", value: input.on, best: preview.p95.moved });
  }
  if (preview.breaksPromises.length > 0 && override === "") {
    return refuse({ code: "promises-would-break", path: "overrideReason", serials: preview.breaksPromises.join(", ") });
  }
  return transaction(ctx.db, async (tx) => {
    const revision = (await bumpQueue(tx)) - 1;
    if (revision !== input.revision) return refuse({ code: "queue-changed", revision, value: input.revision });
    const to = {
      on: input.on,
      class: "hard-date",
      reason: override === "" ? w.hardDateApproved : fill(w.hardDateOverridden, { reason: override }),
      with: { hardDatePlanB: planB, rushCents: (order.rushCents ?? 0) + preview.feeCents },
    } as const;
    if (!(await setPromise(ctx, tx, { ...order, version: input.version }, to))) return refuse(changed(order));
    if (places.length > 0) {
      await givePlaces(ctx, tx, { decisionId: ctx.newId(), reason: fill(w.hardDatePlaces, { on: input.on }), places });
    }
    if (preview.feeCents > 0) {
      await insertPayment(tx, {
        id: ctx.newId(),
        orderId: order.id,
        kind: "rush",
        state: "requested",
        cents: preview.feeCents + preview.feeTaxCents,
        method: null,
        reference: null,
        requestedAt: ctx.now,
        receivedAt: null,
        takenByName: null,
      });
    }
    const data = { on: input.on, planB, feeCents: preview.feeCents, moved: preview.movedSerials, override };
    await recordEvents(tx, [eventOf(ctx, "hard-date-approved", { kind: "order", id: order.id }, data)]);
    return accept({ on: input.on, feeCents: preview.feeCents });
  });
}

async function plan(ctx: Context, order: OrderRecord, on: IsoDate): Promise<Outcome<Plan>> {
  const today = shopDay(ctx.now, floorCatalog().hours.timeZone);
  if (on <= today) return refuse({ code: "date-past", path: "on", value: on, today });
  if (isTooFar(on, today)) return refuse({ code: "date-too-far", path: "on", value: on, days: farthestDays, today });
  if (!isOneOf(openPairStates, order.state)) {
    return refuse({ code: "order-closed", state: order.state });
  }
  if (order.confirmedAt === null) return refuse({ code: "order-not-confirmed", orderId: order.id });
  const { runs, revision } = await liveRuns(ctx.db, ctx.now);
  const count = ctx.promiseRuns ?? previewRuns;
  await completeRuns(runs, count);
  const own: readonly string[] = order.pairs.map(({ id }) => id);
  if (order.slotLostAt !== null || !own.every((id) => runs.pairs.some(({ pairId }) => pairId === id))) {
    return refuse({ code: "no-slot", path: "on" });
  }
  const lastP95 = (ranges: ReturnType<typeof queueRanges>): IsoDate => {
    const last = own
      .flatMap((id) => ranges.get(id)?.dates.p95 ?? [])
      .toSorted()
      .at(-1);
    if (last === undefined) throw new Error(`no pair of order ${order.id} is in the runs`);
    return last;
  };
  const now = lastP95(queueRanges(runs));
  const start = {
    orderId: order.id,
    on,
    revision,
    movedSerials: [],
    breaksPromises: [],
    feeCents: 0,
    feeTaxCents: 0,
  };
  if (now <= on) {
    const places = placesHeld(runs.situation, own);
    return accept({ preview: { ...start, p95: { now, moved: now }, fits: "now", effect: null }, places });
  }
  const found = await leastMove(runs.situation, own, on, async (situation) => {
    const prepared = prepareRuns(situation, runs.seed);
    if (!prepared.ok) throw new Error(`the queue does not fit the floor: ${prepared.refusal.code}`);
    await completeRuns(prepared.value, count);
    return lastP95(queueRanges(prepared.value));
  });
  const effect = await queueEffect(ctx, (live) => ({ ...live, pairs: withPlaces(live.pairs, found.places) }));
  const isOther = ({ pairId }: { readonly pairId: string }) => !own.includes(pairId);
  const moved = effect.moved.filter((each) => isOther(each) && each.movedWorkingDays > 0);
  const isPossible = found.p95 <= on;
  const rush = isPossible && moved.length > 0 && !order.rushCents ? rushOf(order) : null;
  const preview: HardDatePreview = {
    ...start,
    p95: { now, moved: found.p95 },
    fits: isPossible ? "by-moving" : "not-at-all",
    movedSerials: moved.map(({ serial }) => serial),
    breaksPromises: effect.crossing.filter(isOther).map(({ serial }) => serial),
    feeCents: rush?.feeCents ?? 0,
    feeTaxCents: rush?.taxCents ?? 0,
    effect,
  };
  return accept({ preview, places: found.places });
}

/** The places that the pairs have now, fixed: a later day would else rank them behind the others again. */
function placesHeld({ pairs }: QueueSituation, own: readonly string[]): readonly GivenPlace[] {
  return pairs
    .filter(({ pairId, placeMinute }) => own.includes(pairId) && placeMinute === undefined)
    .map((pair) => ({ pairId: pair.pairId, placeMinute: pairRank(pair) }));
}

/** The latest place in the queue from which the day is kept; the first place when none does. */
async function leastMove(
  situation: QueueSituation,
  own: readonly string[],
  on: IsoDate,
  p95Of: (situation: QueueSituation) => Promise<IsoDate>,
): Promise<{ readonly places: readonly GivenPlace[]; readonly p95: IsoDate }> {
  const others = inQueueOrder(situation.pairs).filter(({ pairId }) => !own.includes(pairId));
  const placed = async (position: number) => {
    const before = others[position]?.pairId ?? null;
    // One after the other, so that the pairs of an order stand together.
    let pairs = situation.pairs;
    const places = new Map<string, GivenPlace>();
    for (const id of own) {
      for (const place of placesFor(pairs, id, before)) places.set(place.pairId, place);
      pairs = withPlaces(situation.pairs, [...places.values()]);
    }
    return { places: [...places.values()], p95: await p95Of({ ...situation, pairs }) };
  };
  let low = 0;
  let high = others.length;
  let best = await placed(0);
  if (best.p95 > on) return best;
  while (low < high - 1) {
    const middle = Math.floor((low + high) / 2);
    const tried = await placed(middle);
    if (tried.p95 <= on) {
      best = tried;
      low = middle;
    } else high = middle;
  }
  return best;
}

/** By the price book that the order froze. */
function rushOf(order: Pick<OrderRecord, "price" | "priceBook">): ReturnType<typeof rushBeside> {
  const book = currentCatalog().priceBooks.find(({ id }) => id === order.priceBook);
  if (book === undefined) throw new Error(`price book ${order.priceBook} is not in the catalogue`);
  return rushBeside(order.price, book);
}

import { permit } from "#auth";
import { type EventRecord, eventsOf } from "#data/events";
import { listOrderRecords, type OrderRecord, orderById } from "#data/orders";
import type { PairRecord } from "#data/pairs";
import { frozen } from "#data/quotes";
import type { PairSpec } from "#engine/configuration";
import type { ClockStartCondition } from "#engine/floor";
import type { ArtworkId, OrderId, PairId } from "#engine/units";
import { accept, type IsoDate, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { pageOf, sliceOf } from "#services/paging";
import { currentCatalog, releasedCatalog } from "#shop/catalogue/current";
import { orderMoney } from "#shop/money/money";
import { flexClassLabel } from "#shop/names/flex-class-label";
import { numberIn, orderNumber } from "#shop/names/numbers";
import type { DateRange, Page } from "#shop/names/views";
import { gatesView } from "#shop/order/gate-facts";
import { progressSteps } from "#shop/order/progress-steps";
import { orderRow, orderView, paymentView, proofView, rightsView, slotLostView } from "#shop/order/view";
import type { OrderRow, OrderState, OrderView, ProgressView, PromiseClass } from "#shop/order/views";
import { shopDay } from "#shop/time/shop-time";
import { findOrder, findPair } from "./find-order";

export interface ListOrdersInput {
  readonly state?: OrderState;
  readonly waitingFor?: ClockStartCondition;
  /** Part of a name or a serial, or a number. */
  readonly text?: string;
  /** From 1. */
  readonly page?: number;
}

/** An order with its pairs, money and history; its skier and staff who may see prices. */
export async function readOrder(ctx: Context, input: { readonly orderId: OrderId }): Promise<Outcome<OrderView>> {
  const found = await findOrder(ctx, ctx.db, "order.read", input.orderId);
  if (!found.ok) return found;
  return accept(await orderView(ctx.db, found.value));
}

/** Orders, newest first. */
export async function listOrders(ctx: Context, input: ListOrdersInput): Promise<Outcome<Page<OrderRow>>> {
  const allowed = permit(ctx.actor, "order.list");
  if (!allowed.ok) return allowed;
  const text = input.text?.trim();
  const number = text ? numberIn(text, "O") : undefined;
  const found = await listOrderRecords(
    ctx.db,
    {
      ...(input.state === undefined ? {} : { state: input.state }),
      ...(input.waitingFor === undefined ? {} : { waitingFor: input.waitingFor }),
      ...(text ? { text } : {}),
      ...(number === undefined ? {} : { number }),
    },
    sliceOf(input.page),
  );
  return accept(pageOf(found.rows.map(orderRow), found.total, input.page));
}

/** The pairs of an order by its link: where the skier's pages of an order begin. */
export async function pairsOfOrder(
  ctx: Context,
  input: { readonly orderId: OrderId },
): Promise<Outcome<readonly { readonly pairId: PairId; readonly serial: string }[]>> {
  const found = await findOrder(ctx, ctx.db, "order.read", input.orderId);
  if (!found.ok) return found;
  return accept(found.value.pairs.map((pair) => ({ pairId: pair.id as PairId, serial: pair.serial })));
}

/** The skier's page of a pair: no other person's data, no shop internals. */
export async function readProgress(ctx: Context, input: { readonly pairId: PairId }): Promise<Outcome<ProgressView>> {
  const found = await findPair(ctx, ctx.db, "pair.progress", input.pairId);
  if (!found.ok) return found;
  if (ctx.actor.kind === "staff") {
    const seesPrices = permit(ctx.actor, "price.read");
    if (!seesPrices.ok) return seesPrices;
  }
  const order = await orderById(ctx.db, found.value.orderId);
  if (order === null) throw new Error(`pair ${input.pairId} has no order`);
  const events = await eventsOf(ctx.db, "order", [order.id]);
  const catalog = (await releasedCatalog(ctx.db, found.value.releaseHash)) ?? currentCatalog();
  return accept(progressView(found.value, order, events, catalog));
}

function progressView(
  pair: PairRecord,
  order: OrderRecord,
  events: readonly EventRecord[],
  catalog: Pick<ReturnType<typeof currentCatalog>, "build" | "shop">,
): ProgressView {
  const spec = frozen<PairSpec>(pair.spec);
  const deposit = order.payments.map(paymentView).find((payment) => payment.kind === "deposit");
  const proof = pair.proofs.at(-1);
  return {
    pairId: pair.id as PairId,
    serial: pair.serial,
    orderId: order.id as OrderId,
    orderNumber: orderNumber(order),
    state: pair.state as OrderState,
    modelName: catalog.build.models.find((model) => model.id === spec.model)?.name ?? spec.model,
    lengthCm: spec.lengthCm,
    flexClassLabel: flexClassLabel(spec, catalog),
    skierName: pair.skierName,
    spec,
    steps: progressSteps(pair, order),
    gates: gatesView(order.depositPaidAt, pair),
    deposit: {
      cents: order.depositCents,
      paidAt: order.depositPaidAt?.toISOString() ?? null,
      method: deposit?.method ?? null,
    },
    money: orderMoney(order),
    promiseClass: order.promiseClass as PromiseClass,
    dateRange: frozen<DateRange>(order.estimate),
    promisedOn: order.promisedOn as IsoDate | null,
    slotLost: slotLostView(order),
    dateHistory: dateHistory(events, catalog.shop.timeZone),
    proof: proof === undefined || proof.state === "void" ? null : proofView(proof),
    artworkId: (spec.graphic.artwork?.id ?? null) as ArtworkId | null,
    rights: rightsView(pair),
    customerSpecified: frozen<readonly string[]>(order.customerSpecified),
  };
}

/** Every date that was ever told, and what changed it. */
function dateHistory(events: readonly EventRecord[], timeZone: string): ProgressView["dateHistory"] {
  return events
    .filter(({ data }) => typeof data.p90 === "string" || typeof data.promisedOn === "string")
    .map((event) => ({
      at: event.at.toISOString(),
      on: shopDay(event.at, timeZone),
      from: (event.data.p50 ?? event.data.promisedOn) as IsoDate,
      to: (event.data.p90 ?? event.data.promisedOn) as IsoDate,
      why: event.data.class === "hard-date" ? "hard-date" : event.kind,
    }));
}

import { permit } from "#auth";
import { contactCodesOf } from "#data/contact-codes";
import { type EventRecord, eventsOf } from "#data/events";
import { listOrderRecords, type OrderAloneRecord, orderAloneById, orderById, pairNamesOfOrder } from "#data/orders";
import type { PairRecord } from "#data/pairs";
import { quoteById } from "#data/quotes";
import { type ClockStartCondition, type SoldFor, soldFor } from "#engine/floor";
import type { OrderId, PairId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { pageOf, sliceOf } from "#services/paging";
import { readable } from "#services/readable";
import { currentCatalog, releasedCatalog } from "#shop/catalogue/current";
import { orderMoney } from "#shop/money/money";
import { flexClassLabel } from "#shop/names/flex-class-label";
import { numberIn, orderNumber } from "#shop/names/numbers";
import type { Page } from "#shop/names/views";
import { gatesView } from "#shop/order/gate-facts";
import { progressSteps } from "#shop/order/progress-steps";
import { artworkIdOf, orderRow, orderView, paymentView, proofView, rightsView, slotLostView } from "#shop/order/view";
import type { OrderRow, OrderState, OrderView, ProgressView } from "#shop/order/views";
import { rangeOfPairs } from "#shop/queue/range";
import { shopDay } from "#shop/time/shop-time";
import { mostMisses } from "./confirm";
import { findOrder, findPair } from "./find-order";
import { proofToAnswer } from "./proof-to-answer";

export interface ListOrdersInput {
  readonly state?: OrderState;
  readonly waitingFor?: ClockStartCondition;
  readonly unconfirmed?: boolean;
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
      ...(input.unconfirmed === undefined ? {} : { unconfirmed: input.unconfirmed }),
      ...(input.waitingFor === undefined ? {} : { waitingFor: input.waitingFor }),
      ...(text ? { text } : {}),
      ...(number === undefined ? {} : { number }),
    },
    sliceOf(input.page),
  );
  return accept(pageOf(found, orderRow, input.page));
}

/** The pairs of an order by its link: where the skier's pages of an order begin. */
export async function pairsOfOrder(
  ctx: Context,
  input: { readonly orderId: OrderId },
): Promise<Outcome<readonly { readonly pairId: PairId; readonly serial: string }[]>> {
  const allowed = permit(ctx.actor, "order.read", { kind: "order", id: input.orderId });
  if (!allowed.ok) return allowed;
  const pairs = await pairNamesOfOrder(ctx.db, input.orderId);
  if (pairs.length === 0) return refuse({ code: "not-found", what: "order", path: "orderId" });
  return accept(pairs.map(({ id, serial }) => ({ pairId: id, serial })));
}

/** The skier's page of a pair: no other person's data, no shop internals. */
export async function readProgress(ctx: Context, input: { readonly pairId: PairId }): Promise<Outcome<ProgressView>> {
  const found = await findPair(ctx, ctx.db, "pair.progress", input.pairId);
  if (!found.ok) return found;
  if (ctx.actor.kind === "staff") {
    const seesPrices = permit(ctx.actor, "price.read");
    if (!seesPrices.ok) return seesPrices;
  }
  const order = await orderAloneById(ctx.db, found.value.orderId);
  if (order === null) throw new Error(`pair ${input.pairId} has no order`);
  const events = await eventsOf(ctx.db, "order", [order.id]);
  const catalog = (await releasedCatalog(ctx.db, found.value.releaseHash)) ?? currentCatalog();
  const quote = await quoteById(ctx.db, found.value.quoteId);
  const view = progressView(found.value, order, events, catalog, quote?.answers ?? {});
  if (order.confirmedAt !== null || order.state !== "waiting") return accept(view);
  return accept({ ...view, ...(await unplaced(ctx, order)) });
}

/** An order without a place: its day as if it took one now, and how it may be confirmed. */
async function unplaced(
  ctx: Context,
  order: OrderAloneRecord,
): Promise<Pick<ProgressView, "dateRange" | "unconfirmed">> {
  const [whole, [code]] = await Promise.all([readable(orderById(ctx.db, order.id)), contactCodesOf(ctx.db, order.id)]);
  const pairs = whole.ok ? (whole.value?.pairs ?? []) : [];
  const isOpen = code !== undefined && code.usedAt === null && code.expiresAt > ctx.now && code.misses < mostMisses;
  return {
    dateRange:
      pairs.length === 0
        ? order.estimate
        : await rangeOfPairs(
            ctx,
            pairs.map(({ spec }) => ({ spec })),
          ),
    unconfirmed: {
      sentTo: order.customer.email === null ? null : inPart(order.customer.email),
      codeUntil: isOpen ? code.expiresAt.toISOString() : null,
    },
  };
}

/** Who wrote an address knows it again; whoever finds the page open does not learn it. */
function inPart(email: string): string {
  const at = email.lastIndexOf("@");
  return `${email.slice(0, 1)}…${email.slice(at)}`;
}

function progressView(
  pair: PairRecord,
  order: OrderAloneRecord,
  events: readonly EventRecord[],
  catalog: Pick<ReturnType<typeof currentCatalog>, "build" | "shop">,
  answers: Pick<SoldFor, "offPistePercent" | "ageYears">,
): ProgressView {
  const spec = pair.spec;
  const deposit = order.payments.map(paymentView).find((payment) => payment.kind === "deposit");
  const proof = pair.proofs.at(-1);
  return {
    pairId: pair.id,
    serial: pair.serial,
    orderId: order.id,
    orderNumber: orderNumber(order),
    state: pair.state,
    modelName: catalog.build.models.find((model) => model.id === spec.model)?.name ?? spec.model,
    lengthCm: spec.lengthCm,
    flexClassLabel: flexClassLabel(spec, catalog),
    skierName: pair.skierName,
    spec,
    releaseHash: pair.releaseHash,
    steps: progressSteps(pair, order),
    gates: gatesView(order.depositPaidAt, pair),
    deposit: {
      cents: order.depositCents,
      paidAt: order.depositPaidAt?.toISOString() ?? null,
      method: deposit?.method ?? null,
    },
    unconfirmed: null,
    money: orderMoney(order),
    promiseClass: order.promiseClass,
    dateRange: order.estimate,
    promisedOn: order.promisedOn,
    slotLost: slotLostView(order),
    dateHistory: dateHistory(events, catalog.shop.timeZone),
    proof: proof === undefined || proof.state === "void" ? null : proofView(proof),
    proofToAnswer: proofToAnswer(pair, catalog.build),
    artworkId: artworkIdOf(spec),
    rights: rightsView(pair),
    customerSpecified: order.customerSpecified,
    soldFor: soldFor(spec, catalog.build.models, answers),
  };
}

/** Every date that was ever told, and what changed it. */
function dateHistory(events: readonly EventRecord[], timeZone: string): ProgressView["dateHistory"] {
  return events.flatMap(({ at, facts }) => {
    const told = toldBy(facts);
    return told === null ? [] : [{ at: at.toISOString(), on: shopDay(at, timeZone), ...told }];
  });
}

type Told = Pick<ProgressView["dateHistory"][number], "from" | "to" | "why">;

function toldBy(facts: EventRecord["facts"]): Told | null {
  switch (facts.kind) {
    case "promise-fixed":
    case "promise-changed": {
      const { promisedOn, p50, p90 } = facts.data;
      const why = facts.data.class === "hard-date" ? "hard-date" : facts.kind;
      return { from: p50 ?? promisedOn, to: p90 ?? promisedOn, why };
    }
    case "order-made":
    case "estimate-renewed":
    case "estimate-changed":
      return { from: facts.data.p50, to: facts.data.p90, why: facts.kind };
    case "order-confirmed": {
      const { p50, p90 } = facts.data;
      return p50 === undefined || p90 === undefined ? null : { from: p50, to: p90, why: facts.kind };
    }
    default:
      return null;
  }
}

import { issueLink } from "../../auth";
import type { Tx } from "../../data/client";
import { bumpQueue, nextNumber } from "../../data/counters";
import { recordEvents } from "../../data/events";
import { insertOrder, insertPayment } from "../../data/orders";
import { queueMessages } from "../../data/outbox";
import { insertPair, insertPairRevision } from "../../data/pairs";
import { frozen, markQuoteAccepted, type QuoteRecord } from "../../data/quotes";
import { transaction } from "../../data/transaction";

import type { PairSpec } from "../../engine/configuration";
import type { Price } from "../../engine/pricing";
import { pairStations } from "../../engine/routing";
import { accept, type Outcome, type Refusal, refuse } from "../../engine/units";
import { catalogOf, type FrozenCatalog } from "../catalogue/current";
import type { Context } from "../context";
import { customerSpecified } from "../customer-specified";
import { rangeOf } from "../dates/range";
import { mouldOf, needsProof, needsRights } from "../floor/facts";
import { orderNumber, quoteNumber } from "../numbers";
import { pairSerial, skiSerial } from "../pairs/serial";
import { softHoldUntil } from "../promises/slots";
import { eventOf, messageOf, nameOf } from "../record";
import { allocateStrips } from "../strips/allocate";
import type { AcceptedQuote, DateRange, OrderId, PairId, QuoteId } from "../views";
import { notOpen } from "./change-quote";
import { findQuote } from "./find-quote";
import { rightsOfSpec } from "./rights";
import { quoteStateOf } from "./state";

export interface AcceptQuoteInput {
  readonly quoteId: QuoteId;
  readonly how: "online" | "phone" | "counter";
  /** Who says yes, in their own words. */
  readonly name: string;
}

/**
 * Makes the order, exactly once: order, pair, two skis, route, strips, deposit request and record in one transaction.
 * Refuses `quote-already-accepted` (orderId, orderNumber), `quote-expired` (see previewReprice), `quote-not-open`,
 * `name-missing`. Every attempt stands in the quote's history.
 */
export async function acceptQuote(ctx: Context, input: AcceptQuoteInput): Promise<Outcome<AcceptedQuote>> {
  const found = await findQuote(ctx, ctx.db, "quote.accept", input.quoteId);
  if (!found.ok) return found;
  const name = input.name.trim();
  if (name === "") return refuse({ code: "name-missing", path: "name" });
  const quote = found.value;
  if (quoteStateOf(quote, ctx.now) !== "open") return heldBack(ctx, notOpen(quote, ctx.now));
  const catalog = await catalogOf(ctx.db, quote);
  const estimate = await rangeOf(ctx, frozen<PairSpec>(quote.spec));
  const rights = await rightsOfSpec(ctx.db, frozen<PairSpec>(quote.spec));
  const made = await transaction(ctx.db, async (tx) => {
    if (!(await markQuoteAccepted(tx, quote.id, ctx.now))) return null;
    return makeOrder(ctx, tx, { quote, catalog, estimate, rights, name, how: input.how });
  });
  if (made !== null) return accept(made);
  const now = await findQuote(ctx, ctx.db, "quote.accept", input.quoteId);
  return now.ok ? heldBack(ctx, notOpen(now.value, ctx.now)) : now;
}

/** Who holds the quote's link, or staff, may open the order it became: a new link, told once. Refuses `not-accepted`. */
export async function orderLinkOfQuote(
  ctx: Context,
  input: { readonly quoteId: QuoteId },
): Promise<Outcome<{ readonly orderId: OrderId; readonly token: string }>> {
  const found = await findQuote(ctx, ctx.db, "quote.read", input.quoteId);
  if (!found.ok) return found;
  const { order } = found.value;
  if (order === null) return refuse({ code: "not-accepted", quoteId: input.quoteId });
  const token = await issueLink(ctx.db, { kind: "order", id: order.id }, { id: ctx.newId(), now: ctx.now });
  return accept({ orderId: order.id as OrderId, token });
}

/** Says why not, and leaves the attempt in the record. */
async function heldBack(ctx: Context, refusal: Refusal): Promise<Outcome<AcceptedQuote>> {
  const subject = { kind: "quote", id: String(refusal.quoteId) } as const;
  const { code, orderId } = refusal;
  await recordEvents(ctx.db, [eventOf(ctx, "acceptance-refused", subject, { code, orderId: orderId ?? null })]);
  return refuse(refusal);
}

interface OrderToMake {
  readonly quote: QuoteRecord;
  readonly catalog: FrozenCatalog;
  readonly estimate: DateRange;
  readonly rights: { readonly basis: string; readonly name: string; readonly at: Date } | null;
  readonly name: string;
  readonly how: AcceptQuoteInput["how"];
}

async function makeOrder(ctx: Context, tx: Tx, order: OrderToMake): Promise<AcceptedQuote> {
  const { quote, estimate, name, how } = order;
  const price = frozen<Price>(quote.price);
  const orderId = ctx.newId();
  // The order's number is taken first: its row makes those who accept other quotes wait, so strips are shared out in turn.
  const number = await nextNumber(tx, "order");
  await insertOrder(tx, {
    id: orderId,
    number,
    quoteId: quote.id,
    customerId: quote.customerId,
    price,
    priceBook: quote.priceBook,
    totalCents: price.totalCents,
    depositCents: price.depositCents,
    estimate,
    acceptedAt: ctx.now,
    acceptedByName: name,
    acceptedHow: how,
    softHoldUntil: softHoldUntil(ctx.now),
    customerSpecified: customerSpecified(frozen<PairSpec>(quote.spec)),
  });
  const pair = await makePair(ctx, tx, orderId, order);
  await requestDeposit(ctx, tx, orderId, price);
  await bumpQueue(tx);
  const subject = { kind: "order", id: orderId } as const;
  const data = { orderId, orderNumber: orderNumber({ number }), how, name };
  await recordEvents(tx, [
    eventOf(ctx, "quote-accepted", { kind: "quote", id: quote.id }, data),
    eventOf(ctx, "order-made", subject, { ...data, quote: quoteNumber(quote), p50: estimate.p50, p90: estimate.p90 }),
  ]);
  const token = await issueLink(tx, subject, { id: ctx.newId(), now: ctx.now });
  const recipient = quote.customer.email ?? quote.customer.phone ?? "desk";
  await queueMessages(tx, [
    messageOf(ctx, "order-confirmation", recipient, subject, { token, depositCents: price.depositCents }),
  ]);
  return {
    orderId: orderId as OrderId,
    orderNumber: orderNumber({ number }),
    token,
    pairs: [pair],
    depositCents: price.depositCents,
  };
}

async function makePair(
  ctx: Context,
  tx: Tx,
  orderId: string,
  order: OrderToMake,
): Promise<AcceptedQuote["pairs"][number]> {
  const { quote, catalog, rights } = order;
  const spec = frozen<PairSpec>(quote.spec);
  const pairId = ctx.newId();
  const serialNumber = await nextNumber(tx, "pair");
  await insertPair(tx, {
    id: pairId,
    orderId,
    serialNumber,
    serial: pairSerial(catalog.released.shop.serialPrefix, serialNumber),
    spec,
    specHash: quote.specHash,
    releaseHash: quote.releaseHash,
    skierName: quote.customer.name,
    mould: mouldOf(spec, catalog.engine.build),
    rightsNeeded: needsRights(spec),
    rightsAt: rights?.at ?? null,
    rights: rights === null ? null : { basis: rights.basis, name: rights.name },
    proofNeeded: needsProof(spec),
    createdAt: ctx.now,
    skis: (["L", "R"] as const).map((side) => ({
      id: ctx.newId(),
      side,
      serial: skiSerial(catalog.released.shop.serialPrefix, serialNumber, side),
    })),
    operations: pairStations.map((station) => ({ id: ctx.newId(), station })),
  });
  await insertPairRevision(tx, {
    pairId,
    revision: 1,
    spec,
    specHash: quote.specHash,
    price: quote.price,
    reason: `accepted from ${quoteNumber(quote)}`,
    createdAt: ctx.now,
    createdByName: nameOf(ctx.actor),
  });
  const strips = await allocateStrips(tx, { pairId, spec, build: catalog.engine.build, now: ctx.now });
  await recordEvents(tx, [
    eventOf(
      ctx,
      "pair-made",
      { kind: "pair", id: pairId },
      { serial: pairSerial(catalog.released.shop.serialPrefix, serialNumber), strips },
    ),
  ]);
  return { pairId: pairId as PairId, serial: pairSerial(catalog.released.shop.serialPrefix, serialNumber) };
}

async function requestDeposit(ctx: Context, tx: Tx, orderId: string, price: Price): Promise<void> {
  await insertPayment(tx, {
    id: ctx.newId(),
    orderId,
    kind: "deposit",
    state: "requested",
    cents: price.depositCents,
    method: null,
    reference: null,
    requestedAt: ctx.now,
    receivedAt: null,
    takenByName: null,
  });
}

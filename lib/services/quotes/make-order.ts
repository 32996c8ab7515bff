/** An order from accepted quotes: one as a rule, several of a club together. */

import { issueLink } from "#auth";
import history from "#content/copy/history.json";
import { buyerFrom } from "#data/buyer";
import type { Tx } from "#data/client";
import { bumpQueue, nextNumber } from "#data/counters";
import { recordEvents } from "#data/events";
import { insertOrder, insertPayment } from "#data/orders";
import { queueMessages } from "#data/outbox";
import { insertPair, insertPairRevision } from "#data/pairs";
import type { QuoteRecord } from "#data/quotes";
import { joinPrices, type Price } from "#engine/pricing";
import { fill } from "#engine/units";
import { idOf } from "#schemas/ids";
import type { RightsBasis } from "#schemas/stored/index";
import type { Context } from "#services/context";
import { sendContactCode } from "#services/letters/contact-code";
import { softHoldUntil } from "#services/promises/slots";
import { eventOf, messageOf, nameOf } from "#services/record";
import { allocateStrips } from "#services/stock/allocate";
import type { FrozenCatalog } from "#shop/catalogue/current";
import { mouldOf, needsProof, needsRights } from "#shop/floor/facts";
import { pairWay } from "#shop/floor/stations";
import { orderNumber, quoteNumber } from "#shop/names/numbers";
import { pairSerial, skiSerial } from "#shop/names/serial";
import type { DateRange } from "#shop/names/views";
import { customerSpecified } from "#shop/order/customer-specified";
import type { AcceptedQuote } from "./views";

const w = history.orders;

/** A quote that was just marked accepted. */
export interface OrderMember {
  readonly quote: QuoteRecord;
  readonly catalog: FrozenCatalog;
  readonly rights: (RightsBasis & { readonly at: Date }) | null;
}

export interface OrderToMake {
  /** At least one; all of one customer. */
  readonly members: readonly OrderMember[];
  readonly clubId: string | null;
  /** When the last of the pairs is ready. */
  readonly estimate: DateRange;
  /** Who said yes. */
  readonly name: string;
  readonly how: "online" | "phone" | "counter";
}

/** Order, pairs, skis, routes, strips, deposit request and record. @throws RangeError without a member */
export async function makeOrder(ctx: Context, tx: Tx, order: OrderToMake): Promise<AcceptedQuote> {
  const { members, clubId, estimate, name, how } = order;
  const quote = members[0]?.quote;
  if (quote === undefined) throw new RangeError("makeOrder: an order needs at least 1 quote");
  const price = joinPrices(members.map((member) => member.quote.price));
  const specified = members.flatMap((member) => customerSpecified(member.quote.spec));
  const orderId = idOf("order", ctx.newId());
  const confirmed = isForTheDesk(ctx, members) ? ({ at: ctx.now, how: "desk", by: nameOf(ctx.actor) } as const) : null;
  // First of all, so that others wait here and strips are shared out in turn. An order without a place changes no queue.
  if (confirmed !== null) await bumpQueue(tx);
  const number = await nextNumber(tx, "order");
  await insertOrder(tx, {
    id: orderId,
    number,
    quoteId: quote.id,
    clubId,
    customerId: quote.customerId,
    buyer: buyerFrom(quote.customer),
    confirmed,
    visitorMark: ctx.visitor?.mark ?? null,
    price,
    priceBook: quote.priceBook,
    totalCents: price.totalCents,
    depositCents: price.depositCents,
    estimate,
    acceptedAt: ctx.now,
    acceptedByName: name,
    acceptedHow: how,
    softHoldUntil: confirmed === null ? null : softHoldUntil(ctx.now),
    customerSpecified: [...new Set(specified)],
  });
  const pairs: AcceptedQuote["pairs"][number][] = [];
  for (const member of members) pairs.push(await makePair(ctx, tx, orderId, member, confirmed !== null));
  await requestDeposit(ctx, tx, orderId, price);
  const subject = { kind: "order", id: orderId } as const;
  const data = { orderId, orderNumber: orderNumber({ number }), how, name };
  const quotes = members.map((member) => quoteNumber(member.quote)).join(", ");
  await recordEvents(tx, [
    ...members.map((member) => eventOf(ctx, "quote-accepted", { kind: "quote", id: member.quote.id }, data)),
    eventOf(ctx, "order-made", subject, { ...data, quote: quotes, p50: estimate.p50, p90: estimate.p90 }),
  ]);
  const token = await issueLink(tx, subject, { id: ctx.newId(), now: ctx.now });
  if (confirmed === null) {
    await sendContactCode(ctx, tx, { id: orderId, number, customer: quote.customer });
  } else {
    const recipient = quote.customer.email ?? quote.customer.phone ?? "desk";
    await queueMessages(tx, [
      messageOf(ctx, "order-confirmation", recipient, subject, { depositCents: price.depositCents }),
    ]);
  }
  return {
    orderId,
    isConfirmed: confirmed !== null,
    orderNumber: orderNumber({ number }),
    token,
    pairs,
    depositCents: price.depositCents,
  };
}

/** Whether somebody of the shop has spoken with who buys: they say yes themselves, or gave every contact. */
function isForTheDesk({ actor }: Context, members: readonly OrderMember[]): boolean {
  return actor.kind !== "guest" || members.every(({ quote }) => quote.contactBy === "desk");
}

async function makePair(
  ctx: Context,
  tx: Tx,
  orderId: string,
  member: OrderMember,
  hasPlace: boolean,
): Promise<AcceptedQuote["pairs"][number]> {
  const { quote, catalog, rights } = member;
  const spec = quote.spec;
  const pairId = idOf("pair", ctx.newId());
  const serialNumber = await nextNumber(tx, "pair");
  await insertPair(tx, {
    id: pairId,
    orderId,
    quoteId: quote.id,
    serialNumber,
    serial: pairSerial(catalog.released.shop.serialPrefix, serialNumber),
    spec,
    specHash: quote.specHash,
    releaseHash: quote.releaseHash,
    skierName: quote.skierName ?? quote.customer.name,
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
    operations: pairWay().map((stop) => ({ id: ctx.newId(), ...stop })),
  });
  await insertPairRevision(tx, {
    pairId,
    revision: 1,
    spec,
    specHash: quote.specHash,
    price: quote.price,
    reason: fill(w.accepted, { quote: quoteNumber(quote) }),
    createdAt: ctx.now,
    createdByName: nameOf(ctx.actor),
  });
  const strips = hasPlace ? await allocateStrips(tx, { pairId, spec, catalog: catalog.engine, now: ctx.now }) : null;
  await recordEvents(tx, [
    eventOf(
      ctx,
      "pair-made",
      { kind: "pair", id: pairId },
      { serial: pairSerial(catalog.released.shop.serialPrefix, serialNumber), strips },
    ),
  ]);
  return { pairId, serial: pairSerial(catalog.released.shop.serialPrefix, serialNumber) };
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

/**
 * Who stands behind an order. One that a guest accepts takes no place in the queue and no strips until that is known: by the
 * desk's word, by money, or by the code of a letter. Knowing it places the order, exactly once.
 */
import { timingSafeEqual } from "node:crypto";
import { issueLink } from "#auth";
import type { Tx } from "#data/client";
import { contactCodesOf, missContactCode, useContactCode } from "#data/contact-codes";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { type ConfirmedHow, markConfirmed, type OrderRecord, orderById } from "#data/orders";
import { queueMessages } from "#data/outbox";
import { queuePairsAgain } from "#data/promises";
import { transaction } from "#data/transaction";
import type { IsoDate, OrderId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { contactCodeHash, sendContactCode } from "#services/letters/contact-code";
import { softHoldUntil } from "#services/promises/slots";
import { eventOf, messageOf, nameOf } from "#services/record";
import { allocateStrips } from "#services/stock/allocate";
import { catalogOf, type FrozenCatalog } from "#shop/catalogue/current";
import type { DateRange } from "#shop/names/views";
import { rangeOfPairs } from "#shop/queue/range";
import { findOrder } from "./find-order";

/** Wrong answers to one letter, and letters to one order in a day. Shop practice, no source. */
export const mostMisses = 5;
const mostLettersADay = 5;
const dayMs = 86_400_000;
const reasonLength = { min: 1, max: 500 } as const;

export interface ConfirmedOrder {
  readonly orderId: OrderId;
  readonly from: IsoDate;
  readonly to: IsoDate;
}

/** What a place is worked out with, before the transaction that gives it. */
export interface PreparedPlace {
  readonly catalogs: ReadonlyMap<string, FrozenCatalog>;
  readonly estimate: DateRange;
}

export async function preparePlace(ctx: Context, order: OrderRecord): Promise<PreparedPlace> {
  const catalogs = new Map<string, FrozenCatalog>();
  for (const { releaseHash } of order.pairs) {
    catalogs.set(releaseHash, await catalogOf(ctx.db, { releaseHash, priceBook: order.priceBook }));
  }
  const pairs = order.pairs.map(({ id, spec }) => ({ pairId: id, spec }));
  return { catalogs, estimate: await rangeOfPairs(ctx, pairs) };
}

/** Places an order in the caller's transaction; false when it was placed before or is not waiting any more. */
export async function placeOrder(
  ctx: Context,
  tx: Tx,
  order: OrderRecord,
  place: PreparedPlace,
  known: { readonly how: Exclude<ConfirmedHow, "earlier">; readonly reason?: string },
): Promise<boolean> {
  // First, so that strips are shared out in turn.
  await bumpQueue(tx);
  const { estimate } = place;
  const confirmation = {
    at: ctx.now,
    how: known.how,
    by: nameOf(ctx.actor),
    softHoldUntil: softHoldUntil(ctx.now),
    estimate,
  };
  if (!(await markConfirmed(tx, order.id, confirmation))) return false;
  await queuePairsAgain(tx, order.id, ctx.now);
  const now = await orderById(tx, order.id);
  for (const { id, spec, releaseHash } of now?.pairs ?? []) {
    const catalog = place.catalogs.get(releaseHash);
    if (catalog === undefined) throw new Error(`pair ${id} changed its release while it was placed`);
    const strips = await allocateStrips(tx, { pairId: id, spec, catalog: catalog.engine, now: ctx.now });
    await recordEvents(tx, [eventOf(ctx, "pair-placed", { kind: "pair", id }, { strips })]);
  }
  const subject = { kind: "order", id: order.id } as const;
  const { p50, p90 } = estimate;
  await recordEvents(tx, [eventOf(ctx, "order-confirmed", subject, { ...known, p50, p90 })]);
  const token = await issueLink(tx, subject, { id: ctx.newId(), now: ctx.now });
  const recipient = order.customer.email ?? order.customer.phone ?? "desk";
  const told = { token, depositCents: order.depositCents };
  await queueMessages(tx, [messageOf(ctx, "order-confirmation", recipient, subject, told)]);
  return true;
}

/** Staff know who it is, and say how. Refuses `order-confirmed`, `order-closed`, `reason-length`. */
export async function confirmOrder(
  ctx: Context,
  input: { readonly orderId: OrderId; readonly reason: string },
): Promise<Outcome<ConfirmedOrder>> {
  const found = await findOrder(ctx, ctx.db, "order.confirm", input.orderId);
  if (!found.ok) return found;
  const reason = input.reason.trim();
  if (reason.length < reasonLength.min || reason.length > reasonLength.max) {
    return refuse({ code: "reason-length", path: "reason", length: reason.length, ...reasonLength });
  }
  const open = checkOpen(found.value);
  if (!open.ok) return open;
  const place = await preparePlace(ctx, found.value);
  const isFirst = await transaction(ctx.db, (tx) => placeOrder(ctx, tx, found.value, place, { how: "staff", reason }));
  return placed(input.orderId, isFirst, place);
}

/**
 * Who reads the mail of the order's address types its code. Refuses `code-wrong` (left), `code-over` when none can be typed any
 * more, `order-confirmed`, `order-closed`, and what the public doors are refused for.
 */
export async function confirmByCode(
  ctx: Context,
  input: { readonly orderId: OrderId; readonly code: string },
): Promise<Outcome<ConfirmedOrder>> {
  const found = await findOrder(ctx, ctx.db, "contact.prove", input.orderId);
  if (!found.ok) return found;
  const order = found.value;
  const open = checkOpen(order);
  if (!open.ok) return open;
  const allowed = await spend(ctx, "code");
  if (!allowed.ok) return allowed;
  const [code] = await contactCodesOf(ctx.db, order.id);
  const over = refuse({ code: "code-over", path: "code" });
  if (code === undefined || code.usedAt !== null || code.expiresAt <= ctx.now || code.misses >= mostMisses) return over;
  // The buyer's address was put right since: who reads the old one is not them.
  if (code.sentTo !== order.customer.email) return over;
  if (!isSameDigest(code.codeHash, contactCodeHash(order.id, input.code))) {
    const isCounted = await transaction(ctx.db, async (tx) => {
      if (!(await missContactCode(tx, code.id, mostMisses))) return false;
      const subject = { kind: "order", id: order.id } as const;
      await recordEvents(tx, [eventOf(ctx, "contact-code-missed", subject, { misses: code.misses + 1 })]);
      return true;
    });
    return isCounted ? refuse({ code: "code-wrong", path: "code", left: mostMisses - code.misses - 1 }) : over;
  }
  const place = await preparePlace(ctx, order);
  const isFirst = await transaction(
    ctx.db,
    async (tx) =>
      (await useContactCode(tx, code.id, mostMisses, ctx.now)) && placeOrder(ctx, tx, order, place, { how: "letter" }),
  );
  return placed(input.orderId, isFirst, place);
}

/** Another letter to the same address. Refuses `no-address`, `too-many-letters` (most), `order-confirmed`, `order-closed`. */
export async function sendCodeAgain(ctx: Context, input: { readonly orderId: OrderId }): Promise<Outcome<void>> {
  const found = await findOrder(ctx, ctx.db, "contact.prove", input.orderId);
  if (!found.ok) return found;
  const order = found.value;
  const open = checkOpen(order);
  if (!open.ok) return open;
  const allowed = await spend(ctx, "code");
  if (!allowed.ok) return allowed;
  const since = new Date(ctx.now.getTime() - dayMs);
  const recent = (await contactCodesOf(ctx.db, order.id)).filter(({ sentAt }) => sentAt > since);
  if (recent.length >= mostLettersADay) return refuse({ code: "too-many-letters", most: mostLettersADay });
  const isWritten = await transaction(ctx.db, (tx) => sendContactCode(ctx, tx, order));
  return isWritten ? accept(undefined) : refuse({ code: "no-address" });
}

function checkOpen(order: OrderRecord): Outcome<void> {
  if (order.confirmedAt !== null) return refuse({ code: "order-confirmed", orderId: order.id });
  return order.state === "waiting" ? accept(undefined) : refuse({ code: "order-closed", state: order.state });
}

function placed(orderId: OrderId, isFirst: boolean, { estimate }: PreparedPlace): Outcome<ConfirmedOrder> {
  if (!isFirst) return refuse({ code: "order-confirmed", orderId });
  return accept({ orderId, from: estimate.p50, to: estimate.p90 });
}

function isSameDigest(a: string, b: string): boolean {
  return a.length === b.length && timingSafeEqual(Buffer.from(a), Buffer.from(b));
}

import { endLinksSoon, linkEnd, permit, renewLinks } from "#auth";
import history from "#content/copy/history.json";
import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { insertPayment, moveOrder, type OrderChange, type OrderRecord, orderById } from "#data/orders";
import { queueMessages } from "#data/outbox";
import { movePair, voidTravellers } from "#data/pairs";
import { transaction } from "#data/transaction";
import { type OrderState, transition } from "#engine/floor";
import type { OrderId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { EventFacts } from "#schemas/events";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { eventOf, eventWith, messageOf, nameOf } from "#services/record";
import { putStripsBack } from "#services/stock/strip-moves";
import { orderMoney } from "#shop/money/money";
import { ifCancelled, orderView } from "#shop/order/view";
import type { OrderView } from "#shop/order/views";
import { findOrder } from "./find-order";

const w = history.orders;

/** Cancels before shipping, keeping what the ladder says; strips that were not cut go back to stock. */
export async function cancelOrder(
  ctx: Context,
  input: { readonly orderId: OrderId; readonly reason: string },
): Promise<Outcome<OrderView>> {
  const found = await findOrder(ctx, ctx.db, "order.cancel", input.orderId);
  if (!found.ok) return found;
  const order = found.value;
  const reason = input.reason.trim();
  const terms = await ifCancelled(ctx.db, order);
  const data = {
    reason,
    stage: terms?.stage ?? null,
    feeCents: terms?.keepCents ?? 0,
    refundCents: terms?.refundCents ?? 0,
  };
  const change = { cancelledAt: ctx.now, cancelReason: reason, feeCents: data.feeCents, refundCents: data.refundCents };
  const facts = { kind: "order-cancelled", data } as const;
  return move(ctx, order, { to: "cancelled", reason, change, facts, told: data }, async (tx) => {
    for (const pair of order.pairs) {
      const returned = await putStripsBack(tx, pair.id);
      await voidTravellers(tx, pair.id, w.cancelled, ctx.now);
      await recordEvents(tx, [
        eventOf(ctx, "pair-cancelled", { kind: "pair", id: pair.id }, { stripsReturned: returned }),
      ]);
    }
    if (data.refundCents > 0) await refund(ctx, tx, order, data.refundCents);
  });
}

/**
 * A ready order leaves the house, paid: the balance is due before shipping. Refuses `balance-open`, unless an owner sends it
 * all the same and says why.
 */
export async function shipOrder(
  ctx: Context,
  input: { readonly orderId: OrderId; readonly tracking?: string; readonly unpaidReason?: string },
): Promise<Outcome<OrderView>> {
  const found = await findOrder(ctx, ctx.db, "order.change", input.orderId);
  if (!found.ok) return found;
  const tracking = input.tracking?.trim() || null;
  const { openCents } = orderMoney(found.value);
  const shipped = { to: "shipped", reason: "", change: {}, told: { tracking } } as const;
  if (openCents === 0 || found.value.state !== "ready") {
    return move(ctx, found.value, { ...shipped, facts: { kind: "order-shipped", data: { tracking } } });
  }
  const unpaidReason = input.unpaidReason?.trim() ?? "";
  const allowed = permit(ctx.actor, "order.ship-unpaid");
  if (!allowed.ok || unpaidReason === "") {
    const open = (openCents / 100).toFixed(2);
    return refuse({
      code: "balance-open",
      path: "unpaidReason",
      open,
      currency: found.value.price.currency,
    });
  }
  const facts = { kind: "order-shipped", data: { tracking, openCents, unpaidReason } } as const;
  return move(ctx, found.value, { ...shipped, facts });
}

/** The order arrived. */
export async function deliverOrder(ctx: Context, input: { readonly orderId: OrderId }): Promise<Outcome<OrderView>> {
  const found = await findOrder(ctx, ctx.db, "order.change", input.orderId);
  if (!found.ok) return found;
  const facts = { kind: "order-delivered", data: {} } as const;
  return move(ctx, found.value, { to: "delivered", reason: "", change: { deliveredAt: ctx.now }, facts, told: {} });
}

interface Closing {
  readonly to: OrderState;
  readonly reason: string;
  readonly change: OrderChange;
  /** What the shop's history keeps. */
  readonly facts: EventFacts;
  /** What of it the customer is told. */
  readonly told: Readonly<Record<string, unknown>>;
}

async function move(
  ctx: Context,
  order: OrderRecord,
  { to, reason, change, facts, told }: Closing,
  also: (tx: Tx) => Promise<void> = async () => undefined,
): Promise<Outcome<OrderView>> {
  const allowed = transition("order", order.state, to, reason);
  if (!allowed.ok) return allowed;
  return transaction(ctx.db, async (tx) => {
    await bumpQueue(tx);
    const { id, state, version } = order;
    const subject = { kind: "order", id } as const;
    const isMoved = await moveState(
      tx,
      { kind: "order", from: state, to, reason },
      () => moveOrder(tx, id, { state, version }, to, change),
      async () => {
        for (const pair of order.pairs) {
          await moveState(tx, { kind: "pair", from: pair.state, to, reason }, () =>
            movePair(tx, pair.id, { state: pair.state }, to),
          );
        }
        await also(tx);
        return [eventWith(ctx, subject, facts)];
      },
    );
    if (!isMoved) return refuse({ code: "changed-meanwhile", what: "order", id, version });
    // The record of a pair goes on being read; an order that came to nothing is soon forgotten.
    if (to === "cancelled") await endLinksSoon(tx, subject, ctx.now);
    if (to === "delivered") await renewLinks(tx, subject, linkEnd("order", ctx.now));
    const recipient = order.customer.email ?? order.customer.phone ?? "desk";
    await queueMessages(tx, [messageOf(ctx, `order-${to}`, recipient, subject, told)]);
    const after = await orderById(tx, order.id);
    if (after === null) throw new Error(`order ${order.id} was there a moment ago`);
    return accept(await orderView(tx, after));
  });
}

async function refund(ctx: Context, tx: Tx, order: OrderRecord, cents: number): Promise<void> {
  await insertPayment(tx, {
    id: ctx.newId(),
    orderId: order.id,
    kind: "refund",
    state: "requested",
    cents,
    method: order.payments.find((payment) => payment.kind === "deposit")?.method ?? null,
    reference: null,
    requestedAt: ctx.now,
    receivedAt: null,
    takenByName: nameOf(ctx.actor),
  });
}

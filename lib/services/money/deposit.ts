import { permit } from "#auth";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { announcePayment, markDepositPaid, type OrderRecord, receivePayment } from "#data/orders";
import { transaction } from "#data/transaction";
import type { Instant, OrderId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { startClockIfDue } from "#services/orders/clock";
import { findOrder } from "#services/orders/find-order";
import { regainSlot } from "#services/promises/slots";
import { eventOf, nameOf } from "#services/record";
import { orderNumber } from "#shop/names/numbers";
import type { DepositMethod } from "#shop/order/views";
import { demoGateway } from "./gateway";

export interface RecordDepositInput {
  readonly orderId: OrderId;
  readonly method: DepositMethod;
  /** What staff read off a bank statement or a receipt. */
  readonly reference?: string;
}

export interface DepositResult {
  readonly orderId: OrderId;
  /** Null while the money is announced but not there. */
  readonly paidAt: Instant | null;
  readonly clockStarted: boolean;
}

/**
 * `demo-card` is received at once, `bank-transfer` and `counter` when staff say so (a skier only announces them),
 * `pay-later` leaves it open. Refuses `deposit-already-paid`, `order-closed`, `reference-missing`.
 */
export async function recordDeposit(ctx: Context, input: RecordDepositInput): Promise<Outcome<DepositResult>> {
  const isStaff = permit(ctx.actor, "deposit.record").ok;
  const found = await findOrder(ctx, ctx.db, isStaff ? "deposit.record" : "deposit.choose", input.orderId);
  if (!found.ok) return found;
  const order = found.value;
  const request = order.payments.find((payment) => payment.kind === "deposit");
  if (request === undefined) throw new Error(`order ${order.id} asks for no deposit`);
  if (order.state === "cancelled") return refuse({ code: "order-closed", state: order.state });
  if (request.state === "received") return alreadyPaid(order);
  const answer = await demoGateway.take({
    orderNumber: orderNumber(order),
    cents: request.cents,
    currency: order.price.currency,
    method: input.method,
    reference: input.reference?.trim() || null,
    isStaff,
  });
  if (!answer.ok) return answer;
  const { state, reference } = answer.value;
  const subject = { kind: "order", id: order.id } as const;
  const data = { method: input.method, cents: request.cents, reference };
  if (state === "announced") {
    await transaction(ctx.db, async (tx) => {
      await announcePayment(tx, request.id, input.method);
      await recordEvents(tx, [eventOf(ctx, "deposit-announced", subject, data)]);
    });
    return accept({ orderId: input.orderId, paidAt: null, clockStarted: false });
  }
  const isTaken = await transaction(ctx.db, async (tx) => {
    const received = { method: input.method, reference, at: ctx.now, by: nameOf(ctx.actor) };
    return moveState(
      tx,
      { kind: "payment", from: request.state, to: "received" },
      () => receivePayment(tx, request.id, received),
      async () => {
        await markDepositPaid(tx, order.id, ctx.now);
        await regainSlot(ctx, tx, order, "deposit");
        await bumpQueue(tx);
        return [eventOf(ctx, "deposit-received", subject, data)];
      },
    );
  });
  if (!isTaken) return alreadyPaid(order);
  const clockStarted = await startClockIfDue(ctx, order.id);
  return accept({ orderId: input.orderId, paidAt: ctx.now.toISOString(), clockStarted });
}

function alreadyPaid(order: OrderRecord) {
  return refuse({ code: "deposit-already-paid", orderId: order.id, orderNumber: orderNumber(order) });
}

/** The deposit is here: the one place that books it, whoever said so. */
import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { markDepositPaid, type OrderRecord, receivePayment } from "#data/orders";
import { transaction } from "#data/transaction";
import type { Instant, OrderId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { startClockIfDue } from "#services/orders/clock";
import { placeOrder, preparePlace } from "#services/orders/confirm";
import { regainSlot } from "#services/promises/slots";
import { eventOf, nameOf } from "#services/record";
import { orderNumber } from "#shop/names/numbers";
import type { BookedMethod } from "#shop/order/views";

export interface DepositResult {
  readonly orderId: OrderId;
  /** Null while the money is announced but not there. */
  readonly paidAt: Instant | null;
  readonly clockStarted: boolean;
}

export interface ReceivedMoney {
  readonly method: BookedMethod;
  readonly reference: string | null;
}

type DepositRequest = OrderRecord["payments"][number];

/**
 * Books the deposit; money shows that somebody stands behind the order, so it places one that had no place yet.
 *
 * @param first what must be written in the same transaction before, such as that a message was acted on
 */
export async function takeDeposit(
  ctx: Context,
  order: OrderRecord,
  request: DepositRequest,
  { method, reference }: ReceivedMoney,
  first: (tx: Tx) => Promise<void> = async () => undefined,
): Promise<Outcome<DepositResult>> {
  const place = order.confirmedAt === null ? await preparePlace(ctx, order) : null;
  const received = { method, reference, at: ctx.now, by: nameOf(ctx.actor) };
  const data = { method, cents: request.cents, reference };
  const isTaken = await transaction(ctx.db, async (tx) => {
    await first(tx);
    return moveState(
      tx,
      { kind: "payment", from: request.state, to: "received" },
      () => receivePayment(tx, request.id, received),
      async () => {
        await bumpQueue(tx);
        await markDepositPaid(tx, order.id, ctx.now);
        if (place !== null) await placeOrder(ctx, tx, order, place, { how: "money" });
        await regainSlot(ctx, tx, order, "deposit");
        return [eventOf(ctx, "deposit-received", { kind: "order", id: order.id }, data)];
      },
    );
  });
  if (!isTaken) return alreadyPaid(order);
  const clockStarted = await startClockIfDue(ctx, order.id);
  return accept({ orderId: order.id, paidAt: ctx.now.toISOString(), clockStarted });
}

export function alreadyPaid(order: OrderRecord) {
  return refuse({ code: "deposit-already-paid", orderId: order.id, orderNumber: orderNumber(order) });
}

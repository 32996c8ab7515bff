import { type OrderRecord, orderById, receivePayment } from "#data/orders";
import { transaction } from "#data/transaction";
import { moneyAllowed } from "#engine/floor";
import type { OrderId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { findOrder } from "#services/orders/find-order";
import { eventOf, nameOf } from "#services/record";
import { orderMoney } from "#shop/money/money";
import type { OrderMoney } from "#shop/money/views";

export interface RecordRefundInput {
  readonly orderId: OrderId;
  readonly method: "bank-transfer" | "counter";
  /** Of the transfer or receipt. */
  readonly reference: string;
}

/** The money has gone back. Refuses `money-not-now` unless the order is cancelled, `nothing-open`, `reference-missing`. */
export async function recordRefund(ctx: Context, input: RecordRefundInput): Promise<Outcome<OrderMoney>> {
  const found = await findOrder(ctx, ctx.db, "payment.record", input.orderId);
  if (!found.ok) return found;
  const order: OrderRecord = found.value;
  const allowed = moneyAllowed("pay-refund", order.state);
  if (!allowed.ok) return allowed;
  const owed = order.payments.find(({ kind, state }) => kind === "refund" && state === "requested");
  if (owed === undefined) return refuse({ code: "nothing-open" });
  const reference = input.reference.trim();
  if (reference === "") return refuse({ code: "reference-missing", path: "reference" });
  const paid = { method: input.method, reference, at: ctx.now, by: nameOf(ctx.actor) };
  const data = { method: input.method, cents: owed.cents, reference };
  const isFirst = await transaction(ctx.db, (tx) =>
    moveState(tx, { kind: "payment", from: owed.state, to: "received" }, () => receivePayment(tx, owed.id, paid), [
      eventOf(ctx, "refund-paid", { kind: "order", id: order.id }, data),
    ]),
  );
  if (!isFirst) return refuse({ code: "nothing-open" });
  const after = await orderById(ctx.db, order.id);
  if (after === null) throw new Error(`order ${order.id} was there a moment ago`);
  return accept(orderMoney(after));
}

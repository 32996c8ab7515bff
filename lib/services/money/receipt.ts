/** Money that came after the deposit: the fee of a hard date, and the balance before shipping. No card data. */

import type { Tx } from "#data/client";
import { type NewEvent, recordEvents } from "#data/events";
import { insertPayment, type OrderRecord, orderById, receivePayment, updateOrder } from "#data/orders";
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
import { orderNumber } from "#shop/names/numbers";
import type { DepositMethod } from "#shop/order/views";
import { demoReference, offeredMethods } from "./demo-service";

export interface RecordReceiptInput {
  readonly orderId: OrderId;
  /** `balance` is everything that is still open, the fee of a hard date with it. */
  readonly what: "rush" | "balance";
  readonly method: Exclude<DepositMethod, "pay-later">;
  /** What staff read off a bank statement or a receipt. */
  readonly reference?: string;
}

/**
 * Staff say that it is there. Refuses `order-closed`, `deposit-first`, `rush-not-asked`, `nothing-open`,
 * `reference-missing`, `changed-meanwhile` when somebody was first.
 */
export async function recordReceipt(ctx: Context, input: RecordReceiptInput): Promise<Outcome<OrderMoney>> {
  const found = await findOrder(ctx, ctx.db, "payment.record", input.orderId);
  if (!found.ok) return found;
  const order = found.value;
  const due = dueFor(order, input.what);
  if (!due.ok) return due;
  const { method } = input;
  if (!(await offeredMethods(ctx)).includes(method))
    return refuse({ code: "method-not-offered", path: "method", method });
  const reference = method === "demo-card" ? demoReference(orderNumber(order)) : input.reference?.trim() || null;
  if (reference === null) return refuse({ code: "reference-missing", path: "reference" });
  return transaction(ctx.db, async (tx) => {
    if (!(await updateOrder(tx, order.id, order.version, {}))) {
      return refuse({ code: "changed-meanwhile", what: "order", id: order.id, version: order.version });
    }
    const how = { method: input.method, reference, at: ctx.now, by: nameOf(ctx.actor) };
    const fee = await receiveRush(ctx, tx, order, how);
    if (input.what === "balance") await receiveRest(ctx, tx, order, due.value - fee, how);
    const after = await orderById(tx, order.id);
    if (after === null) throw new Error(`order ${order.id} was there a moment ago`);
    return accept(orderMoney(after));
  });
}

interface Received {
  readonly method: string;
  readonly reference: string | null;
  readonly at: Date;
  readonly by: string;
}

function dueFor(order: OrderRecord, what: RecordReceiptInput["what"]): Outcome<number> {
  const allowed = moneyAllowed(what === "rush" ? "take-rush" : "take-balance", order.state);
  if (!allowed.ok) return allowed;
  const { rush, openCents } = orderMoney(order);
  if (what === "rush") {
    if (rush === null) return refuse({ code: "rush-not-asked" });
    return rush.paidAt === null ? accept(rush.totalCents) : refuse({ code: "nothing-open" });
  }
  if (order.depositPaidAt === null) return refuse({ code: "deposit-first" });
  return openCents === 0 ? refuse({ code: "nothing-open" }) : accept(openCents);
}

/** Returns what came in by it; 0 when no fee is open. */
async function receiveRush(ctx: Context, tx: Tx, order: OrderRecord, how: Received): Promise<number> {
  const asked = order.payments.find(({ kind, state }) => kind === "rush" && state === "requested");
  if (asked === undefined) return 0;
  const isTaken = await moveState(
    tx,
    { kind: "payment", from: asked.state, to: "received" },
    () => receivePayment(tx, asked.id, how),
    [told(ctx, order, "rush-received", asked.cents, how)],
  );
  return isTaken ? asked.cents : 0;
}

async function receiveRest(ctx: Context, tx: Tx, order: OrderRecord, cents: number, how: Received): Promise<void> {
  if (cents <= 0) return;
  await insertPayment(tx, {
    id: ctx.newId(),
    orderId: order.id,
    kind: "balance",
    state: "received",
    cents,
    method: how.method,
    reference: how.reference,
    requestedAt: how.at,
    receivedAt: how.at,
    takenByName: how.by,
  });
  await recordEvents(tx, [told(ctx, order, "balance-received", cents, how)]);
}

function told(
  ctx: Context,
  order: OrderRecord,
  kind: "rush-received" | "balance-received",
  cents: number,
  how: Received,
): NewEvent {
  const data = { method: how.method, cents, reference: how.reference };
  return eventOf(ctx, kind, { kind: "order", id: order.id }, data);
}

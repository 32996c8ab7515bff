import { permit } from "#auth";
import { recordEvents } from "#data/events";
import { announcePayment, type OrderRecord } from "#data/orders";
import { transaction } from "#data/transaction";
import { moneyAllowed } from "#engine/floor";
import type { OrderId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { findOrder } from "#services/orders/find-order";
import { eventOf } from "#services/record";
import { orderNumber } from "#shop/names/numbers";
import type { DepositMethod } from "#shop/order/views";
import { demoPays, demoReference, offeredMethods } from "./demo-service";
import { receivePaymentMessage } from "./receive-message";
import { alreadyPaid, type DepositResult, takeDeposit } from "./take-deposit";

export type { DepositResult } from "./take-deposit";

export interface RecordDepositInput {
  readonly orderId: OrderId;
  readonly method: DepositMethod;
  /** What staff read off a bank statement or a receipt. */
  readonly reference?: string;
}

/**
 * Staff say that it is there; a skier only announces how it will come, or goes to the payment service, whose signed message
 * counts. Refuses `method-not-offered`, `deposit-already-paid`, `order-closed`, `money-not-now`, `reference-missing`.
 */
export async function recordDeposit(ctx: Context, input: RecordDepositInput): Promise<Outcome<DepositResult>> {
  const isStaff = permit(ctx.actor, "deposit.record").ok;
  const found = await findOrder(ctx, ctx.db, isStaff ? "deposit.record" : "deposit.choose", input.orderId);
  if (!found.ok) return found;
  const order = found.value;
  const request = order.payments.find((payment) => payment.kind === "deposit");
  if (request === undefined) throw new Error(`order ${order.id} asks for no deposit`);
  const { method } = input;
  const isWord = method === "pay-later" || (!isStaff && method !== "demo-card");
  if (order.state !== "cancelled" && request.state === "received") return alreadyPaid(order);
  const allowed = moneyAllowed(isWord ? "announce-deposit" : "take-deposit", order.state);
  if (!allowed.ok) return allowed;
  if (!(await offeredMethods(ctx)).includes(method))
    return refuse({ code: "method-not-offered", path: "method", method });
  if (isWord) {
    const within = await spend(ctx, "question");
    if (!within.ok) return within;
    return announce(ctx, order, request, method);
  }
  const number = orderNumber(order);
  if (!isStaff) {
    const asked = { paymentId: request.id, cents: request.cents, currency: order.price.currency, orderNumber: number };
    return receivePaymentMessage(ctx, demoPays(ctx, asked));
  }
  const reference = method === "demo-card" ? demoReference(number) : input.reference?.trim() || null;
  if (reference === null) return refuse({ code: "reference-missing", path: "reference" });
  return takeDeposit(ctx, order, request, { method, reference });
}

async function announce(
  ctx: Context,
  order: OrderRecord,
  request: OrderRecord["payments"][number],
  method: DepositMethod,
): Promise<Outcome<DepositResult>> {
  await transaction(ctx.db, async (tx) => {
    await announcePayment(tx, request.id, method);
    const data = { method, cents: request.cents, reference: null };
    await recordEvents(tx, [eventOf(ctx, "deposit-announced", { kind: "order", id: order.id }, data)]);
  });
  return accept({ orderId: order.id, paidAt: null, clockStarted: false });
}

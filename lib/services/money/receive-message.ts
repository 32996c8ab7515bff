import { systemActor } from "#auth";
import history from "#content/copy/history.json";
import { Conflict } from "#data/errors";
import { recordEvents } from "#data/events";
import { isPaymentMessageKnown, keepPaymentMessage, orderById, orderOfPayment } from "#data/orders";
import { translated } from "#data/transaction";
import { moneyAllowed } from "#engine/floor";
import { type Outcome, type Refusal, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { isDemo } from "./demo-service";
import { paymentKey, readMessage, type SignedMessage } from "./payment-message";
import { alreadyPaid, type DepositResult, takeDeposit } from "./take-deposit";

/**
 * Acts on what the payment service says of a deposit, once. It is the signature that counts, not who brings the message.
 * Refuses what an unsigned, foreign or late one is refused for, `payment-replayed`, `payment-unknown`, `payment-amount`
 * (cents, currency), `deposit-already-paid`, `order-closed`, `money-not-now`; of a signed one the refusal stands in the
 * order's history.
 */
export async function receivePaymentMessage(asker: Context, sent: SignedMessage): Promise<Outcome<DepositResult>> {
  const read = readMessage(sent, paymentKey(), asker.now);
  if (!read.ok) return read;
  const message = read.value;
  const ctx: Context = { ...asker, actor: systemActor(history.money.paymentService) };
  if (await translated(isPaymentMessageKnown(ctx.db, message.id))) return replayed(message.id);
  const orderId = await translated(orderOfPayment(ctx.db, message.paymentId));
  const order = orderId === null ? null : await orderById(ctx.db, orderId);
  const request = order?.payments.find(({ id }) => id === message.paymentId);
  if (order === null || request === undefined || request.kind !== "deposit") {
    return refuse({ code: "payment-unknown", messageId: message.id });
  }
  const heldBack = async (refusal: Refusal) => {
    const data = { code: refusal.code, messageId: message.id };
    await recordEvents(ctx.db, [eventOf(ctx, "payment-message-refused", { kind: "order", id: order.id }, data)]);
    return refuse(refusal);
  };
  const { cents, currency } = message;
  if (cents !== request.cents || currency !== order.price.currency) {
    return heldBack({
      code: "payment-amount",
      messageId: message.id,
      cents: request.cents,
      currency: order.price.currency,
    });
  }
  if (order.state !== "cancelled" && request.state === "received") return heldBack(alreadyPaid(order).refusal);
  const allowed = moneyAllowed("take-deposit", order.state);
  if (!allowed.ok) return heldBack(allowed.refusal);
  const { id, paymentId, reference } = message;
  const method = (await isDemo(ctx)) ? "demo-card" : "payment-service";
  try {
    return await takeDeposit(ctx, order, request, { method, reference }, (tx) =>
      keepPaymentMessage(tx, { id, paymentId, receivedAt: ctx.now }),
    );
  } catch (error) {
    if (error instanceof Conflict && error.columns.length > 0) return replayed(id);
    throw error;
  }
}

function replayed(messageId: string) {
  return refuse({ code: "payment-replayed", messageId });
}

import { recordEvents } from "#data/events";
import { updateOrder } from "#data/orders";
import { transaction } from "#data/transaction";
import { isOneOf } from "#engine/floor";
import type { OrderId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { findOrder } from "#services/orders/find-order";
import { eventOf } from "#services/record";
import { type CorrectContactInput, correctedContact } from "./corrected-contact";

const over = ["shipped", "delivered", "cancelled"] as const;

/**
 * Staff put right who bought, on this order alone and until it has been shipped: its quote and the customer stay as they are.
 * A code that went to another mail address confirms it no more.
 * Refuses `reason-missing`, `invalid-phone`, `contact-unchanged`, `order-closed`, `changed-meanwhile`.
 */
export async function correctBuyer(
  ctx: Context,
  { orderId, version, ...input }: CorrectContactInput & { readonly orderId: OrderId; readonly version: number },
): Promise<Outcome<{ readonly orderId: OrderId }>> {
  const found = await findOrder(ctx, ctx.db, "order.correct-buyer", orderId);
  if (!found.ok) return found;
  const order = found.value;
  if (isOneOf(over, order.state)) return refuse({ code: "order-closed", state: order.state });
  const corrected = correctedContact(order.customer, input);
  if (!corrected.ok) return corrected;
  const { name, phone, email, before, reason } = corrected.value;
  return transaction(ctx.db, async (tx) => {
    const change = { buyerName: name, buyerPhone: phone, buyerEmail: email };
    if (!(await updateOrder(tx, orderId, version, change))) {
      return refuse({ code: "changed-meanwhile", what: "order", id: orderId, version });
    }
    await recordEvents(tx, [eventOf(ctx, "buyer-corrected", { kind: "order", id: orderId }, { before, reason })]);
    return accept({ orderId });
  });
}

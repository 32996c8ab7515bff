import { orderById, updateOrder, waivePayment } from "#data/orders";
import { transaction } from "#data/transaction";
import { moneyAllowed } from "#engine/floor";
import type { OrderId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { findOrder } from "#services/orders/find-order";
import { eventOf } from "#services/record";
import { orderMoney } from "#shop/money/money";
import type { OrderMoney } from "#shop/money/views";

/**
 * Gives up the fee of a hard date, with its tax: the day stands, nothing more is asked. Owner only. Refuses `order-closed`, `rush-not-asked`,
 * `nothing-open` when it was paid, `reason-missing`, `changed-meanwhile`.
 */
export async function waiveRush(
  ctx: Context,
  input: { readonly orderId: OrderId; readonly reason: string },
): Promise<Outcome<OrderMoney>> {
  const found = await findOrder(ctx, ctx.db, "payment.waive", input.orderId);
  if (!found.ok) return found;
  const order = found.value;
  const allowed = moneyAllowed("waive-rush", order.state);
  if (!allowed.ok) return allowed;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const asked = order.payments.find(({ kind, state }) => kind === "rush" && state !== "waived");
  if (asked === undefined) return refuse({ code: "rush-not-asked" });
  if (asked.state !== "requested") return refuse({ code: "nothing-open" });
  return transaction(ctx.db, async (tx) => {
    const data = { cents: asked.cents, reason };
    const isFirst =
      (await updateOrder(tx, order.id, order.version, {})) &&
      (await moveState(
        tx,
        { kind: "payment", from: asked.state, to: "waived", reason },
        () => waivePayment(tx, asked.id),
        [eventOf(ctx, "rush-waived", { kind: "order", id: order.id }, data)],
      ));
    if (!isFirst) return refuse({ code: "changed-meanwhile", what: "order", id: order.id, version: order.version });
    const after = await orderById(tx, order.id);
    if (after === null) throw new Error(`order ${order.id} was there a moment ago`);
    return accept(orderMoney(after));
  });
}

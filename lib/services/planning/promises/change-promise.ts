/** A promise moved by a person: with a reason, from one date to another, for everybody to read. */

import { bumpQueue } from "#data/counters";
import { queueMessages } from "#data/outbox";
import { transaction } from "#data/transaction";
import { closedStates, isOneOf } from "#engine/floor";
import type { OrderId } from "#engine/units";
import { accept, type IsoDate, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { findOrder } from "#services/orders/find-order";
import { changed } from "#services/orders/gates";
import { setPromise } from "#services/promises/set-promise";
import { messageOf } from "#services/record";
import { floorCatalog } from "#shop/floor/recipe";
import { farthestDays, isTooFar, shopDay } from "#shop/time/shop-time";

/** Refuses `no-promise-yet`, `order-closed`, `date-past`, `date-too-far`, `same-date`, `reason-missing`, `changed-meanwhile`. */
export async function changePromise(
  ctx: Context,
  input: { readonly orderId: OrderId; readonly version: number; readonly on: IsoDate; readonly reason: string },
): Promise<Outcome<{ readonly promisedOn: IsoDate }>> {
  const found = await findOrder(ctx, ctx.db, "promise.change", input.orderId);
  if (!found.ok) return found;
  const order = found.value;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  if (order.promisedOn === null) return refuse({ code: "no-promise-yet", path: "on" });
  if (isOneOf(closedStates, order.state)) {
    return refuse({ code: "order-closed", state: order.state });
  }
  const today = shopDay(ctx.now, floorCatalog().hours.timeZone);
  if (input.on < today) return refuse({ code: "date-past", path: "on", value: input.on, today });
  if (isTooFar(input.on, today)) {
    return refuse({ code: "date-too-far", path: "on", value: input.on, days: farthestDays, today });
  }
  if (input.on === order.promisedOn) return refuse({ code: "same-date", path: "on", value: input.on });
  return transaction(ctx.db, async (tx) => {
    const to = { on: input.on, class: order.promiseClass === "hard-date" ? "hard-date" : "promise", reason } as const;
    if (!(await setPromise(ctx, tx, { ...order, version: input.version }, to))) return refuse(changed(order));
    await bumpQueue(tx);
    const recipient = order.customer.email ?? order.customer.phone ?? "desk";
    const subject = { kind: "order", id: order.id } as const;
    const data = { from: order.promisedOn, to: input.on, reason };
    await queueMessages(tx, [messageOf(ctx, "promise-changed", recipient, subject, data)]);
    return accept({ promisedOn: input.on });
  });
}

import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { OrderId, OrderView } from "../views";

/** Cancels before shipping, keeping what the ladder says; strips not cut go back to stock. */
export async function cancelOrder(
  ctx: Context,
  input: { readonly orderId: OrderId; readonly reason: string },
): Promise<Outcome<OrderView>> {
  throw new Error(`cancelOrder is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** A ready order leaves the house. */
export async function shipOrder(
  ctx: Context,
  input: { readonly orderId: OrderId; readonly tracking?: string },
): Promise<Outcome<OrderView>> {
  throw new Error(`shipOrder is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** The order arrived. */
export async function deliverOrder(ctx: Context, input: { readonly orderId: OrderId }): Promise<Outcome<OrderView>> {
  throw new Error(`deliverOrder is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

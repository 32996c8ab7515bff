import type { ClockStartCondition } from "../../engine/lifecycle";
import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { OrderId, OrderRow, OrderState, OrderView, Page, PairId, ProgressView } from "../views";

export interface ListOrdersInput {
  readonly state?: OrderState;
  readonly waitingFor?: ClockStartCondition;
  readonly text?: string;
  readonly page?: number;
}

/** An order with its pairs, money and history; staff who may see prices. */
export async function readOrder(ctx: Context, input: { readonly orderId: OrderId }): Promise<Outcome<OrderView>> {
  throw new Error(`readOrder is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Orders, newest first. */
export async function listOrders(ctx: Context, input: ListOrdersInput): Promise<Outcome<Page<OrderRow>>> {
  throw new Error(`listOrders is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** The skier's page of a pair. */
export async function readProgress(ctx: Context, input: { readonly pairId: PairId }): Promise<Outcome<ProgressView>> {
  throw new Error(`readProgress is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** The pairs of an order by its link: where the skier's pages of an order begin. */
export async function pairsOfOrder(
  ctx: Context,
  input: { readonly orderId: OrderId },
): Promise<Outcome<readonly { readonly pairId: PairId; readonly serial: string }[]>> {
  throw new Error(`pairsOfOrder is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

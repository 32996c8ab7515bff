import { type Action, permit } from "#auth";
import type { Tx } from "#data/client";
import { type OrderRecord, orderById } from "#data/orders";
import { orderOfPair, type PairRecord, pairById } from "#data/pairs";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { readable } from "#services/readable";

export async function findOrder(
  ctx: Context,
  client: Tx,
  action: Action,
  orderId: string,
): Promise<Outcome<OrderRecord>> {
  const allowed = permit(ctx.actor, action, { kind: "order", id: orderId });
  if (!allowed.ok) return allowed;
  const read = await readable(orderById(client, orderId));
  if (!read.ok) return read;
  return read.value === null ? refuse({ code: "not-found", what: "order", path: "orderId" }) : accept(read.value);
}

/** A pair, for somebody who may do this with it or with its order. */
export async function findPair(ctx: Context, client: Tx, action: Action, pairId: string): Promise<Outcome<PairRecord>> {
  const ofPair = permit(ctx.actor, action, { kind: "pair", id: pairId });
  const orderId = await orderOfPair(client, pairId);
  if (!ofPair.ok && (orderId === null || !permit(ctx.actor, action, { kind: "order", id: orderId }).ok)) return ofPair;
  const read = await readable(pairById(client, pairId));
  if (!read.ok) return read;
  return read.value === null ? refuse({ code: "not-found", what: "pair", path: "pairId" }) : accept(read.value);
}

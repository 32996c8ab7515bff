import { type Action, permit } from "#auth";
import type { Tx } from "#data/client";
import { type OrderRecord, orderById } from "#data/orders";
import { type PairRecord, pairById } from "#data/pairs";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";

export async function findOrder(
  ctx: Context,
  client: Tx,
  action: Action,
  orderId: string,
): Promise<Outcome<OrderRecord>> {
  const allowed = permit(ctx.actor, action, { kind: "order", id: orderId });
  if (!allowed.ok) return allowed;
  const record = await orderById(client, orderId);
  return record === null ? refuse({ code: "not-found", what: "order", path: "orderId" }) : accept(record);
}

/** A pair, for somebody who may do this with it or with its order. */
export async function findPair(ctx: Context, client: Tx, action: Action, pairId: string): Promise<Outcome<PairRecord>> {
  const record = await pairById(client, pairId);
  const answers = [
    permit(ctx.actor, action, { kind: "pair", id: pairId }),
    ...(record === null ? [] : [permit(ctx.actor, action, { kind: "order", id: record.orderId })]),
  ];
  const refusal = answers.find((answer) => !answer.ok);
  if (refusal !== undefined && !answers.some((answer) => answer.ok)) return refusal as Outcome<PairRecord>;
  return record === null ? refuse({ code: "not-found", what: "pair", path: "pairId" }) : accept(record);
}

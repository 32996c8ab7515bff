import { permit } from "#auth";
import { recordEvents } from "#data/events";
import { listOrderRecords, moveOrder, orderById } from "#data/orders";
import { movePair } from "#data/pairs";
import { transaction } from "#data/transaction";
import type { Instant, OrderId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { eventOf } from "#services/record";
import { orderRow } from "#shop/order/view";

export interface UnconfirmedOrder {
  readonly orderId: OrderId;
  readonly number: string;
  readonly customerName: string;
  readonly summary: string;
  readonly totalCents: number;
  readonly acceptedAt: Instant;
  /** A digest of the visitor who placed it; null where visitors could not be told apart. */
  readonly mark: string | null;
  /** How many of the listed orders have it. */
  readonly ofMark: number;
}

export interface UnconfirmedOrders {
  /** Newest first, as many as can be called off at once. */
  readonly orders: readonly UnconfirmedOrder[];
  readonly more: number;
}

const mostAtOnce = 100;

/** Orders that nobody is known to stand behind. Staff only. */
export async function listUnconfirmed(ctx: Context): Promise<Outcome<UnconfirmedOrders>> {
  const allowed = permit(ctx.actor, "order.confirm");
  if (!allowed.ok) return allowed;
  const found = await listOrderRecords(ctx.db, { unconfirmed: true }, { skip: 0, take: mostAtOnce });
  const orders = found.rows.map((record) => {
    const { orderId, number, customerName, summary, totalCents, acceptedAt } = orderRow(record);
    const mark = record.visitorMark;
    const ofMark = found.rows.filter(({ visitorMark }) => mark !== null && visitorMark === mark).length;
    return { orderId, number, customerName, summary, totalCents, acceptedAt, mark, ofMark };
  });
  return accept({ orders, more: found.total - found.rows.length });
}

export interface ReleasedBatch {
  readonly released: number;
  /** Confirmed or closed meanwhile: they stay as they are. */
  readonly kept: number;
}

/**
 * Calls off, with one reason, orders that nobody stands behind. They hold no place, no strips and no money, so nothing is given
 * back; nobody is written to, as nobody is known to read it. Refuses `nothing-chosen`, `reason-missing`.
 */
export async function releaseUnconfirmed(
  ctx: Context,
  input: { readonly orderIds: readonly OrderId[]; readonly reason: string },
): Promise<Outcome<ReleasedBatch>> {
  const allowed = permit(ctx.actor, "order.confirm");
  if (!allowed.ok) return allowed;
  const reason = input.reason.trim();
  if (reason === "") return refuse({ code: "reason-missing", path: "reason" });
  const ids = [...new Set(input.orderIds)];
  if (ids.length === 0) return refuse({ code: "nothing-ticked", path: "orderIds" });
  return transaction(ctx.db, async (tx) => {
    let released = 0;
    for (const id of ids) {
      const order = await orderById(tx, id);
      if (order === null || order.confirmedAt !== null || order.state !== "waiting") continue;
      const { state, version } = order;
      const change = { cancelledAt: ctx.now, cancelReason: reason, feeCents: 0, refundCents: 0 };
      const data = { reason, stage: null, feeCents: 0, refundCents: 0 };
      const isMoved = await moveState(
        tx,
        { kind: "order", from: state, to: "cancelled", reason },
        () => moveOrder(tx, id, { state, version }, "cancelled", change),
        [eventOf(ctx, "order-cancelled", { kind: "order", id }, data)],
      );
      if (!isMoved) continue;
      for (const pair of order.pairs) {
        await moveState(tx, { kind: "pair", from: pair.state, to: "cancelled", reason }, () =>
          movePair(tx, pair.id, { state: pair.state }, "cancelled"),
        );
        const subject = { kind: "pair", id: pair.id } as const;
        await recordEvents(tx, [eventOf(ctx, "pair-cancelled", subject, { stripsReturned: 0 })]);
      }
      released += 1;
    }
    return accept({ released, kept: ids.length - released });
  });
}

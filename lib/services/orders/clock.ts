/**
 * The clock start: at the last of deposit, lock, proof and rights the promise is fixed (the nine-of-ten day; a hard date that
 * was approved before stays) and the pairs go to the floor. Called after each of those; it does nothing while one is missing.
 */

import history from "#content/copy/history.json";
import type { Tx } from "#data/client";
import { bumpQueue } from "#data/counters";
import { recordEvents } from "#data/events";
import { moveOrder, type OrderRecord, orderById } from "#data/orders";
import { queueMessages } from "#data/outbox";
import { movePair, setOperationStates } from "#data/pairs";
import { transaction } from "#data/transaction";
import type { IsoDate } from "#engine/units";
import type { Context } from "#services/context";
import { moveState } from "#services/move";
import { setPromise } from "#services/promises/set-promise";
import { eventOf, messageOf } from "#services/record";
import { mustPrecede } from "#shop/floor/stations";
import type { DateRange } from "#shop/names/views";
import { orderClock } from "#shop/order/gate-facts";
import { rangeOfPairs } from "#shop/queue/range";

const w = history.orders;

/** @returns whether this call started the clock */
export async function startClockIfDue(ctx: Context, orderId: string): Promise<boolean> {
  const order = await orderById(ctx.db, orderId);
  if (order === null || order.state !== "waiting") return false;
  const clock = orderClock(order.depositPaidAt, order.pairs);
  if (!clock.started) return false;
  const pairs = order.pairs.map(({ id, spec }) => ({ pairId: id, spec: spec }));
  const promise = await rangeOfPairs(ctx, pairs, { isPromise: true });
  const startedAt = new Date(clock.startedAtMs);
  return transaction(ctx.db, async (tx) => {
    if (!(await release(ctx, tx, order, promise, startedAt))) return false;
    for (const pair of order.pairs) {
      const { state, version } = pair;
      await moveState(tx, { kind: "pair", from: state, to: "released" }, () =>
        movePair(tx, pair.id, { state, version }, "released", { queuedAt: startedAt }),
      );
      const first = pair.operations.filter((operation) => mustPrecede(operation.station).length === 0);
      await moveState(tx, { kind: "operation", from: "blocked", to: "ready" }, () =>
        setOperationStates(
          tx,
          first.map((operation) => operation.id),
          "blocked",
          "ready",
        ),
      );
    }
    await bumpQueue(tx);
    const subject = { kind: "order", id: order.id } as const;
    const told = {
      p50: promise.p50,
      p90: promise.p90,
      ...(promise.p80 === undefined ? {} : { p80: promise.p80 }),
      ...(promise.shares === undefined ? {} : { shares: promise.shares }),
    };
    const dates = { promisedOn: hardDateOf(order) ?? promise.p90, p50: promise.p50, p90: promise.p90 };
    await recordEvents(tx, [
      eventOf(ctx, "clock-started", subject, { last: clock.last, at: startedAt.toISOString(), told }),
      ...order.pairs.map((pair) => eventOf(ctx, "pair-released", { kind: "pair", id: pair.id }, dates)),
    ]);
    const recipient = order.customer.email ?? order.customer.phone ?? "desk";
    await queueMessages(tx, [messageOf(ctx, "promise-fixed", recipient, subject, dates)]);
    return true;
  });
}

/** False when the order was changed meanwhile. */
async function release(
  ctx: Context,
  tx: Tx,
  order: OrderRecord,
  range: DateRange,
  clockStartedAt: Date,
): Promise<boolean> {
  const { id, state, version } = order;
  const change = { clockStartedAt, slotLostAt: null, slotLostReason: null };
  const isReleased = await moveState(tx, { kind: "order", from: state, to: "released" }, () =>
    moveOrder(tx, id, { state, version }, "released", change),
  );
  if (!isReleased || hardDateOf(order) !== null) return isReleased;
  const released = { ...order, version: version + 1 };
  return setPromise(ctx, tx, released, { on: range.p90, class: "promise", reason: w.clockStarted, range });
}

function hardDateOf({ promiseClass, promisedOn }: OrderRecord): IsoDate | null {
  return promiseClass === "hard-date" ? promisedOn : null;
}

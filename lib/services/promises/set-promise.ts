/** The one place where a promise date is written: never without an event that says why, from what, and by whom. */

import type { Tx } from "#data/client";
import { recordEvents } from "#data/events";
import { type OrderChange, updateOrder } from "#data/orders";
import type { PromiseClass } from "#engine/floor";
import type { IsoDate } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import type { DateRange } from "#shop/names/views";

export interface PromiseToSet {
  readonly on: IsoDate;
  readonly class: Exclude<PromiseClass, "estimate">;
  readonly reason: string;
  /** What the date was taken from. */
  readonly range?: Pick<DateRange, "p50" | "p80" | "p90" | "shares" | "basis">;
  /** What else changes on the order in the same moment. */
  readonly with?: Omit<OrderChange, "promisedOn" | "promiseClass">;
}

/** False when the order was changed meanwhile; nothing is written then. */
export async function setPromise(
  ctx: Context,
  tx: Tx,
  order: {
    readonly id: string;
    readonly version: number;
    readonly promisedOn: IsoDate | null;
    readonly promiseClass: string;
  },
  to: PromiseToSet,
): Promise<boolean> {
  const change = { ...to.with, promisedOn: to.on, promiseClass: to.class };
  if (!(await updateOrder(tx, order.id, order.version, change))) return false;
  const isFirst = order.promisedOn === null;
  const range = to.range;
  await recordEvents(tx, [
    eventOf(
      ctx,
      isFirst ? "promise-fixed" : "promise-changed",
      { kind: "order", id: order.id },
      {
        promisedOn: to.on,
        from: order.promisedOn,
        class: to.class,
        reason: to.reason,
        ...(range === undefined
          ? {}
          : {
              p50: range.p50,
              p90: range.p90,
              basis: range.basis,
              ...(range.p80 === undefined ? {} : { p80: range.p80 }),
              ...(range.shares === undefined ? {} : { shares: range.shares }),
            }),
      },
    ),
  ]);
  return true;
}

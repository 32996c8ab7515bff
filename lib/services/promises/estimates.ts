/**
 * Estimates move until the clock starts: once a shop day the range of every order that waits for its customer is worked out
 * anew, as for an order whose clock starts now. The customer's history keeps every later date that was told.
 */
import { recordEvents } from "#data/events";
import { renewEstimate, type WaitingOrder, waitingOrders } from "#data/promises";
import { transaction } from "#data/transaction";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";
import { floorCatalog } from "#shop/floor/recipe";
import type { DateRange } from "#shop/names/views";
import { rangeOfPairs } from "#shop/queue/range";
import { shopDay } from "#shop/time/shop-time";

/** Run by the clock; running it again on the same shop day does nothing more. @returns how many later dates moved */
export async function renewEstimates(ctx: Context): Promise<Outcome<{ readonly moved: number }>> {
  if (ctx.actor.kind !== "system") return refuse({ code: "not-allowed", action: "sweep", signIn: false });
  const { timeZone } = floorCatalog().hours;
  const today = shopDay(ctx.now, timeZone);
  let moved = 0;
  for (const order of await waitingOrders(ctx.db)) {
    const before = order.estimate;
    if (shopDay(new Date(before.basis.at), timeZone) >= today) continue;
    const after = await rangeToday(ctx, order);
    const isMoved = after.p90 !== before.p90;
    const isMine = await transaction(ctx.db, async (tx) => {
      if (!(await renewEstimate(tx, order.id, order.version, after))) return false;
      const { p50, p90, shares, basis } = after;
      const data = { from: before.p90, p50, p90, ...(shares === undefined ? {} : { shares }), basis };
      if (isMoved) await recordEvents(tx, [eventOf(ctx, "estimate-renewed", { kind: "order", id: order.id }, data)]);
      return true;
    });
    if (isMine && isMoved) moved += 1;
  }
  return accept({ moved });
}

/** An order is ready with the last of its pairs. */
async function rangeToday(ctx: Context, order: WaitingOrder): Promise<DateRange> {
  const pairs = order.pairs.map(({ id, spec }) => ({ pairId: id, spec: spec }));
  return rangeOfPairs(ctx, pairs);
}

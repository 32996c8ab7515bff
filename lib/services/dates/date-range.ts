import type { PairSpec } from "../../engine/configuration";
import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { DateRange, LeadTimeToday } from "../views";

/** The range for one more order on the live queue, computed in slices that never hold the event loop long, and kept until the queue changes. */
export async function dateRangeFor(ctx: Context, input: { readonly spec: PairSpec }): Promise<Outcome<DateRange>> {
  throw new Error(`dateRangeFor is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Today's honest lead time of an ordinary pair, for the home page. */
export async function leadTimeToday(ctx: Context): Promise<Outcome<LeadTimeToday>> {
  throw new Error(`leadTimeToday is not built yet for ${ctx.actor.kind}`);
}

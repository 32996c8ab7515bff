import { openPairs } from "../../data/pairs";
import type { PairSpec } from "../../engine/configuration";
import { accept, type Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { DateRange, LeadTimeToday } from "../views";
import { plainSpec } from "./plain-spec";
import { rangeOf } from "./range";

/**
 * The range for one more order on the live queue, computed in slices that never hold the event loop long, and kept until
 * the queue changes. Anybody may ask.
 */
export async function dateRangeFor(ctx: Context, input: { readonly spec: PairSpec }): Promise<Outcome<DateRange>> {
  return accept(await rangeOf(ctx, input.spec));
}

/** Today's honest lead time of an ordinary pair, for the home page. */
export async function leadTimeToday(ctx: Context): Promise<Outcome<LeadTimeToday>> {
  const [range, pairs] = await Promise.all([rangeOf(ctx, plainSpec(ctx.now)), openPairs(ctx.db)]);
  const { p50, p90, workingDays } = range;
  return accept({ p50, p90, workingDays, pairsAhead: pairs.length });
}

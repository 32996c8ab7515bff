import { countOpenPairs } from "#data/pairs";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import type { LeadTimeToday } from "#shop/board/views";
import { plainSpec } from "#shop/queue/plain-spec";
import { rangeOf } from "#shop/queue/range";

/** Today's honest lead time of an ordinary pair, for the home page. */
export async function leadTimeToday(ctx: Context): Promise<Outcome<LeadTimeToday>> {
  const [range, pairsAhead] = await Promise.all([rangeOf(ctx, plainSpec(ctx.now)), countOpenPairs(ctx.db)]);
  const { p50, p90, shares, workingDays } = range;
  return accept({ p50, p90, ...(shares === undefined ? {} : { shares }), workingDays, pairsAhead });
}

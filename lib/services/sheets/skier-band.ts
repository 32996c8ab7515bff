import { acceptedFits } from "#data/quotes";
import { BAND_NEEDS_ORDERS, bandOf, bendRatio, type SkiersBand } from "#engine/assessment";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { engineOn } from "#shop/catalogue/current";

/** Skis and skiers change over the years; older orders than these say little. */
const NEWEST_ORDERS = 200;

/**
 * How far most sold skis bend under their skiers, over the reference skier's in class 3 of the same model; null while fewer
 * than ten orders say so. Two quantiles of many orders and nothing of any one of them, so whoever may see a sheet may see it.
 */
export async function skierBand(ctx: Context): Promise<Outcome<SkiersBand | null>> {
  const { build, fit } = engineOn(ctx.now);
  const ratios = (await acceptedFits(ctx.db, NEWEST_ORDERS)).flatMap((record) => {
    const { massKg } = record.answers;
    const { model, flexRatio } = record.spec;
    const use = build.models.find((each) => each.id === model)?.use;
    return massKg === undefined || use === undefined ? [] : bendRatio(massKg, flexRatio, use, fit);
  });
  return accept(ratios.length < BAND_NEEDS_ORDERS ? null : bandOf(ratios, "orders"));
}

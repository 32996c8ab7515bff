import { acceptedFits, frozen } from "../../data/quotes";
import {
  BAND_NEEDS_ORDERS,
  bandOf,
  type PartialAnswers,
  type SkiersBand,
  soldBendPercent,
} from "../../engine/assessment";
import type { PairSpec } from "../../engine/configuration";
import { accept, type Outcome } from "../../engine/units";
import { engineOn } from "../catalogue/current";
import type { Context } from "../context";
import type { FrozenFit } from "../views";

/** Skis and skiers change over the years; older orders than these say little. */
const NEWEST_ORDERS = 200;

/**
 * How far most sold skis bend under their skiers, all models together; null while fewer than ten orders say so. Two
 * quantiles of many orders and nothing of any one of them, so whoever may see a sheet may see it.
 */
export async function skierBand(ctx: Context): Promise<Outcome<SkiersBand | null>> {
  const catalog = engineOn(ctx.now);
  const percents = (await acceptedFits(ctx.db, NEWEST_ORDERS)).flatMap((record) => {
    const { massKg } = frozen<PartialAnswers>(record.answers);
    const { springCentreNPerMm } = frozen<FrozenFit>(record.fit);
    if (massKg === undefined) return [];
    return soldBendPercent({ massKg, springCentreNPerMm, spec: frozen<PairSpec>(record.spec) }, catalog) ?? [];
  });
  return accept(percents.length < BAND_NEEDS_ORDERS ? null : bandOf(percents, "orders"));
}

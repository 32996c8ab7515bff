/** The strip rack: what lies where, who lacks some, what to buy. */
import { permit } from "#auth";
import { countStrips } from "#data/strips";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { currentCatalog } from "#shop/catalogue/current";
import { stationIdTaking } from "#shop/floor/stations";
import { openQueue } from "#shop/queue/queued-pairs";
import { isStripsShort, stripsOfPair } from "#shop/stock/is-short";
import type { StripStockView } from "./views";

/** A rack that makes nine of ten wanted pairs (content/README.md), for shops whose settings name no level. */
const usualReorderLevel = 140;

export async function readStripStock(ctx: Context): Promise<Outcome<StripStockView>> {
  const allowed = permit(ctx.actor, "pair.read");
  if (!allowed.ok) return allowed;
  const [counts, pairs] = await Promise.all([countStrips(ctx.db), openQueue(ctx.db)]);
  const reorderLevel = currentCatalog().shop.stripReorderLevel ?? usualReorderLevel;
  const names = [...new Set(counts.map(({ species }) => species))].sort();
  return accept({
    reorderLevel,
    species: names.map((species) => {
      const here = counts.filter((each) => each.species === species);
      const sum = (state: string, bin?: string) =>
        here
          .filter((each) => each.state === state && (bin === undefined || each.location === bin))
          .reduce((all, { count }) => all + count, 0);
      const bins = [...new Set(here.map(({ location }) => location))].sort();
      const free = sum("free");
      return {
        species,
        free,
        reserved: sum("reserved"),
        used: sum("used"),
        toBuy: Math.max(0, reorderLevel - free),
        bins: bins.map((bin) => ({ bin, free: sum("free", bin), reserved: sum("reserved", bin) })),
      };
    }),
    short: pairs.filter(isStripsShort).map((pair) => ({
      pairId: pair.id,
      serial: pair.serial,
      promisedOn: pair.order.promisedOn,
      held: pair.heldStrips.length,
      needed: stripsOfPair,
      waitsUntil:
        pair.holds.find(({ reason, station }) => reason === "material" && station === stationIdTaking("strips"))
          ?.expectedOn ?? null,
    })),
  });
}

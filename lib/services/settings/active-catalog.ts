import { engineCatalog } from "#catalog";
import type { EngineCatalog } from "#engine/assessment";
import type { BuildCatalog } from "#engine/configuration";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { currentCatalog, engineOn, engineVersion, releasedCatalog } from "#shop/catalogue/current";

/** A catalogue release with the hash that names it. `engine` travels to the browser whole. */
export interface ActiveCatalog {
  readonly hash: string;
  readonly engineVersion: string;
  readonly engine: EngineCatalog;
}

/** The catalogue in force today. Anybody may read it. */
export async function activeCatalog(ctx: Context): Promise<Outcome<ActiveCatalog>> {
  return accept({ hash: currentCatalog().hash, engineVersion, engine: engineOn(ctx.now) });
}

/** What a pair was sold from: its release's models, woods, colours and graphics. Refuses `release-unknown`. */
export async function buildOfRelease(ctx: Context, input: { readonly hash: string }): Promise<Outcome<BuildCatalog>> {
  const catalog = await releasedCatalog(ctx.db, input.hash);
  return catalog === null ? refuse({ code: "release-unknown", path: "hash", ...input }) : accept(catalog.build);
}

/** The catalogue that a quote or pair names, as it was, with one of its price books. Refuses `release-unknown`. */
export async function catalogOfRelease(
  ctx: Context,
  input: { readonly hash: string; readonly priceBook: string },
): Promise<Outcome<ActiveCatalog>> {
  const catalog = await releasedCatalog(ctx.db, input.hash);
  const book = catalog?.priceBooks.find((candidate) => candidate.id === input.priceBook);
  if (catalog === null || book === undefined) return refuse({ code: "release-unknown", path: "hash", ...input });
  return accept({ hash: catalog.hash, engineVersion, engine: engineCatalog(catalog, book) });
}

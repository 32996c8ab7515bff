/** The catalogue as the command line reads it: content in the working directory, one price book by name or by day. */
import { type Catalog, engineCatalog, loadCatalog, priceBookOn } from "#catalog";
import type { EngineCatalog } from "#engine/assessment";
import { accept, type IsoDate, type Outcome, refuse } from "#engine/units";

let loaded: Catalog | undefined;

export function catalogue(): Catalog {
  loaded ??= loadCatalog();
  return loaded;
}

/** What the engine needs, priced by the named book or by the one in force `today`. */
export function pricedCatalogue(name: string | undefined, today: IsoDate): Outcome<EngineCatalog> {
  const catalog = catalogue();
  if (name === undefined) return accept(engineCatalog(catalog, priceBookOn(catalog, today)));
  const book = catalog.priceBooks.find((each) => each.id === name);
  if (book) return accept(engineCatalog(catalog, book));
  const known = catalog.priceBooks.map((each) => each.id);
  return refuse({ code: "unknown-price-book", path: "priceBook", priceBook: name, known });
}

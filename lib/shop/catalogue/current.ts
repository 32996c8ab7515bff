/** The catalogue in force, and the ones that older quotes name. Read or rebuilt once a process. */
import {
  type Catalog,
  catalogFromRelease,
  engineCatalog,
  loadCatalog,
  priceBookNamed,
  priceBookOn,
  type ReleasedCatalog,
  withCorrections,
} from "#catalog";
import type { Tx } from "#data/client";
import { hasRelease, releaseByHash, storeRelease } from "#data/releases";
import type { EngineCatalog } from "#engine/assessment";
import type { Corrections } from "#engine/materials";
import { shopDay } from "#shop/time/shop-time";
import { correctionsInForce } from "./book-in-force";

/** Raised when the engine's numbers change for the same input. */
export const engineVersion = "1";

let loaded: Catalog | undefined;
const corrected = new WeakMap<Corrections, Catalog>();
const released = new Map<string, ReleasedCatalog>();

/** The content of this programme with the book of corrections in force. @throws CatalogError when it does not hold together */
export function currentCatalog(): Catalog {
  const corrections = correctionsInForce();
  if (corrections === null) return handbookCatalog();
  const known = corrected.get(corrections) ?? withCorrections(handbookCatalog(), corrections);
  corrected.set(corrections, known);
  return known;
}

/** The same without any corrections. */
export function handbookCatalog(): Catalog {
  loaded ??= loadCatalog();
  return loaded;
}

/** What the engine is given at this instant: today's price book, and the snow that skis are shown on. */
export function engineOn(now: Date, catalog: Catalog = currentCatalog()): EngineCatalog {
  const book = priceBookOn(catalog, shopDay(now, catalog.shop.timeZone));
  return { ...engineCatalog(catalog, book), snow: catalog.snow };
}

/** Id of the price book in force. */
export function currentBook(now: Date): string {
  return engineOn(now).priceBook.id;
}

/** Keeps the catalogue that something was worked out with under its hash, so that what names it recomputes for ever. */
export async function keepRelease(tx: Tx, { hash, release }: Catalog, now: Date): Promise<string> {
  if (!(await hasRelease(tx, hash))) await storeRelease(tx, { hash, engineVersion, catalogue: release }, now);
  return hash;
}

/** A stored catalogue, or null when none has this hash. */
export async function releasedCatalog(client: Tx, hash: string): Promise<ReleasedCatalog | null> {
  for (const catalog of [currentCatalog(), handbookCatalog()]) if (catalog.hash === hash) return catalog;
  const known = released.get(hash);
  if (known !== undefined) return known;
  const record = await releaseByHash(client, hash);
  if (record === null) return null;
  const catalog = catalogFromRelease(record.catalogue);
  released.set(hash, catalog);
  return catalog;
}

export interface FrozenCatalog {
  readonly released: ReleasedCatalog;
  readonly engine: EngineCatalog;
}

/** The catalogue and price book that a quote names. @throws Error when the release is missing, which its foreign key forbids */
export async function catalogOf(
  client: Tx,
  named: { readonly releaseHash: string; readonly priceBook: string },
): Promise<FrozenCatalog> {
  const catalog = await releasedCatalog(client, named.releaseHash);
  if (catalog === null) throw new Error(`catalogue release ${named.releaseHash} is not stored`);
  return { released: catalog, engine: engineCatalog(catalog, priceBookNamed(catalog, named.priceBook)) };
}

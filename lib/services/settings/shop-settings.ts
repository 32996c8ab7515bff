import type { Catalog } from "#catalog";
import { currentCatalog } from "#shop/catalogue/current";

/** What pages show of the shop's own settings, from the one catalogue in force. */
export interface ShopSettings extends Pick<Catalog, "shop" | "floor" | "remedies" | "safety"> {
  readonly baseColours: Catalog["build"]["baseColours"];
  readonly houseGraphics: Catalog["build"]["houseGraphics"];
}

/** @throws CatalogError when content does not hold together */
export function settings(): ShopSettings {
  const { shop, floor, remedies, safety, build } = currentCatalog();
  return { shop, floor, remedies, safety, baseColours: build.baseColours, houseGraphics: build.houseGraphics };
}

/** The demo shop's floor, as its content says. */
import { loadCatalog } from "#catalog";
import type { FloorCatalog } from "#engine/routing";

export function demoFloor(): FloorCatalog {
  return loadCatalog().floor;
}

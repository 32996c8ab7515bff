import names from "#content/copy/names.json";
import type { PairSpec } from "#engine/configuration";
import { fill } from "#engine/units";
import { currentCatalog } from "#shop/catalogue/current";

/** "Midlow 95, 178 cm": what a pair is called in lists and letters. */
export function skiText({ model, lengthCm }: Pick<PairSpec, "model" | "lengthCm">): string {
  const known = currentCatalog().build.models.find(({ id }) => id === model);
  return fill(names.ski, { model: known?.name ?? model, lengthCm });
}

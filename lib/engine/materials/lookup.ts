/** Lookups by id. A missing id is a fault of the catalogue that named it, never of the person at the page. */
import type { Fabric, MaterialLibrary, Sheet, Wood } from "./types";

/** @throws RangeError naming the missing id */
export function woodById({ woods }: Pick<MaterialLibrary, "woods">, id: string): Wood {
  return byId("woods", woods, id);
}

/** @throws RangeError naming the missing id */
export function fabricById({ fabrics }: Pick<MaterialLibrary, "fabrics">, id: string): Fabric {
  return byId("fabrics", fabrics, id);
}

/** @throws RangeError naming the missing id */
export function sheetById({ sheets }: Pick<MaterialLibrary, "sheets">, id: string): Sheet {
  return byId("sheets", sheets, id);
}

function byId<T extends { readonly id: string }>(list: string, items: readonly T[], id: string): T {
  const item = items.find((one) => one.id === id);
  if (item) return item;
  throw new RangeError(`materials.${list}: no "${id}" among ${items.map((one) => one.id).join(", ") || "none"}`);
}

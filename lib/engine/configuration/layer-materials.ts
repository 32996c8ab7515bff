/** Catalogue materials as the layers of a section see them. */
import type { LayerMaterial } from "../flex";
import type { Fabric, MaterialLibrary, Sheet, Wood } from "../materials";

/** @throws RangeError when the catalogue holds no such cloth: its own files disagree */
export function fabricById(materials: MaterialLibrary, id: string): Fabric {
  return found(materials.fabrics, id, "fabrics");
}

/** @throws RangeError when the catalogue holds no such sheet */
export function sheetById(materials: MaterialLibrary, id: string): Sheet {
  return found(materials.sheets, id, "sheets");
}

/** @throws RangeError when the catalogue holds no such wood */
export function woodById(materials: MaterialLibrary, id: string): Wood {
  return found(materials.woods, id, "woods");
}

export function fabricLayer({ label, exMpa, eyMpa, gxyMpa, nuXy, densityKgM3 }: Fabric): LayerMaterial {
  return { label, exMpa, eyMpa, gxyMpa, nuXy, densityKgM3 };
}

/** An isotropic sheet: Poisson's ratio follows from the two moduli, ν = E/2G − 1. */
export function sheetLayer({ label, modulusMpa, shearModulusMpa, densityKgM3 }: Sheet): LayerMaterial {
  const nuXy = modulusMpa / (2 * shearModulusMpa) - 1;
  return { label, exMpa: modulusMpa, eyMpa: modulusMpa, gxyMpa: shearModulusMpa, nuXy, densityKgM3 };
}

function found<T extends { readonly id: string }>(items: readonly T[], id: string, list: string): T {
  const item = items.find((each) => each.id === id);
  if (!item) throw new RangeError(`materials.${list}: no "${id}"`);
  return item;
}

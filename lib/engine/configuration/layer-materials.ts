/** Catalogue materials as the layers of a section see them. */
import type { LayerMaterial } from "#engine/flex";
import type { Fabric, Sheet } from "#engine/materials";

export function fabricLayer({ id, label, exMpa, eyMpa, gxyMpa, nuXy, densityKgM3, fibresDeg }: Fabric): LayerMaterial {
  return { id, label, exMpa, eyMpa, gxyMpa, nuXy, densityKgM3, fibresDeg };
}

/** An isotropic sheet: Poisson's ratio follows from the two moduli, ν = E/2G − 1. */
export function sheetLayer({ id, label, modulusMpa, shearModulusMpa, densityKgM3 }: Sheet): LayerMaterial {
  const nuXy = modulusMpa / (2 * shearModulusMpa) - 1;
  return { id, label, exMpa: modulusMpa, eyMpa: modulusMpa, gxyMpa: shearModulusMpa, nuXy, densityKgM3 };
}

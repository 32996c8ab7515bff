/** Catalogue materials as the layers of a section see them. */
import type { LayerMaterial } from "#engine/flex";
import type { Fabric, Sheet } from "#engine/materials";

export function fabricLayer({ label, exMpa, eyMpa, gxyMpa, nuXy, densityKgM3, fibresDeg }: Fabric): LayerMaterial {
  return { label, exMpa, eyMpa, gxyMpa, nuXy, densityKgM3, fibresDeg };
}

/** An isotropic sheet: Poisson's ratio follows from the two moduli, ν = E/2G − 1. */
export function sheetLayer({ label, modulusMpa, shearModulusMpa, densityKgM3 }: Sheet): LayerMaterial {
  const nuXy = modulusMpa / (2 * shearModulusMpa) - 1;
  return { label, exMpa: modulusMpa, eyMpa: modulusMpa, gxyMpa: shearModulusMpa, nuXy, densityKgM3 };
}

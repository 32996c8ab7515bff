/** Where each wood of a blend lies: seven strips, C in the middle, then I, M and O on both sides. */

import type { StripColumn, StripSides } from "#engine/flex";
import { woodById } from "#engine/materials";
import type { BuildCatalog, CoreBlend } from "./types";

const POSITIONS = ["C", "I", "M", "O"] as const;

/** The sides of every strip as it is glued, from the centre line out; the centre strip lies on both sides of it. */
export function stripSides(
  stripWidthMm: number,
): readonly (StripSides & { readonly position: (typeof POSITIONS)[number] })[] {
  return POSITIONS.map((position, i) => ({
    position,
    innerMm: i === 0 ? 0 : (i - 0.5) * stripWidthMm,
    outerMm: (i + 0.5) * stripWidthMm,
  }));
}

/**
 * Columns from the centre line out. The handbook's bending modulus holds the shear of a short specimen, so the axial one
 * is larger by the catalogue's factor; shear is the axial modulus over the species' own ratio.
 */
export function stripColumns(blend: CoreBlend, stripWidthMm: number, catalog: BuildCatalog): readonly StripColumn[] {
  return stripSides(stripWidthMm).map((sides) => {
    const wood = woodById(catalog.materials, blend.strips[sides.position]);
    const axialModulusMpa = wood.bendingModulusMpa * catalog.rules.axialOverBendingModulus;
    return {
      ...sides,
      axialModulusMpa,
      acrossModulusMpa: axialModulusMpa * catalog.rules.acrossOverAxialModulus,
      shearModulusMpa: axialModulusMpa / wood.modulusToShearRatio,
      densityKgM3: wood.densityKgM3,
    };
  });
}

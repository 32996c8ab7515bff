/** Where each wood of a blend lies: seven strips, C in the middle, then I, M and O on both sides. */

import type { StripColumn } from "#engine/flex";
import { woodById } from "#engine/materials";
import type { BuildCatalog, CoreBlend } from "./types";

const POSITIONS = ["C", "I", "M", "O"] as const;

/**
 * Columns from the centre line out. The handbook's bending modulus holds the shear of a short specimen, so the axial one
 * is larger by the catalogue's factor; shear is the axial modulus over the species' own ratio.
 */
export function stripColumns(blend: CoreBlend, stripWidthMm: number, catalog: BuildCatalog): readonly StripColumn[] {
  return POSITIONS.map((position, i) => {
    const wood = woodById(catalog.materials, blend.strips[position]);
    const axialModulusMpa = wood.bendingModulusMpa * catalog.rules.axialOverBendingModulus;
    return {
      position,
      innerMm: i === 0 ? 0 : (i - 0.5) * stripWidthMm,
      outerMm: (i + 0.5) * stripWidthMm,
      axialModulusMpa,
      shearModulusMpa: axialModulusMpa / wood.modulusToShearRatio,
      densityKgM3: wood.densityKgM3,
    };
  });
}

/**
 * What measured pairs have taught about materials and process: factors on a library's nominal values. A book of corrections
 * is versioned and approved like a price book; without one every factor is 1. Units: factors without a unit, mm, g.
 */
import type { MaterialLibrary } from "./types";

export interface Corrections {
  /** Name of the book, "CB-1". */
  readonly version: string;
  /** By material id: what its moduli E and G are multiplied by. Absent = 1. */
  readonly moduli: Readonly<Record<string, number>>;
  /** By material id: what its density is multiplied by. Absent = 1. */
  readonly densities: Readonly<Record<string, number>>;
  /** Built core thickness minus programmed, mm: positive when the mill leaves more wood than it is told. */
  readonly coreOffsetMm: number;
  /** Finished camber minus planned, mm. */
  readonly camberOffsetMm: number;
  /** What all torsional stiffness is multiplied by, as twist readings have taught; absent = 1. */
  readonly twist?: number;
  /** Typical difference of measured from computed that the fit left, shares of spring and mass (root mean square). */
  readonly differenceLeft?: { readonly spring: number; readonly mass: number };
}

/** The library as it has turned out to be. Labels, thicknesses and sources stay. */
export function correctedLibrary(library: MaterialLibrary, corrections: Corrections): MaterialLibrary {
  const stiffer = (id: string) => corrections.moduli[id] ?? 1;
  const heavier = (id: string) => corrections.densities[id] ?? 1;
  return {
    woods: library.woods.map((wood) => ({
      ...wood,
      bendingModulusMpa: wood.bendingModulusMpa * stiffer(wood.id),
      densityKgM3: wood.densityKgM3 * heavier(wood.id),
    })),
    fabrics: library.fabrics.map((fabric) => ({
      ...fabric,
      exMpa: fabric.exMpa * stiffer(fabric.id),
      eyMpa: fabric.eyMpa * stiffer(fabric.id),
      gxyMpa: fabric.gxyMpa * stiffer(fabric.id),
      densityKgM3: fabric.densityKgM3 * heavier(fabric.id),
    })),
    sheets: library.sheets.map((sheet) => ({
      ...sheet,
      modulusMpa: sheet.modulusMpa * stiffer(sheet.id),
      shearModulusMpa: sheet.shearModulusMpa * stiffer(sheet.id),
      densityKgM3: sheet.densityKgM3 * heavier(sheet.id),
    })),
  };
}

/**
 * Materials as plain data. Values come from content/catalog with their sources; nothing here holds a number.
 * Units: MPa (= N/mm²), kg/m³, mm, g/m².
 */

/** How a wood looks once it is planed: its ground, its growth lines, and how many of them there are in ten millimetres. */
export interface WoodLook {
  readonly ground: string;
  readonly grain: string;
  readonly linesPer10Mm: number;
}

/** One species of core wood. `bendingModulusMpa` is the handbook's apparent bending value at 12 % moisture. */
export interface Wood {
  readonly id: string;
  readonly label: string;
  readonly bendingModulusMpa: number;
  readonly densityKgM3: number;
  /** E over G along the grain (about 16 where the handbook has no row). */
  readonly modulusToShearRatio: number;
  /** Share of a clear strip's natural scatter, as coefficient of variation. */
  readonly modulusVariation: number;
  /** Absent in releases from before woods were drawn by species. */
  readonly look?: WoodLook;
  readonly source: string;
}

/** A woven or stitched cloth, homogenised per cloth after cure. */
export interface Fabric {
  readonly id: string;
  readonly label: string;
  readonly arealWeightGM2: number;
  readonly thicknessMm: number;
  readonly exMpa: number;
  readonly eyMpa: number;
  readonly gxyMpa: number;
  readonly nuXy: number;
  /** Which ways the fibres run, degrees from the ski's axis: 0 along it, positive and negative are the two diagonals. */
  readonly fibresDeg: readonly number[];
  /** Cured density, resin included. */
  readonly densityKgM3: number;
  /** Hides wood under a clear topsheet. */
  readonly isOpaque: boolean;
  readonly source: string;
}

/** An isotropic sheet, foil, strip or bar: base, sidewall, steel, metal, rubber, topsheet. */
export interface Sheet {
  readonly id: string;
  readonly label: string;
  readonly modulusMpa: number;
  readonly shearModulusMpa: number;
  readonly densityKgM3: number;
  readonly isOpaque: boolean;
  readonly source: string;
}

export interface MaterialLibrary {
  readonly woods: readonly Wood[];
  readonly fabrics: readonly Fabric[];
  readonly sheets: readonly Sheet[];
}

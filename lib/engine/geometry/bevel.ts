/** Base bevels as a bench checks them. */

/** How far a true bar on the base stands off the edge's far end, mm: a bevel seen at `lengthMm` from where it begins. */
export function barRiseMm(bevelDeg: number, lengthMm: number): number {
  return lengthMm * Math.tan((bevelDeg * Math.PI) / 180);
}

/** How wide the top of a ski is left where its sidewalls lean inward. */
export interface SidewallBevel {
  readonly bevelDeg: number;
  /** The wall stands upright this far above the base: steel and a little more. */
  readonly uprightMm: number;
}

/** Width of the top at a section, mm: the base's width less t·tan on each side, t the height of the leaning part. */
export function topWidthMm(baseWidthMm: number, thicknessMm: number, { bevelDeg, uprightMm }: SidewallBevel): number {
  return baseWidthMm - 2 * barRiseMm(bevelDeg, Math.max(0, thicknessMm - uprightMm));
}

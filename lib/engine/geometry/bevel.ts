/** Base bevels as a bench checks them. */

/** How far a true bar on the base stands off the edge's far end, mm: a bevel seen at `lengthMm` from where it begins. */
export function barRiseMm(bevelDeg: number, lengthMm: number): number {
  return lengthMm * Math.tan((bevelDeg * Math.PI) / 180);
}

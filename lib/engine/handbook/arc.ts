/**
 * The width of a circular arc in closed form. Only checks use it: it holds the outline and the tapered arc of the geometry room
 * against plain trigonometry (own derivation).
 */

/** Width of an arc of this radius, `fromWaistMm` along the ski from its narrowest point: W + 2(R − √(R² − x²)). */
export function arcWidthMm(waistWidthMm: number, radiusMm: number, fromWaistMm: number): number {
  return waistWidthMm + 2 * (radiusMm - Math.sqrt(radiusMm ** 2 - fromWaistMm ** 2));
}

/**
 * The sidecut: one circle tangent to the centre line at the waist, through the corner points of shoulder and heel.
 * All lengths in mm; radii for people in m.
 */

/** The three widths and the distance from the widest point of the shoulder to the widest point of the heel. */
export interface SidecutWidths {
  readonly shoulderWidthMm: number;
  readonly waistWidthMm: number;
  readonly heelWidthMm: number;
  readonly sidecutLengthMm: number;
}

export interface TaperedArc {
  readonly radiusMm: number;
  /** Along the ski, from the shoulder to the narrowest point. */
  readonly waistFromShoulderMm: number;
  /** Length of the arc itself on one side: the effective edge. */
  readonly effectiveEdgeMm: number;
}

/** How far half the waist lies inside half the shoulder and half the heel. */
function sideDepths({ shoulderWidthMm, waistWidthMm, heelWidthMm }: SidecutWidths): [dS: number, dH: number] {
  return [(shoulderWidthMm - waistWidthMm) / 2, (heelWidthMm - waistWidthMm) / 2];
}

function checkWidths(widths: SidecutWidths): void {
  const { shoulderWidthMm, waistWidthMm, heelWidthMm, sidecutLengthMm } = widths;
  if (!(waistWidthMm > 0)) throw new RangeError(`waistWidthMm: ${waistWidthMm} must be above 0`);
  if (!(shoulderWidthMm > waistWidthMm)) {
    throw new RangeError(`shoulderWidthMm: ${shoulderWidthMm} must be above the waist width, ${waistWidthMm}`);
  }
  if (!(heelWidthMm > waistWidthMm)) {
    throw new RangeError(`heelWidthMm: ${heelWidthMm} must be above the waist width, ${waistWidthMm}`);
  }
  const least = (shoulderWidthMm + heelWidthMm) / 2 - waistWidthMm;
  if (!(sidecutLengthMm >= least)) {
    throw new RangeError(`sidecutLengthMm: ${sidecutLengthMm} is shorter than the sidecut is deep, ${least}`);
  }
}

/**
 * Exact radius of the tapered arc, from
 *   √(2R·dS − dS²) + √(2R·dH − dH²) = Ls,  dS = (S − W)/2, dH = (H − W)/2
 * (own derivation: each root is the leg of a right triangle with hypotenuse R and leg R − d). The left side is concave
 * and rising in R, so Newton's steps from any point of its domain cannot leave it. Converges to 1e-12 of R.
 *
 * @throws RangeError when a width is not above the waist's, or the length is too short for one circle
 */
export function taperedArc(widths: SidecutWidths): TaperedArc {
  checkWidths(widths);
  const [dS, dH] = sideDepths(widths);
  const Ls = widths.sidecutLengthMm;
  let R = Math.max(Ls ** 2 / (2 * (Math.sqrt(dS) + Math.sqrt(dH)) ** 2), dS, dH);
  for (let step = 0; step < 60; step++) {
    const legS = Math.sqrt(2 * R * dS - dS ** 2);
    const legH = Math.sqrt(2 * R * dH - dH ** 2);
    const next = Math.max(R - (legS + legH - Ls) / (dS / legS + dH / legH), dS, dH);
    const isDone = Math.abs(next - R) <= 1e-13 * R;
    R = next;
    if (isDone) break;
  }
  const legS = Math.sqrt(2 * R * dS - dS ** 2);
  const edge = R * (Math.asin(Math.min(1, legS / R)) + Math.asin(Math.min(1, (Ls - legS) / R)));
  return { radiusMm: R, waistFromShoulderMm: legS, effectiveEdgeMm: edge };
}

/**
 * The racing federation's radius, R[m] = L²/(2000 (S + H − 2W)), mm inside (ski radius calculator notes of the
 * International Ski and Snowboard Federation). Exact only when shoulder and heel are equally wide; it reads about 1 % low
 * on a tapered ski.
 */
export function federationRadiusM(widths: SidecutWidths): number {
  checkWidths(widths);
  const { shoulderWidthMm: S, waistWidthMm: W, heelWidthMm: H, sidecutLengthMm: L } = widths;
  return L ** 2 / (2000 * (S + H - 2 * W));
}

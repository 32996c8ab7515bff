/**
 * Spring constants of a ski as a beam: force over deflection at the load, by the unit-load method, exact for stiffness that
 * is linear between stations (Castigliano; the same quantities as ASTM F498 and ISO 6289 name, at our own positions).
 * Validity and error as in beam.ts; the bench's rollers of 20 mm and the width of its stamp are left out.
 */
import { pieceIndex } from "#engine/math";
import { pieceEnergy, pieceTurn } from "./piece";
import type { SpringConstants, SpringTest } from "./types";

/** Centre: supports front and rear, load between. Forebody and afterbody: clamped at the load, pressed at a support. */
export function springConstants(
  xs: ArrayLike<number>,
  stiffness: ArrayLike<number>,
  { frontSupportMm: a, rearSupportMm: b, loadMm: p }: SpringTest,
): SpringConstants {
  if (!(a < p && p < b)) throw new RangeError(`loadMm: ${p} mm is not between the supports, ${a} and ${b} mm`);
  const front = unitEnergy(xs, stiffness, a, p, 0, 1);
  const rear = unitEnergy(xs, stiffness, p, b, 1, 0);
  // Moment under a unit centre load: (p − a)(b − p)/(b − a). Under a unit end load: its distance from the clamp.
  const peak = ((p - a) * (b - p)) / (b - a);
  const springForebodyNPerMm = 1 / ((p - a) ** 2 * front);
  const springAfterbodyNPerMm = 1 / ((b - p) ** 2 * rear);
  return {
    springCentreNPerMm: 1 / (peak ** 2 * (front + rear)),
    springForebodyNPerMm,
    springAfterbodyNPerMm,
    balance: springAfterbodyNPerMm / springForebodyNPerMm,
  };
}

/** ∫ M²/EI dx from `from` to `to` with M going straight from `m0` to `m1`. */
function unitEnergy(
  xs: ArrayLike<number>,
  stiffness: ArrayLike<number>,
  from: number,
  to: number,
  m0: number,
  m1: number,
): number {
  const slope = (m1 - m0) / (to - from);
  let sum = 0;
  for (let i = pieceIndex(xs, from); i + 1 < xs.length; i++) {
    const left = xs[i] ?? 0;
    const right = xs[i + 1] ?? 0;
    if (left >= to) break;
    if (right <= left || right <= from) continue;
    const x0 = Math.max(left, from);
    const x1 = Math.min(right, to);
    const growth = ((stiffness[i + 1] ?? 0) - (stiffness[i] ?? 0)) / (right - left);
    const e0 = (stiffness[i] ?? 0) + growth * (x0 - left);
    const e1 = (stiffness[i] ?? 0) + growth * (x1 - left);
    sum += pieceEnergy(x1 - x0, m0 + slope * (x0 - from), m0 + slope * (x1 - from), e0, e1);
  }
  return sum;
}

/** Shear of the core counts from this share of the deflection on; wood stays below it, foam does not. */
const SHEAR_COUNTS_FROM = 0.01;

/** Spring constants with the share of the centre deflection that comes from shear of the core. */
export interface ShearedSprings extends SpringConstants {
  readonly coreShearPercent: number;
}

/**
 * Adds the core's shear deflection ∫V²/S dx to the springs of bending (H. G. Allen, Analysis and Design of Structural
 * Sandwich Panels, 1969, from memory). Under 1 % of the centre deflection it is told and left out, as beam theory does.
 *
 * @param shearN shear stiffness S of the core at the stations, N; infinite where nothing shears
 */
export function withCoreShear(
  springs: SpringConstants,
  xs: ArrayLike<number>,
  shearN: ArrayLike<number>,
  { frontSupportMm: a, rearSupportMm: b, loadMm: p }: SpringTest,
): ShearedSprings {
  const front = shearFlexibility(xs, shearN, a, p);
  const rear = shearFlexibility(xs, shearN, p, b);
  const [onRear, onFront] = [(p - a) / (b - a), (b - p) / (b - a)];
  const centre = onFront ** 2 * front + onRear ** 2 * rear;
  const share = centre * springs.springCentreNPerMm;
  const coreShearPercent = (100 * share) / (1 + share);
  if (share < SHEAR_COUNTS_FROM) return { ...springs, coreShearPercent };
  const softened = (spring: number, flexibility: number) => 1 / (1 / spring + flexibility);
  const springForebodyNPerMm = softened(springs.springForebodyNPerMm, front);
  const springAfterbodyNPerMm = softened(springs.springAfterbodyNPerMm, rear);
  return {
    springCentreNPerMm: softened(springs.springCentreNPerMm, centre),
    springForebodyNPerMm,
    springAfterbodyNPerMm,
    balance: springAfterbodyNPerMm / springForebodyNPerMm,
    coreShearPercent,
  };
}

/** ∫ 1/S dx from `from` to `to`, mm/N. */
function shearFlexibility(xs: ArrayLike<number>, shearN: ArrayLike<number>, from: number, to: number): number {
  let sum = 0;
  for (let i = pieceIndex(xs, from); i + 1 < xs.length; i++) {
    const left = xs[i] ?? 0;
    const right = xs[i + 1] ?? 0;
    if (left >= to) break;
    const [s0, s1] = [shearN[i] ?? 0, shearN[i + 1] ?? 0];
    if (right <= left || right <= from || !Number.isFinite(s0 + s1)) continue;
    const share = (Math.min(right, to) - Math.max(left, from)) / (right - left);
    sum += share * pieceTurn(right - left, 1, 1, s0, s1);
  }
  return sum;
}

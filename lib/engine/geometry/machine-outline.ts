/**
 * The outline a machine follows. Sidecut arc and end curve meet at 1.5–4°; that convex corner is rounded by a circle
 * tangent to both, which takes at most 0.1 mm off a side. Shoulder and heel widths stay the corner values.
 */
import { halfOutline, type OutlineSampling } from "./outline";
import type { OutlinePoint, SkiShape } from "./types";

/** The shop's rounding radius at shoulder and heel (common practice, no source). */
const CORNER_RADIUS_MM = 150;
const FILLET_CHORDS = 8;

/** One corner in its own axes: s from the corner, positive towards the ski's end; y from the centre line. */
interface Corner {
  readonly endLengthMm: number;
  readonly widthMm: number;
  readonly exponent: number;
  readonly toWaistMm: number;
  readonly sidecutRadiusMm: number;
  readonly waistWidthMm: number;
}

type SY = readonly [s: number, y: number];

/**
 * The half outline with rounded corners at shoulder and heel, tip end first.
 *
 * @param cornerRadiusMm 0 leaves the corners sharp
 * @throws RangeError when the circle does not fit between the curves
 */
export function machineOutline(
  shape: SkiShape,
  cornerRadiusMm: number = CORNER_RADIUS_MM,
  sampling: OutlineSampling = {},
): readonly OutlinePoint[] {
  const sharp = halfOutline(shape, sampling);
  if (cornerRadiusMm === 0) return sharp;
  const { waistFromTipMm, tipLengthMm, sidecutLengthMm, sidecutRadiusMm, waistWidthMm } = shape;
  const heelMm = shape.lengthMm - shape.tailLengthMm;
  const common = { sidecutRadiusMm, waistWidthMm };
  const shoulder = fillet(
    {
      ...common,
      endLengthMm: tipLengthMm,
      widthMm: shape.shoulderWidthMm,
      exponent: shape.tipExponent,
      toWaistMm: waistFromTipMm - tipLengthMm,
    },
    cornerRadiusMm,
  ).map(([s, y]) => ({ xMm: tipLengthMm - s, halfWidthMm: y }));
  const heel = fillet(
    {
      ...common,
      endLengthMm: shape.tailLengthMm,
      widthMm: shape.heelWidthMm,
      exponent: shape.tailExponent,
      toWaistMm: tipLengthMm + sidecutLengthMm - waistFromTipMm,
    },
    cornerRadiusMm,
  )
    .map(([s, y]) => ({ xMm: heelMm + s, halfWidthMm: y }))
    .reverse();
  return replaceSpan(replaceSpan(sharp, shoulder), heel);
}

function replaceSpan(outline: readonly OutlinePoint[], span: readonly OutlinePoint[]): readonly OutlinePoint[] {
  const from = span[0]?.xMm ?? 0;
  const to = span.at(-1)?.xMm ?? 0;
  return [...outline.filter((p) => p.xMm < from), ...span, ...outline.filter((p) => p.xMm > to)];
}

/**
 * Points of the rounding circle from the end curve to the arc. The circle touches the end curve at q, so its centre lies
 * r inside it along the normal there; the arc is hollow, so the same centre lies R + r from the arc's own. One unknown, q.
 */
function fillet(corner: Corner, radiusMm: number): SY[] {
  const arcCentre: SY = [-corner.toWaistMm, corner.waistWidthMm / 2 + corner.sidecutRadiusMm];
  const reach = corner.sidecutRadiusMm + radiusMm;
  const gap = (q: number) => {
    const [s, y] = centreFromEnd(corner, q, radiusMm);
    return Math.hypot(s - arcCentre[0], y - arcCentre[1]) - reach;
  };
  const q = firstRoot(gap, corner.endLengthMm / 2);
  const [cs, cy] = centreFromEnd(corner, q, radiusMm);
  const start = Math.atan2(endY(corner, q) - cy, q - cs);
  const finish = Math.atan2(arcCentre[1] - cy, arcCentre[0] - cs);
  return Array.from({ length: FILLET_CHORDS + 1 }, (_, i) => {
    const angle = start + ((finish - start) * i) / FILLET_CHORDS;
    return [cs + radiusMm * Math.cos(angle), cy + radiusMm * Math.sin(angle)] as const;
  });
}

function centreFromEnd(corner: Corner, q: number, radiusMm: number): SY {
  const slope = endSlope(corner, q);
  const norm = Math.hypot(1, slope);
  return [q + (radiusMm * slope) / norm, endY(corner, q) - radiusMm / norm];
}

function endY({ widthMm, endLengthMm, exponent: n }: Corner, q: number): number {
  return (widthMm / 2) * (1 - (q / endLengthMm) ** n) ** (1 / n);
}

function endSlope({ widthMm, endLengthMm, exponent: n }: Corner, q: number): number {
  const u = q / endLengthMm;
  return (-widthMm / 2 / endLengthMm) * u ** (n - 1) * (1 - u ** n) ** (1 / n - 1);
}

/** First place where f, negative at 0, turns positive: steps of 0.25 mm, then bisection. */
function firstRoot(f: (x: number) => number, limit: number): number {
  let low = 0;
  let high = 0.25;
  while (f(high) < 0) {
    low = high;
    high += 0.25;
    if (high > limit) throw new RangeError("cornerRadiusMm: no circle fits between arc and end curve");
  }
  for (let step = 0; step < 40; step++) {
    const middle = (low + high) / 2;
    if (f(middle) < 0) low = middle;
    else high = middle;
  }
  return (low + high) / 2;
}

/**
 * The plan outline: a super-ellipse from the tip end to the shoulder, the sidecut arc to the heel, a super-ellipse to the
 * tail end. An outline is half of one: points from tip to tail with y ≥ 0, mirrored about the centre line.
 */
import type { OutlinePoint, SkiShape } from "./types";

export interface OutlineSampling {
  /** Chords per end curve, evenly spaced in the curve's angle. */
  readonly endSegments?: number;
  /** Longest chord along the sidecut arc, mm. */
  readonly arcStepMm?: number;
}

/**
 * Half the width at x, mm from the tip end.
 *   ends: y = (B/2)(1 − uⁿ)^(1/n), u from 0 at shoulder or heel to 1 at the end
 *   arc:  y = W/2 + R − √(R² − (x − xW)²)
 *
 * @throws RangeError when x is off the ski
 */
export function halfWidthAt(shape: SkiShape, xMm: number): number {
  if (!(xMm >= 0 && xMm <= shape.lengthMm)) {
    throw new RangeError(`xMm: ${xMm} is off the ski, 0 to ${shape.lengthMm}`);
  }
  const heelMm = shape.lengthMm - shape.tailLengthMm;
  if (xMm < shape.tipLengthMm) {
    return endHalfWidth(shape.shoulderWidthMm, (shape.tipLengthMm - xMm) / shape.tipLengthMm, shape.tipExponent);
  }
  if (xMm > heelMm) return endHalfWidth(shape.heelWidthMm, (xMm - heelMm) / shape.tailLengthMm, shape.tailExponent);
  const R = shape.sidecutRadiusMm;
  return shape.waistWidthMm / 2 + R - Math.sqrt(R ** 2 - (xMm - shape.waistFromTipMm) ** 2);
}

function endHalfWidth(widthMm: number, u: number, exponent: number): number {
  return (widthMm / 2) * Math.max(0, 1 - u ** exponent) ** (1 / exponent);
}

/**
 * The half outline with sharp corners at shoulder and heel, tip end first. With the default sampling no chord lies more
 * than 0.01 mm inside the true curve.
 */
export function halfOutline(shape: SkiShape, sampling?: OutlineSampling): readonly OutlinePoint[] {
  if (sampling) return sampledOutline(shape, sampling);
  const outline = outlines.get(shape) ?? sampledOutline(shape, {});
  outlines.set(shape, outline);
  return outline;
}

/** A sheet's parts ask for the usual outline of one shape many times. */
const outlines = new WeakMap<SkiShape, readonly OutlinePoint[]>();

function sampledOutline(
  shape: SkiShape,
  { endSegments = 160, arcStepMm = 10 }: OutlineSampling,
): readonly OutlinePoint[] {
  const heelMm = shape.lengthMm - shape.tailLengthMm;
  const arcSegments = Math.ceil(shape.sidecutLengthMm / arcStepMm);
  const points: OutlinePoint[] = endCurve(shape.tipLengthMm, shape.shoulderWidthMm, shape.tipExponent, endSegments);
  for (let i = 1; i < arcSegments; i++) {
    const xMm = shape.tipLengthMm + (shape.sidecutLengthMm * i) / arcSegments;
    points.push({ xMm, halfWidthMm: halfWidthAt(shape, xMm) });
  }
  const tail = endCurve(shape.tailLengthMm, shape.heelWidthMm, shape.tailExponent, endSegments).reverse();
  points.push({ xMm: heelMm, halfWidthMm: shape.heelWidthMm / 2 });
  for (const point of tail.slice(1)) points.push({ ...point, xMm: shape.lengthMm - point.xMm });
  return points;
}

/** One end from its nose (0, 0) to its widest point: x = a(1 − cos^(2/n) t), y = (B/2) sin^(2/n) t, t from 0 to π/2. */
export function endCurve(lengthMm: number, widthMm: number, exponent: number, segments: number): OutlinePoint[] {
  const points: OutlinePoint[] = [];
  for (let i = 0; i < segments; i++) {
    const t = ((Math.PI / 2) * i) / segments;
    points.push({
      xMm: lengthMm * (1 - Math.cos(t) ** (2 / exponent)),
      halfWidthMm: (widthMm / 2) * Math.sin(t) ** (2 / exponent),
    });
  }
  points.push({ xMm: lengthMm, halfWidthMm: widthMm / 2 });
  return points;
}

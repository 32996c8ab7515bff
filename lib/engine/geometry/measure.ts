/** What one model-length measures. */
import { CONTACT_GAUGE_MM, type EdgeReach, edgeSpanMm } from "./edge-span";
import { endCurve } from "./outline";
import { gaugePointsMm, projectedLengthMm } from "./profile";
import { federationRadiusM, taperedArc } from "./sidecut";
import type { OutlinePoint, ShapeMeasures, SkiShape } from "./types";

export interface MeasureOptions {
  /** How far the steel of a partial wrap reaches; absent = 60 mm beyond the sidecut. */
  readonly edge?: EdgeReach;
}

/** Chords per end for area and perimeter; leaves less than 1e-6 of either. */
const END_SEGMENTS = 1000;

/** Area, perimeter, radii and lengths of a shape: the arc in closed form, the ends by fine chords. */
export function measure(shape: SkiShape, options: MeasureOptions = {}): ShapeMeasures {
  const edge = edgeSpanMm(shape, options.edge ?? { beyondSidecutMm: 60 });
  const { tip, tail } = endsOf(shape);
  const { effectiveEdgeMm } = taperedArc(shape);
  const gauge = gaugePointsMm(shape, CONTACT_GAUGE_MM);
  return {
    planAreaMm2: tip.areaMm2 + arcAreaMm2(shape) + tail.areaMm2,
    perimeterMm: 2 * (effectiveEdgeMm + tip.chordsMm + tail.chordsMm),
    sidecutRadiusM: shape.sidecutRadiusMm / 1000,
    federationRadiusM: federationRadiusM(shape),
    effectiveEdgeMm,
    edgeCarryingMm: edge.toMm - edge.fromMm,
    tangentContactMm: shape.tailTangentMm - shape.tipTangentMm,
    contactLengthMm: gauge.tailMm - gauge.tipMm,
    projectedLengthMm: projectedLengthMm(shape),
  };
}

interface EndMeasures {
  readonly areaMm2: number;
  readonly chordsMm: number;
}

/** Two thousand chords: summed once a shape. */
const ends = new WeakMap<SkiShape, { readonly tip: EndMeasures; readonly tail: EndMeasures }>();

function endsOf(shape: SkiShape): { readonly tip: EndMeasures; readonly tail: EndMeasures } {
  const known = ends.get(shape);
  if (known) return known;
  const end = (lengthMm: number, widthMm: number, exponent: number): EndMeasures => {
    const curve = endCurve(lengthMm, widthMm, exponent, END_SEGMENTS);
    return { areaMm2: outlineAreaMm2(curve), chordsMm: chordsMm(curve) };
  };
  const { tipLengthMm, shoulderWidthMm, tipExponent, tailLengthMm, heelWidthMm, tailExponent } = shape;
  const both = {
    tip: end(tipLengthMm, shoulderWidthMm, tipExponent),
    tail: end(tailLengthMm, heelWidthMm, tailExponent),
  };
  ends.set(shape, both);
  return both;
}

/** Area between shoulder and heel: Ls(W + 2R) less twice the area under the circle, ∫√(R² − x²) dx in closed form. */
function arcAreaMm2(shape: SkiShape): number {
  const R = shape.sidecutRadiusMm;
  const underCircle = (x: number) => (x * Math.sqrt(R ** 2 - x ** 2) + R ** 2 * Math.asin(x / R)) / 2;
  const front = shape.waistFromTipMm - shape.tipLengthMm;
  const rear = shape.sidecutLengthMm - front;
  return shape.sidecutLengthMm * (shape.waistWidthMm + 2 * R) - 2 * (underCircle(front) + underCircle(rear));
}

/** Whole area inside a half outline and its mirror image (trapezium sum). */
export function outlineAreaMm2(outline: readonly OutlinePoint[]): number {
  let sum = 0;
  eachChord(outline, (a, b) => {
    sum += (b.xMm - a.xMm) * (a.halfWidthMm + b.halfWidthMm);
  });
  return sum;
}

function chordsMm(outline: readonly OutlinePoint[]): number {
  let sum = 0;
  eachChord(outline, (a, b) => {
    sum += Math.hypot(b.xMm - a.xMm, b.halfWidthMm - a.halfWidthMm);
  });
  return sum;
}

function eachChord(outline: readonly OutlinePoint[], visit: (a: OutlinePoint, b: OutlinePoint) => void): void {
  let last: OutlinePoint | undefined;
  for (const point of outline) {
    if (last) visit(last, point);
    last = point;
  }
}

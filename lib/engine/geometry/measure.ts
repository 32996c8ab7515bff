/** What one model-length measures. */
import { halfOutline } from "./outline";
import { gaugePointsMm, projectedLengthMm } from "./profile";
import { federationRadiusM, taperedArc } from "./sidecut";
import type { OutlinePoint, ShapeMeasures, SkiShape } from "./types";

/** ISO 6289:2025: the contact length of an alpine ski lies between two lines where a 0.5 mm gauge meets the surface. */
const CONTACT_GAUGE_MM = 0.5;

export interface MeasureOptions {
  /** Edge steel of a partial wrap beyond shoulder and heel together, mm. */
  readonly edgeBeyondSidecutMm?: number;
}

/** Area, perimeter, radii and lengths of a shape; area and perimeter to 1e-5 of themselves. */
export function measure(shape: SkiShape, options: MeasureOptions = {}): ShapeMeasures {
  const { edgeBeyondSidecutMm = 60 } = options;
  const outline = halfOutline(shape);
  const gauge = gaugePointsMm(shape, CONTACT_GAUGE_MM);
  return {
    planAreaMm2: outlineAreaMm2(outline),
    perimeterMm: outlinePerimeterMm(outline),
    sidecutRadiusM: shape.sidecutRadiusMm / 1000,
    federationRadiusM: federationRadiusM(shape),
    effectiveEdgeMm: taperedArc(shape).effectiveEdgeMm,
    edgeCarryingMm: shape.sidecutLengthMm + edgeBeyondSidecutMm,
    tangentContactMm: shape.tailTangentMm - shape.tipTangentMm,
    contactLengthMm: gauge.tailMm - gauge.tipMm,
    projectedLengthMm: projectedLengthMm(shape),
  };
}

/** Whole area inside a half outline and its mirror image (trapezium sum). */
export function outlineAreaMm2(outline: readonly OutlinePoint[]): number {
  let sum = 0;
  eachChord(outline, (a, b) => {
    sum += (b.xMm - a.xMm) * (a.halfWidthMm + b.halfWidthMm);
  });
  return sum;
}

/** Whole length around a half outline and its mirror image, across blunt ends too. */
export function outlinePerimeterMm(outline: readonly OutlinePoint[]): number {
  let sum = 0;
  eachChord(outline, (a, b) => {
    sum += Math.hypot(b.xMm - a.xMm, b.halfWidthMm - a.halfWidthMm);
  });
  return 2 * (sum + (outline[0]?.halfWidthMm ?? 0) + (outline.at(-1)?.halfWidthMm ?? 0));
}

/** Largest whole width of a half outline. */
export function outlineWidthMm(outline: readonly OutlinePoint[]): number {
  return 2 * outline.reduce((widest, point) => Math.max(widest, point.halfWidthMm), 0);
}

function eachChord(outline: readonly OutlinePoint[], visit: (a: OutlinePoint, b: OutlinePoint) => void): void {
  let last: OutlinePoint | undefined;
  for (const point of outline) {
    if (last) visit(last, point);
    last = point;
  }
}

/**
 * Engine geometry as SVG paths. Drawing coordinates are the ski upright, tip at the top, seen from above:
 * X = y of the ski (positive to the skier's right), Y = x of the ski (mm from the tip). A lying drawing is this one
 * turned by −90°, so that the tip is on the left.
 */
import { halfOutline, halfWidthAt, type OutlinePoint, type SkiShape } from "#engine/geometry";

/** One decimal is 0.1 mm: finer than a hairline at any zoom that a screen shows. */
const mm = (value: number) => Math.round(value * 10) / 10;

/** Sampling that looks smooth on a screen with a tenth of the points that cutting needs. */
const screenSampling = { endSegments: 28, arcStepMm: 40 } as const;

export function screenOutline(shape: SkiShape): readonly OutlinePoint[] {
  return halfOutline(shape, screenSampling);
}

/** The whole closed outline from its half. */
export function closedPath(outline: readonly OutlinePoint[]): string {
  const right = outline.map((point) => `${mm(point.halfWidthMm)} ${mm(point.xMm)}`);
  const left = [...outline].reverse().map((point) => `${mm(-point.halfWidthMm)} ${mm(point.xMm)}`);
  return `M${right.join("L")}L${left.join("L")}Z`;
}

/** One side of the outline between two stations: an edge. `side` 1 is the skier's right. */
export function sidePath(shape: SkiShape, fromMm: number, toMm: number, side: 1 | -1, insetMm = 0): string {
  const steps = Math.max(2, Math.ceil((toMm - fromMm) / 30));
  const points: string[] = [];
  for (let i = 0; i <= steps; i++) {
    const x = fromMm + ((toMm - fromMm) * i) / steps;
    points.push(`${mm(side * Math.max(0, halfWidthAt(shape, x) - insetMm))} ${mm(x)}`);
  }
  return `M${points.join("L")}`;
}

/** Widest half width, mm. */
export function greatestHalfWidthMm(shape: SkiShape): number {
  return Math.max(shape.shoulderWidthMm, shape.heelWidthMm) / 2;
}

/** Engine geometry as path data in a drawing's axes: X = y of the ski, Y = x of the ski. */
import { halfOutline, halfWidthAt, type OutlinePoint, type SkiShape } from "#engine/geometry";
import type { XY } from "./types";

/** One decimal is 0.1 mm: finer than a hairline at any zoom that a screen shows. */
export const tenth = (value: number): number => Math.round(value * 10) / 10;

/** Sampling that looks smooth on a screen with a tenth of the points that cutting needs. */
const screenSampling = { endSegments: 28, arcStepMm: 40 } as const;

export function screenOutline(shape: SkiShape): readonly OutlinePoint[] {
  return halfOutline(shape, screenSampling);
}

/** An open line through points. */
export function linePath(points: readonly XY[]): string {
  return points.length === 0 ? "" : `M${points.map(({ x, y }) => `${tenth(x)} ${tenth(y)}`).join("L")}`;
}

/** A closed shape through points. */
export function ringPath(points: readonly XY[]): string {
  return points.length === 0 ? "" : `${linePath(points)}Z`;
}

/** The whole closed outline from its half. */
export function closedPath(outline: readonly OutlinePoint[]): string {
  const right = outline.map(({ halfWidthMm, xMm }) => ({ x: halfWidthMm, y: xMm }));
  const left = [...outline].reverse().map(({ halfWidthMm, xMm }) => ({ x: -halfWidthMm, y: xMm }));
  return ringPath([...right, ...left]);
}

/** One side of the outline between two stations: an edge. `side` 1 is the skier's right. */
export function sidePath(shape: SkiShape, fromMm: number, toMm: number, side: 1 | -1, insetMm = 0): string {
  const steps = Math.max(2, Math.ceil((toMm - fromMm) / 30));
  return linePath(
    Array.from({ length: steps + 1 }, (_, i) => {
      const y = fromMm + ((toMm - fromMm) * i) / steps;
      return { x: side * Math.max(0, halfWidthAt(shape, y) - insetMm), y };
    }),
  );
}

/** A rectangle. */
export function rectangle(x: number, y: number, width: number, height: number): string {
  return `M${tenth(x)} ${tenth(y)}h${tenth(width)}v${tenth(height)}h${tenth(-width)}Z`;
}

/** A rectangle with its corners rounded. */
export function roundedBox(x: number, y: number, width: number, height: number, radius: number): string {
  const r = Math.min(radius, width / 2, height / 2);
  const arc = (dx: number, dy: number) => `a${tenth(r)} ${tenth(r)} 0 0 1 ${tenth(dx)} ${tenth(dy)}`;
  const [w, h] = [width - 2 * r, height - 2 * r];
  return `M${tenth(x + r)} ${tenth(y)}h${tenth(w)}${arc(r, r)}v${tenth(h)}${arc(-r, r)}h${tenth(-w)}${arc(-r, -r)}v${tenth(-h)}${arc(r, -r)}Z`;
}

/** Widest half width, mm. */
export function greatestHalfWidthMm(shape: SkiShape): number {
  return Math.max(shape.shoulderWidthMm, shape.heelWidthMm) / 2;
}

/**
 * The turn that a pressed edge draws: the edge laid on the snow, Y = y·cos θ + u·sin θ with u the loaded height, and the parabola
 * that comes nearest to it (least squares) at all places of the sidecut that press. Its radius is that at its vertex; of a true arc
 * of 10 m over 1.4 m it is 0.1 % too small. Flat, it is the sidecut's own radius.
 */
import { halfWidthAt, type SkiShape } from "#engine/geometry";
import { solveLinear } from "#engine/math";
import type { Radians } from "#engine/units";
import type { SkiOnSnowStation } from "./types";

/** A parabola needs three places. */
const LEAST = 3;

/** m; infinite where too little of the edge presses, or where it bends away from the turn. */
export function pressedRadiusM(stations: readonly SkiOnSnowStation[], shape: SkiShape, edgeAngle: Radians): number {
  const [from, to] = [shape.tipLengthMm, shape.lengthMm - shape.tailLengthMm];
  const points = stations
    .filter(({ xMm, pressureNPerMm }) => pressureNPerMm > 0 && xMm >= from && xMm <= to)
    .map(({ xMm, heightMm }) => ({
      // In metres from the middle, so that the sums below are of one size.
      x: (xMm - (from + to) / 2) / 1000,
      y: (halfWidthAt(shape, xMm) * Math.cos(edgeAngle) + heightMm * Math.sin(edgeAngle)) / 1000,
    }));
  if (points.length < LEAST) return Number.POSITIVE_INFINITY;
  const sum = (of: (x: number, y: number) => number) => points.reduce((all, { x, y }) => all + of(x, y), 0);
  const powers = [0, 1, 2, 3, 4].map((power) => sum((x) => x ** power));
  const rows = [0, 1, 2].map((row) => [0, 1, 2].map((column) => powers[row + column] ?? 0));
  const right = [0, 1, 2].map((row) => [sum((x, y) => y * x ** row)]);
  const curvature = 2 * (solveLinear(rows, right)[2]?.[0] ?? 0);
  return curvature > 0 ? 1 / curvature : Number.POSITIVE_INFINITY;
}

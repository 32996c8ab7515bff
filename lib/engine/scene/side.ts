/** The ski from its left side, free on the bench, tip up: true camber, rocker, rise and thickness. X grows away from the bench. */
import { profileHeightMm, type SkiShape } from "#engine/geometry";
import { interpolate } from "#engine/math";
import type { PairLook } from "./look";
import { linePath, ringPath } from "./paths";
import type { Mark, Scene, XY } from "./types";

export interface SidePoint {
  /** Along the ski's own surface, mm from the tip. */
  readonly xMm: number;
  /** Along the bench: what a ruler under the ski reads, mm from where the tip stands above it. */
  readonly alongMm: number;
  readonly heightMm: number;
  /** dz/ds, the sine of the slope. */
  readonly slope: number;
}

/** Spacing of the points at the turned-up ends and between them, mm: no chord lies more than 0.2 mm off. */
const endStepMm = 11;
const middleStepMm = 45;

function stationsOf({ lengthMm, tipTangentMm, tailTangentMm }: SkiShape): readonly number[] {
  const spaced = (fromMm: number, toMm: number, stepMm: number) => {
    const count = Math.max(1, Math.ceil((toMm - fromMm) / stepMm));
    return Array.from({ length: count }, (_, i) => fromMm + ((toMm - fromMm) * i) / count);
  };
  return [
    ...spaced(0, tipTangentMm, endStepMm),
    ...spaced(tipTangentMm, tailTangentMm, middleStepMm),
    ...spaced(tailTangentMm, lengthMm, endStepMm),
    lengthMm,
  ];
}

/**
 * The running surface as it stands: x runs along it, so each step forward is √(1 − (dz/dx)²).
 * @param stations mm from the tip, growing; absent = as many as a drawing needs
 */
export function sideLine(shape: SkiShape, stations: readonly number[] = stationsOf(shape)): readonly SidePoint[] {
  const points: SidePoint[] = [];
  let alongMm = 0;
  let before: { readonly xMm: number; readonly heightMm: number } | null = null;
  for (const xMm of stations) {
    const heightMm = profileHeightMm(shape, xMm, "free");
    if (before) {
      const dx = xMm - before.xMm;
      alongMm += Math.sqrt(Math.max(0, dx ** 2 - (heightMm - before.heightMm) ** 2));
    }
    const [a, b] = [Math.max(0, xMm - 1), Math.min(shape.lengthMm, xMm + 1)];
    const slope = (profileHeightMm(shape, b, "free") - profileHeightMm(shape, a, "free")) / (b - a);
    points.push({ xMm, alongMm, heightMm, slope });
    before = { xMm, heightMm };
  }
  return points;
}

/** Points that lie `offMm(x)` off the running surface, square to it. */
function offset(line: readonly SidePoint[], offMm: (xMm: number) => number): readonly XY[] {
  return line.map(({ xMm, alongMm, heightMm, slope }) => {
    const off = offMm(xMm);
    return { x: heightMm + off * Math.sqrt(Math.max(0, 1 - slope ** 2)), y: alongMm - off * slope };
  });
}

function between(near: readonly XY[], far: readonly XY[]): string {
  return ringPath([...near, ...[...far].reverse()]);
}

/** Room beside the drawing, mm. */
const marginMm = 6;

/** The side view in one piece: what a small drawing shows. */
export function sideSilhouette(look: PairLook): string {
  const line = sideLine(look.shape);
  const xs = look.thickness.map((each) => each.xMm);
  const ys = look.thickness.map((each) => each.thicknessMm);
  return between(
    offset(line, () => 0),
    offset(line, (xMm) => interpolate(xs, ys, xMm)),
  );
}

/** The side view with its bench line. */
export function sideScene(look: PairLook): Scene {
  const { shape, thickness, edge, layers } = look;
  const line = sideLine(shape);
  const xs = thickness.map((each) => each.xMm);
  const ys = thickness.map((each) => each.thicknessMm);
  const thick = (xMm: number) => interpolate(xs, ys, xMm);
  const surface = offset(line, () => 0);
  const top = offset(line, thick);
  const walls = offset(line, (xMm) => Math.min(thick(xMm), edge.heightMm));
  const lid = offset(line, (xMm) => Math.max(0, thick(xMm) - layers.topsheetMm - 0.6));
  const steelLine = line.filter(({ xMm }) => xMm >= edge.fromMm && xMm <= edge.toMm);
  const tall = Math.max(...top.map(({ x }) => x), ...surface.map(({ x }) => x));
  const marks: Mark[] = [
    {
      kind: "line",
      d: linePath([
        { x: 0, y: 0 },
        { x: 0, y: shape.lengthMm },
      ]),
      paint: "pencil",
      widthMm: "hairline",
      opacity: 0.7,
    },
    { kind: "fill", d: between(surface, top), paint: "#24282c" },
    {
      kind: "fill",
      d: between(
        surface,
        offset(line, () => layers.baseMm),
      ),
      paint: look.base.left,
    },
    {
      kind: "fill",
      d: between(
        offset(steelLine, () => 0),
        offset(steelLine, () => edge.heightMm),
      ),
      paint: "steel",
    },
    { kind: "line", d: linePath(walls), paint: "#ffffff", widthMm: 0.5, opacity: 0.18 },
    { kind: "fill", d: between(lid, top), paint: "#8d8a80" },
    { kind: "line", d: between(surface, top), paint: "ink", widthMm: "hairline" },
  ];
  return {
    box: { x: -marginMm, y: 0, width: tall + 2 * marginMm, height: shape.lengthMm },
    marks,
  };
}

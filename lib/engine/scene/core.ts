/** The core cut away: its strips inside the outline it is milled to, its thickness along the ski, and a section across. */
import { halfWidthAt, topWidthMm } from "#engine/geometry";
import { interpolate } from "#engine/math";
import type { PairLook } from "./look";
import { closedPath, ringPath, screenOutline, tenth } from "./paths";
import type { FillMark, Mark, Scene, XY } from "./types";
import { stripBands, woodMarks } from "./wood";

const spacerPaint = "#24282c";

/** The core's own outline: the ski's less a wall on either side. */
export function coreOutline({ shape, wallMm }: PairLook): string {
  const inside = screenOutline(shape).map(({ xMm, halfWidthMm }) => ({
    xMm,
    halfWidthMm: Math.max(0, halfWidthMm - wallMm),
  }));
  return closedPath(inside);
}

/** Wood between its spacers, seen from above, and the spacers themselves. */
export function corePlanMarks(look: PairLook): readonly Mark[] {
  const outline = coreOutline(look);
  const { fromMm, toMm } = look.woodMm;
  return [
    { kind: "fill", d: outline, paint: spacerPaint },
    { kind: "group", clip: outline, marks: woodMarks(look.strips, { fromYMm: fromMm, toYMm: toMm }) },
    { kind: "line", d: outline, paint: "ink", widthMm: "hairline" },
  ];
}

export interface CoreThickness {
  readonly xMm: number;
  readonly thicknessMm: number;
}

/** Thickness along the core as a shape that stands on y = 0 and grows upwards (negative Y), x along the ski. */
export function coreThicknessPath(stations: readonly CoreThickness[]): string {
  const [first, last] = [stations[0], stations.at(-1)];
  if (!first || !last) return "";
  const top = stations.map(({ xMm, thicknessMm }): XY => ({ x: xMm, y: -thicknessMm }));
  return ringPath([{ x: first.xMm, y: 0 }, ...top, { x: last.xMm, y: 0 }]);
}

/** The ski cut across at a station, seen from the tail, base down: Y grows downwards. */
export function coreSectionScene(look: PairLook, xMm: number, coreMm: number): Scene {
  const { shape, wall, wallMm, edge, layers } = look;
  const { baseMm } = layers;
  const half = halfWidthAt(shape, Math.min(shape.lengthMm, Math.max(0, xMm)));
  const fullMm = baseMm + layers.belowMm + coreMm + layers.aboveMm + layers.topsheetMm;
  const topHalf = Math.max(0, topWidthMm(2 * half, fullMm, wall) / 2);
  const z = (heightMm: number) => fullMm - heightMm;
  const box = (x0: number, x1: number, low: number, high: number) =>
    ringPath([
      { x: x0, y: z(low) },
      { x: x1, y: z(low) },
      { x: x1, y: z(high) },
      { x: x0, y: z(high) },
    ]);
  const coreLow = baseMm + layers.belowMm;
  const coreHigh = coreLow + coreMm;
  const inner = Math.max(0, half - wallMm);
  const outline = ringPath([
    { x: -half, y: z(0) },
    { x: half, y: z(0) },
    { x: half, y: z(Math.min(fullMm, wall.uprightMm)) },
    { x: topHalf, y: z(fullMm) },
    { x: -topHalf, y: z(fullMm) },
    { x: -half, y: z(Math.min(fullMm, wall.uprightMm)) },
  ]);
  const isWood = xMm >= look.woodMm.fromMm && xMm <= look.woodMm.toMm;
  const strips = isWood
    ? stripBands(look.strips).flatMap(({ fromMm, toMm, strip }): FillMark[] => {
        const [x0, x1] = [Math.max(-inner, fromMm), Math.min(inner, toMm)];
        return x1 > x0
          ? [{ kind: "fill", d: box(x0, x1, coreLow, coreHigh), paint: strip.look.ground as `#${string}` }]
          : [];
      })
    : [];
  const joints = strips.map(({ d }): Mark => ({ kind: "line", d, paint: "#5c4424", widthMm: 0.2, opacity: 0.7 }));
  const steel = xMm >= edge.fromMm && xMm <= edge.toMm;
  const edges = steel
    ? ([1, -1] as const).map(
        (side): Mark => ({
          kind: "fill",
          d: box(side * half, side * (half - edge.widthMm), 0, edge.heightMm),
          paint: "steel",
        }),
      )
    : [];
  const marks: Mark[] = [
    {
      kind: "group",
      clip: outline,
      marks: [
        { kind: "fill", d: outline, paint: spacerPaint },
        { kind: "fill", d: box(-half, half, 0, baseMm), paint: look.base.left },
        { kind: "fill", d: box(-half, half, baseMm, coreLow), paint: "#b9b19a" },
        ...strips,
        ...joints,
        { kind: "fill", d: box(-half, half, coreHigh, coreHigh + layers.aboveMm), paint: "#b9b19a" },
        { kind: "fill", d: box(-half, half, coreHigh + layers.aboveMm, fullMm), paint: "#4c5257" },
        ...edges,
      ],
    },
    { kind: "line", d: outline, paint: "ink", widthMm: "hairline" },
  ];
  return { box: { x: -tenth(half) - 2, y: -2, width: 2 * tenth(half) + 4, height: fullMm + 4 }, marks };
}

/** Thickness of the core at a station. */
export function coreThicknessAt(stations: readonly CoreThickness[], xMm: number): number {
  return interpolate(
    stations.map((each) => each.xMm),
    stations.map((each) => each.thicknessMm),
    xMm,
  );
}

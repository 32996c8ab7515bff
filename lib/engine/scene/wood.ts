/** Strips of wood with their grain, as a window or a cut-away core shows them. */

import type { SeenStrip } from "./look";
import { linePath, tenth } from "./paths";
import type { Mark, Paint, XY } from "./types";

export interface WoodArea {
  readonly fromYMm: number;
  readonly toYMm: number;
}

/** A strip on one side of the centre line, or across it. */
export interface StripBand {
  readonly fromMm: number;
  readonly toMm: number;
  readonly strip: SeenStrip;
  /** Twins are mirror images: the same stick of a board lies on both sides. */
  readonly seed: number;
  readonly mirror: 1 | -1;
}

/** The strips of a core between two stations, mirrored about the centre line, with growth lines of their species. */
export function woodMarks(strips: readonly SeenStrip[], area: WoodArea): readonly Mark[] {
  return stripBands(strips).flatMap((band) => [
    fillOf(band, area),
    { kind: "line", d: grainPath(band, area), paint: band.strip.look.grain as Paint, widthMm: 0.35, opacity: 0.5 },
    ...joint(band, area),
  ]);
}

/** Every strip as it lies across the core, from the skier's right to the left for each in turn. */
export function stripBands(strips: readonly SeenStrip[]): readonly StripBand[] {
  return strips.flatMap((strip, seed): StripBand[] =>
    strip.innerMm <= 0
      ? [{ fromMm: -strip.outerMm, toMm: strip.outerMm, strip, seed, mirror: 1 }]
      : [
          { fromMm: strip.innerMm, toMm: strip.outerMm, strip, seed, mirror: 1 },
          { fromMm: -strip.outerMm, toMm: -strip.innerMm, strip, seed, mirror: -1 },
        ],
  );
}

function fillOf({ fromMm, toMm, strip }: StripBand, { fromYMm, toYMm }: WoodArea): Mark {
  const d = `M${tenth(fromMm)} ${tenth(fromYMm)}H${tenth(toMm)}V${tenth(toYMm)}H${tenth(fromMm)}Z`;
  return { kind: "fill", d, paint: strip.look.ground as Paint };
}

/** The glue line on the outer side of a strip. */
function joint({ toMm, fromMm, mirror }: StripBand, { fromYMm, toYMm }: WoodArea): readonly Mark[] {
  const x = mirror === 1 ? toMm : fromMm;
  return [
    {
      kind: "line",
      d: `M${tenth(x)} ${tenth(fromYMm)}V${tenth(toYMm)}`,
      paint: "#5c4424",
      widthMm: 0.4,
      opacity: 0.55,
    },
  ];
}

/** Growth lines along the strip: they wander slowly, and close in on one side as rings do towards the bark. */
function grainPath({ fromMm, toMm, strip, seed, mirror }: StripBand, { fromYMm, toYMm }: WoodArea): string {
  const widthMm = toMm - fromMm;
  const lines = Math.max(2, Math.round((widthMm / 10) * strip.look.linesPer10Mm * 0.5));
  const step = 55;
  const parts: string[] = [];
  for (let i = 0; i < lines; i++) {
    const u = ((i + 0.5) / lines) ** 1.25;
    const points: XY[] = [];
    for (let y = fromYMm; y < toYMm + step; y += step) {
      const at = Math.min(y, toYMm);
      const wander = 0.05 * Math.sin(at / 173 + seed * 2.3) + 0.03 * Math.sin(at / 71 + i * 1.7 + seed);
      const x = Math.min(0.97, Math.max(0.03, u + wander)) * widthMm;
      points.push({ x: mirror === 1 ? fromMm + x : toMm - x, y: at });
    }
    parts.push(linePath(points));
  }
  return parts.join("");
}

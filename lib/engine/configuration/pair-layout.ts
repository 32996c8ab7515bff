/** How one picture lies on two skis. Left is the ski of the left foot; y grows to the skier's right on both. */
import type { SkiShape } from "#engine/geometry";
import type { GraphicLayout, PrintRules } from "./types";

/** What one ski of the pair shows. Lettering is set after it and is never reflected. */
export interface SkiArt {
  /** The picture (never its text) is reflected about the ski's centre line. */
  readonly isReflected: boolean;
  /** Where the picture's middle line lies on this ski, mm to the skier's right of the centre line. */
  readonly pictureAtYMm: number;
  /** Which of two palettes or pictures it takes. */
  readonly version: "first" | "second";
}

export interface PairArt {
  readonly left: SkiArt;
  readonly right: SkiArt;
}

const plain: SkiArt = { isReflected: false, pictureAtYMm: 0, version: "first" };

/**
 * same: both alike · mirrored: the right ski reflects the left · continuing: one picture across both, the skis a fixed gap
 * apart at their widest · alternate: the two palettes exchanged · independent: a picture each.
 */
export function pairArt(layout: GraphicLayout, shape: SkiShape, print: PrintRules): PairArt {
  switch (layout) {
    case "same":
      return { left: plain, right: plain };
    case "mirrored":
      return { left: plain, right: { ...plain, isReflected: true } };
    case "continuing": {
      const half = (widestMm(shape) + print.pairGapMm) / 2;
      return { left: { ...plain, pictureAtYMm: half }, right: { ...plain, pictureAtYMm: -half } };
    }
    case "alternate":
    case "independent":
      return { left: plain, right: { ...plain, version: "second" } };
  }
}

/** What a picture must cover, mm. */
export interface PrintCanvas {
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** One ski with bleed on both sides, or both skis side by side with the gap between them. */
export function printCanvas(layout: GraphicLayout, shape: SkiShape, print: PrintRules): PrintCanvas {
  const skisMm = layout === "continuing" ? 2 * widestMm(shape) + print.pairGapMm : widestMm(shape);
  return { lengthMm: shape.lengthMm, widthMm: skisMm + 2 * print.bleedMm };
}

function widestMm(shape: SkiShape): number {
  return Math.max(shape.shoulderWidthMm, shape.heelWidthMm);
}

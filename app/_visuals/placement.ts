/**
 * How an uploaded picture lies on the ski. At angle 0 its own "up" is towards the tip; a positive angle turns it
 * clockwise as seen from above. For a picture that continues across the pair, y counts from the middle of the pair.
 */
import type { Artwork, ArtworkPlacement, GraphicLayout, PrintRules } from "../../lib/engine/configuration";
import type { SkiShape } from "../../lib/engine/geometry";
import { greatestHalfWidthMm } from "./paths";

export interface Canvas {
  readonly lengthMm: number;
  readonly widthMm: number;
}

/** What a picture must cover: one ski, or the pair with its gap, bleed included. */
export function printCanvas(shape: SkiShape, layout: GraphicLayout, rules: PrintRules): Canvas {
  const ski = 2 * greatestHalfWidthMm(shape);
  const width = layout === "continuing" ? 2 * ski + rules.pairGapMm : ski;
  return { lengthMm: shape.lengthMm + 2 * rules.bleedMm, widthMm: width + 2 * rules.bleedMm };
}

/** The smallest placement that fills the canvas, long side along the ski. */
export function coveringPlacement(
  canvas: Canvas,
  shape: SkiShape,
  artwork: Pick<Artwork, "widthPx" | "heightPx">,
): ArtworkPlacement {
  const isLandscape = artwork.widthPx > artwork.heightPx;
  const alongPx = isLandscape ? artwork.widthPx : artwork.heightPx;
  const acrossPx = isLandscape ? artwork.heightPx : artwork.widthPx;
  return {
    centreXMm: shape.lengthMm / 2,
    centreYMm: 0,
    mmPerPixel: Math.max(canvas.lengthMm / alongPx, canvas.widthMm / acrossPx),
    angleDeg: isLandscape ? 90 : 0,
  };
}

/** Dots per inch of the picture's own pixels as placed (1 in = 25.4 mm). */
export function effectiveDpi(placement: Pick<ArtworkPlacement, "mmPerPixel">): number {
  return 25.4 / placement.mmPerPixel;
}

export type DpiVerdict = "good" | "careful" | "wrong";

export function dpiVerdict(dpi: number, rules: PrintRules): DpiVerdict {
  if (dpi >= rules.goodDpi) return "good";
  return dpi >= rules.leastDpi ? "careful" : "wrong";
}

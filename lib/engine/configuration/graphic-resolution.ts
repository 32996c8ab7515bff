/**
 * Will a picture print sharp enough at the size it is given? Effective resolution = source pixels over printed inches after
 * the crop, the same along both axes because a picture is never stretched.
 */
import type { PrintCanvas } from "./pair-layout";
import type { Artwork, ArtworkPlacement, PrintRules } from "./types";

/** The international inch. */
export const MM_PER_INCH = 25.4;

export type ResolutionVerdict = "ok" | "warn" | "block";

export interface GraphicResolution {
  readonly effectiveDpi: number;
  readonly verdict: ResolutionVerdict;
  readonly placement: ArtworkPlacement;
  /** Part of the source that is printed. */
  readonly crop: { readonly widthPx: number; readonly heightPx: number };
  /** The picture reaches every edge of the canvas. */
  readonly coversCanvas: boolean;
}

/**
 * @param placement where the picture lies; absent = it fills the canvas, centred on it, its width along the ski
 * @throws RangeError when the picture or its scale has no size
 */
export function graphicResolution(
  artwork: Pick<Artwork, "widthPx" | "heightPx">,
  canvas: PrintCanvas,
  print: PrintRules,
  placement: ArtworkPlacement = fillingPlacement(artwork, canvas),
): GraphicResolution {
  if (!(artwork.widthPx > 0 && artwork.heightPx > 0)) {
    throw new RangeError(`artwork: ${artwork.widthPx} × ${artwork.heightPx} px has no size`);
  }
  if (!(placement.mmPerPixel > 0)) throw new RangeError(`mmPerPixel: ${placement.mmPerPixel} must be above 0`);
  const effectiveDpi = MM_PER_INCH / placement.mmPerPixel;
  const verdict = verdictOf(effectiveDpi, print);
  const across = spanOf(canvas, placement);
  const crop = {
    widthPx: Math.min(artwork.widthPx, across.widthMm / placement.mmPerPixel),
    heightPx: Math.min(artwork.heightPx, across.heightMm / placement.mmPerPixel),
  };
  return {
    effectiveDpi,
    verdict,
    placement,
    crop,
    coversCanvas: covers(artwork, canvas, placement),
  };
}

/** What the print rules say to a resolution. */
export function verdictOf(effectiveDpi: number, print: PrintRules): ResolutionVerdict {
  if (effectiveDpi >= print.goodDpi) return "ok";
  return effectiveDpi >= print.leastDpi ? "warn" : "block";
}

/** The smallest scale at which the picture, unturned, leaves nothing of the canvas bare. */
export function fillingPlacement(
  { widthPx, heightPx }: Pick<Artwork, "widthPx" | "heightPx">,
  canvas: PrintCanvas,
): ArtworkPlacement {
  const mmPerPixel = Math.max(canvas.lengthMm / widthPx, canvas.widthMm / heightPx);
  return { centreXMm: canvas.lengthMm / 2, centreYMm: 0, mmPerPixel, angleDeg: 0 };
}

/** The canvas as the turned picture sees it: its extent along the picture's own width and height. */
function spanOf(canvas: PrintCanvas, { angleDeg }: ArtworkPlacement) {
  const angle = (angleDeg * Math.PI) / 180;
  const [c, s] = [Math.abs(Math.cos(angle)), Math.abs(Math.sin(angle))];
  return {
    widthMm: canvas.lengthMm * c + canvas.widthMm * s,
    heightMm: canvas.lengthMm * s + canvas.widthMm * c,
  };
}

/** All four corners of the canvas lie on the picture. */
function covers(
  artwork: Pick<Artwork, "widthPx" | "heightPx">,
  canvas: PrintCanvas,
  { centreXMm, centreYMm, mmPerPixel, angleDeg }: ArtworkPlacement,
): boolean {
  const angle = (angleDeg * Math.PI) / 180;
  const slack = 1e-6;
  const corners = [0, canvas.lengthMm].flatMap((x) => [-canvas.widthMm / 2, canvas.widthMm / 2].map((y) => [x, y]));
  return corners.every(([x = 0, y = 0]) => {
    const [dx, dy] = [x - centreXMm, y - centreYMm];
    const along = Math.abs(dx * Math.cos(angle) + dy * Math.sin(angle));
    const across = Math.abs(-dx * Math.sin(angle) + dy * Math.cos(angle));
    return along <= (artwork.widthPx * mmPerPixel) / 2 + slack && across <= (artwork.heightPx * mmPerPixel) / 2 + slack;
  });
}

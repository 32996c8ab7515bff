/**
 * What is printed on each ski of a pair, as small pictures for the proof: the ski's box seen from above with its tip to the
 * left, the skier's right upwards. The marks are the scene's own, so that proof, page and turnable pair show one thing.
 */
import sharp from "sharp";
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import type { SkiShape } from "#engine/geometry";
import {
  daylightColour,
  graphicMarks,
  greatestHalfWidthMm,
  lyingSvg,
  type SeenArtwork,
  type SeenGraphic,
  type SkiSide,
  seenGraphic,
} from "#engine/scene";

/** Along the ski: about 220 dots an inch on the longest drawing that fits A4. */
const lengthPx = 2400;
const jpegQuality = 88;
/** Of the skier's picture inside the drawing. */
const innerQuality = 92;

export interface ProofPictures {
  readonly L: string;
  readonly R: string;
}

/**
 * JPEG data URIs of both skis.
 * @param artwork bytes of the skier's own picture; null for a house graphic
 * @throws RangeError when the house graphic is not in the catalogue
 */
export async function proofPictures(
  spec: Pick<PairSpec, "graphic" | "mount">,
  shape: SkiShape,
  build: BuildCatalog,
  artwork: Uint8Array | null,
): Promise<ProofPictures> {
  const graphic = seenGraphic(spec, shape, build);
  if (artwork === null && graphic.house === undefined) {
    throw new RangeError(`graphic.house: "${spec.graphic.house}" is not in the catalogue`);
  }
  const picture = artwork === null ? null : await pictureUri(artwork, graphic.artwork, lengthPx / shape.lengthMm);
  const half = greatestHalfWidthMm(shape);
  const box = { x: -half, y: 0, width: 2 * half, height: shape.lengthMm };
  const draw = async (side: SkiSide): Promise<string> => {
    const manner = { id: "g", colour: daylightColour, picture: () => picture, font: "sans-serif" };
    const svg = lyingSvg({ box, marks: graphicMarks({ shape, graphic }, side) }, lengthPx, manner);
    // A picture inside a drawing is one long word of it.
    const drawn = sharp(Buffer.from(svg), { unlimited: true }).flatten({ background: daylightColour("sheet") });
    return uriOf(await drawn.jpeg({ quality: jpegQuality }).toBuffer(), "jpeg");
  };
  const onLeft = await draw("left");
  return { L: onLeft, R: isAlike(graphic) ? onLeft : await draw("right") };
}

function isAlike({ art: { left, right } }: SeenGraphic): boolean {
  return (
    left.isReflected === right.isReflected && left.pictureAtYMm === right.pictureAtYMm && left.version === right.version
  );
}

/** No larger than its largest copy is drawn. */
async function pictureUri(
  bytes: Uint8Array,
  artwork: SeenArtwork | undefined,
  pxPerMm: number,
): Promise<string | null> {
  if (artwork === undefined) return null;
  const largest = Math.max(...artwork.copies.map(({ placement }) => placement.mmPerPixel));
  const [widthPx, heightPx] = [artwork.widthPx, artwork.heightPx].map((px) => atLeast1(px * largest * pxPerMm));
  const picture = sharp(bytes);
  const { hasAlpha } = await picture.metadata();
  const small = picture.resize(widthPx, heightPx, { fit: "fill", withoutEnlargement: true });
  return hasAlpha
    ? uriOf(await small.png().toBuffer(), "png")
    : uriOf(await small.jpeg({ quality: innerQuality, chromaSubsampling: "4:4:4" }).toBuffer(), "jpeg");
}

function uriOf(bytes: Buffer, type: "jpeg" | "png"): string {
  return `data:image/${type};base64,${bytes.toString("base64")}`;
}

function atLeast1(px: number): number {
  return Math.max(1, Math.round(px));
}

/**
 * What is printed on each ski of a pair, as small pictures for the proof: the ski's box seen from above with its tip to the
 * left, the skier's right upwards. Placement, layout and house graphics are the engine's own, as on the pages.
 */
import sharp from "sharp";
import {
  type Artwork,
  type ArtworkPlacement,
  type BuildCatalog,
  fillingPlacement,
  type PairSpec,
  pairArt,
  printCanvas,
  type SkiArt,
} from "#engine/configuration";
import type { SkiShape } from "#engine/geometry";
import { daylightColour, housePattern, otherPalette, svgMarks } from "#engine/scene";

/** Along the ski: about 220 dots an inch on the longest drawing that fits A4. */
const lengthPx = 2400;
const jpegQuality = 88;
/** The topsheet where no picture lies on it. */
const sheet = "#ffffff";

export interface ProofPictures {
  readonly L: string;
  readonly R: string;
}

interface Box {
  readonly widthPx: number;
  readonly heightPx: number;
  readonly pxPerMm: number;
}

/**
 * JPEG data URIs of both skis.
 * @param artwork bytes of the skier's own picture; null for a house graphic
 */
export async function proofPictures(
  spec: PairSpec,
  shape: SkiShape,
  build: BuildCatalog,
  artwork: Uint8Array | null,
): Promise<ProofPictures> {
  const widestMm = Math.max(shape.shoulderWidthMm, shape.heelWidthMm);
  const pxPerMm = lengthPx / shape.lengthMm;
  const box: Box = { widthPx: lengthPx, heightPx: 2 * Math.round((widestMm * pxPerMm) / 2), pxPerMm };
  const own = placedArtwork(spec, shape, build);
  const { left, right } = pairArt(spec.graphic.layout, shape, build.rules.print);
  const draw = async (art: SkiArt): Promise<string> => {
    const drawn =
      artwork === null ? await houseOn(spec, art, shape, build, box) : await pictureOn(own, art, artwork, box);
    // Up is the skier's right: reflecting about the centre line turns the box upside down.
    const turned = art.isReflected ? await sharp(drawn).flip().png().toBuffer() : drawn;
    const jpeg = await sharp(turned).flatten({ background: sheet }).jpeg({ quality: jpegQuality }).toBuffer();
    return `data:image/jpeg;base64,${jpeg.toString("base64")}`;
  };
  const onLeft = await draw(left);
  return { L: onLeft, R: isAlike(left, right) ? onLeft : await draw(right) };
}

function isAlike(a: SkiArt, b: SkiArt): boolean {
  return a.isReflected === b.isReflected && a.pictureAtYMm === b.pictureAtYMm && a.version === b.version;
}

interface PlacedArtwork {
  readonly artwork: Artwork;
  readonly placement: ArtworkPlacement;
}

/** Where nobody placed it, a picture fills the canvas, as where its resolution is judged. */
function placedArtwork({ graphic }: PairSpec, shape: SkiShape, { rules }: BuildCatalog): PlacedArtwork | null {
  const { artwork, placement, layout } = graphic;
  if (artwork === undefined) return null;
  return { artwork, placement: placement ?? fillingPlacement(artwork, printCanvas(layout, shape, rules.print)) };
}

/** The skier's own picture, scaled, turned and cut to the box; what it leaves bare stays clear. */
async function pictureOn(own: PlacedArtwork | null, art: SkiArt, bytes: Uint8Array, box: Box): Promise<Buffer> {
  const blank = sharp({
    create: { width: box.widthPx, height: box.heightPx, channels: 4, background: { r: 0, g: 0, b: 0, alpha: 0 } },
  }).png();
  if (own === null) return blank.toBuffer();
  const { artwork, placement } = own;
  const scale = placement.mmPerPixel * box.pxPerMm;
  const scaled = await sharp(bytes)
    .resize(atLeast1(artwork.widthPx * scale), atLeast1(artwork.heightPx * scale), { fit: "fill" })
    .ensureAlpha()
    .png()
    .toBuffer();
  const turned = await sharp(scaled)
    // The engine's angle turns against the clock in this view.
    .rotate(-placement.angleDeg, { background: { r: 0, g: 0, b: 0, alpha: 0 } })
    .png()
    .toBuffer({ resolveWithObject: true });
  const { data, info } = turned;
  const from = cornerOf(placement, art, box, info);
  const seen = overlap(from, info, box);
  if (seen === null) return blank.toBuffer();
  const part = await sharp(data).extract(seen.part).png().toBuffer();
  return blank.composite([{ input: part, left: seen.left, top: seen.top }]).toBuffer();
}

interface Size {
  readonly width: number;
  readonly height: number;
}

/** Where the turned picture's upper left corner lies in the box, px. */
function cornerOf({ centreXMm, centreYMm }: ArtworkPlacement, art: SkiArt, box: Box, { width, height }: Size) {
  return {
    left: Math.round(centreXMm * box.pxPerMm - width / 2),
    top: Math.round(box.heightPx / 2 - (centreYMm + art.pictureAtYMm) * box.pxPerMm - height / 2),
  };
}

/** The part of the picture that lies in the box, and where; null when it lies beside it. */
function overlap(from: { readonly left: number; readonly top: number }, picture: Size, box: Box) {
  const left = Math.max(0, from.left);
  const top = Math.max(0, from.top);
  const width = Math.min(box.widthPx, from.left + picture.width) - left;
  const height = Math.min(box.heightPx, from.top + picture.height) - top;
  if (width <= 0 || height <= 0) return null;
  return { left, top, part: { left: left - from.left, top: top - from.top, width, height } };
}

function atLeast1(px: number): number {
  return Math.max(1, Math.round(px));
}

async function houseOn(spec: PairSpec, art: SkiArt, shape: SkiShape, build: BuildCatalog, box: Box): Promise<Buffer> {
  const house = build.houseGraphics.find(({ id }) => id === spec.graphic.house);
  if (house === undefined) throw new RangeError(`graphic.house: "${spec.graphic.house}" is not in the catalogue`);
  const widestMm = Math.max(shape.shoulderWidthMm, shape.heelWidthMm);
  const reachMm = widestMm / 2 + Math.abs(art.pictureAtYMm);
  const graphic = art.version === "second" && spec.graphic.layout === "alternate" ? otherPalette(house) : house;
  const marks = housePattern(graphic, { lengthMm: shape.lengthMm, reachMm });
  const shapes = svgMarks(marks, { id: "g", colour: daylightColour, picture: () => null, font: "sans-serif" });
  const { widthPx, heightPx, pxPerMm } = box;
  // The graphic's own axes, x to the skier's right and y from the tip, laid on their side.
  const axes = `translate(0 ${heightPx / 2}) scale(${pxPerMm}) rotate(-90) translate(${art.pictureAtYMm} 0)`;
  const svg = `<svg xmlns="http://www.w3.org/2000/svg" width="${widthPx}" height="${heightPx}"><g transform="${axes}">${shapes}</g></svg>`;
  return sharp(Buffer.from(svg)).png().toBuffer();
}

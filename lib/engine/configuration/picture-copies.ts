/**
 * How a picture of one's own is laid out on the ski, so that it prints sharp although it has fewer pixels than a ski is long.
 * Every arrangement is copies of the picture, never stretched, at the resolution that the print asks for where that is enough.
 */
import { halfWidthAt, mountLineMm, type SkiShape } from "#engine/geometry";
import { fillingPlacement, MM_PER_INCH } from "./graphic-resolution";
import { type PrintCanvas, printCanvas } from "./pair-layout";
import type { Artwork, ArtworkPlacement, GraphicSpec, PrintRules } from "./types";

/** A part of the ski's length, mm from the tip. */
export interface Stretch {
  readonly fromXMm: number;
  readonly toXMm: number;
}

export interface PictureCopy {
  readonly placement: ArtworkPlacement;
  /** Where along the ski it is seen; absent = as far as it reaches. */
  readonly within?: Stretch;
}

export interface PictureCopies {
  readonly copies: readonly PictureCopy[];
  /** Where the picture goes over into the ground, all of it by the end. */
  readonly fades: readonly Stretch[];
}

/** Where a picture lies: which ski, and where the boot stands on it. */
export interface PictureField {
  readonly shape: SkiShape;
  /** Of the mount line from the model's own, positive towards the tip. */
  readonly mountOffsetMm: number;
}

export type PlacedGraphic = Pick<GraphicSpec, "layout" | "arrangement" | "placement" | "quarterTurns" | "sideShift">;
type Pixels = Pick<Artwork, "widthPx" | "heightPx">;

/** Shorter sides of a repeated picture are no shorter than this. Common practice, no source. */
const leastTileMm = 24;
/** The part of a fading piece that fades. Common practice, no source. */
const fadingShare = 0.4;

/** What boot and binding hide. */
export function bootStretch({ shape, mountOffsetMm }: PictureField, print: PrintRules): Stretch {
  const mountMm = mountLineMm(shape, mountOffsetMm);
  return { fromXMm: mountMm - print.bindingZoneMm / 2, toXMm: mountMm + print.bindingZoneMm / 2 };
}

/** @throws RangeError when the picture has no size */
export function pictureCopies(
  artwork: Pixels,
  graphic: PlacedGraphic,
  field: PictureField,
  print: PrintRules,
): PictureCopies {
  if (!(artwork.widthPx > 0 && artwork.heightPx > 0)) {
    throw new RangeError(`artwork: ${artwork.widthPx} × ${artwork.heightPx} px has no size`);
  }
  const canvas = printCanvas(graphic.layout, field.shape, print);
  const laid = laidAlong(artwork, (90 * (graphic.quarterTurns ?? 0)) % 360);
  const boot = bootStretch(field, print);
  const shift = graphic.sideShift ?? 0;
  const shovel = (): PieceOfPicture => {
    return shifted(piece(laid, canvas, { fromXMm: 0, toXMm: boot.fromXMm }, "from", print), laid, canvas, shift);
  };
  switch (graphic.arrangement ?? "fill") {
    case "fill":
      return { copies: [{ placement: graphic.placement ?? fillingPlacement(artwork, canvas) }], fades: [] };
    case "split":
      return { copies: [shovel()], fades: [] };
    case "fade": {
      const front = shovel();
      const { fromXMm, toXMm } = front.within;
      return { copies: [front], fades: [{ fromXMm: toXMm - fadingShare * (toXMm - fromXMm), toXMm }] };
    }
    case "ends": {
      const tail = piece(laid, canvas, { fromXMm: boot.toXMm, toXMm: canvas.lengthMm }, "to", print);
      return { copies: [shovel(), shifted(tail, laid, canvas, shift)], fades: [] };
    }
    case "tiles":
      return { copies: tiles(laid, canvas, print), fades: [] };
    case "motif":
      return { copies: [{ placement: motif(laid, canvas, field, graphic, print) }], fades: [] };
  }
}

/** A picture turned by quarters: its pixels along the ski and across it. */
interface Laid {
  readonly alongPx: number;
  readonly acrossPx: number;
  readonly angleDeg: number;
}

function laidAlong({ widthPx, heightPx }: Pixels, angleDeg: number): Laid {
  return angleDeg % 180 === 0
    ? { alongPx: widthPx, acrossPx: heightPx, angleDeg }
    : { alongPx: heightPx, acrossPx: widthPx, angleDeg };
}

type PieceOfPicture = Required<PictureCopy>;

/**
 * As long as the stretch where a good resolution allows it, else as long as that allows; wide enough to cover the canvas in
 * any case, whatever that does to the resolution.
 * @param end of the stretch at which it begins
 */
function piece(
  { alongPx, acrossPx, angleDeg }: Laid,
  canvas: PrintCanvas,
  stretch: Stretch,
  end: "from" | "to",
  print: PrintRules,
): PieceOfPicture {
  const wholeMm = stretch.toXMm - stretch.fromXMm;
  const good = MM_PER_INCH / print.goodDpi;
  const mmPerPixel = Math.max(canvas.widthMm / acrossPx, Math.min(wholeMm / alongPx, good));
  const lengthMm = Math.min(wholeMm, alongPx * mmPerPixel);
  const within: Stretch =
    end === "from"
      ? { fromXMm: stretch.fromXMm, toXMm: stretch.fromXMm + lengthMm }
      : { fromXMm: stretch.toXMm - lengthMm, toXMm: stretch.toXMm };
  const centreXMm = (within.fromXMm + within.toXMm) / 2;
  return { placement: { centreXMm, centreYMm: 0, mmPerPixel, angleDeg }, within };
}

/** Moved to the skier's right by a share of what is spare beside the canvas, which it goes on covering. */
function shifted(whole: PieceOfPicture, { acrossPx }: Laid, canvas: PrintCanvas, share: number): PieceOfPicture {
  const { placement } = whole;
  const spareMm = acrossPx * placement.mmPerPixel - canvas.widthMm;
  return { ...whole, placement: { ...placement, centreYMm: (share * Math.max(0, spareMm)) / 2 } };
}

/** In rows from the tip and columns about the middle: as wide as the canvas, or as large as a good resolution allows. */
function tiles(laid: Laid, canvas: PrintCanvas, print: PrintRules): readonly PictureCopy[] {
  const { alongPx, acrossPx, angleDeg } = laid;
  const sharp = Math.min(MM_PER_INCH / print.goodDpi, canvas.widthMm / acrossPx);
  const mmPerPixel = Math.max(sharp, leastTileMm / Math.min(alongPx, acrossPx));
  const [lengthMm, widthMm] = [alongPx * mmPerPixel, acrossPx * mmPerPixel];
  const slack = 1e-6;
  const rows = Math.ceil(canvas.lengthMm / lengthMm - slack);
  const columns = Math.max(1, Math.ceil(canvas.widthMm / widthMm - slack));
  return Array.from({ length: rows * columns }, (_, index): PictureCopy => {
    const row = Math.floor(index / columns);
    const column = index % columns;
    const centreXMm = (row + 0.5) * lengthMm;
    const centreYMm = (column - (columns - 1) / 2) * widthMm;
    return { placement: { centreXMm, centreYMm, mmPerPixel, angleDeg } };
  });
}

/** Steps in which a place is looked for, mm. */
const stepMm = 5;
const halvings = 30;

/** The whole picture ahead of the boot, inside the safe line, as large as that and a good resolution allow. */
function motif(
  laid: Laid,
  canvas: PrintCanvas,
  field: PictureField,
  { layout }: PlacedGraphic,
  print: PrintRules,
): ArtworkPlacement {
  const endMm = bootStretch(field, print).fromXMm - print.safeMm;
  const room: Room = (xMm) =>
    layout === "continuing"
      ? canvas.widthMm / 2 - print.bleedMm - print.safeMm
      : halfWidthAt(field.shape, xMm) - print.safeMm;
  let [fits, tooLarge] = [0, MM_PER_INCH / print.goodDpi];
  let centreXMm = placeOf(laid, tooLarge, endMm, room);
  if (centreXMm === null) {
    for (let i = 0; i < halvings; i++) {
      const between = (fits + tooLarge) / 2;
      const place = placeOf(laid, between, endMm, room);
      if (place === null) tooLarge = between;
      else [fits, centreXMm] = [between, place];
    }
  } else fits = tooLarge;
  if (centreXMm === null) throw new RangeError("picture: no ski is that narrow");
  return { centreXMm, centreYMm: 0, mmPerPixel: fits, angleDeg: laid.angleDeg };
}

/** Half of the width there is at a place, mm. */
type Room = (xMm: number) => number;

/** Where along the ski a picture of this scale has most room beside it; null where it has none. */
function placeOf({ alongPx, acrossPx }: Laid, mmPerPixel: number, endMm: number, room: Room): number | null {
  const half = (alongPx * mmPerPixel) / 2;
  const needed = (acrossPx * mmPerPixel) / 2;
  let best: number | null = null;
  let most = needed;
  for (let centre = half; centre + half <= endMm; centre += stepMm) {
    // From tip to boot a ski widens and then narrows: a picture is tightest at one of its ends.
    const tightest = Math.min(room(centre - half), room(centre + half));
    if (tightest >= most) [best, most] = [centre, tightest];
  }
  return best;
}

/** How sharp an arranged picture prints, what it leaves bare, and which other arrangement would print better. */
import { graphicResolution, MM_PER_INCH, type ResolutionVerdict, verdictOf } from "./graphic-resolution";
import { type PrintCanvas, printCanvas } from "./pair-layout";
import { type PictureCopies, type PictureField, type PlacedGraphic, pictureCopies } from "./picture-copies";
import {
  type Artwork,
  type GraphicLayout,
  type PictureArrangement,
  type PrintRules,
  pictureArrangements,
} from "./types";

export interface PicturePrint extends PictureCopies {
  readonly canvas: PrintCanvas;
  /** Of the coarsest copy. */
  readonly effectiveDpi: number;
  readonly verdict: ResolutionVerdict;
  /** Part of the source that its largest copy shows. */
  readonly crop: { readonly widthPx: number; readonly heightPx: number };
  /** Nothing of the ski keeps the ground colour. */
  readonly coversCanvas: boolean;
}

type Pixels = Pick<Artwork, "widthPx" | "heightPx">;

/** @throws RangeError when the picture or its scale has no size */
export function picturePrint(
  artwork: Pixels,
  graphic: PlacedGraphic,
  field: PictureField,
  print: PrintRules,
): PicturePrint {
  const canvas = printCanvas(graphic.layout, field.shape, print);
  const laid = pictureCopies(artwork, graphic, field, print);
  const [first] = laid.copies;
  if (first === undefined) throw new RangeError("picture: no copy of it is laid");
  const coarsest = Math.max(...laid.copies.map(({ placement }) => placement.mmPerPixel));
  const effectiveDpi = MM_PER_INCH / coarsest;
  const seen = first.within ? { ...canvas, lengthMm: first.within.toXMm - first.within.fromXMm } : { ...canvas };
  const whole = graphicResolution(artwork, seen, print, first.placement);
  const arrangement = graphic.arrangement ?? "fill";
  return {
    ...laid,
    canvas,
    effectiveDpi,
    verdict: verdictOf(effectiveDpi, print),
    crop: whole.crop,
    coversCanvas: arrangement === "fill" ? whole.coversCanvas : arrangement === "tiles",
  };
}

/** Another way to lay out the same picture. */
export interface PictureOffer {
  readonly arrangement: PictureArrangement;
  readonly layout: GraphicLayout;
  readonly print: PicturePrint;
}

/**
 * Every arrangement with its print, in the order in which they are offered. A picture across the pair has its own layout,
 * which the others leave again; else the layout stays.
 */
export function pictureOffers(
  artwork: Pixels,
  graphic: PlacedGraphic,
  field: PictureField,
  print: PrintRules,
): readonly PictureOffer[] {
  const one = graphic.arrangement === "split" ? "same" : graphic.layout;
  return pictureArrangements.map((arrangement): PictureOffer => {
    const layout = arrangement === "split" ? "continuing" : one;
    // Where it was placed on the canvas of another layout says nothing.
    const { placement, ...rest } = graphic;
    const kept = placement && layout === graphic.layout ? { placement } : {};
    return {
      arrangement,
      layout,
      print: picturePrint(artwork, { ...rest, ...kept, layout, arrangement }, field, print),
    };
  });
}

const ranks = { ok: 2, warn: 1, block: 0 } as const satisfies Record<ResolutionVerdict, number>;

/** Those that print better than the graphic does as it stands. */
export function betterOffers(
  artwork: Pixels,
  graphic: PlacedGraphic,
  field: PictureField,
  print: PrintRules,
): readonly PictureOffer[] {
  const now = ranks[picturePrint(artwork, graphic, field, print).verdict];
  return pictureOffers(artwork, graphic, field, print).filter((offer) => ranks[offer.print.verdict] > now);
}

/** What a new picture begins with: the first that prints well and costs no more, else the sharpest of them. */
export function firstOffer(offers: readonly PictureOffer[]): PictureOffer | undefined {
  const plain = offers.filter(({ arrangement }) => arrangement !== "split");
  return plain.find(({ print }) => print.verdict === "ok") ?? sharpest(plain);
}

function sharpest(offers: readonly PictureOffer[]): PictureOffer | undefined {
  return offers.toSorted((a, b) => b.print.effectiveDpi - a.print.effectiveDpi)[0];
}

/** Scenes of a pair: both skis beside each other, tips up, left on the left. */
import type { PairLook } from "./look";
import { closedPath, greatestHalfWidthMm, screenOutline } from "./paths";
import { letterMarks, skiFromAbove, skiFromBelow, skiOverPicture } from "./ski";
import type { Mark, Scene, SkiSide } from "./types";

/** mm between two skis of a pair in a drawing; a continuing picture is split by the shop's own gap. */
export const drawnGapMm = 24;

export interface PairView {
  readonly view?: "above" | "below";
  readonly sides?: readonly SkiSide[];
  readonly gapMm?: number;
}

/** How far a pair reaches across, mm, and where the centre line of each ski is. */
export function placesAcross(
  look: Pick<PairLook, "shape">,
  { sides = ["left", "right"], gapMm = drawnGapMm }: PairView,
): { readonly acrossMm: number; readonly centres: readonly (readonly [SkiSide, number])[] } {
  const half = greatestHalfWidthMm(look.shape);
  const acrossMm = sides.length * 2 * half + (sides.length - 1) * gapMm;
  return {
    acrossMm,
    centres: sides.map((side, index) => [side, -acrossMm / 2 + half + index * (2 * half + gapMm)]),
  };
}

/** Both skis, or one. */
export function pairScene(look: PairLook, view: PairView = {}): Scene {
  const { acrossMm, centres } = placesAcross(look, view);
  const draw = view.view === "below" ? skiFromBelow : skiFromAbove;
  const marks = centres.map(([side, x]): Mark => ({ kind: "group", shift: { x, y: 0 }, marks: draw(look, side) }));
  return { box: { x: -acrossMm / 2, y: 0, width: acrossMm, height: look.shape.lengthMm }, marks };
}

/** How far the ground of `pairOverPictures` reaches past the boxes of the skis, mm: no rim of a picture shows. */
export const groundBeyondMm = 1;

/** Both skis over pictures of their tops, each in the ski's own box, that lie there already; `ground` hides what is past the outline. */
export function pairOverPictures(look: PairLook, ground: `#${string}`): Scene {
  const { acrossMm, centres } = placesAcross(look, {});
  const { lengthMm } = look.shape;
  const more = groundBeyondMm;
  const far = greatestHalfWidthMm(look.shape) + more;
  const around = `M${-far} ${-more}H${far}V${lengthMm + more}H${-far}Z${closedPath(screenOutline(look.shape))}`;
  const marks: readonly Mark[] = [
    { kind: "fill", d: around, paint: ground, evenOdd: true },
    ...skiOverPicture(look),
    ...letterMarks(look),
  ];
  return {
    box: { x: -acrossMm / 2 - more, y: -more, width: acrossMm + 2 * more, height: lengthMm + 2 * more },
    marks: centres.map(([, x]): Mark => ({ kind: "group", shift: { x, y: 0 }, marks })),
  };
}

/** A picture of one's own as marks: its ground, its copies, where it fades, and words that stay readable. */
import type { PictureCopy, Stretch } from "#engine/configuration";
import type { SeenArtwork } from "./look";
import { rectangle } from "./paths";
import type { Mark, PictureMark } from "./types";

/** What the picture may lie on, about its middle line, mm. */
export interface PictureReach {
  readonly lengthMm: number;
  /** To either side. */
  readonly reachMm: number;
}

/** @param isReflected the ski shows the mirror image of these marks */
export function artworkMarks(artwork: SeenArtwork, reach: PictureReach, isReflected: boolean): readonly Mark[] {
  const { ground, copies, fades } = artwork;
  const marks: Mark[] = [];
  if (ground) {
    marks.push({ kind: "fill", d: stretchOf({ fromXMm: 0, toXMm: reach.lengthMm }, reach), paint: ground });
  }
  marks.push(...copies.flatMap((copy) => copyMarks(artwork, copy, reach, isReflected)));
  for (const fade of fades) {
    const paint = ground ?? "sheet";
    marks.push({
      kind: "shade",
      d: stretchOf({ ...fade, toXMm: fade.toXMm + overMm }, reach),
      from: { x: 0, y: fade.fromXMm },
      to: { x: 0, y: fade.toXMm },
      stops: [
        { at: 0, paint, opacity: 0 },
        { at: 1, paint, opacity: 1 },
      ],
    });
  }
  return marks;
}

/** A fade ends this far behind the picture, so that no seam of it shows. */
const overMm = 0.5;

function stretchOf({ fromXMm, toXMm }: Stretch, { reachMm }: PictureReach): string {
  return rectangle(-reachMm, fromXMm, 2 * reachMm, toXMm - fromXMm);
}

function copyMarks(
  { id, widthPx, heightPx, unmirrored }: SeenArtwork,
  { placement, within }: PictureCopy,
  reach: PictureReach,
  isReflected: boolean,
): readonly Mark[] {
  const { centreXMm, centreYMm, mmPerPixel, angleDeg } = placement;
  const whole: PictureMark = {
    kind: "picture",
    artworkId: id,
    centre: { x: centreYMm, y: centreXMm },
    widthMm: widthPx * mmPerPixel,
    heightMm: heightPx * mmPerPixel,
    // At angle 0 the picture's width runs from tip to tail; a positive angle turns it towards the skier's right.
    turnDeg: 90 - angleDeg,
  };
  const marks: Mark[] = [whole];
  if (isReflected && unmirrored) {
    marks.push({ ...whole, part: unmirrored, reflected: isAlong(angleDeg) ? "height" : "width" });
  }
  return within ? [{ kind: "group", clip: stretchOf(within, reach), marks }] : marks;
}

/** The picture's width runs rather along the ski than across it, which is the way a ski's mirror image is turned. */
function isAlong(angleDeg: number): boolean {
  const angle = (angleDeg * Math.PI) / 180;
  return Math.abs(Math.cos(angle)) >= Math.abs(Math.sin(angle));
}

/** One ski about its own centre line, tip up: from above and from below. */
import { halfWidthAt, type OutlinePoint, topWidthMm } from "#engine/geometry";
import { interpolate } from "#engine/math";
import { artworkMarks } from "./artwork-marks";
import { housePattern, otherPalette } from "./house";
import { endLight, topSheen, wallBrightness } from "./light";
import type { PairLook } from "./look";
import { closedPath, greatestHalfWidthMm, linePath, ringPath, roundedBox, screenOutline, sidePath } from "./paths";
import type { FillMark, Mark, Paint, SkiSide, XY } from "./types";
import { woodMarks } from "./wood";

/** Sidewalls and the spacers at the ends: black ABS. */
const wallPaint: Paint = "#24282c";
const inkOnSki: Paint = "#1b2023";
const lettersPaint: Paint = "#fffdf9";

/** Half of the topsheet: walls lean inward above the steel. */
function topHalf({ shape, wall, thickness }: PairLook): readonly OutlinePoint[] {
  const xs = thickness.map((each) => each.xMm);
  const ys = thickness.map((each) => each.thicknessMm);
  return screenOutline(shape).map(({ xMm, halfWidthMm }) => ({
    xMm,
    halfWidthMm: Math.max(0, topWidthMm(2 * halfWidthMm, interpolate(xs, ys, xMm), wall) / 2),
  }));
}

/** The topsheet's own outline. */
export function topOutline(look: PairLook): string {
  return closedPath(topHalf(look));
}

/** The whole of one ski from above. */
export function skiFromAbove(look: PairLook, side: SkiSide): readonly Mark[] {
  const outline = closedPath(screenOutline(look.shape));
  const top = topOutline(look);
  const half = greatestHalfWidthMm(look.shape);
  return [
    { kind: "fill", d: outline, paint: wallPaint },
    ...leaningWalls(look),
    ...steel(look, 1.4),
    { kind: "group", clip: top, marks: topMarks(look, side, top, half) },
    { kind: "line", d: top, paint: "#000000", widthMm: 0.8, opacity: 0.35 },
    ...bindingZone(look),
    { kind: "line", d: outline, paint: "ink", widthMm: "hairline", opacity: 0.8 },
  ];
}

/**
 * The same ski over a picture of its top that lies there already: walls, steel, wood and light, and no letters. For paper, whose
 * library cuts no picture to an outline.
 */
export function skiOverPicture(look: PairLook): readonly Mark[] {
  const outline = closedPath(screenOutline(look.shape));
  const top = topOutline(look);
  const half = greatestHalfWidthMm(look.shape);
  return [
    { kind: "fill", d: `${outline}${top}`, paint: wallPaint, evenOdd: true },
    ...leaningWalls(look),
    ...steel(look, 1.4),
    { kind: "group", clip: top, marks: [...windowMarks(look), ...lightMarks(look, top, half)] },
    { kind: "line", d: top, paint: "#000000", widthMm: 0.8, opacity: 0.35 },
    ...bindingZone(look),
    { kind: "line", d: outline, paint: "ink", widthMm: "hairline", opacity: 0.8 },
  ];
}

/** Lettering that the shop sets: never mirrored. */
export function letterMarks({ graphic: { text } }: PairLook): readonly Mark[] {
  if (text === undefined) return [];
  const { xMm, capHeightMm } = text;
  return [{ kind: "letters", text: text.text, at: { x: 0, y: xMm }, capHeightMm, paint: lettersPaint, edge: inkOnSki }];
}

function lightMarks(look: PairLook, top: string, half: number): readonly Mark[] {
  return [topSheen(half, top), endLight(look.shape, top)];
}

/** What lies inside the topsheet: picture, wood, letters, light. */
function topMarks(look: PairLook, side: SkiSide, top: string, half: number): readonly Mark[] {
  return [{ kind: "fill", d: top, paint: "sheet" }, ...topsheetMarks(look, side), ...lightMarks(look, top, half)];
}

/** What is printed and seen through the topsheet of one ski, without outline and light. */
export function topsheetMarks(look: PairLook, side: SkiSide): readonly Mark[] {
  return [...graphicMarks(look, side), ...windowMarks(look), ...letterMarks(look)];
}

/** The graphic in the frame that its layout asks for: this ski's own, its mirror image, or its half of the pair's. */
export function graphicMarks(look: Pick<PairLook, "shape" | "graphic">, side: SkiSide): readonly Mark[] {
  const { shape, graphic } = look;
  const art = graphic.art[side];
  const { house, artwork } = graphic;
  const isSecond = art.version === "second" && graphic.layout === "alternate";
  const reachMm = greatestHalfWidthMm(shape) + Math.abs(art.pictureAtYMm);
  const marks: Mark[] = [];
  if (house) {
    marks.push(...housePattern(isSecond ? otherPalette(house) : house, { lengthMm: shape.lengthMm, reachMm }));
  }
  if (artwork) marks.push(...artworkMarks(artwork, { lengthMm: shape.lengthMm, reachMm }, art.isReflected));
  if (marks.length === 0) return marks;
  return [{ kind: "group", shift: { x: art.pictureAtYMm, y: 0 }, isMirrored: art.isReflected, marks }];
}

function windowMarks({ graphic, strips }: PairLook): readonly Mark[] {
  return graphic.windows.flatMap(({ fromXMm, toXMm, halfWidthMm }): Mark[] => {
    const d = roundedBox(-halfWidthMm, fromXMm, 2 * halfWidthMm, toXMm - fromXMm, 14);
    return [
      { kind: "group", clip: d, marks: woodMarks(strips, { fromYMm: fromXMm, toYMm: toXMm }) },
      { kind: "line", d, paint: inkOnSki, widthMm: 1 },
    ];
  });
}

/** Both walls between outline and topsheet, the one that faces the light lighter. */
function leaningWalls(look: PairLook): readonly Mark[] {
  const stations = screenOutline(look.shape);
  return ([1, -1] as const).map((side): FillMark => {
    const outer = stations.map(({ xMm, halfWidthMm }): XY => ({ x: side * halfWidthMm, y: xMm }));
    const inner = topHalf(look)
      .map(({ xMm, halfWidthMm }): XY => ({ x: side * halfWidthMm, y: xMm }))
      .reverse();
    const change = wallBrightness(side, look.wall.bevelDeg) - 1;
    return {
      kind: "fill",
      d: ringPath([...outer, ...inner]),
      paint: change > -0.6 ? "#ffffff" : "#000000",
      opacity: Math.min(0.35, Math.abs(change + 0.6) * 0.6),
    };
  });
}

/** Steel along both sides where there is an edge. */
function steel({ shape, edge }: PairLook, widthMm: number): readonly Mark[] {
  const d = ([1, -1] as const).map((side) => sidePath(shape, edge.fromMm, edge.toMm, side, widthMm / 2)).join("");
  return [{ kind: "line", d, paint: "steel", widthMm }];
}

/** Where the boot stands: a short tick in from either edge at the mount line and faint ones at the zone's ends. */
function bindingZone({ shape, mountMm, bindingHalfMm }: PairLook): readonly Mark[] {
  const tick = (y: number, inMm: number) => {
    const half = halfWidthAt(shape, Math.min(shape.lengthMm, Math.max(0, y)));
    return `${linePath([
      { x: -half, y },
      { x: -half + inMm, y },
    ])}${linePath([
      { x: half, y },
      { x: half - inMm, y },
    ])}`;
  };
  const ends = tick(mountMm - bindingHalfMm, 7) + tick(mountMm + bindingHalfMm, 7);
  return [
    { kind: "line", d: ends, paint: lettersPaint, widthMm: 1.6, opacity: 0.45 },
    { kind: "line", d: tick(mountMm, 15), paint: "larch", widthMm: 2.4 },
  ];
}

/** One ski from below: base between its steel, letters of the other colour cut in, the ends' curl in the light. */
export function skiFromBelow(look: PairLook, side: SkiSide): readonly Mark[] {
  const { shape, base, edge } = look;
  const outline = closedPath(screenOutline(shape));
  const inner = closedPath(
    screenOutline(shape).map(({ xMm, halfWidthMm }) => ({
      xMm,
      halfWidthMm: Math.max(0, halfWidthMm - (xMm >= edge.fromMm && xMm <= edge.toMm ? edge.widthMm : 0)),
    })),
  );
  const [own, other] = side === "left" ? [base.left, base.right] : [base.right, base.left];
  const { letters } = base;
  return [
    { kind: "fill", d: outline, paint: own },
    ...steel(look, edge.widthMm),
    { kind: "fill", d: inner, paint: own },
    ...(letters
      ? [
          {
            kind: "letters",
            text: letters.text,
            at: { x: 0, y: (letters.fromXMm + letters.toXMm) / 2 },
            capHeightMm: letters.capHeightMm,
            paint: other,
            runMm: letters.toXMm - letters.fromXMm,
          } as const,
        ]
      : []),
    topSheen(greatestHalfWidthMm(shape), inner),
    { kind: "line", d: outline, paint: "ink", widthMm: "hairline", opacity: 0.8 },
  ];
}

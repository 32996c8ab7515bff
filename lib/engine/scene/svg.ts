/** A scene as SVG: for a page, whose colours follow its theme, or for a picture that stands alone. */
import { rectangle, tenth } from "./paths";
import type { FillMark, GroupMark, LettersMark, LineMark, Mark, Paint, PictureMark, Scene, ShadeMark } from "./types";

export interface SvgManner {
  /** Begins every id, so that two drawings of one page do not share any. */
  readonly id: string;
  readonly colour: (paint: Paint) => string;
  /** Where a skier's picture is; null leaves its place empty. */
  readonly picture: (artworkId: string) => string | null;
  /** Width of a hairline, mm; absent = one pixel at every scale, where the viewer can. */
  readonly hairlineMm?: number;
  readonly font: string;
}

/** Cap height of the text face over its size (IBM Plex Sans: 698 of 1000 units). */
export const capHeightShare = 0.698;

/** A page's colours: its own tokens, which follow the theme. */
export const pageColour = (paint: Paint): string => (paint.startsWith("#") ? paint : `var(--${paint})`);

const daylight: Readonly<Record<Exclude<Paint, `#${string}`>, string>> = {
  sheet: "#fffdf9",
  ink: "#1b2023",
  pencil: "#5b5f60",
  larch: "#a3440f",
  steel: "#6f777c",
};

/** The same in daylight, for what has no theme: a picture, a paper. */
export const daylightColour = (paint: Paint): string =>
  paint in daylight ? daylight[paint as keyof typeof daylight] : paint;

/** Shorter paths are cheaper written twice than named. */
const worthNaming = 160;

/**
 * The inside of an svg element whose viewBox is the scene's box. A long path that comes more than once (both skis' outlines,
 * a picture on both) is written once and used; a picture too.
 */
export function svgMarks(marks: readonly Mark[], manner: SvgManner): string {
  const named = namedPaths(marks, manner.id);
  let ids = 0;
  const pictures = namedPictures(marks, manner.id);
  const pen: Pen = { ...manner, nextId: () => `${manner.id}${ids++}`, named, pictures };
  const paths = [...named].map(([d, id]) => `<path id="${id}" d="${d}"/>`);
  const images = [...pictures].map(([artworkId, id]) => unitImage(artworkId, id, manner));
  const kept = [...paths, ...images].join("");
  return `${kept === "" ? "" : `<defs>${kept}</defs>`}${drawn(marks, pen)}`;
}

interface Pen extends SvgManner {
  readonly nextId: () => string;
  readonly named: ReadonlyMap<string, string>;
  readonly pictures: ReadonlyMap<string, string>;
}

function namedPaths(marks: readonly Mark[], id: string): ReadonlyMap<string, string> {
  const counts = new Map<string, number>();
  const count = (d: string | undefined) => {
    if (d !== undefined && d.length > worthNaming) counts.set(d, (counts.get(d) ?? 0) + 1);
  };
  const walk = (list: readonly Mark[]) => {
    for (const mark of list) {
      if (mark.kind === "group") {
        count(mark.clip);
        walk(mark.marks);
      } else if ("d" in mark) count(mark.d);
    }
  };
  walk(marks);
  const often = [...counts].filter(([, times]) => times > 1).map(([d]) => d);
  return new Map(often.map((d, i) => [d, `${id}p${i}`]));
}

function drawn(marks: readonly Mark[], pen: Pen): string {
  return marks.map((mark) => written(mark, pen)).join("");
}

function written(mark: Mark, pen: Pen): string {
  switch (mark.kind) {
    case "fill":
      return fillOf(mark, pen);
    case "line":
      return line(mark, pen);
    case "shade":
      return shade(mark, pen);
    case "picture":
      return picture(mark, pen);
    case "letters":
      return letters(mark, pen);
    case "group":
      return group(mark, pen);
  }
}

function fillOf({ d, paint, evenOdd, opacity: through }: FillMark, pen: Pen): string {
  const rule = evenOdd ? ' fill-rule="evenodd"' : "";
  return path(d, `fill="${pen.colour(paint)}"${rule}${opacity("fill-opacity", through)}`, pen);
}

function path(d: string, looks: string, { named }: Pen): string {
  const id = named.get(d);
  const given = looks === "" ? "" : ` ${looks}`;
  return id === undefined ? `<path d="${d}"${given}/>` : `<use href="#${id}"${given}/>`;
}

/** The scene lying on its side, tip to the left, as an svg element. @param lengthPx of the picture; its height follows */
export function lyingSvg({ box, marks }: Scene, lengthPx: number, manner: SvgManner): string {
  const { x, y, width, height } = box;
  const size = `width="${lengthPx}" height="${Math.round((lengthPx * width) / height)}"`;
  const view = `viewBox="${tenth(y)} ${tenth(-(x + width))} ${tenth(height)} ${tenth(width)}"`;
  return `<svg xmlns="http://www.w3.org/2000/svg" ${size} ${view}><g transform="rotate(-90)">${svgMarks(marks, manner)}</g></svg>`;
}

const opacity = (name: string, value: number | undefined) => (value === undefined ? "" : ` ${name}="${value}"`);

function line({ d, paint, widthMm, opacity: through, dash }: LineMark, pen: Pen): string {
  const isHair = widthMm === "hairline";
  const width = isHair ? (pen.hairlineMm ?? 1.2) : widthMm;
  const effect = isHair && pen.hairlineMm === undefined ? ' vector-effect="non-scaling-stroke"' : "";
  const looks = `fill="none" stroke="${pen.colour(paint)}" stroke-width="${width}" stroke-linecap="round"`;
  return path(d, `${looks}${dash ? ' stroke-dasharray="3 3"' : ""}${effect}${opacity("stroke-opacity", through)}`, pen);
}

function shade({ d, from, to, stops }: ShadeMark, pen: Pen): string {
  const id = pen.nextId();
  const places = `x1="${tenth(from.x)}" y1="${tenth(from.y)}" x2="${tenth(to.x)}" y2="${tenth(to.y)}"`;
  const list = stops.map(
    ({ at, paint, opacity: through }) =>
      `<stop offset="${at}" stop-color="${pen.colour(paint)}" stop-opacity="${through}"/>`,
  );
  return `<linearGradient id="${id}" gradientUnits="userSpaceOnUse" ${places}>${list.join("")}</linearGradient>${path(d, `fill="url(#${id})"`, pen)}`;
}

function picture(mark: PictureMark, pen: Pen): string {
  const { centre, widthMm, heightMm, turnDeg, part } = mark;
  const href = pen.picture(mark.artworkId);
  if (href === null) return "";
  const place = `translate(${tenth(centre.x)} ${tenth(centre.y)}) rotate(${tenth(turnDeg)})`;
  if (part === undefined) return image(mark, href, place, pen);
  const [x, y] = [(part.x - 0.5) * widthMm, (part.y - 0.5) * heightMm];
  const [width, height] = [part.width * widthMm, part.height * heightMm];
  const turned =
    mark.reflected === "width"
      ? `translate(${tenth(2 * x + width)} 0) scale(-1 1)`
      : `translate(0 ${tenth(2 * y + height)}) scale(1 -1)`;
  const id = pen.nextId();
  return `<g transform="${place}"><clipPath id="${id}"><path d="${rectangle(x, y, width, height)}"/></clipPath><g clip-path="url(#${id})">${image(mark, href, turned, pen)}</g></g>`;
}

/** A picture that comes more than once is named once, a unit wide and high, and drawn at each size by its scale. */
function image({ artworkId, widthMm, heightMm }: PictureMark, href: string, place: string, { pictures }: Pen): string {
  const id = pictures.get(artworkId);
  if (id !== undefined) return `<use href="#${id}" transform="${place} scale(${tenth(widthMm)} ${tenth(heightMm)})"/>`;
  return `<image transform="${place}" href="${escaped(href)}" x="${tenth(-widthMm / 2)}" y="${tenth(-heightMm / 2)}" width="${tenth(widthMm)}" height="${tenth(heightMm)}" preserveAspectRatio="none"/>`;
}

/** Pictures that a drawing shows more than once, and what they are called there. */
function namedPictures(marks: readonly Mark[], id: string): ReadonlyMap<string, string> {
  const counts = new Map<string, number>();
  const walk = (list: readonly Mark[]) => {
    for (const mark of list) {
      if (mark.kind === "group") walk(mark.marks);
      else if (mark.kind === "picture") counts.set(mark.artworkId, (counts.get(mark.artworkId) ?? 0) + 1);
    }
  };
  walk(marks);
  const often = [...counts].filter(([, times]) => times > 1).map(([artworkId]) => artworkId);
  return new Map(often.map((artworkId, i) => [artworkId, `${id}i${i}`]));
}

function unitImage(artworkId: string, id: string, manner: SvgManner): string {
  const href = manner.picture(artworkId);
  if (href === null) return "";
  return `<image id="${id}" href="${escaped(href)}" x="-0.5" y="-0.5" width="1" height="1" preserveAspectRatio="none"/>`;
}

function letters(mark: LettersMark, { colour, font }: SvgManner): string {
  const size = mark.capHeightMm / capHeightShare;
  const edge = mark.edge
    ? ` stroke="${colour(mark.edge)}" stroke-width="${tenth(size * 0.12)}" stroke-linejoin="round" paint-order="stroke"`
    : "";
  const run = mark.runMm === undefined ? "" : ` textLength="${tenth(mark.runMm)}"`;
  // The middle of the caps lies on the line, whatever the viewer takes for the middle of a face.
  const place = `translate(${tenth(mark.at.x)} ${tenth(mark.at.y)}) rotate(90) translate(0 ${tenth(mark.capHeightMm / 2)})`;
  return `<text transform="${place}" font-size="${tenth(size)}" text-anchor="middle" font-family="${escaped(font)}" font-weight="600" fill="${colour(mark.paint)}"${edge}${run}>${escaped(mark.text)}</text>`;
}

function group({ shift, isMirrored, clip, marks }: GroupMark, pen: Pen): string {
  const moves = [
    ...(shift && (shift.x !== 0 || shift.y !== 0) ? [`translate(${tenth(shift.x)} ${tenth(shift.y)})`] : []),
    ...(isMirrored ? ["scale(-1 1)"] : []),
  ].join(" ");
  const placed = moves === "" ? "" : ` transform="${moves}"`;
  if (clip === undefined) return `<g${placed}>${drawn(marks, pen)}</g>`;
  const id = pen.nextId();
  return `<clipPath id="${id}">${path(clip, "", pen)}</clipPath><g${placed} clip-path="url(#${id})">${drawn(marks, pen)}</g>`;
}

function escaped(text: string): string {
  return text.replace(/[&<>"']/g, (sign) => `&#${sign.charCodeAt(0)};`);
}

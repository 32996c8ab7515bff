/** Outlines as open drawing files: DXF (R12, ASCII) for machines and SVG for people. Millimetres; y is mirrored to close. */
import type { OutlinePoint } from "./types";

export interface DrawnOutline {
  /** Letters, digits and underscores; upper case in the file. */
  readonly layer: string;
  readonly outline: readonly OutlinePoint[];
  /** How deep it is milled from the face that the drawing shows, which lies at z = 0; absent for what is cut through. */
  readonly depthMm?: number;
}

/** A line across the ski, such as the mount line or the waist. */
export interface DrawnMark {
  readonly layer: string;
  readonly xMm: number;
  readonly halfWidthMm: number;
}

export interface OutlineDrawing {
  readonly title: string;
  readonly outlines: readonly DrawnOutline[];
  readonly marks: readonly DrawnMark[];
}

type XY = readonly [x: number, y: number];

/** Decimals written: 0.1 µm, far below any machine's step. */
const DECIMALS = 4;

/** The whole closed polygon of a half outline, tip first along +y, back along −y, without repeated points. */
export function closedPolygon(outline: readonly OutlinePoint[]): readonly XY[] {
  const upper = outline.map((p): XY => [p.xMm, p.halfWidthMm]);
  const lower = upper
    .filter(([, y]) => y > 0)
    .reverse()
    .map(([x, y]): XY => [x, -y]);
  return [...upper, ...lower];
}

/** A DXF drawing of release R12 (AC1009): closed POLYLINE and LINE entities, one layer a part. */
export function outlineDxf(drawing: OutlineDrawing): string {
  const layers = [...new Set([...drawing.outlines, ...drawing.marks].map((part) => layerName(part.layer)))];
  const groups: (readonly [code: number, value: string | number])[] = [
    [999, `${plainText(drawing.title)}; millimetres`],
    [0, "SECTION"],
    [2, "HEADER"],
    [9, "$ACADVER"],
    [1, "AC1009"],
    ...extents(drawing),
    [0, "ENDSEC"],
    [0, "SECTION"],
    [2, "TABLES"],
    ...lineTypes,
    [0, "TABLE"],
    [2, "LAYER"],
    [70, layers.length],
    ...layers.flatMap(
      (name, i) =>
        [
          [0, "LAYER"],
          [2, name],
          [70, 0],
          [62, (i % 7) + 1],
          [6, "CONTINUOUS"],
        ] as const,
    ),
    [0, "ENDTAB"],
    [0, "ENDSEC"],
    [0, "SECTION"],
    [2, "ENTITIES"],
    ...drawing.outlines.flatMap(polyline),
    ...drawing.marks.flatMap(markLine),
    [0, "ENDSEC"],
    [0, "EOF"],
  ];
  return `${groups.map(([code, value]) => `${String(code).padStart(3)}\r\n${written(value)}`).join("\r\n")}\r\n`;
}

/** The one line type, which a layer must find in the file. */
const lineTypes: readonly (readonly [code: number, value: string | number])[] = [
  [0, "TABLE"],
  [2, "LTYPE"],
  [70, 1],
  [0, "LTYPE"],
  [2, "CONTINUOUS"],
  [70, 64],
  [3, "Solid line"],
  [72, 65],
  [73, 0],
  [40, 0],
  [0, "ENDTAB"],
];

/** The release knows no letters beyond ASCII. */
function plainText(text: string): string {
  return text.replace(/[^ -~]/g, "?");
}

type Group = readonly [code: number, value: string | number];

function written(value: string | number): string {
  return typeof value === "string" || Number.isInteger(value) ? String(value) : value.toFixed(DECIMALS);
}

function layerName(layer: string): string {
  return layer.toUpperCase().replace(/[^A-Z0-9_]/g, "_");
}

function extents(drawing: OutlineDrawing): Group[] {
  const [min, max] = bounds(drawing, 0);
  return [
    [9, "$EXTMIN"],
    [10, min[0]],
    [20, min[1]],
    [9, "$EXTMAX"],
    [10, max[0]],
    [20, max[1]],
  ];
}

function polyline({ layer, outline, depthMm }: DrawnOutline): Group[] {
  const name = layerName(layer);
  const zMm = depthMm === undefined ? 0 : -depthMm;
  const vertices = closedPolygon(outline).flatMap(([x, y]): Group[] => [
    [0, "VERTEX"],
    [8, name],
    [10, x],
    [20, y],
    [30, zMm],
  ]);
  return [
    [0, "POLYLINE"],
    [8, name],
    [66, 1],
    [10, 0],
    [20, 0],
    [30, zMm],
    [70, 1],
    ...vertices,
    [0, "SEQEND"],
    [8, name],
  ];
}

function markLine({ layer, xMm, halfWidthMm }: DrawnMark): Group[] {
  return [
    [0, "LINE"],
    [8, layerName(layer)],
    [10, xMm],
    [20, -halfWidthMm],
    [30, 0],
    [11, xMm],
    [21, halfWidthMm],
    [31, 0],
  ];
}

function bounds(drawing: OutlineDrawing, marginMm: number): readonly [XY, XY] {
  const points = [
    ...drawing.outlines.flatMap(({ outline }) => outline),
    ...drawing.marks.map(({ xMm, halfWidthMm }) => ({ xMm, halfWidthMm })),
  ];
  if (points.length === 0) throw new RangeError("outlines: a drawing needs at least one");
  const [first] = points;
  let [from, to, half] = [first?.xMm ?? 0, first?.xMm ?? 0, 0];
  for (const { xMm, halfWidthMm } of points) {
    from = Math.min(from, xMm);
    to = Math.max(to, xMm);
    half = Math.max(half, halfWidthMm);
  }
  return [
    [from - marginMm, -half - marginMm],
    [to + marginMm, half + marginMm],
  ];
}

/** The `d` of an SVG path for a half outline and its mirror image, closed; one user unit is one millimetre. */
export function outlineSvgPath(outline: readonly OutlinePoint[], decimals = 2): string {
  const points = closedPolygon(outline).map(([x, y]) => `${x.toFixed(decimals)} ${y.toFixed(decimals)}`);
  return `M${points.join("L")}Z`;
}

/** A whole SVG drawing at true scale: the page is as many millimetres as the drawing. */
export function outlineSvg(drawing: OutlineDrawing): string {
  const [[x0, y0], [x1, y1]] = bounds(drawing, 10);
  const size = [x1 - x0, y1 - y0].map((side) => side.toFixed(2));
  const parts = drawing.outlines.map(
    ({ layer, outline, depthMm }) =>
      `  <path id="${layerName(layer)}"${depthMm === undefined ? "" : ` data-depth-mm="${depthMm.toFixed(2)}"`} d="${outlineSvgPath(outline, DECIMALS)}"/>`,
  );
  const marks = drawing.marks.map(
    ({ layer, xMm, halfWidthMm }) =>
      `  <path id="${layerName(layer)}" d="M${xMm.toFixed(DECIMALS)} ${(-halfWidthMm).toFixed(DECIMALS)}V${halfWidthMm.toFixed(DECIMALS)}"/>`,
  );
  return [
    `<svg xmlns="http://www.w3.org/2000/svg" width="${size[0]}mm" height="${size[1]}mm" viewBox="${x0.toFixed(2)} ${y0.toFixed(2)} ${size[0]} ${size[1]}" fill="none" stroke="#000" stroke-width="0.2">`,
    `  <title>${xmlText(drawing.title)}</title>`,
    ...parts,
    ...marks,
    "</svg>",
    "",
  ].join("\n");
}

function xmlText(text: string): string {
  return text.replace(/&/g, "&amp;").replace(/</g, "&lt;").replace(/>/g, "&gt;");
}

/**
 * Contour lines of an invented ridge that runs the whole length: a summit under the shovel, a saddle under the boot, a lower
 * summit behind it. Lines of one height by marching squares; land is tinted by height, every fourth line is heavier.
 */
import type { XY } from "../types";
import { along, type Draw, groundOf, mixed, type PatternArea } from "./area";

const r = Math.round;
const levels = 14;
const stepMm = 17;

/** Colours: paper, heavy line, thin line. */
export const relief: Draw = (area, colours) => {
  const [paper = "#ffffff", heavy = "#000000", thin = heavy] = colours;
  const grid = gridOf(area);
  const shapes = [groundOf(area, paper)];
  for (let k = 1; k <= levels; k++) {
    const d = ringsAt(grid, k / (levels + 1))
      .map(smooth)
      .join("");
    if (d === "") continue;
    const isHeavy = k % 4 === 0;
    shapes.push({
      d,
      fill: along([paper, mixed(paper, thin, 0.62)], (k / levels) ** 1.2),
      stroke: isHeavy ? heavy : thin,
      strokeWidthMm: isHeavy ? 2.2 : 1,
    });
  }
  return shapes;
};

/** Height at a place, about 0…1: three hills, a flank and the small unevenness of ground. */
function heightAt(x: number, y: number, { lengthMm, reachMm }: PatternArea): number {
  const hill = (x0: number, y0: number, wide: number, long: number) =>
    Math.exp(-(((x - x0 * reachMm) / (wide * reachMm)) ** 2) - ((y - y0 * lengthMm) / (long * lengthMm)) ** 2);
  const rough = 0.05 * Math.sin(x / 23 + y / 61) + 0.045 * Math.sin(y / 37 - x / 41) + 0.03 * Math.sin(y / 19 + x / 15);
  return (
    0.98 * hill(0.32, 0.15, 0.85, 0.12) +
    0.72 * hill(-0.4, 0.73, 0.8, 0.13) +
    0.42 * hill(-0.1, 0.42, 0.7, 0.22) +
    0.3 * hill(0.7, 0.95, 0.9, 0.1) +
    rough +
    0.06
  );
}

interface Grid {
  readonly columns: number;
  readonly rows: number;
  readonly at: (i: number, j: number) => number;
  readonly place: (i: number, j: number) => XY;
}

/** One row and column more all round lies lower than every line, so that each line closes outside the drawing. */
function gridOf(area: PatternArea): Grid {
  const columns = Math.ceil((2 * area.reachMm) / stepMm) + 3;
  const rows = Math.ceil(area.lengthMm / stepMm) + 3;
  const place = (i: number, j: number) => ({ x: -area.reachMm + (i - 1) * stepMm, y: (j - 1) * stepMm });
  const heights = Array.from({ length: columns * rows }, (_, n) => {
    const [i, j] = [n % columns, Math.floor(n / columns)];
    if (i === 0 || j === 0 || i === columns - 1 || j === rows - 1) return -1;
    const { x, y } = place(i, j);
    return heightAt(x, y, area);
  });
  return { columns, rows, at: (i, j) => heights[j * columns + i] ?? -1, place };
}

/** Closed lines of one height. Each cell gives at most two pieces, joined end to end by the grid edges they cross. */
function ringsAt(grid: Grid, level: number): readonly (readonly XY[])[] {
  const next = new Map<string, string>();
  const points = new Map<string, XY>();
  const crossing = (i: number, j: number, di: number, dj: number): string => {
    const key = `${i},${j},${di}`;
    if (!points.has(key)) {
      const [a, b] = [grid.at(i, j), grid.at(i + di, j + dj)];
      const share = (level - a) / (b - a);
      const [p, q] = [grid.place(i, j), grid.place(i + di, j + dj)];
      points.set(key, { x: p.x + (q.x - p.x) * share, y: p.y + (q.y - p.y) * share });
    }
    return key;
  };
  for (let j = 0; j < grid.rows - 1; j++) {
    for (let i = 0; i < grid.columns - 1; i++) {
      for (const [from, to] of piecesOf(grid, level, i, j, crossing)) next.set(from, to);
    }
  }
  const rings: XY[][] = [];
  while (next.size > 0) {
    const [start] = next.keys();
    const ring: XY[] = [];
    let at = start;
    while (at !== undefined && next.has(at)) {
      const point = points.get(at);
      if (point) ring.push(point);
      const to: string | undefined = next.get(at);
      next.delete(at);
      at = to;
    }
    if (ring.length > 3) rings.push(ring);
  }
  return rings;
}

type Crossing = (i: number, j: number, di: number, dj: number) => string;
type Side = "top" | "right" | "bottom" | "left";

/**
 * By which corners are up (8 upper left, 4 upper right, 2 lower right, 1 lower left): the sides that a line goes from and to,
 * each with the higher ground on its right, so that pieces follow one another round a hill.
 */
const pieces: readonly (readonly (readonly [Side, Side])[])[] = [
  [],
  [["bottom", "left"]],
  [["right", "bottom"]],
  [["right", "left"]],
  [["top", "right"]],
  [
    ["top", "left"],
    ["bottom", "right"],
  ],
  [["top", "bottom"]],
  [["top", "left"]],
  [["left", "top"]],
  [["bottom", "top"]],
  [
    ["left", "bottom"],
    ["right", "top"],
  ],
  [["right", "top"]],
  [["left", "right"]],
  [["bottom", "right"]],
  [["left", "bottom"]],
  [],
];

function piecesOf(grid: Grid, level: number, i: number, j: number, crossing: Crossing): [string, string][] {
  const isUp = (di: number, dj: number) => grid.at(i + di, j + dj) > level;
  const code = (isUp(0, 0) ? 8 : 0) | (isUp(1, 0) ? 4 : 0) | (isUp(1, 1) ? 2 : 0) | (isUp(0, 1) ? 1 : 0);
  const edges: Readonly<Record<Side, () => string>> = {
    top: () => crossing(i, j, 1, 0),
    right: () => crossing(i + 1, j, 0, 1),
    bottom: () => crossing(i, j + 1, 1, 0),
    left: () => crossing(i, j, 0, 1),
  };
  return (pieces[code] ?? []).map(([from, to]) => [edges[from](), edges[to]()]);
}

/** A ring through the middles of its sides: a corner becomes a bend. */
function smooth(ring: readonly XY[]): string {
  const thinned = ring.filter((_, i) => i % 2 === 0);
  const middle = (a: XY, b: XY) => `${r((a.x + b.x) / 2)} ${r((a.y + b.y) / 2)}`;
  const last = thinned.at(-1);
  const first = thinned[0];
  if (!first || !last) return "";
  const bends = thinned.map((point, i) => `${r(point.x)} ${r(point.y)} ${middle(point, thinned[i + 1] ?? first)}`);
  return `M${middle(last, first)}Q${bends.join(" ")}Z`;
}

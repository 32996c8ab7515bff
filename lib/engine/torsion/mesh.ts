/**
 * The grid that a section is cut into: lines wherever parts or layers end, and between them columns that are narrow where
 * warping changes fast (at the free edges) and wide where the section twists like an endless strip.
 */
import { portableExp, portableLog } from "#engine/math";
import type { MeshSettings, TwistSection } from "./types";

/** For every station of a ski, where time counts (its error: torsional-stiffness.ts); for one section; to judge both. */
export const MESHES = {
  station: { edgeColumn: 0.02, growth: 0.2, leastAtEdge: 4, highestRow: 0.09, leastRows: 1 },
  single: { edgeColumn: 0.02, growth: 0.15, leastAtEdge: 6, highestRow: 0.06, leastRows: 2 },
  fine: { edgeColumn: 0.01, growth: 0.1, leastAtEdge: 8, highestRow: 0.045, leastRows: 4 },
} as const satisfies Readonly<Record<string, MeshSettings>>;

/** Lines nearer than this share of the section's size are one. */
const SAME_LINE = 1e-7;

/** Of a whole section beside one a layer, however thin and high it is: at a ski's very ends nothing is left of its width. */
const MOST_ROWS = 80;

export interface Mesh {
  readonly columns: number;
  readonly rows: number;
  /** Ascending; one more than columns and rows. */
  readonly yMm: Float64Array;
  readonly zMm: Float64Array;
  /** Shear moduli of the cells, column by column, each from the bottom up. */
  readonly inPlaneMpa: Float64Array;
  readonly throughMpa: Float64Array;
}

export function meshOf({ layers, isHalf }: TwistSection, settings: MeshSettings): Mesh {
  const heightMm = layers.reduce((sum, layer) => sum + layer.thicknessMm, 0);
  const breaks = breaksOf(layers, isHalf);
  const widthMm = (breaks.at(-1) ?? 0) - (isHalf ? -(breaks.at(-1) ?? 0) : (breaks[0] ?? 0));
  const sizeMm = Math.min(heightMm, widthMm);
  const yMm = Float64Array.from(columnLines(breaks, isHalf, sizeMm, settings));
  const highestMm = Math.max(settings.highestRow * sizeMm, heightMm / MOST_ROWS);
  const rowsOf = layers.map(({ thicknessMm }) =>
    Math.max(settings.leastRows, Math.ceil(thicknessMm / highestMm - 1e-9)),
  );
  const columns = yMm.length - 1;
  const rows = rowsOf.reduce((sum, count) => sum + count, 0);
  const zMm = new Float64Array(rows + 1);
  const inPlaneMpa = new Float64Array(columns * rows);
  const throughMpa = new Float64Array(columns * rows);
  let row = 0;
  layers.forEach(({ thicknessMm, parts }, index) => {
    const count = rowsOf[index] ?? 1;
    const bottom = zMm[row] ?? 0;
    for (let i = 1; i <= count; i++) zMm[row + i] = bottom + (thicknessMm * i) / count;
    for (let column = 0; column < columns; column++) {
      const middle = ((yMm[column] ?? 0) + (yMm[column + 1] ?? 0)) / 2;
      const part = parts.find(({ fromMm, toMm }) => middle > fromMm && middle < toMm);
      if (!part) continue;
      inPlaneMpa.fill(part.inPlaneMpa, column * rows + row, column * rows + row + count);
      throughMpa.fill(part.throughMpa, column * rows + row, column * rows + row + count);
    }
    row += count;
  });
  return { columns, rows, yMm, zMm, inPlaneMpa, throughMpa };
}

/** Where parts begin and end, ascending. */
function breaksOf(layers: TwistSection["layers"], isHalf: boolean): readonly number[] {
  const ends = layers.flatMap(({ parts }) => parts.flatMap(({ fromMm, toMm }) => [fromMm, toMm]));
  const sorted = (isHalf ? [0, ...ends.filter((y) => y > 0)] : ends).sort((a, b) => a - b);
  const apart = SAME_LINE * ((sorted.at(-1) ?? 0) - (sorted[0] ?? 0));
  const kept: number[] = [];
  for (const y of sorted) {
    if (kept.length === 0 || y - (kept.at(-1) ?? 0) > apart) kept.push(y);
  }
  return kept;
}

/** Every piece between two breaks is cut by the distance to the nearest free edge. */
function columnLines(
  breaks: readonly number[],
  isHalf: boolean,
  sizeMm: number,
  { edgeColumn, growth, leastAtEdge }: MeshSettings,
): number[] {
  const right = breaks.at(-1) ?? 0;
  const left = isHalf ? -right : (breaks[0] ?? 0);
  const middle = (left + right) / 2;
  const least = edgeColumn * sizeMm;
  const lines: number[] = [];
  const cut = (from: number, to: number) => {
    const mirrored = from + to < 2 * middle;
    const near = mirrored ? from - left : right - to;
    const far = mirrored ? to - left : right - from;
    const offsets = graded(near, far, least, growth, near === 0 ? leastAtEdge : 1);
    if (mirrored) lines.push(...offsets.map((offset) => left + offset));
    else lines.push(...offsets.reverse().map((offset) => right - offset));
  };
  breaks.forEach((from, i) => {
    const to = breaks[i + 1];
    if (to === undefined) return;
    lines.push(from);
    if (from < middle && to > middle) {
      cut(from, middle);
      lines.push(middle);
      cut(middle, to);
    } else cut(from, to);
  });
  lines.push(right);
  return lines;
}

/** Inner lines of a piece from `near` to `far` off the edge, steps of about least + growth·distance, ascending. */
function graded(near: number, far: number, least: number, growth: number, leastColumns: number): number[] {
  const start = least + growth * near;
  const ratio = portableLog((least + growth * far) / start);
  const count = Math.max(leastColumns, Math.ceil(ratio / growth - 1e-9));
  return Array.from({ length: Math.max(0, count - 1) }, (_, i) => {
    const grown = start * portableExp((ratio * (i + 1)) / count);
    return (grown - least) / growth;
  });
}

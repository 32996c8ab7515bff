/** Paper sizes, inks and line weights of everything printed. All lengths in points (1/72 in) unless named otherwise. */
import type { Paper } from "./facts";

export const PT_PER_MM = 72 / 25.4;

/** Inks that stay apart in greyscale; meaning never rests on colour alone. */
export const INK = "#1B2023";
export const PENCIL = "#5B5F60";
export const RULE = "#B3AA9A";
export const LARCH = "#A3440F";
export const TINT = "#F1EDE4";
export const WHITE = "#FFFFFF";

export const HAIRLINE = 0.35;
export const THIN = 0.6;

export interface PageBox {
  readonly paper: Paper;
  readonly orientation: "portrait" | "landscape";
  readonly widthPt: number;
  readonly heightPt: number;
  readonly marginPt: number;
  /** Between the margins. */
  readonly innerPt: number;
}

const PAPER_MM: Readonly<Record<Paper, readonly [number, number]>> = { A4: [210, 297], LETTER: [215.9, 279.4] };
const MARGIN_MM = 11;

export function pageBox(paper: Paper, orientation: "portrait" | "landscape"): PageBox {
  const [short, long] = PAPER_MM[paper];
  const [widthMm, heightMm] = orientation === "portrait" ? [short, long] : [long, short];
  const marginPt = MARGIN_MM * PT_PER_MM;
  const widthPt = widthMm * PT_PER_MM;
  return {
    paper,
    orientation,
    widthPt,
    heightPt: heightMm * PT_PER_MM,
    marginPt,
    innerPt: widthPt - 2 * marginPt,
  };
}

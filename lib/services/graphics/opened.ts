/** A file that was opened, or what is wrong with it; and how large a drawing is drawn. */
import type { RawPicture } from "./raw-tiff";
import type { SvgFault } from "./svg-guard";

export type Opened =
  /** For the image library, at this many dots an inch where it has none of its own. */
  | { readonly is: "file"; readonly input: Uint8Array | string; readonly density?: number }
  | { readonly is: "raw"; readonly picture: RawPicture; readonly isClear: boolean }
  | PictureFault;

/** What is wrong with a file. */
export type PictureFault =
  | { readonly is: "too-many-pixels"; readonly widthPx: number | null; readonly heightPx: number | null }
  | { readonly is: "svg"; readonly fault: SvgFault; readonly found: string }
  /** A PDF with a password. */
  | { readonly is: "locked" }
  | { readonly is: "cut-off" }
  | { readonly is: "unreadable" };

/**
 * Drawings have no pixels of their own: at the most this many along and in all. 12,000 along the longest ski is 157 dots an
 * inch; 24 million are 6,000 × 4,000.
 */
const drawnPx = { along: 12_000, inAll: 24_000_000 } as const;

/** Pixels for each unit of a drawing. */
export function drawnScale(width: number, height: number, mostPixels: number): number {
  const inAll = Math.min(drawnPx.inAll, mostPixels);
  return Math.min(drawnPx.along / Math.max(width, height), Math.sqrt(inAll / (width * height)));
}

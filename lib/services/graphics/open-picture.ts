/** Opens a file of a known type: what the image library reads stays as it is, the rest is drawn or decoded to pixels first. */
import { readFile } from "node:fs/promises";
import sharp from "sharp";
import type { RawPicture } from "./raw-tiff";
import type { ArtworkType } from "./sniff";
import { type SvgFault, svgFault } from "./svg-guard";

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
  /** A PDF without a page that has a size. */
  | { readonly is: "no-page" }
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

/** @throws Error when the disk or a library fails, other than over what is in the file */
export async function openPicture(
  picture: Uint8Array | string,
  type: ArtworkType,
  mostPixels: number,
): Promise<Opened> {
  switch (type) {
    case "heic":
      return (await import("./draw-heic")).openHeic(await bytesOf(picture), mostPixels);
    case "pdf":
      return (await import("./draw-pdf")).openPdf(await bytesOf(picture), mostPixels);
    case "svg":
      return openSvg(await bytesOf(picture), mostPixels);
    default:
      return { is: "file", input: picture };
  }
}

async function bytesOf(picture: Uint8Array | string): Promise<Uint8Array> {
  return typeof picture === "string" ? readFile(picture) : picture;
}

/** CSS pixels are 1/96 inch, the library's drawings begin at 72 dots an inch. */
const plainDensity = 72;
const densities = { least: 1, most: 100_000 } as const;

async function openSvg(bytes: Uint8Array, mostPixels: number): Promise<Opened> {
  const fault = svgFault(bytes);
  if (fault) return { is: "svg", ...fault };
  const { width, height } = await sharp(bytes, { density: plainDensity, limitInputPixels: false }).metadata();
  const density = plainDensity * drawnScale(width, height, mostPixels);
  return { is: "file", input: bytes, density: Math.min(densities.most, Math.max(densities.least, density)) };
}

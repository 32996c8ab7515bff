/** Opens a file of a known type: what the image library reads stays as it is, the rest is drawn or decoded to pixels first. */
import { readFile } from "node:fs/promises";
import sharp from "sharp";
import { drawnScale, type Opened } from "./opened";
import type { ArtworkType } from "./sniff";
import { svgFault } from "./svg-guard";

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

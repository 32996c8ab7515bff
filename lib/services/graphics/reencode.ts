/** Pixels in, pixels out: turns a picture upright, makes it sRGB and writes it anew, whole and small. Knows no shop. */
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import path from "node:path";
import sharp from "sharp";
import { openPicture } from "./open-picture";
import type { Opened, PictureFault } from "./opened";
import { rawTiff } from "./raw-tiff";
import type { ArtworkType } from "./sniff";

const previewPx = 1600;

sharp.cache(false);
sharp.concurrency(1);

export interface ToReencode {
  /** The picture, or the file it is in. */
  readonly picture: Uint8Array | string;
  readonly type: ArtworkType;
  /** A folder of its own; the two pictures are put there. */
  readonly into: string;
  readonly mostPixels: number;
  /** Of the shorter side. */
  readonly leastPx: number;
}

export interface WrittenPicture {
  readonly size: "full" | "preview";
  readonly contentType: "image/png" | "image/jpeg";
  readonly file: string;
}

export type Reencoded =
  | PictureFault
  | { readonly is: "too-small"; readonly widthPx: number; readonly heightPx: number }
  | {
      readonly is: "done";
      readonly widthPx: number;
      readonly heightPx: number;
      /** Of the whole one, lower-case hex. */
      readonly sha256: string;
      readonly images: readonly WrittenPicture[];
    };

/** What is wrong with the picture is an answer. @throws Error when the disk fails */
export async function reencode(asked: ToReencode): Promise<Reencoded> {
  try {
    const opened = await openPicture(asked.picture, asked.type, asked.mostPixels);
    return opened.is === "file" || opened.is === "raw" ? await written(opened, asked) : opened;
  } catch (error) {
    return faultOf(error);
  }
}

type Open = Extract<Opened, { readonly is: "file" | "raw" }>;

async function written(opened: Open, { into, mostPixels, leastPx }: ToReencode): Promise<Reencoded> {
  const settings = { limitInputPixels: mostPixels, failOn: "error" as const, sequentialRead: true };
  const input = opened.is === "raw" ? rawTiff(opened.picture) : opened.input;
  const how = opened.is === "file" && opened.density ? { ...settings, density: opened.density } : settings;
  // The head alone is read for its numbers, however large the picture says it is.
  const { width, height, hasAlpha } = await sharp(input, { ...how, limitInputPixels: false }).metadata();
  if (width * height > mostPixels) return { is: "too-many-pixels", widthPx: width, heightPx: height };
  if (Math.min(width, height) < leastPx) return { is: "too-small", widthPx: width, heightPx: height };
  const isClear = opened.is === "raw" ? opened.isClear : hasAlpha;
  const full = path.join(into, "full");
  const preview = path.join(into, "preview");
  const turned = sharp(input, how).autoOrient().toColourspace("srgb");
  const upright = isClear ? turned : turned.flatten({ background: "#ffffff" });
  // Optimal Huffman tables of a JPEG need all of it in memory at once, twelve bytes a pixel, for a few per cent of its size.
  const { width: widthPx, height: heightPx } = await (isClear
    ? upright.png({ compressionLevel: 6 })
    : upright.jpeg({ quality: 95, chromaSubsampling: "4:4:4", optimiseCoding: false })
  ).toFile(full);
  const small = sharp(full, settings).resize(previewPx, previewPx, { fit: "inside", withoutEnlargement: true });
  await (isClear ? small.png() : small.jpeg({ quality: 85 })).toFile(preview);
  const contentType = isClear ? "image/png" : "image/jpeg";
  const sha256 = createHash("sha256")
    .update(await readFile(full))
    .digest("hex");
  return {
    is: "done",
    widthPx,
    heightPx,
    sha256,
    images: [
      { size: "full", contentType, file: full },
      { size: "preview", contentType, file: preview },
    ],
  };
}

/** The libraries tell in words alone what is wrong. */
function faultOf(error: unknown): Reencoded {
  const reason = error instanceof Error ? error.message : String(error);
  // The disk's fault and no picture's.
  if ((error instanceof Error && "code" in error) || /no space left|unix error/i.test(reason)) throw error;
  if (/pixel limit/i.test(reason)) return { is: "too-many-pixels", widthPx: null, heightPx: null };
  const isCut =
    /premature|truncated|unexpected end|not enough|end of (file|stream|data)|libpng read error|read error|outside of file|cannot read full|bad seek/i.test(
      reason,
    );
  return { is: isCut ? "cut-off" : "unreadable" };
}

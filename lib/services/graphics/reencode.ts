/** Pixels in, pixels out: turns a picture upright, makes it sRGB and writes it anew, whole and small. Knows no shop. */
import { createHash } from "node:crypto";
import { readFile } from "node:fs/promises";
import path from "node:path";
import sharp from "sharp";

const previewPx = 1600;

sharp.cache(false);
sharp.concurrency(1);

export interface ToReencode {
  /** The picture, or the file it is in. */
  readonly picture: Uint8Array | string;
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
  | { readonly is: "too-many-pixels"; readonly widthPx: number | null; readonly heightPx: number | null }
  | { readonly is: "too-small"; readonly widthPx: number; readonly heightPx: number }
  | { readonly is: "unreadable" }
  | {
      readonly is: "done";
      readonly widthPx: number;
      readonly heightPx: number;
      /** Of the whole one, lower-case hex. */
      readonly sha256: string;
      readonly images: readonly WrittenPicture[];
    };

/** What is wrong with the picture is an answer. @throws Error when the disk fails */
export async function reencode({ picture, into, mostPixels, leastPx }: ToReencode): Promise<Reencoded> {
  const settings = { limitInputPixels: mostPixels, failOn: "error" as const, sequentialRead: true };
  try {
    const { width, height, hasAlpha } = await sharp(picture, settings).metadata();
    if (width * height > mostPixels) return { is: "too-many-pixels", widthPx: width, heightPx: height };
    if (Math.min(width, height) < leastPx) return { is: "too-small", widthPx: width, heightPx: height };
    const full = path.join(into, "full");
    const preview = path.join(into, "preview");
    const upright = sharp(picture, settings).autoOrient().toColourspace("srgb");
    // Optimal Huffman tables of a JPEG need all of it in memory at once, twelve bytes a pixel, for a few per cent of its size.
    const { width: widthPx, height: heightPx } = await (hasAlpha
      ? upright.png({ compressionLevel: 6 })
      : upright.jpeg({ quality: 95, chromaSubsampling: "4:4:4", optimiseCoding: false })
    ).toFile(full);
    const small = sharp(full, settings).resize(previewPx, previewPx, { fit: "inside", withoutEnlargement: true });
    await (hasAlpha ? small.png() : small.jpeg({ quality: 85 })).toFile(preview);
    const contentType = hasAlpha ? "image/png" : "image/jpeg";
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
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    // The disk's fault and no picture's: libvips tells it in words alone.
    if ((error instanceof Error && "code" in error) || /no space left|unix error/i.test(reason)) throw error;
    return /pixel limit/i.test(reason)
      ? { is: "too-many-pixels", widthPx: null, heightPx: null }
      : { is: "unreadable" };
  }
}

/**
 * Takes a picture in: told by its first bytes, measured, and re-encoded, so that nothing of the file itself is ever
 * served. Limits from the shop's print process; a 60 MB file of 120 million pixels covers a ski at 300 dpi.
 */
import { webcrypto } from "node:crypto";
import { open } from "node:fs/promises";
import sharp from "sharp";
import { config } from "#config";
import type { ArtworkImageBytes } from "#data/artwork";
import { accept, type Outcome, refuse } from "#engine/units";

export const artworkLimits = { bytes: 60 * 1024 * 1024, leastPx: 50 } as const;
const previewPx = 1600;

sharp.cache(false);
sharp.concurrency(1);

export type ArtworkType = "jpeg" | "png" | "webp" | "tiff";

export interface DecodedArtwork {
  readonly type: ArtworkType;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Of the bytes that are kept. */
  readonly sha256: string;
  readonly images: readonly ArtworkImageBytes[];
}

/** What the first bytes say; the file's name and declared type are not asked. */
export function sniffType(bytes: Uint8Array): ArtworkType | "svg" | "unknown" {
  const starts = (...signature: readonly number[]) => signature.every((byte, index) => bytes[index] === byte);
  if (starts(0xff, 0xd8, 0xff)) return "jpeg";
  if (starts(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return "png";
  const ascii = (from: number, to: number) => String.fromCharCode(...bytes.subarray(from, to));
  if (ascii(0, 4) === "RIFF" && ascii(8, 12) === "WEBP") return "webp";
  if (starts(0x49, 0x49, 0x2a, 0x00) || starts(0x4d, 0x4d, 0x00, 0x2a)) return "tiff";
  return /<svg[\s>]|<!doctype\s+svg/i.test(ascii(0, 1024)) ? "svg" : "unknown";
}

/** A picture that was sent: its bytes, or the file they were streamed into. */
export type PictureInput = Uint8Array | { readonly file: string; readonly size: number };

async function firstBytes(input: PictureInput): Promise<Uint8Array> {
  if (input instanceof Uint8Array) return input.subarray(0, 1024);
  const handle = await open(input.file, "r");
  try {
    const { buffer, bytesRead } = await handle.read(new Uint8Array(1024), 0, 1024, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

/** Decoding and hashing happen off the server's thread. */
export async function decodeArtwork(input: PictureInput): Promise<Outcome<DecodedArtwork>> {
  const path = "file";
  const size = input instanceof Uint8Array ? input.byteLength : input.size;
  if (size > artworkLimits.bytes) {
    return refuse({ code: "artwork-too-big", path, bytes: size, mostBytes: artworkLimits.bytes });
  }
  const type = sniffType(await firstBytes(input));
  if (type === "svg" || type === "unknown") {
    return refuse({ code: "artwork-type", path, found: type, allowed: ["jpeg", "png", "webp", "tiff"] });
  }
  try {
    return await reencode(input instanceof Uint8Array ? input : input.file, type);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    if (/pixel limit/i.test(reason)) return tooManyPixels(null, null);
    return refuse({ code: "artwork-unreadable", path, type });
  }
}

async function reencode(picture: Uint8Array | string, type: ArtworkType): Promise<Outcome<DecodedArtwork>> {
  const settings = { limitInputPixels: config().mostPixels, failOn: "error" as const, sequentialRead: true };
  const { width, height, hasAlpha } = await sharp(picture, settings).metadata();
  if (width * height > config().mostPixels) return tooManyPixels(width, height);
  if (Math.min(width, height) < artworkLimits.leastPx) {
    const leastPx = artworkLimits.leastPx;
    return refuse({ code: "artwork-too-small", path: "file", widthPx: width, heightPx: height, leastPx });
  }
  const upright = () => sharp(picture, settings).autoOrient().toColourspace("srgb");
  const full = hasAlpha
    ? await upright().png({ compressionLevel: 6 }).toBuffer({ resolveWithObject: true })
    : await upright().jpeg({ quality: 95, chromaSubsampling: "4:4:4" }).toBuffer({ resolveWithObject: true });
  const small = sharp(full.data, settings).resize(previewPx, previewPx, { fit: "inside", withoutEnlargement: true });
  const preview = hasAlpha ? await small.png().toBuffer() : await small.jpeg({ quality: 85 }).toBuffer();
  const contentType = hasAlpha ? "image/png" : "image/jpeg";
  return accept({
    type,
    widthPx: full.info.width,
    heightPx: full.info.height,
    sha256: Buffer.from(await webcrypto.subtle.digest("SHA-256", full.data)).toString("hex"),
    images: [
      { size: "full", contentType, bytes: full.data },
      { size: "preview", contentType, bytes: preview },
    ],
  });
}

function tooManyPixels(widthPx: number | null, heightPx: number | null) {
  const mostPixels = config().mostPixels;
  return refuse({ code: "artwork-too-many-pixels", path: "file", widthPx, heightPx, mostPixels });
}

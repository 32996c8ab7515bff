/** What a file is by its first bytes; its name and declared type are not asked. */

/** Pictures that are taken in. */
export const artworkTypes = ["jpeg", "png", "webp", "tiff", "avif", "heic", "svg", "pdf"] as const;

export type ArtworkType = (typeof artworkTypes)[number];

/** What people send besides, told by name so that the refusal can say what to do with it. */
export type OtherFile = "gif" | "heic-sequence" | "video" | "photoshop" | "postscript" | "svgz" | "bmp" | "unknown";

/** The marks of ISO 14496-12 files: `ftyp`, the brand that the file chiefly is, then those that it also is. */
function sniffBoxes(ascii: (from: number, to: number) => string): ArtworkType | OtherFile {
  const chief = ascii(8, 12);
  const also = ascii(16, 64);
  if (chief === "avif" || chief === "avis") return "avif";
  if (/^(hevc|hevx|hevm|hevs|msf1)$/.test(chief)) return "heic-sequence";
  if (/^(heic|heix|heim|heis)$/.test(chief)) return "heic";
  if (chief === "mif1") return also.includes("avif") ? "avif" : "heic";
  return "video";
}

/** Enough of a file to know it by. */
export const sniffedBytes = 1024;

/**
 * @param bytes the first `sniffedBytes` of the file
 * Signatures: JPEG ITU-T T.81, PNG ISO/IEC 15948, WebP RFC 9649, TIFF 6.0, HEIF ISO/IEC 23008-12, PDF ISO 32000-1.
 */
export function sniffType(bytes: Uint8Array): ArtworkType | OtherFile {
  const starts = (...signature: readonly number[]) => signature.every((byte, index) => bytes[index] === byte);
  const ascii = (from: number, to: number) => String.fromCharCode(...bytes.subarray(from, to));
  if (starts(0xff, 0xd8, 0xff)) return "jpeg";
  if (starts(0x89, 0x50, 0x4e, 0x47, 0x0d, 0x0a, 0x1a, 0x0a)) return "png";
  if (ascii(0, 4) === "RIFF" && ascii(8, 12) === "WEBP") return "webp";
  if (starts(0x49, 0x49, 0x2a, 0x00) || starts(0x4d, 0x4d, 0x00, 0x2a)) return "tiff";
  if (ascii(4, 8) === "ftyp") return sniffBoxes(ascii);
  const head = ascii(0, sniffedBytes);
  if (head.includes("%PDF-")) return "pdf";
  if (/<svg[\s>]|<!doctype\s+svg/i.test(head)) return "svg";
  if (head.startsWith("GIF8")) return "gif";
  if (head.startsWith("8BPS")) return "photoshop";
  if (head.startsWith("%!PS")) return "postscript";
  if (starts(0x1f, 0x8b)) return "svgz";
  return head.startsWith("BM") ? "bmp" : "unknown";
}

/**
 * Bytes that a file has at the least by what its head says; 0 where the head says nothing. A shorter one was cut off.
 * WebP: the length of its RIFF (RFC 9649, 2.4); TIFF: where its first directory stands (TIFF 6.0, section 2).
 */
export function leastBytes(type: ArtworkType, bytes: Uint8Array): number {
  if (bytes.length < 8) return 8;
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (type === "webp") return view.getUint32(4, true) + 8;
  return type === "tiff" ? view.getUint32(4, bytes[0] === 0x49) : 0;
}

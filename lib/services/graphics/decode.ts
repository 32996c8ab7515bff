/**
 * Takes a picture in: told by its first bytes, measured, and re-encoded, so that nothing of the file itself is ever
 * served. Limits from the shop's print process; a 60 MB file of 120 million pixels covers a ski at 300 dpi.
 */
import { fork } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdtemp, open, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { config } from "#config";
import type { ArtworkImageBytes } from "#data/artwork";
import { accept, type Outcome, refuse } from "#engine/units";
import type { PictureAnswer } from "./picture-process";
import type { Reencoded, ToReencode } from "./reencode";

export const artworkLimits = { bytes: 60 * 1024 * 1024, leastPx: 50 } as const;

/** Relative to the working directory, where the scripts put it before anything decodes. */
const program = path.join(".cache", "picture-process.mjs");
/** Longer than the largest picture takes on a slow machine. */
const patienceMs = 120_000;

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

/**
 * In a process of its own. Refuses `artwork-too-big`, `artwork-type`, `artwork-unreadable`, `artwork-too-many-pixels`,
 * `artwork-too-small`.
 * @throws Error when that process fails
 */
export async function decodeArtwork(input: PictureInput): Promise<Outcome<DecodedArtwork>> {
  const size = input instanceof Uint8Array ? input.byteLength : input.size;
  if (size > artworkLimits.bytes) {
    return refuse({ code: "artwork-too-big", path: "file", bytes: size, mostBytes: artworkLimits.bytes });
  }
  const type = sniffType(await firstBytes(input));
  if (type === "svg" || type === "unknown") {
    return refuse({ code: "artwork-type", path: "file", found: type, allowed: ["jpeg", "png", "webp", "tiff"] });
  }
  // Beside the file, which lies in the shop's own folder, so that what a killed server leaves stays there.
  const into = await mkdtemp(
    input instanceof Uint8Array ? path.join(tmpdir(), "pairwright-picture-") : `${input.file}-`,
  );
  try {
    const { mostPixels } = config();
    const picture = input instanceof Uint8Array ? input : input.file;
    return await outcomeOf(await reencodedApart({ picture, into, mostPixels, leastPx: artworkLimits.leastPx }), type);
  } finally {
    await rm(into, { recursive: true, force: true });
  }
}

async function outcomeOf(answer: Reencoded, type: ArtworkType): Promise<Outcome<DecodedArtwork>> {
  const at = { path: "file" } as const;
  if (answer.is === "unreadable") return refuse({ code: "artwork-unreadable", ...at, type });
  if (answer.is === "done") {
    const { widthPx, heightPx, sha256, images } = answer;
    const read = images.map(async ({ file, ...image }) => ({ ...image, bytes: await readFile(file) }));
    return accept({ type, widthPx, heightPx, sha256, images: await Promise.all(read) });
  }
  const { widthPx, heightPx } = answer;
  if (answer.is === "too-small") {
    return refuse({ code: "artwork-too-small", ...at, widthPx, heightPx, leastPx: artworkLimits.leastPx });
  }
  return refuse({ code: "artwork-too-many-pixels", ...at, widthPx, heightPx, mostPixels: config().mostPixels });
}

/** Where the process's program is absent (the command line, tests) the picture is decoded in this one. */
async function reencodedApart(asked: ToReencode): Promise<Reencoded> {
  const file = path.resolve(/* turbopackIgnore: true */ program);
  if (!existsSync(/* turbopackIgnore: true */ file)) {
    const { reencode } = await import(/* turbopackIgnore: true */ "./reencode");
    return reencode(asked);
  }
  return new Promise((resolve, reject) => {
    const child = fork(/* turbopackIgnore: true */ file, [], {
      execArgv: [],
      serialization: "advanced",
      stdio: ["ignore", "ignore", "ignore", "ipc"],
      timeout: patienceMs,
    });
    child.once("message", (answer: PictureAnswer) => {
      if (answer.is === "fault") reject(new Error(answer.message));
      else resolve(answer);
    });
    child.once("error", reject);
    child.once("exit", (code, signal) =>
      reject(new Error(`the process that decodes pictures ended with ${signal ?? code}`)),
    );
    child.send(asked);
  });
}

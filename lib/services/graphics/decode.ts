/**
 * Takes a picture in: told by its first bytes, measured, drawn where it is a drawing, and re-encoded, so that nothing of the
 * file itself is ever served. Limits from the shop's print process; a 60 MB file of 120 million pixels covers a ski at 300 dpi.
 */
import { fork } from "node:child_process";
import { existsSync } from "node:fs";
import { mkdtemp, open, readFile, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import path from "node:path";
import { config } from "#config";
import type { ArtworkImageBytes } from "#data/artwork";
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import type { PictureAnswer } from "./picture-process";
import type { Reencoded, ToReencode } from "./reencode";
import { type ArtworkType, artworkTypes, leastBytes, sniffedBytes, sniffType } from "./sniff";

export const artworkLimits = { bytes: 60 * 1024 * 1024, leastPx: 50 } as const;

/** Relative to the working directory, where the scripts put it before anything decodes. */
const program = path.join(".cache", "picture-process.mjs");
/** Longer than the largest picture takes on a slow machine; a drawing may ask for ever. */
const patienceMs = 120_000;
const millisecondsASecond = 1000;

export interface DecodedArtwork {
  readonly type: ArtworkType;
  readonly widthPx: number;
  readonly heightPx: number;
  /** Of the bytes that are kept. */
  readonly sha256: string;
  readonly images: readonly ArtworkImageBytes[];
}

/** A picture that was sent: its bytes, or the file they were streamed into. */
export type PictureInput = Uint8Array | { readonly file: string; readonly size: number };

async function firstBytes(input: PictureInput): Promise<Uint8Array> {
  if (input instanceof Uint8Array) return input.subarray(0, sniffedBytes);
  const handle = await open(input.file, "r");
  try {
    const { buffer, bytesRead } = await handle.read(new Uint8Array(sniffedBytes), 0, sniffedBytes, 0);
    return buffer.subarray(0, bytesRead);
  } finally {
    await handle.close();
  }
}

/**
 * In a process of its own. Refuses `artwork-too-big`, `artwork-type-…`, `artwork-unreadable`, `artwork-cut-off`,
 * `artwork-locked`, `artwork-svg-…`, `artwork-too-many-pixels`, `artwork-too-small`, `artwork-too-slow`.
 * @throws Error when that process fails
 */
export async function decodeArtwork(input: PictureInput): Promise<Outcome<DecodedArtwork>> {
  const size = input instanceof Uint8Array ? input.byteLength : input.size;
  if (size > artworkLimits.bytes) {
    return refuse({ code: "artwork-too-big", path: "file", megabytes: inMegabytes(size), mostMegabytes });
  }
  const first = await firstBytes(input);
  const found = sniffType(first);
  const type = artworkTypes.find((each) => each === found);
  if (type === undefined) return refuse({ code: `artwork-type-${found}`, path: "file", found });
  if (size < leastBytes(type, first)) {
    return refuse({ code: "artwork-cut-off", path: "file", type: type.toUpperCase() });
  }
  // Beside the file, which lies in the shop's own folder, so that what a killed server leaves stays there.
  const into = await mkdtemp(
    input instanceof Uint8Array ? path.join(tmpdir(), "pairwright-picture-") : `${input.file}-`,
  );
  try {
    const { mostPixels } = config();
    const picture = input instanceof Uint8Array ? input : input.file;
    const { leastPx } = artworkLimits;
    return await outcomeOf(await reencodedApart({ picture, type, into, mostPixels, leastPx }), type);
  } finally {
    await rm(into, { recursive: true, force: true });
  }
}

const bytesAMegabyte = 1024 * 1024;
const mostMegabytes = artworkLimits.bytes / bytesAMegabyte;
/** Up, so that a file over the limit is not told as the limit. */
const inMegabytes = (bytes: number) => Math.ceil((10 * bytes) / bytesAMegabyte) / 10;

type Answer = Reencoded | { readonly is: "too-slow" };

async function outcomeOf(answer: Answer, type: ArtworkType): Promise<Outcome<DecodedArtwork>> {
  const at = { path: "file", type: type.toUpperCase() } as const;
  switch (answer.is) {
    case "done": {
      const { widthPx, heightPx, sha256, images } = answer;
      const read = images.map(async ({ file, ...image }) => ({ ...image, bytes: await readFile(file) }));
      return accept({ type, widthPx, heightPx, sha256, images: await Promise.all(read) });
    }
    case "svg":
      return refuse({ code: `artwork-svg-${answer.fault}`, ...at, found: answer.found });
    case "too-small": {
      const { widthPx, heightPx } = answer;
      return refuse({ code: "artwork-too-small", ...at, widthPx, heightPx, leastPx: artworkLimits.leastPx });
    }
    case "too-many-pixels":
      return refuse(tooManyPixels(answer, at));
    case "too-slow":
      return refuse({ code: "artwork-too-slow", ...at, seconds: patienceMs / millisecondsASecond });
    default:
      return refuse({ code: `artwork-${answer.is}`, ...at });
  }
}

/** In millions, as a camera's pixels are told. */
function tooManyPixels(
  { widthPx, heightPx }: { readonly widthPx: number | null; readonly heightPx: number | null },
  at: { readonly path: string; readonly type: string },
): Refusal {
  const { mostPixels } = config();
  const millions = (pixels: number) => Math.round(pixels / 1e5) / 10;
  if (widthPx === null || heightPx === null) {
    return { code: "artwork-pixels-uncounted", ...at, mostPixels, mostMegapixels: millions(mostPixels) };
  }
  const megapixels = millions(widthPx * heightPx);
  const most = { mostPixels, mostMegapixels: millions(mostPixels) };
  return { code: "artwork-too-many-pixels", ...at, widthPx, heightPx, megapixels, ...most };
}

/** Where the process's program is absent (the command line, tests) the picture is decoded in this one. */
async function reencodedApart(asked: ToReencode): Promise<Answer> {
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
    });
    let isLate = false;
    const patience = setTimeout(() => {
      isLate = true;
      child.kill("SIGKILL");
    }, patienceMs);
    child.once("message", (answer: PictureAnswer) => {
      if (answer.is === "fault") reject(new Error(answer.message));
      else resolve(answer);
    });
    child.once("error", reject);
    child.once("exit", (code, signal) => {
      clearTimeout(patience);
      if (isLate) resolve({ is: "too-slow" });
      else reject(new Error(`the process that decodes pictures ended with ${signal ?? code}`));
    });
    child.send(asked);
  });
}

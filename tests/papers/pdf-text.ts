/**
 * What a PDF says, for checks. pdftotext (Poppler) reads it where it is installed: an eye that is not ours. Where it is
 * not, a small reader of our own inflates the streams and maps glyphs back through the fonts' ToUnicode tables.
 */
import { execFileSync, spawnSync } from "node:child_process";
import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import path from "node:path";
import { inflateSync } from "node:zlib";

const hasPdftotext = spawnSync("pdftotext", ["-v"]).error === undefined;
if (!hasPdftotext) console.info("pdftotext is not installed: documents are read by the tests' own reader instead.");

/** Text page by page, white space made single. */
export function pdfPages(bytes: Uint8Array): readonly string[] {
  const pages = hasPdftotext ? readByPoppler(bytes) : readByOurselves(bytes);
  return pages.map((text) => text.replace(/\s+/g, " ").trim());
}

function readByPoppler(bytes: Uint8Array): readonly string[] {
  return pdftotext(bytes, "-enc", "UTF-8").split("\f").slice(0, -1);
}

function pdftotext(bytes: Uint8Array, ...options: readonly string[]): string {
  const folder = mkdtempSync(path.join(tmpdir(), "pdf-"));
  try {
    const file = path.join(folder, "document.pdf");
    writeFileSync(file, bytes);
    return execFileSync("pdftotext", [...options, file, "-"], { encoding: "utf8" });
  } finally {
    rmSync(folder, { recursive: true });
  }
}

/**
 * Text as it stands on the paper: what is printed on one line is on one line here, so that a number can be looked for beside
 * its name. Our own reader has the order of drawing, which is row by row as well.
 */
export function pdfLines(bytes: Uint8Array): readonly string[] {
  if (!hasPdftotext) return readByOurselves(bytes).map((text) => text.replace(/\s+/g, " ").trim());
  const lines = pdftotext(bytes, "-enc", "UTF-8", "-layout").split(/[\n\f]/);
  return lines.map((line) => line.replace(/\s+/g, " ").trim()).filter((line) => line !== "");
}

interface Word {
  readonly x1: number;
  readonly y1: number;
  readonly x2: number;
  readonly y2: number;
  readonly text: string;
}

/** Points that letters may share before they are unreadable, and the share of a line's height that leading may take. */
const TOUCHING_PT = 0.8;
const LEADING_SHARE = 0.45;
/** Printers cannot reach nearer than this to the paper's edge (common practice, no source): 4 mm. */
const UNPRINTABLE_PT = 11;

/** Words that stand on one another or run off the paper, by Poppler's boxes. */
export function collisions(bytes: Uint8Array): readonly string[] {
  return pdftotext(bytes, "-bbox")
    .split("<page ")
    .slice(1)
    .flatMap((page, index) => {
      const [width = 0, height = 0] = [...page.matchAll(/(?:width|height)="([\d.]+)"/g)].map((m) => Number(m[1]));
      const words = wordsOf(page);
      const off = words.filter(
        (w) =>
          w.x1 < UNPRINTABLE_PT ||
          w.y1 < UNPRINTABLE_PT ||
          w.x2 > width - UNPRINTABLE_PT ||
          w.y2 > height - UNPRINTABLE_PT,
      );
      const on = words.flatMap((a, i) =>
        words.slice(i + 1).flatMap((b) => (areOnEachOther(a, b) ? [`${a.text} on ${b.text}`] : [])),
      );
      return [...off.map((w) => `${w.text} off the paper`), ...on].map((words) => `page ${index + 1}: ${words}`);
    });
}

function wordsOf(page: string): readonly Word[] {
  const pattern = /<word xMin="([-\d.]+)" yMin="([-\d.]+)" xMax="([-\d.]+)" yMax="([-\d.]+)">(.*?)<\/word>/g;
  return [...page.matchAll(pattern)].map((m) => ({
    x1: Number(m[1]),
    y1: Number(m[2]),
    x2: Number(m[3]),
    y2: Number(m[4]),
    text: m[5] ?? "",
  }));
}

function areOnEachOther(a: Word, b: Word): boolean {
  const across = Math.min(a.x2, b.x2) - Math.max(a.x1, b.x1);
  const down = Math.min(a.y2, b.y2) - Math.max(a.y1, b.y1);
  return across > TOUCHING_PT && down > LEADING_SHARE * Math.min(a.y2 - a.y1, b.y2 - b.y1);
}

/** Objects of the file by number; streams inflated. */
function objectsOf(bytes: Uint8Array): Map<string, string> {
  const file = Buffer.from(bytes).toString("latin1");
  const objects = new Map<string, string>();
  for (const match of file.matchAll(/(\d+) 0 obj\r?\n([\s\S]*?)endobj/g)) {
    const body = match[2] ?? "";
    const at = body.indexOf("stream\n");
    const end = body.lastIndexOf("\nendstream");
    const packed = at >= 0 && body.includes("/FlateDecode");
    const data = packed ? inflate(body.slice(at + 7, end)) : "";
    objects.set(match[1] ?? "", packed ? `${body.slice(0, at)}\n${data}` : body);
  }
  return objects;
}

function inflate(data: string): string {
  try {
    return inflateSync(Buffer.from(data, "latin1")).toString("latin1");
  } catch {
    return "";
  }
}

function readByOurselves(bytes: Uint8Array): readonly string[] {
  const objects = objectsOf(bytes);
  const pages = [...objects.values()].filter((body) => /\/Type \/Page\b(?!s)/.test(body));
  return pages.map((page) => {
    const content = objects.get(/\/Contents (\d+) 0 R/.exec(page)?.[1] ?? "") ?? "";
    const resources = objects.get(/\/Resources (\d+) 0 R/.exec(page)?.[1] ?? "") ?? page;
    return textOf(content, resources, objects);
  });
}

function textOf(content: string, resources: string, objects: Map<string, string>): string {
  let map = new Map<number, string>();
  let text = "";
  for (const token of content.matchAll(/\/(F\d+) [\d.]+ Tf|\[([^\]]*)\] TJ|\bET\b/g)) {
    if (token[1]) map = unicodeMap(token[1], resources, objects);
    else if (token[2] === undefined) text += " ";
    else for (const hex of token[2].matchAll(/<([0-9a-f]+)>/gi)) text += glyphs(hex[1] ?? "", map);
  }
  return text;
}

function glyphs(hex: string, map: Map<number, string>): string {
  return (hex.match(/.{4}/g) ?? []).map((code) => map.get(Number.parseInt(code, 16)) ?? "").join("");
}

function unicodeMap(font: string, resources: string, objects: Map<string, string>): Map<number, string> {
  const fontObject = objects.get(new RegExp(`/${font} (\\d+) 0 R`).exec(resources)?.[1] ?? "") ?? "";
  const table = objects.get(/\/ToUnicode (\d+) 0 R/.exec(fontObject)?.[1] ?? "") ?? "";
  const map = new Map<number, string>();
  for (const range of table.matchAll(/<([0-9a-f]+)> <[0-9a-f]+> \[([^\]]*)\]/gi)) {
    let code = Number.parseInt(range[1] ?? "0", 16);
    for (const entry of (range[2] ?? "").matchAll(/<([0-9a-f ]*)>/gi)) {
      map.set(
        code,
        Buffer.from((entry[1] ?? "").replace(/ /g, ""), "hex")
          .swap16()
          .toString("utf16le"),
      );
      code += 1;
    }
  }
  return map;
}

/** Page boxes in points, in order. */
export function pageSizes(bytes: Uint8Array): readonly (readonly [number, number])[] {
  const pages = [...objectsOf(bytes).values()].filter((body) => /\/Type \/Page\b(?!s)/.test(body));
  return pages.map((page) => {
    const box = /\/MediaBox \[0 0 ([\d.]+) ([\d.]+)\]/.exec(page);
    return [Number(box?.[1]), Number(box?.[2])] as const;
  });
}

/** Names of the fonts that carry their own program, and of those that do not. */
export function fonts(bytes: Uint8Array): {
  readonly embedded: readonly string[];
  readonly missing: readonly string[];
} {
  const descriptors = [...objectsOf(bytes).values()].filter((body) => /\/Type \/FontDescriptor/.test(body));
  const nameOf = (body: string) => /\/FontName \/([^\s/]+)/.exec(body)?.[1] ?? "";
  const isEmbedded = (body: string) => /\/FontFile[23]? \d+ 0 R/.test(body);
  const standard = [...objectsOf(bytes).values()].filter((body) => /\/Subtype \/Type1\b/.test(body));
  return {
    embedded: descriptors.filter(isEmbedded).map(nameOf),
    missing: [
      ...descriptors.filter((body) => !isEmbedded(body)).map(nameOf),
      ...standard.map((body) => /\/BaseFont \/(\S+)/.exec(body)?.[1] ?? ""),
    ],
  };
}

export const readers = { readByPoppler, readByOurselves, hasPdftotext };

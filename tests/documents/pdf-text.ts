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

/** Whole text, white space made single, one string for all pages. */
export function pdfText(bytes: Uint8Array): string {
  return pdfPages(bytes).join(" ");
}

/** Text page by page. */
export function pdfPages(bytes: Uint8Array): readonly string[] {
  const pages = hasPdftotext ? readByPoppler(bytes) : readByOurselves(bytes);
  return pages.map((text) => text.replace(/\s+/g, " ").trim());
}

function readByPoppler(bytes: Uint8Array): readonly string[] {
  const folder = mkdtempSync(path.join(tmpdir(), "pdf-"));
  try {
    const file = path.join(folder, "document.pdf");
    writeFileSync(file, bytes);
    const text = execFileSync("pdftotext", ["-enc", "UTF-8", file, "-"], { encoding: "utf8" });
    return text.split("\f").slice(0, -1);
  } finally {
    rmSync(folder, { recursive: true });
  }
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

/** Every refusal that a person may meet has words. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";
import type { PictureFault } from "#services/graphics/opened";
import type { OtherFile } from "#services/graphics/sniff";
import type { SvgFault } from "#services/graphics/svg-guard";

const rooms = ["auth", "services", "engine/configuration", "engine/pricing", "engine/assessment", "engine/floor"];
/** Ways out of a conflict carry labels of their own; they are not refusals. */
const ways = ["designer"];

function sourcesOf(room: string): readonly string[] {
  const folder = path.join("lib", room);
  const files = readdirSync(folder, { recursive: true, encoding: "utf8" });
  return files.filter((file) => file.endsWith(".ts")).map((file) => path.join(folder, file));
}

/** Codes as they stand in the source: a code followed by a label is a way out, one followed by `;` a type. */
function codesInSource(): ReadonlyMap<string, string> {
  const codes = new Map<string, string>();
  for (const file of rooms.flatMap(sourcesOf)) {
    const text = readFileSync(file, "utf8");
    const plain = [...text.matchAll(/code: "([a-z][a-z0-9-]+)"(?!\s*,\s*label)(?!;)/g)];
    const chosen = [...text.matchAll(/code: [^",{}]*\? "([a-z][a-z0-9-]+)" : "([a-z][a-z0-9-]+)"/g)];
    for (const code of [...plain, ...chosen].flatMap((match) => match.slice(1))) {
      if (!ways.includes(code)) codes.set(code, file);
    }
  }
  return codes;
}

describe("content/copy/refusals.json", () => {
  const { copy, fit } = loadCatalog();

  it("has words for every refusal of services, auth and the engine", () => {
    const codes = codesInSource();
    expect(codes.size).toBeGreaterThan(40);
    const wordless = [...codes].filter(([code]) => copy.refusals[code] === undefined && !(code in fit.flags));
    expect(wordless).toEqual([]);
  });

  it("has words for whatever a file may be or have wrong", () => {
    const others: readonly OtherFile[] = [
      "gif",
      "heic-sequence",
      "video",
      "photoshop",
      "postscript",
      "svgz",
      "bmp",
      "unknown",
    ];
    const faults: readonly SvgFault[] = ["script", "entities", "outside", "foreign", "encoding", "too-long"];
    const rest: readonly PictureFault["is"][] = ["too-many-pixels", "locked", "cut-off", "unreadable"];
    const codes = [
      ...others.map((each) => `type-${each}`),
      ...faults.map((each) => `svg-${each}`),
      ...rest,
      "too-small",
    ];
    expect(codes.filter((code) => copy.refusals[`artwork-${code}`] === undefined)).toEqual([]);
  });
});

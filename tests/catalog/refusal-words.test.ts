/** Every refusal that a person may meet has words. */
import { readdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { loadCatalog } from "#catalog";

const rooms = ["auth", "services", "engine/configuration", "engine/pricing", "engine/assessment", "engine/floor"];
/** Ways out of a conflict and of a poor resolution carry labels of their own; they are not refusals. */
const ways = ["tile", "motif", "designer"];

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
});

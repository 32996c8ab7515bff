import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { sources } from "../support/sources";
import { unreachedExports } from "./reach";
import { testOnlyExports } from "./test-only-exports";

const framework =
  /^app\/(.*\/)?(page|layout|route|error|global-error|not-found|loading|icon|opengraph-image|manifest|robots)\.tsx?$/;
const root = path.resolve(import.meta.dirname, "../..");

/** Programs of their own, as the dead-code check knows them, and what the framework calls by its name. */
function entriesAmong(files: readonly string[]): readonly string[] {
  const { entry } = JSON.parse(readFileSync(path.join(root, "knip.json"), "utf8")) as { entry: readonly string[] };
  const programs = entry.filter((file) => /^(lib|prisma)\//.test(file));
  const roots = ["proxy.ts", "instrumentation.ts", "next.config.ts"];
  return files.filter((file) => framework.test(file) || programs.includes(file) || roots.includes(file));
}

describe("the doors of the house", () => {
  const files = sources("lib", "app", "prisma", "proxy.ts", "instrumentation.ts", "next.config.ts").map(
    (source) => source.path,
  );
  const entries = entriesAmong(files);
  const unreached = unreachedExports(files, entries);
  const inLib = [...unreached].flatMap(([file, names]) =>
    file.startsWith("lib/") ? names.map((name) => `${file} ${name}`) : [],
  );

  it("are all found", () => {
    expect(files.length).toBeGreaterThan(500);
    for (const program of ["proxy.ts", "lib/command/main.ts", "lib/papers/worker.ts", "prisma/seed.ts"])
      expect(entries).toContain(program);
    expect(entries.filter((file) => file.endsWith("page.tsx")).length).toBeGreaterThan(30);
  });

  it("lead to every export, but for those that are listed as only tested", () => {
    const listed = Object.entries(testOnlyExports).flatMap(([file, names]) => names.map((name) => `${file} ${name}`));
    // What is missing here is to be used, made private or deleted; the list only gets shorter.
    expect(inLib.filter((each) => !listed.includes(each))).toEqual([]);
    expect(listed.filter((each) => !inLib.includes(each))).toEqual([]);
  });

  it("lead to all of the engine but its handbook", () => {
    expect(inLib.filter((each) => each.startsWith("lib/engine/") && !each.startsWith("lib/engine/handbook/"))).toEqual(
      [],
    );
  });

  it("are said to be only for checks by every file of the handbook", () => {
    const pages = sources("lib/engine/handbook").filter(({ path: file }) => !file.endsWith("index.ts"));
    expect(pages.length).toBeGreaterThan(5);
    // A sentence may be broken over two lines of its comment.
    const silent = pages.filter(({ text }) => !/Only\s+checks/.test(text.replace(/\n \* /g, " ")));
    expect(silent.map(({ path: file }) => file)).toEqual([]);
  });
});

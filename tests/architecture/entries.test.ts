/** A clone has no packages yet when its first command runs, so what a command reads before it installs is Node's own. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { withoutComments } from "../support/sources";

const root = path.resolve(import.meta.dirname, "../..");
const { scripts } = JSON.parse(readFileSync(path.join(root, "package.json"), "utf8")) as {
  scripts: Record<string, string>;
};

const entries = Object.entries(scripts).flatMap(([name, command]) => {
  const file = /^node (\.ci\/\S+\.mjs)/.exec(command)?.[1];
  return file === undefined ? [] : [{ name, file }];
});

/** What a module imports by statements, so as soon as it is loaded. */
function importsOf(file: string): string[] {
  const text = withoutComments(readFileSync(file, "utf8"));
  return [...text.matchAll(/^(?:import|export)\s(?:[^"'`;]*?\sfrom\s)?"([^"]+)";$/gmu)].map((match) => match[1] ?? "");
}

/** Packages that a command loads before its first line runs, each with the file that names it. */
function packagesAtOnce(entry: string): string[] {
  const seen = new Set<string>();
  const found: string[] = [];
  const visit = (file: string) => {
    if (seen.has(file)) return;
    seen.add(file);
    for (const name of importsOf(file)) {
      if (name.startsWith(".")) visit(path.resolve(path.dirname(file), name));
      else if (!name.startsWith("node:")) found.push(`${path.relative(root, file)} imports ${name}`);
    }
  };
  visit(path.join(root, entry));
  return found;
}

describe("a command of a fresh clone", () => {
  it.each(entries)("npm run $name loads no package before it has installed them", ({ file }) => {
    expect(packagesAtOnce(file)).toEqual([]);
  });

  it("would be found out", () => {
    expect(packagesAtOnce(".ci/pictures/check.mjs")).toContain(".ci/pictures/compare.mjs imports sharp");
  });
});

/** Which tests are asked about a fault once it is known what each of them runs. */
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { usesOf } from "../../../.ci/mutants/graph.mjs";
import { resolverFor } from "../../../.ci/mutants/resolve.mjs";
import { openRuns, testsFor } from "../../../.ci/mutants/runs.mjs";
import { stampOf } from "../../../.ci/mutants/stamp.mjs";
import { temporaryFolder } from "../../support/child";

const lib = [
  "const limit = 5;",
  "export function one(a: number) {",
  "  return [a].map((each) => each + 1);",
  "}",
  "export function two(a: number) {",
  "  return a > limit;",
  "}",
  "export const three = [1].map(",
  "  // One by one.",
  "  (each) => each * 2,",
  ");",
].join("\n");
const files = {
  "lib/a.ts": lib,
  "tests/one.test.ts": 'import { one } from "../lib/a";\none(1);',
  "tests/both.test.ts": 'import { one, two } from "../lib/a";\none(1); two(2);',
  "tests/never.test.ts": 'import { one, two } from "../lib/a";\nif (late) one(1); else if (later) two(1);',
};
/** What these tests were seen to run: functions by the lines they begin on. */
const seen = { "tests/one.test.ts": [2, 3], "tests/both.test.ts": [2, 5, 8], "tests/never.test.ts": [] };

function house(changed: Readonly<Record<string, string>> = {}) {
  const root = temporaryFolder();
  const write = (all: Readonly<Record<string, string>>) => {
    for (const [file, text] of Object.entries(all)) {
      mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
      writeFileSync(path.join(root, file), text);
    }
  };
  write(files);
  const notes = Object.entries(seen).map(([test, lines]) => ({
    test,
    stamp: stampOf(root, test),
    seconds: 1,
    ran: { "lib/a.ts": [stampOf(root, "lib/a.ts"), ...lines] },
  }));
  writeFileSync(path.join(root, "notes.jsonl"), notes.map((note) => `${JSON.stringify(note)}\n`).join(""));
  write(changed);
  const runs = openRuns(root, path.join(root, "notes.jsonl"));
  const now = { ...files, ...changed };
  const uses = usesOf(
    Object.entries(now).map(([file, text]) => ({ file, text })),
    resolverFor(root),
  );
  const askedAt = (text: string) => {
    const start = now["lib/a.ts"].indexOf(text);
    const line = now["lib/a.ts"].slice(0, start).split("\n").length;
    return [...testsFor({ file: "lib/a.ts", line, start }, now["lib/a.ts"], [], { uses, runs }).keys()].sort();
  };
  return { runs, askedAt };
}

describe("what was noted", () => {
  it("decides: the tests that run the innermost function around the fault, and no other", () => {
    const { askedAt } = house();
    expect(askedAt("a > limit")).toEqual(["tests/both.test.ts"]);
    expect(askedAt("[a]")).toEqual(["tests/both.test.ts", "tests/one.test.ts"]);
    expect(askedAt("each + 1")).toEqual(["tests/one.test.ts"]);
  });

  it("knows a function that begins with a bracket by the word before it", () => {
    expect(house().askedAt("each * 2")).toEqual(["tests/both.test.ts"]);
  });

  it("leads from what stands outside of functions to those that use it", () => {
    expect(house().askedAt("5")).toEqual(["tests/both.test.ts"]);
  });

  it("is silent about a test that has changed since, or is new: the imports speak", () => {
    const added = { "tests/new.test.ts": 'import { two } from "../lib/a";\ntwo(1);' };
    const { runs, askedAt } = house({ ...added, "tests/never.test.ts": `${files["tests/never.test.ts"]} two(9);` });
    expect(askedAt("a > limit")).toEqual(["tests/both.test.ts", "tests/never.test.ts", "tests/new.test.ts"]);
    expect(Object.keys({ ...seen, ...added }).filter(runs.isStale)).toEqual([
      "tests/never.test.ts",
      "tests/new.test.ts",
    ]);
  });

  it("is silent about a product file that has changed since", () => {
    const { runs, askedAt } = house({ "lib/a.ts": `// Moved.\n${lib}` });
    expect(askedAt("a > limit")).toEqual(["tests/both.test.ts", "tests/never.test.ts"]);
    expect(Object.keys(seen).filter(runs.isStale)).toEqual(Object.keys(seen));
  });
});

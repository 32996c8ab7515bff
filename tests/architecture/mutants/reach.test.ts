/** Which tests could notice a fault: by declarations, through indexes, bundles and what is imported on demand. */
import { mkdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { usesOf } from "../../../.ci/mutants/graph.mjs";
import { inOrder } from "../../../.ci/mutants/judge.mjs";
import { openMemory } from "../../../.ci/mutants/memory.mjs";
import { resolverFor } from "../../../.ci/mutants/resolve.mjs";
import { temporaryFolder } from "../../support/child";

function project(files: Readonly<Record<string, string>>): string {
  const root = temporaryFolder();
  for (const [file, text] of Object.entries(files)) {
    mkdirSync(path.dirname(path.join(root, file)), { recursive: true });
    writeFileSync(path.join(root, file), text);
  }
  return root;
}

/** The tests that reach a line, in a project of these files. */
function testsAt(files: Readonly<Record<string, string>>, file: string, line: number): readonly string[] {
  const uses = usesOf(
    Object.entries(files)
      .filter(([name]) => /\.(tsx?|mjs)$/.test(name))
      .map(([name, text]) => ({ file: name, text })),
    resolverFor(project(files)),
  );
  return [...uses.reachedFrom(uses.unitAt(file, line)).keys()].filter((one) => one.includes(".test.")).sort();
}

describe("reach", () => {
  const room = {
    "lib/a.ts": "export function one() { return inner(); }\nexport const two = 2;\nfunction inner() { return 1; }\n",
    "lib/index.ts": 'export { one, two as second } from "./a";\nexport * from "./b";\n',
    "lib/b.ts": "export const three = 3;\n",
  };

  it("goes by declarations through an index: who asks for another export of the room does not count", () => {
    const files = {
      ...room,
      "tests/one.test.ts": 'import { one } from "../lib";\none();\n',
      "tests/two.test.ts": 'import { second } from "../lib";\nf(second);\n',
      "tests/three.test.ts": 'import { three } from "../lib";\nf(three);\n',
      "tests/all.test.ts": 'import * as room from "../lib";\nf(room);\n',
    };
    expect(testsAt(files, "lib/a.ts", 3)).toEqual(["tests/all.test.ts", "tests/one.test.ts"]);
    expect(testsAt(files, "lib/a.ts", 2)).toEqual(["tests/all.test.ts", "tests/two.test.ts"]);
    expect(testsAt(files, "lib/b.ts", 1)).toEqual(["tests/all.test.ts", "tests/three.test.ts"]);
  });

  it("counts neither types nor what is only imported for its type", () => {
    const files = {
      ...room,
      "tests/type.test.ts": 'import type { one } from "../lib";\nlet f: typeof one;\n',
    };
    expect(testsAt(files, "lib/a.ts", 1)).toEqual([]);
  });

  it("counts what runs on import, and what is imported on demand", () => {
    const files = {
      "lib/on-load.ts": "export const known = [];\nknown.push(start());\nfunction start() { return 1; }\n",
      "lib/late.ts": "export function late() { return 1; }\n",
      "lib/verb.ts": 'export async function verb() { return import("./late"); }\n',
      "tests/load.test.ts": 'import "../lib/on-load";\n',
      "tests/verb.test.ts": 'import { verb } from "../lib/verb";\nverb();\n',
    };
    expect(testsAt(files, "lib/on-load.ts", 3)).toEqual(["tests/load.test.ts"]);
    expect(testsAt(files, "lib/late.ts", 1)).toEqual(["tests/verb.test.ts"]);
  });

  it("follows a program that is bundled and spawned", () => {
    const files = {
      "lib/worker.ts": 'import { draw } from "./draw";\ndraw();\n',
      "lib/draw.ts": "export function draw() { return 1; }\n",
      "lib/render.ts": 'export function render() { return spawn("worker.mjs"); }\n',
      ".ci/verb.mjs": 'bundle("lib/worker.ts", "worker");\n',
      "tests/render.test.ts": 'import { render } from "../lib/render";\nrender();\n',
      "tests/script.test.ts": 'spawn(".ci/verb.mjs");\n',
    };
    expect(testsAt(files, "lib/draw.ts", 1)).toEqual(["tests/render.test.ts", "tests/script.test.ts"]);
  });

  it("understands the paths of the compiler and the imports of the package", () => {
    const files = {
      "tsconfig.json": '{ "compilerOptions": { "paths": { "@/*": ["./*"] } } }',
      "package.json":
        '{ "imports": { "#engine/*": "./lib/engine/*/index.ts", "#data/*": { "default": "./lib/data/*" } } }',
      "lib/engine/fit/index.ts": "export const a = 1;\n",
      "lib/data/rows.ts": "export const b = 1;\n",
    };
    const resolve = resolverFor(project(files));
    expect(resolve("@/lib/data/rows", "app/page.tsx")).toBe("lib/data/rows.ts");
    expect(resolve("#engine/fit", "app/page.tsx")).toBe("lib/engine/fit/index.ts");
    expect(resolve("#data/rows", "app/page.tsx")).toBe("lib/data/rows.ts");
    expect(resolve("./rows", "lib/data/client.ts")).toBe("lib/data/rows.ts");
    expect(resolve("../../data", "lib/engine/fit/index.ts")).toBe(null);
    expect(resolve("react", "app/page.tsx")).toBe(null);
  });
});

describe("order", () => {
  const memory = openMemory(path.join(temporaryOutside(), "none.json"), "");

  it("asks first what is beside, near and quick", () => {
    memory.learn(
      new Map([
        ["tests/services/slow.test.ts", 100],
        ["tests/engine/fit/laws.test.ts", 2],
      ]),
    );
    const reached = new Map([
      ["tests/services/slow.test.ts", 2],
      ["tests/engine/flex/far.test.ts", 5],
      ["tests/engine/flex/near.test.ts", 2],
      ["tests/engine/fit/laws.test.ts", 3],
      ["lib/engine/fit/index.ts", 1],
      ["tests/architecture/house-rules.test.ts", 1],
    ]);
    expect(inOrder(reached, "lib/engine/fit/recommend.ts", memory)).toEqual([
      "tests/engine/fit/laws.test.ts",
      "tests/engine/flex/near.test.ts",
      "tests/engine/flex/far.test.ts",
      "tests/services/slow.test.ts",
    ]);
  });
});

/** A folder that is never made: what is not there is not remembered. */
function temporaryOutside(): string {
  return path.join(import.meta.dirname, "nowhere");
}

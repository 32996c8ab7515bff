/** What does not run is told with its reason: both runners are really run, on a test file that skips. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { afterAll, describe, expect, it } from "vitest";
import { playwrightCounts, refusedSkips, vitestCounts } from "../../.ci/results.mjs";
import { sources, withoutComments } from "../support/sources";

const root = path.resolve(import.meta.dirname, "../..");
// Inside the project, so that the runners are found from there.
mkdirSync(path.join(root, ".cache"), { recursive: true });
const folder = mkdtempSync(path.join(root, ".cache/skips-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

/** Writes the files and runs a program on them; its exit code. */
function ran(program: string, args: readonly string[], files: Readonly<Record<string, string>>, env = {}): number {
  for (const [name, text] of Object.entries(files)) writeFileSync(path.join(folder, name), text);
  const script = path.join(root, "node_modules", program);
  const { status } = spawnSync(process.execPath, [script, ...args], { cwd: folder, env: { ...process.env, ...env } });
  return status ?? 1;
}

describe("a skip", () => {
  it("is counted with the reason that Vitest was given", () => {
    const [report, skips] = ["vitest.json", "vitest-skips.json"].map((name) => path.join(folder, name)) as [
      string,
      string,
    ];
    const args = ["run", "--root", folder, "--globals", "--reporter=json", `--outputFile.json=${report}`];
    const code = ran(
      "vitest/vitest.mjs",
      [...args, `--reporter=${path.join(root, ".ci/skip-reporter.mjs")}`],
      {
        "vitest.config.mjs": "export default {};",
        "skips.test.mjs": `
          it("runs", () => expect(1).toBe(1));
          it("waits", ({ skip }) => skip(true, "no such program here"));
          it.skip("is silent", () => {});
          it.todo("is only meant");`,
      },
      { SKIPS_FILE: skips },
    );
    expect(vitestCounts(report, skips, code)).toEqual({
      passed: 1,
      failed: 0,
      skips: [
        { name: "skips.test.mjs > waits", reason: "no such program here" },
        { name: "skips.test.mjs > is silent", reason: null },
        { name: "skips.test.mjs > is only meant", reason: null },
      ],
    });
    rmSync(skips);
    expect(vitestCounts(report, skips, code).failed).toBe(1);
  });

  it("is counted with the reason that Playwright was given", () => {
    const report = path.join(folder, "playwright.json");
    const code = ran("playwright/cli.js", ["test", "-c", path.join(folder, "playwright.config.mjs")], {
      "playwright.config.mjs": `export default {
        testDir: ".", testMatch: "*.spec.mjs", reporter: [["json", { outputFile: ${JSON.stringify(report)} }]] };`,
      "skips.spec.mjs": `
        import { expect, test } from "playwright/test";
        test("runs", () => expect(1).toBe(1));
        test.describe("a page", () => {
          test("waits", () => test.skip(true, "no such screen here"));
          test.skip("is silent", () => {});
        });`,
    });
    expect(playwrightCounts(report, code)).toEqual({
      passed: 1,
      failed: 0,
      skips: [
        { name: "a page > waits", reason: "no such screen here" },
        { name: "a page > is silent", reason: null },
      ],
    });
  });

  it("is refused without a reason anywhere, and on CI where nobody expects it", () => {
    const told = { name: "one.test.ts > one", reason: "no such program here" };
    const silent = { name: "one.test.ts > two", reason: null };
    const expected = [{ stage: "unit", name: told.name }];
    expect(refusedSkips("unit", [told, silent], [], false)).toEqual([silent]);
    expect(refusedSkips("unit", [told, silent], expected, true)).toEqual([silent]);
    expect(refusedSkips("unit", [told], [], true)).toEqual([told]);
    expect(refusedSkips("services", [told], expected, true)).toEqual([told]);
  });

  it("is written nowhere in a way that gives no reason", () => {
    const self = "tests/architecture/skips.test.ts";
    const silent = /\.(skipIf|runIf|todo|only)\b|\b(it|test|describe)\.(skip|fixme)\(|\bskip\(\s*\)/;
    const found = sources("tests").filter(
      ({ path: file, text }) => file !== self && silent.test(withoutComments(text)),
    );
    expect(found.map((source) => source.path)).toEqual([]);
  });
});

// npm run -s mutants -- --map: runs the test files of which is not known, or no longer, what they run.
import { existsSync, mkdirSync, readFileSync } from "node:fs";
import path from "node:path";
import { programs, run, say, writeStamp } from "../lib.mjs";
import { isTest, openRuns } from "./runs.mjs";
import { testSources } from "./sources.mjs";

/** Adds to the notes what is missing in them, and drops what a later line has replaced. */
export async function noteWhatRuns(root, notes) {
  const runs = openRuns(root, notes);
  const wanted = testSources(root)
    .map(({ file }) => file)
    .filter((file) => isTest(file) && runs.isStale(file));
  say(`${wanted.length} test files are run to note what they run`);
  if (wanted.length === 0) return;
  mkdirSync(path.dirname(notes), { recursive: true });
  const { code } = await run(process.execPath, [programs.vitest, "run", ...wanted], {
    env: { WHAT_RUNS: notes },
    quiet: true,
  });
  if (code !== 0) say("some of them failed; what they ran is noted all the same");
  if (!existsSync(notes)) return;
  const lines = readFileSync(notes, "utf8").trim().split("\n");
  writeStamp(notes, `${[...new Map(lines.map((line) => [JSON.parse(line).test, line])).values()].join("\n")}\n`);
}

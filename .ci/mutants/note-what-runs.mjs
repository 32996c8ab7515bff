// A Vitest set-up file: appends to the file WHAT_RUNS names, one line of JSON per test file, which functions of the product
// ran for it (the lines they begin on, behind the stamp of their file) and what it took in processor seconds.
import { appendFileSync } from "node:fs";
import { Session } from "node:inspector";
import { SourceMap } from "node:module";
import path from "node:path";
import { fileURLToPath } from "node:url";
import { afterAll, expect } from "vitest";
import { cpuSeconds } from "../cpu.mjs";
import { isProductCode } from "./rooms.mjs";
import { stampOf } from "./stamp.mjs";

/** Files of one worker may share the engine's session. */
const shared = Symbol.for("pairwright.whatRuns");
globalThis[shared] ??= openEngine();
const { ask, lineFinders } = globalThis[shared];
const root = process.cwd();
const began = cpuSeconds();
// Without counts nothing gets slower; what it has told of once it tells again only after a new start.
ask("Profiler.stopPreciseCoverage");
ask("Profiler.startPreciseCoverage", { callCount: false, detailed: false });

afterAll(() => {
  const seconds = Number((cpuSeconds() - began).toFixed(2));
  const { result } = ask("Profiler.takePreciseCoverage");
  ask("Debugger.enable");
  const ran = {};
  for (const { url, scriptId, functions } of result) {
    const file = path.relative(root, url.startsWith("file:") ? fileURLToPath(url) : url);
    if (!isProductCode(file)) continue;
    const lineOf = lineFinder(scriptId);
    const begun = functions.filter(({ ranges }) => ranges[0].count > 0);
    if (begun.length === 0) continue;
    const lines = begun.map(({ ranges }) => lineOf(ranges[0].startOffset)).filter((line) => line !== null);
    ran[file] = [...new Set([...(ran[file] ?? []), ...lines])];
  }
  ask("Debugger.disable");
  for (const [file, lines] of Object.entries(ran)) ran[file] = [stampOf(root, file), ...lines];
  const test = path.relative(root, expect.getState().testPath);
  appendFileSync(process.env.WHAT_RUNS, `${JSON.stringify({ test, stamp: stampOf(root, test), seconds, ran })}\n`);
});

function openEngine() {
  const session = new Session();
  session.connect();
  const ask = (method, wish) => {
    let answer;
    session.post(method, wish, (error, result) => {
      if (error) throw new Error(error.message);
      answer = result;
    });
    return answer;
  };
  ask("Profiler.enable");
  return { ask, lineFinders: new Map() };
}

function lineFinder(scriptId) {
  if (!lineFinders.has(scriptId))
    lineFinders.set(scriptId, sourceLines(ask("Debugger.getScriptSource", { scriptId }).scriptSource));
  return lineFinders.get(scriptId);
}

/** A function from an offset of what the runner made of a file to the line of the file; null where it has none, and on the first line. */
function sourceLines(made) {
  const encoded = made.match(/sourceMappingURL=data:application\/json;[^,]*base64,([\w+/=]+)/)?.[1];
  if (encoded === undefined) return () => null;
  const map = new SourceMap(JSON.parse(Buffer.from(encoded, "base64").toString()));
  const starts = [0, ...[...made.matchAll(/\n/g)].map(({ index }) => index + 1)];
  // The runner puts a function around the file, whose head shares the first line with it, and functions for its exports.
  const head = made.indexOf("{{") + 2;
  return (offset) => {
    const line = starts.findLastIndex((start) => start <= offset);
    const column = offset - starts[line] - (line === 0 ? head : 0);
    const { originalLine } = map.findEntry(line, Math.max(column, 0));
    return originalLine === undefined || originalLine === 0 ? null : originalLine + 1;
  };
}

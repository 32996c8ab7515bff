// What a run of the tests took: by stage, and the files that took most. On a shared machine the processor's seconds tell
// more than the clock's.
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { cacheFolder } from "./lib.mjs";

/** @param times {readonly {name: string, seconds: number, cpu: number, result: string}[]} */
export function stageTable(times) {
  const sum = (key) => times.reduce((all, time) => all + time[key], 0);
  const line = (name, seconds, cpu, result) =>
    `${name.padEnd(10)}${seconds.padStart(8)}${cpu.padStart(8)}   ${result}`.trimEnd();
  return [
    line("stage", "seconds", "cpu s", "result"),
    ...times.map(({ name, seconds, cpu, result }) => line(name, seconds.toFixed(0), cpu.toFixed(0), result)),
    line("total", sum("seconds").toFixed(0), sum("cpu").toFixed(0), ""),
  ].join("\n");
}

/** The files of these stages that took most; browser tests by the clock, as their work is done in other processes. */
export function slowestFiles(stages, count = 10) {
  const files = stages.flatMap((stage) => [...testedFiles(stage), ...browsedFiles(stage)]);
  const slowest = files.sort((a, b) => b.seconds - a.seconds).slice(0, count);
  if (slowest.length === 0) return "";
  return [
    `The slowest files (processor seconds; those of the browser by the clock):`,
    ...slowest.map(({ stage, name, seconds }) => `${seconds.toFixed(1).padStart(8)}  ${name} (${stage})`),
  ].join("\n");
}

function testedFiles(stage) {
  const file = path.join(cacheFolder, "results", `${stage}-cpu.json`);
  if (!existsSync(file)) return [];
  return readFileSync(file, "utf8")
    .split("\n")
    .filter((line) => line !== "")
    .map((line) => JSON.parse(line))
    .map(({ name, cpu }) => ({ stage, name, seconds: cpu }));
}

function browsedFiles(stage) {
  const file = path.join(cacheFolder, "results", `${stage}.json`);
  if (stage !== "browser" || !existsSync(file)) return [];
  const { suites } = JSON.parse(readFileSync(file, "utf8"));
  return suites.map((suite) => ({ stage, name: `tests/e2e/${suite.file}`, seconds: durationOf(suite) }));
}

function durationOf({ specs = [], suites = [] }) {
  const own = specs.flatMap(({ tests }) => tests.flatMap(({ results }) => results.map(({ duration }) => duration)));
  return own.reduce((all, ms) => all + ms / 1000, 0) + suites.reduce((all, suite) => all + durationOf(suite), 0);
}

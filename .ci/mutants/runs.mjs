// What --map noted: which test files run which of the product's functions. It decides alone which tests are asked, and in
// which order; where it is silent or out of date, the import graph speaks.
import { existsSync, readFileSync } from "node:fs";
import { stampOf } from "./stamp.mjs";
import { linesOf, parse, walk } from "./syntax.mjs";

export const isTest = (file) => /^tests\/(?!architecture\/).*\.test\.tsx?$/.test(file);

/** Reads the notes, of which a later line about the same test file counts. */
export function openRuns(root, file) {
  const lines = existsSync(file) ? readFileSync(file, "utf8").trim().split("\n") : [];
  const notes = new Map(lines.filter(Boolean).map((line) => [JSON.parse(line).test, JSON.parse(line)]));
  const stamps = new Map();
  const isAsNoted = (name, stamp) => {
    if (!stamps.has(name)) stamps.set(name, stampOf(root, name));
    return stamps.get(name) === stamp;
  };
  const isFresh = ({ ran }, name) => ran[name] === undefined || isAsNoted(name, ran[name][0]);
  const knows = (test, name) => {
    const note = notes.get(test);
    return note !== undefined && isAsNoted(test, note.stamp) && isFresh(note, name);
  };
  return {
    /** Processor seconds of each test file. */
    seconds: new Map([...notes].map(([test, { seconds }]) => [test, seconds])),
    /** Whether it is known what of this product file the test runs, as both are now. */
    knows,
    /** The test files that run, or ran before they were changed, a function that begins on such a line. */
    runners: (name, isAsked) =>
      [...notes.values()]
        .filter((note) => isFresh(note, name) && (ran(note, name) ?? []).some(isAsked))
        .map(({ test }) => test),
    /** Whether the note of a test file must be made anew. */
    isStale: (test) => {
      const note = notes.get(test);
      return !note || !isAsNoted(test, note.stamp) || Object.keys(note.ran).some((name) => !isFresh(note, name));
    },
  };
}

const ran = (note, name) => note.ran[name]?.slice(1);

/**
 * The tests that could notice a fault, each with how far it is from it. A test that runs the function around the fault is
 * nearer than its way through the imports; one of which it is known that it does not is left out.
 */
export function testsFor({ file, line, start }, source, bundles, { uses, runs }) {
  const steps = uses.reachedFrom(uses.unitAt(file, line));
  const begin = beginOfFunction(file, source, start);
  const inProcess =
    begin === null
      ? nearest([uses.unitAt(file, line)], uses, runs)
      : runs.runners(file, (each) => begin.from <= each && each <= begin.to);
  const inPrograms = bundles.flatMap(({ entry }) => nearest(uses.unitsOf(entry), uses, runs));
  const asking = new Set([...inProcess, ...inPrograms]);
  return new Map(
    [...new Set([...steps.keys(), ...asking])]
      .filter((test) => isTest(test) && (asking.has(test) || !runs.knows(test, file)))
      .map((test) => [test, asking.has(test) ? Math.sqrt(steps.get(test) ?? 1) : steps.get(test)]),
  );
}

/**
 * The lines on which the innermost function around an offset begins; null outside of all. Source maps know words, not the
 * bracket that a function begins with: it is noted where the word before it stands.
 */
function beginOfFunction(file, source, offset) {
  let begin = null;
  walk(parse(file, source), (node) => {
    if (/^(Arrow)?Function/.test(node.type) && node.start <= offset && offset < node.end) begin = node.start;
  });
  if (begin === null) return null;
  const lineAt = linesOf(source);
  return { from: lineAt(Math.max(0, withoutComments(source.slice(0, begin)).length - 1)), to: lineAt(begin) };
}

/** A text without the blanks and comments at its end. */
function withoutComments(text) {
  const rest = text.trimEnd();
  const line = rest.slice(rest.lastIndexOf("\n") + 1);
  if (line.trimStart().startsWith("//")) return withoutComments(rest.slice(0, rest.length - line.length));
  return rest.endsWith("*/") ? withoutComments(rest.slice(0, rest.lastIndexOf("/*"))) : rest;
}

/** Who runs what uses these declarations: up to the first function on each way, or to the test that uses it itself. */
function nearest(units, uses, runs) {
  const found = new Set();
  const seen = new Set(units);
  for (const at of seen) {
    const { file, from, to } = uses.placeOf(at);
    if (isTest(file)) found.add(file);
    const runners = runs.runners(file, (line) => from <= line && line <= to && from > 0);
    for (const test of runners) found.add(test);
    if (runners.length === 0 || units.includes(at)) for (const user of uses.usersOf(at)) seen.add(user);
  }
  return [...found];
}

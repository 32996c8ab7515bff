/** Which files run on PostgreSQL too: those where two things happen at once, and where SQL itself is looked at. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { sources, withoutComments } from "../support/sources";

interface Row {
  readonly file: string;
  readonly why: string;
}

const list = path.resolve(import.meta.dirname, "../../.ci/on-both-databases.json");
const rows = JSON.parse(readFileSync(list, "utf8")) as readonly Row[];
const listed = rows.map(({ file }) => file);
/** What only reads side by side. */
const harmless = ["tests/app/actions/staff-doors.test.ts"];
const onDatabase = sources("tests/data", "tests/auth", "tests/services", "tests/app").filter(
  ({ path: file, text }) => file.endsWith(".test.ts") && /\b(databaseForTests|openStored)\(/.test(text),
);

describe("the files that run on both databases", () => {
  it("are there, use the database of the tests, and say why they run twice", () => {
    const known = onDatabase.map((source) => source.path);
    expect(listed.filter((file) => !known.includes(file))).toEqual([]);
    expect(rows.filter(({ why }) => why.length < 10)).toEqual([]);
    expect(new Set(listed).size).toBe(listed.length);
  });

  it("are all in which things happen at once, or which speak SQL", () => {
    const telling = /\bPromise\.all(Settled)?\(|\$(query|execute)Raw|\btestBackend\(|\bopenStored\(/;
    const found = onDatabase.filter(({ text }) => telling.test(withoutComments(text))).map((source) => source.path);
    expect(found.length).toBeGreaterThan(10);
    expect(found.filter((file) => !listed.includes(file) && !harmless.includes(file))).toEqual([]);
    expect(harmless.filter((file) => !found.includes(file))).toEqual([]);
  });
});

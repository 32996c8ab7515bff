/** The list of what can hold a person, against the database itself and the folder of the data. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import { personalColumns, personalFiles } from "#data/personal-data";
import { databaseForTests } from "../support/db";

const db = databaseForTests();

describe("the list of what can hold a person", () => {
  it("has every column of every table, and no other", async () => {
    const rows = await db().$queryRaw<{ table: string; column: string }[]>`
      SELECT table_name AS table, column_name AS column FROM information_schema.columns
      WHERE table_schema = current_schema() AND table_name <> '_prisma_migrations'`;
    const there = rows.map(({ table, column }) => `${table}.${column}`).sort();
    const listed = Object.entries(personalColumns).flatMap(([table, columns]) =>
      Object.keys(columns).map((column) => `${table}.${column}`),
    );
    expect(there.length).toBeGreaterThan(200);
    expect(listed.sort()).toEqual(there);
  });

  it("has every file that is written beside the data", () => {
    const root = path.resolve(import.meta.dirname, "../..");
    const sources = [".ci/start.mjs", ".ci/migrate.mjs", "lib/config/config.ts", "lib/config/house-key.ts"]
      .map((file) => readFileSync(path.join(root, file), "utf8"))
      .join("\n");
    const named = [...sources.matchAll(/dataFolder,\s*"([\w.-]+)"|fileName = "([\w.-]+)"/g)].map(
      ([, a, b]) => a ?? b ?? "",
    );
    expect(named.length).toBeGreaterThan(3);
    expect([...new Set(named)].filter((name) => personalFiles[name] === undefined)).toEqual([]);
  });
});

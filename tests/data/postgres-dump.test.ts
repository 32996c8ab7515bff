import { describe, expect, inject, it } from "vitest";
import { tryDump } from "#data/backup";
import { openDatabase } from "#data/client";
import { dumpPostgres } from "#data/postgres-dump";
import { findProgram } from "../../.ci/postgres.mjs";
import { databaseForTests, freshDatabase, testBackend } from "../support/db";

databaseForTests();

describe("a backup of a PostgreSQL server", () => {
  it("is a dump and counts of one snapshot, tried by loading it", async (context) => {
    if ((await testBackend()) !== "postgres") return context.skip("it needs a server");
    const server = inject("postgresUrl");
    const program = findProgram("pg_dump");
    if (server === null || program === null) return context.skip("pg_dump was not found");
    const url = await freshDatabase(server);
    const open = await openDatabase({ kind: "postgres", url, poolSize: 2 });
    await open.runScript(
      "CREATE TABLE log (n int, words text); INSERT INTO log SELECT n, 'it''s; \\n' FROM generate_series(1, 500) n",
    );
    const { sql, rows } = await dumpPostgres(url, program, process.env);
    await open.close();
    expect(rows).toEqual({ "public.log": 500 });
    await tryDump(sql, rows);
    await expect(tryDump(sql, { "public.log": 501 })).rejects.toThrow("public.log: 501 rows, 500 came back");
  });
});

/**
 * The database of a test worker: opened and migrated once, emptied before each test. It stands where the program looks
 * for its own, so code that calls db() uses it too. Backend by PAIRWRIGHT_TEST_BACKEND: "pglite" (default) or "postgres".
 */
import { randomBytes } from "node:crypto";
import path from "node:path";
import pg from "pg";
import { beforeAll, beforeEach, inject } from "vitest";
import { type Db, type OpenDatabase, openDatabase } from "#data/client";
import { applyMigrations } from "#data/migrate";

const prismaFolder = path.resolve(import.meta.dirname, "../../prisma");

const shelf = globalThis as typeof globalThis & {
  pairwrightDatabase?: Promise<OpenDatabase>;
  pairwrightTestTables?: string;
};

/** "memory" or "postgres": for tests that mean one of them. */
export async function testBackend(): Promise<OpenDatabase["kind"]> {
  return (await testDatabase()).kind;
}

/** Call at the top of a test file; the returned function hands out the client. */
export function databaseForTests(): () => Db {
  let open: OpenDatabase | undefined;
  beforeAll(async () => {
    open = await testDatabase();
  });
  beforeEach(async () => {
    await open?.runScript(await truncateAll(open.db));
  });
  return () => {
    if (!open) throw new Error("databaseForTests: the database is there only inside tests");
    return open.db;
  };
}

function testDatabase(): Promise<OpenDatabase> {
  shelf.pairwrightDatabase ??= openForWorker();
  return shelf.pairwrightDatabase;
}

async function openForWorker(): Promise<OpenDatabase> {
  const server = inject("postgresUrl");
  const open = await openDatabase(
    server === null ? { kind: "memory" } : { kind: "postgres", url: await freshDatabase(server), poolSize: 20 },
  );
  await applyMigrations(open, prismaFolder);
  return open;
}

/** A new, empty database on the throwaway server. @returns its address */
export async function freshDatabase(server: string): Promise<string> {
  const name = `test_${randomBytes(6).toString("hex")}`;
  const client = new pg.Client({ connectionString: server });
  await client.connect();
  await client.query(`CREATE DATABASE ${name}`);
  await client.end();
  const url = new URL(server);
  url.pathname = `/${name}`;
  return url.href;
}

async function truncateAll(db: Db): Promise<string> {
  if (shelf.pairwrightTestTables === undefined) {
    const rows = await db.$queryRaw<{ name: string }[]>`
      SELECT quote_ident(tablename) AS name FROM pg_tables WHERE schemaname = 'public' AND tablename <> '_prisma_migrations'`;
    const tables = rows.map((row) => row.name).join(", ");
    shelf.pairwrightTestTables = `TRUNCATE ${tables} RESTART IDENTITY CASCADE`;
  }
  return shelf.pairwrightTestTables;
}

/** A stored version as the running tests' backend holds it: its data folder embedded, its SQL on PostgreSQL; then migrated. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { gunzipSync } from "node:zlib";
import pg from "pg";
import { inject } from "vitest";
import { systemActor } from "#auth";
import { restoreFolder } from "#data/backup";
import { type OpenDatabase, openDatabase } from "#data/client";
import { applyMigrations } from "#data/migrate";
import { openContext } from "#services";
import { freshDatabase } from "../db";

const shelf = globalThis as typeof globalThis & { pairwrightDatabase?: Promise<OpenDatabase> };

/**
 * Opens a stored version where the program looks for its database, so that every use case reads it.
 * @param scratch a folder of this run alone
 * @returns closes it and puts back what was open before
 */
export async function openStored(version: string, scratch: string): Promise<() => Promise<void>> {
  const server = inject("postgresUrl");
  const open = server === null ? await restored(version, scratch) : await loaded(version, server);
  await applyMigrations(open, path.resolve("prisma"));
  const before = shelf.pairwrightDatabase;
  shelf.pairwrightDatabase = Promise.resolve(open);
  return async () => {
    if (before === undefined) delete shelf.pairwrightDatabase;
    else shelf.pairwrightDatabase = before;
    await open.close();
    // The process must forget the stored shop's book of corrections.
    if (before !== undefined) await openContext(systemActor("test"), new Date(0));
  };
}

export function storedFile(version: string, name: string): Buffer {
  return readFileSync(path.resolve("tests/fixtures/stored", version, name));
}

async function restored(version: string, scratch: string): Promise<OpenDatabase> {
  const folder = path.join(scratch, "database");
  await restoreFolder(folder, new Uint8Array(storedFile(version, "database.tar.gz")));
  return openDatabase({ kind: "embedded", folder });
}

async function loaded(version: string, server: string): Promise<OpenDatabase> {
  const url = await freshDatabase(server);
  const client = new pg.Client({ connectionString: url });
  await client.connect();
  await client.query(gunzipSync(storedFile(version, "database.sql.gz")).toString("utf8"));
  await client.end();
  return openDatabase({ kind: "postgres", url, poolSize: 5 });
}

/**
 * The one database of this process, opened on first use. Embedded or PostgreSQL, the rest of the code cannot tell.
 */
import type { SqlMigrationAwareDriverAdapterFactory } from "@prisma/driver-adapter-utils";
import { config, type DatabaseSettings, isBuilding } from "#config";
import { type Prisma, PrismaClient } from "./generated/client";
import type { TableCounts } from "./thread/protocol";

/** The root client. Inside a transaction use only the `tx` it hands you: the root client would wait for itself. */
export type Db = PrismaClient;
/** The client of one running transaction. */
export type Tx = Prisma.TransactionClient;

export interface OpenDatabase {
  readonly db: Db;
  readonly kind: DatabaseSettings["kind"];
  readonly adapter: SqlMigrationAwareDriverAdapterFactory;
  /** Runs SQL text of several statements; for maintenance, never for use cases. */
  readonly runScript: (sql: string) => Promise<void>;
  /** Runs one statement outside the client, or several without values, and hands back rows by column; for the job queue. */
  readonly run: RunSql;
  /** Copies the files of one moment, and says how many rows each table had; null where the database has no files of ours. */
  readonly copyTo: ((target: string) => Promise<TableCounts>) | null;
  /** Does some work while no other process prepares this database. */
  readonly alone: <T>(work: () => Promise<T>) => Promise<T>;
  close(): Promise<void>;
}

export type RunSql = (
  sql: string,
  values?: readonly unknown[],
) => Promise<{ readonly rows: readonly Readonly<Record<string, unknown>>[] }>;

const generous = { maxWait: 60_000, timeout: 60_000 } as const;

/** Opens a database by its settings. Most callers want `db()`. @throws FolderInUse, or the driver's own error */
export async function openDatabase(settings: DatabaseSettings): Promise<OpenDatabase> {
  switch (settings.kind) {
    case "postgres":
      return openPostgres(settings);
    case "embedded":
      return openEmbedded(settings);
    case "memory":
      return openMemory();
  }
}

/** In a thread of its own: while the database works, pages go on. */
async function openEmbedded(settings: Extract<DatabaseSettings, { kind: "embedded" }>): Promise<OpenDatabase> {
  const { openInThread } = await import("./thread/open");
  const { adapter, run, copyTo, close } = await openInThread(settings.folder);
  const db = new PrismaClient({ adapter, transactionOptions: generous });
  return {
    db,
    kind: "embedded",
    adapter,
    copyTo,
    // The folder's lock has seen to it.
    alone: (work) => work(),
    runScript: async (sql) => void (await run(sql)),
    run: async (sql, values) => ({ rows: await run(sql, values) }),
    close: async () => {
      await db.$disconnect();
      await close();
    },
  };
}

/** For tests and for comparing schemas. */
async function openMemory(): Promise<OpenDatabase> {
  const embedded = await (await import("./embedded")).openMemory();
  const { PrismaPGlite } = await import("pglite-prisma-adapter");
  const adapter = new PrismaPGlite(embedded.pglite);
  const db = new PrismaClient({ adapter, transactionOptions: generous });
  const run: RunSql = async (sql, values) => {
    const all =
      values === undefined ? await embedded.pglite.exec(sql) : [await embedded.pglite.query(sql, [...values])];
    return { rows: (all.at(-1)?.rows ?? []) as Readonly<Record<string, unknown>>[] };
  };
  return {
    db,
    kind: "memory",
    adapter,
    copyTo: null,
    alone: (work) => work(),
    runScript: async (sql) => void (await run(sql)),
    run,
    close: async () => {
      await db.$disconnect();
      await embedded.close();
    },
  };
}

async function openPostgres(settings: Extract<DatabaseSettings, { kind: "postgres" }>): Promise<OpenDatabase> {
  const { PrismaPg } = await import("@prisma/adapter-pg");
  // The adapter drops the offset of a timestamp when it reads one, so every connection must speak UTC.
  const connection = { connectionString: settings.url, max: settings.poolSize, options: "-c TimeZone=UTC" };
  const adapter = new PrismaPg(connection);
  const db = new PrismaClient({ adapter, transactionOptions: generous });
  const { default: pg } = await import("pg");
  // The job queue speaks to the server by itself: it asks a little, often, and must not wait behind a page.
  const aside = new pg.Pool({ ...connection, max: 2 });
  aside.on("error", () => {
    // An idle connection was closed by the server; the next question opens another.
  });
  return {
    db,
    kind: "postgres",
    adapter,
    copyTo: null,
    alone: async (work) => {
      const client = new pg.Client(connection);
      await client.connect();
      try {
        await client.query("SELECT pg_advisory_lock(hashtextextended('pairwright prepares', 0))");
        return await work();
      } finally {
        await client.end();
      }
    },
    run: async (sql, values) => {
      const all = await aside.query(sql, values === undefined ? undefined : [...values]);
      const last = Array.isArray(all) ? all.at(-1) : all;
      return { rows: last?.rows ?? [] };
    },
    runScript: async (sql) => {
      const client = new pg.Client(connection);
      await client.connect();
      try {
        await client.query(sql);
      } finally {
        await client.end();
      }
    },
    close: async () => {
      await db.$disconnect();
      await aside.end();
    },
  };
}

// Kept on globalThis so that a development reload does not open the folder twice.
const shelf = globalThis as typeof globalThis & { pairwrightDatabase?: Promise<OpenDatabase> };

/** The open database of this process. A failed opening is tried again on the next call. */
export function database(): Promise<OpenDatabase> {
  if (isBuilding()) throw new Error("A page asked for the database while being built: await connection() first.");
  shelf.pairwrightDatabase ??= openDatabase(config().database).catch((error: unknown) => {
    delete shelf.pairwrightDatabase;
    throw error;
  });
  return shelf.pairwrightDatabase;
}

/** The root client of this process. */
export async function db(): Promise<Db> {
  return (await database()).db;
}

/** Closes the process's database, if open; for scripts that end. */
export async function closeDatabase(): Promise<void> {
  const open = shelf.pairwrightDatabase;
  delete shelf.pairwrightDatabase;
  if (open) await (await open).close();
}

/**
 * Applies and writes migrations with the schema engine compiled to WebAssembly: no native engine, no shadow database,
 * the same on both backends. Applied migrations are recorded in `_prisma_migrations`.
 */
import { readdirSync, readFileSync } from "node:fs";
import { createRequire } from "node:module";
import path from "node:path";
import { bindMigrationAwareSqlAdapterFactory } from "@prisma/driver-adapter-utils";
import type { MigrationList, SchemaEngine, SchemasContainer } from "@prisma/schema-engine-wasm";
import { type OpenDatabase, openDatabase } from "./client";
import { prepareJobs } from "./jobs";

const noFilter = { externalTables: [], externalEnums: [] };

/**
 * Brings a database up to the newest migration.
 * @param prismaFolder the folder that holds `migrations/`
 * @returns the names applied now; empty when it was up to date
 */
export async function applyMigrations(open: OpenDatabase, prismaFolder: string): Promise<readonly string[]> {
  await forgetUnfinished(open);
  const result = await withEngine(wholeSteps(open), (engine) =>
    engine.applyMigrations({ migrationsList: readMigrations(prismaFolder), filters: noFilter }),
  );
  await prepareJobs(open);
  return result.appliedMigrationNames;
}

/** Names of the steps this program knows, oldest first. */
export function knownMigrations(prismaFolder: string): readonly string[] {
  return readMigrations(prismaFolder).migrationDirectories.map(({ path: name }) => name);
}

/** A step that was begun and is not finished did nothing: it is tried again, where the engine would stop at it for ever. */
async function forgetUnfinished(open: OpenDatabase): Promise<void> {
  await open.runScript(`DO $$ BEGIN
    IF to_regclass('public._prisma_migrations') IS NOT NULL THEN
      UPDATE _prisma_migrations SET rolled_back_at = now() WHERE finished_at IS NULL AND rolled_back_at IS NULL;
    END IF;
  END $$`);
}

/**
 * The adapter with each step and the note that it is finished in one transaction: a process that is ended at any instant
 * leaves a step done and noted, or not begun. The adapters' own way runs statement by statement.
 */
function wholeSteps(open: OpenDatabase): Pick<OpenDatabase, "adapter"> {
  const connect = async () => {
    const adapter = await open.adapter.connect();
    adapter.executeScript = (script) =>
      open.runScript(isOwnTable.test(script) ? script : `BEGIN;\n${script};\n${noted}; COMMIT`);
    return adapter;
  };
  const { provider, adapterName } = open.adapter;
  return { adapter: { provider, adapterName, connect, connectToShadowDb: () => open.adapter.connectToShadowDb() } };
}

/** The engine's own table, which it makes by a script before the first step. */
const isOwnTable = /create table\s+"?_prisma_migrations/i;
const noted =
  "UPDATE _prisma_migrations SET finished_at = now(), applied_steps_count = 1 WHERE finished_at IS NULL AND rolled_back_at IS NULL";

/**
 * SQL that leads from the migrations to the models, or null when they agree.
 * @param from "nothing" writes the whole schema anew
 */
export async function migrationDifference(
  prismaFolder: string,
  from: "migrations" | "nothing" = "migrations",
): Promise<string | null> {
  const open = await openDatabase({ kind: "memory" });
  const lines: string[] = [];
  try {
    const result = await withEngine(
      open,
      (engine) =>
        engine.diff({
          from: from === "nothing" ? { tag: "empty" } : { tag: "migrations", ...readMigrations(prismaFolder) },
          to: { tag: "schemaDatamodel", ...readModels(prismaFolder) },
          script: true,
          exitCode: true,
          filters: noFilter,
        }),
      (line) => lines.push(line),
    );
    return result.exitCode === 0 ? null : (result.stdout ?? lines.join(""));
  } finally {
    await open.close();
  }
}

async function withEngine<T>(
  open: Pick<OpenDatabase, "adapter">,
  work: (engine: SchemaEngine) => Promise<T>,
  onOutput: (text: string) => void = () => undefined,
): Promise<T> {
  const Engine = await loadEngine();
  const bound = bindMigrationAwareSqlAdapterFactory(open.adapter);
  const engine = await Engine.new({ datamodels: undefined }, onOutput, bound);
  try {
    return await work(engine);
  } finally {
    engine.free();
  }
}

// On globalThis because the glue holds one instance a process: a second one, made when this module is read anew, would be
// driven through the memory of the first.
const shelf = globalThis as typeof globalThis & { pairwrightSchemaEngine?: Promise<typeof SchemaEngine> };

/** The package's own entry imports its .wasm file as a module, which Node does not do; so it is loaded by hand. */
function loadEngine(): Promise<typeof SchemaEngine> {
  shelf.pairwrightSchemaEngine ??= (async () => {
    const glue = await import("@prisma/schema-engine-wasm/schema_engine_bg");
    const entry = createRequire(path.resolve(/*turbopackIgnore: true*/ "package.json")).resolve(
      "@prisma/schema-engine-wasm/schema_engine_bg",
    );
    const bytes = readFileSync(path.join(path.dirname(entry), "schema_engine_bg.wasm"));
    const { instance } = await WebAssembly.instantiate(bytes, { "./schema_engine_bg.js": glue as never });
    glue.__wbg_set_wasm(instance.exports);
    (instance.exports as { __wbindgen_start(): void }).__wbindgen_start();
    return glue.SchemaEngine as unknown as typeof SchemaEngine;
  })();
  return shelf.pairwrightSchemaEngine;
}

function readMigrations(prismaFolder: string): MigrationList {
  const baseDir = path.join(prismaFolder, "migrations");
  const names = readdirSync(baseDir, { withFileTypes: true })
    .filter((entry) => entry.isDirectory())
    .map((entry) => entry.name)
    .sort();
  return {
    baseDir,
    lockfile: { path: "migration_lock.toml", content: 'provider = "postgresql"\n' },
    shadowDbInitScript: "",
    migrationDirectories: names.map((name) => ({
      path: name,
      migrationFile: {
        path: "migration.sql",
        content: { tag: "ok", value: readFileSync(path.join(baseDir, name, "migration.sql"), "utf8") },
      },
    })),
  };
}

function readModels(prismaFolder: string): SchemasContainer {
  const models = path.join(prismaFolder, "models");
  const files = [
    path.join(prismaFolder, "schema.prisma"),
    ...readdirSync(models)
      .filter((name) => name.endsWith(".prisma"))
      .sort()
      .map((name) => path.join(models, name)),
  ];
  return { files: files.map((file) => ({ path: file, content: readFileSync(file, "utf8") })) };
}

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
  const result = await withEngine(open, (engine) =>
    engine.applyMigrations({ migrationsList: readMigrations(prismaFolder), filters: noFilter }),
  );
  await prepareJobs(open);
  return result.appliedMigrationNames;
}

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
  open: OpenDatabase,
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

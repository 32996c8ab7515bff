import { defineConfig } from "prisma/config";

// `generate`, `validate` and `format` need no schema engine, yet the command line insists on having one and would
// download it. Naming any executable satisfies it. Migrations use the WASM engine (lib/data/migrate.ts) instead.
if (!process.argv.includes("migrate")) process.env.PRISMA_SCHEMA_ENGINE_BINARY ??= process.execPath;

export default defineConfig({
  schema: "prisma",
  migrations: { path: "prisma/migrations" },
});

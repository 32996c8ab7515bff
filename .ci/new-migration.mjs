// Writes the difference between migrations and models as a new migration, for a person to review.
//   node .ci/new-migration.mjs NAME        prisma/migrations/<time>_NAME/migration.sql
//   node .ci/new-migration.mjs --restart   until the first release: drop all migrations, write one anew
//   node .ci/new-migration.mjs --check     exit 1 when models and migrations differ
import { mkdirSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { loadBundled } from "./bundle.mjs";
import { fail, root, say } from "./lib.mjs";
import { prepare } from "./prepare.mjs";

const [argument] = process.argv.slice(2);
if (!argument) fail("node .ci/new-migration.mjs NAME | --restart | --check");

await prepare();
const { migrationDifference } = await loadBundled("lib/data/maintenance.ts", "maintenance");
const prismaFolder = path.join(root, "prisma");
const migrations = path.join(prismaFolder, "migrations");
mkdirSync(migrations, { recursive: true });
writeFileSync(path.join(migrations, "migration_lock.toml"), 'provider = "postgresql"\n');

if (argument === "--check") {
  const difference = await migrationDifference(prismaFolder);
  if (difference !== null) fail(`The models say more than the migrations:\n${difference}`);
  say("Models and migrations agree.");
} else if (argument === "--restart") {
  const sql = await migrationDifference(prismaFolder, "nothing");
  for (const name of readdirSync(migrations)) {
    if (name !== "migration_lock.toml") rmSync(path.join(migrations, name), { recursive: true });
  }
  write("20260101000000_start", sql ?? "");
} else {
  if (!/^[a-z][a-z0-9_]*$/.test(argument)) fail(`"${argument}": a name is lower-case letters, digits and _.`);
  const sql = await migrationDifference(prismaFolder);
  if (sql === null) {
    say("Models and migrations agree; nothing to write.");
  } else {
    const time = new Date().toISOString().replace(/\D/g, "").slice(0, 14);
    write(`${time}_${argument}`, sql);
  }
}
process.exit(0);

function write(name, sql) {
  const folder = path.join(migrations, name);
  mkdirSync(folder, { recursive: true });
  writeFileSync(path.join(folder, "migration.sql"), sql);
  say(`Written: prisma/migrations/${name}/migration.sql. Read it before you commit it.`);
}

// Brings a backup back. What is in the data folder now is moved aside, never deleted. Stop the shop first.
//   node .ci/restore.mjs BACKUP_FOLDER
import { cpSync, existsSync, mkdirSync, readdirSync, readFileSync, renameSync } from "node:fs";
import path from "node:path";
import { loadBundled } from "./bundle.mjs";
import { fail, say } from "./lib.mjs";
import { prepare } from "./prepare.mjs";
import { settings } from "./settings.mjs";

const [from] = process.argv.slice(2);
const { dataFolder, databaseUrl } = settings();
if (databaseUrl !== null) fail("The records are in PostgreSQL: load database.sql into an empty database with psql.");
if (!from || !existsSync(path.join(from, "database.tar.gz")))
  fail("node .ci/restore.mjs BACKUP_FOLDER (one that holds database.tar.gz)");

await prepare();
const { restoreFolder } = await loadBundled("lib/data/maintenance.ts", "maintenance");
try {
  const archive = readFileSync(path.join(from, "database.tar.gz"));
  await restoreFolder(path.join(dataFolder, "database"), archive, () => {
    moveAside();
    if (existsSync(path.join(from, "data"))) cpSync(path.join(from, "data"), dataFolder, { recursive: true });
  });
} catch (error) {
  fail(error.message);
}
say(`Restored into ${dataFolder}`);
process.exit(0);

/** Everything but the lock, which stands in the folder and keeps the shop from starting meanwhile. */
function moveAside() {
  const entries = readdirSync(dataFolder).filter((entry) => !entry.startsWith("database.lock"));
  if (entries.length === 0) return;
  const aside = `${dataFolder}.before-${new Date().toISOString().slice(0, 19).replaceAll(":", "")}`;
  mkdirSync(aside);
  for (const entry of entries) renameSync(path.join(dataFolder, entry), path.join(aside, entry));
  say(`What was there is now in ${aside}`);
}

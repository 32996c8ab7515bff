// Brings a backup back. What is in the data folder now is moved aside, never deleted. Stop the shop first.
//   node .ci/restore.mjs BACKUP_FOLDER
import { cpSync, existsSync, mkdirSync, readFileSync, renameSync } from "node:fs";
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
const { lockFolder, restoreFolder } = await loadBundled("lib/data/maintenance.ts", "maintenance");
try {
  const database = path.join(dataFolder, "database");
  // Taken and given back: refuses while the shop runs.
  lockFolder(database).release();
  if (existsSync(dataFolder)) {
    const aside = `${dataFolder}.before-${new Date().toISOString().slice(0, 19).replaceAll(":", "")}`;
    renameSync(dataFolder, aside);
    say(`What was there is now in ${aside}`);
  }
  mkdirSync(dataFolder, { recursive: true });
  if (existsSync(path.join(from, "data"))) cpSync(path.join(from, "data"), dataFolder, { recursive: true });
  await restoreFolder(database, readFileSync(path.join(from, "database.tar.gz")));
} catch (error) {
  fail(error.message);
}
say(`Restored into ${dataFolder}`);
process.exit(0);

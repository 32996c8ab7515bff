// Backs up the embedded shop: the database and everything else in the data folder. Stop the shop first.
//   node .ci/backup.mjs [FOLDER]      writes FOLDER/<day>T<time>/ (default: backups beside the data folder)
import { cpSync, existsSync, mkdirSync, readdirSync, writeFileSync } from "node:fs";
import path from "node:path";
import { loadBundled } from "./bundle.mjs";
import { fail, say } from "./lib.mjs";
import { prepare } from "./prepare.mjs";
import { settings } from "./settings.mjs";

const { dataFolder, databaseUrl } = settings();
if (databaseUrl !== null)
  fail(`The records are in PostgreSQL: back them up with pg_dump, and copy ${dataFolder} beside it.`);
const database = path.join(dataFolder, "database");
if (!existsSync(path.join(database, "PG_VERSION"))) fail(`There is no database in ${dataFolder}.`);

await prepare();
const { backUpFolder } = await loadBundled("lib/data/maintenance.ts", "maintenance");
const name = new Date().toISOString().slice(0, 19).replaceAll(":", "");
const target = path.join(path.resolve(process.argv[2] ?? path.join(path.dirname(dataFolder), "backups")), name);
try {
  // The folder stays locked until the last file is copied, so that all of them are of one moment.
  await backUpFolder(database, ({ archive, sql }) => {
    mkdirSync(target, { recursive: true });
    writeFileSync(path.join(target, "database.tar.gz"), archive);
    writeFileSync(path.join(target, "database.sql"), sql);
    for (const entry of readdirSync(dataFolder)) {
      if (!/^database(\.|$)/.test(entry))
        cpSync(path.join(dataFolder, entry), path.join(target, "data", entry), { recursive: true });
    }
  });
} catch (error) {
  fail(error.message);
}
say(`Backed up to ${target}`);
say(`Bring it back with: node .ci/restore.mjs ${target}`);
process.exit(0);

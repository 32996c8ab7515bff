// Brings a backup of the embedded shop back. What is in the data folder now is moved aside, never deleted. Stop the shop first.
//   node .ci/restore.mjs BACKUP_FOLDER [--key FILE]     FILE holds the owner's half of the key an encrypted one was made for
import {
  copyFileSync,
  cpSync,
  existsSync,
  mkdirSync,
  readdirSync,
  readFileSync,
  renameSync,
  writeFileSync,
} from "node:fs";
import path from "node:path";
import { parseArgs } from "node:util";
import { loadBundled } from "./bundle.mjs";
import { fail, say } from "./lib.mjs";
import { prepare } from "./prepare.mjs";
import { settings } from "./settings.mjs";

const { values, positionals } = parseArgs({ allowPositionals: true, options: { key: { type: "string" } } });
const [from] = positionals;
const { dataFolder, databaseUrl } = settings();
if (databaseUrl !== null) fail("The records are in PostgreSQL: load database.sql into an empty database with psql.");
if (!from || !["database.tar.gz", "database.tar.gz.age"].some((name) => existsSync(path.join(from, name))))
  fail("node .ci/restore.mjs BACKUP_FOLDER [--key FILE] (a folder that holds database.tar.gz)");
const identity = values.key === undefined ? null : secretIn(readFileSync(values.key, "utf8"));

await prepare();
const { readBackupFile, readManifest, restoreFolder } = await loadBundled("lib/data/maintenance.ts", "maintenance");
try {
  const archive = await readBackupFile(from, "database.tar.gz", identity);
  await restoreFolder(path.join(dataFolder, "database"), archive, async () => {
    const aside = moveAside();
    const manifest = readManifest(from);
    if (manifest?.isEncrypted) await unseal(manifest.files);
    else if (existsSync(path.join(from, "data"))) cpSync(path.join(from, "data"), dataFolder, { recursive: true });
    keepHouseKey(aside);
  });
} catch (error) {
  fail(error.message);
}
say(`Restored into ${dataFolder}`);
process.exit(0);

/** The one line of a key file that is the key. */
function secretIn(text) {
  return (
    text
      .split("\n")
      .find((line) => line.startsWith("AGE-SECRET-KEY-"))
      ?.trim() ?? fail(`${values.key} holds no age key.`)
  );
}

async function unseal(files) {
  for (const name of files.filter((one) => one.startsWith("data/"))) {
    const plain = name.replace(/\.age$/, "");
    const file = path.join(dataFolder, path.relative("data", plain));
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, await readBackupFile(from, plain, identity), { mode: 0o600 });
  }
}

/** A backup that anybody can read has no key in it: the one that was here still opens what it sealed. */
function keepHouseKey(aside) {
  const key = path.join(dataFolder, "house.key");
  if (existsSync(key) || process.env.PAIRWRIGHT_SECRET) return;
  const old = aside === null ? null : path.join(aside, "house.key");
  if (old !== null && existsSync(old)) {
    copyFileSync(old, key);
    say("The house.key that was here stays in use.");
  } else {
    say(
      `No house.key came back: put the one of that shop into ${dataFolder} before the next start, or what it sealed stays shut.`,
    );
  }
}

/**
 * Everything but the lock, which stands in the folder and keeps the shop from starting meanwhile.
 * @returns where it is now; null when there was nothing
 */
function moveAside() {
  const entries = readdirSync(dataFolder).filter((entry) => !entry.startsWith("database.lock"));
  if (entries.length === 0) return null;
  const aside = `${dataFolder}.before-${new Date().toISOString().slice(0, 19).replaceAll(":", "")}`;
  mkdirSync(aside);
  for (const entry of entries) renameSync(path.join(dataFolder, entry), path.join(aside, entry));
  say(`What was there is now in ${aside}`);
  return aside;
}

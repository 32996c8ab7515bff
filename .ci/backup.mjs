// Backs up the shop while it runs (or stands): the database, tried by bringing it back and counting, and everything else in
// the data folder.
//   node .ci/backup.mjs [FOLDER] [--keep N]     writes FOLDER/<day>T<time>/ (default: backups beside the data folder);
//                                               --keep removes the oldest beyond N
// PAIRWRIGHT_BACKUP_KEY=age1… encrypts every file for that key (made with age-keygen); its other half is not needed here.
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { parseArgs } from "node:util";
import { bundleThreads, loadBundled } from "./bundle.mjs";
import { fail, say, step } from "./lib.mjs";
import { findProgram } from "./postgres.mjs";
import { prepare } from "./prepare.mjs";
import { settings } from "./settings.mjs";

const { values, positionals } = parseArgs({ allowPositionals: true, options: { keep: { type: "string" } } });
const keep = values.keep === undefined ? null : Number(values.keep);
if (keep !== null && !(Number.isInteger(keep) && keep >= 1))
  fail(`--keep ${values.keep}: must be a whole number from 1.`);
const recipient = process.env.PAIRWRIGHT_BACKUP_KEY || null;
if (recipient !== null && !recipient.startsWith("age1"))
  fail("PAIRWRIGHT_BACKUP_KEY must be an age public key (age1…).");
const { dataFolder, databaseUrl } = settings();
const database = path.join(dataFolder, "database");
if (databaseUrl === null && !existsSync(path.join(database, "PG_VERSION")))
  fail(`There is no database in ${dataFolder}.`);

await prepare();
await bundleThreads();
const maintenance = await loadBundled("lib/data/maintenance.ts", "maintenance");
const all = path.resolve(positionals[0] ?? path.join(path.dirname(dataFolder), "backups"));
const now = new Date();
// What opens sealed texts, and letters as they left, are in no backup that anybody can read.
const leftOut =
  recipient === null
    ? /^(database(\..*)?|uploads|\.probe-.*|house\.key|letters)$/
    : /^(database(\..*)?|uploads|\.probe-.*)$/;
const target = path.join(all, now.toISOString().slice(0, 19).replaceAll(":", ""));
try {
  const made = databaseUrl === null ? await ofTheFolder() : await ofTheServer();
  const files = new Map([...made.files, ...maintenance.filesOf(dataFolder, leftOut)]);
  const kind = databaseUrl === null ? "embedded" : "postgres";
  await maintenance.writeBackup(target, files, {
    madeAt: now.toISOString(),
    database: kind,
    rows: made.rows,
    recipient,
  });
  const total = Object.values(made.rows).reduce((sum, count) => sum + count, 0);
  say(`Backed up to ${target}${recipient === null ? "" : ", encrypted"}; tried: ${total} rows came back.`);
  if (keep !== null) for (const name of maintenance.rotateBackups(all, keep)) say(`Removed the oldest: ${name}`);
  say(`Bring it back with: node .ci/restore.mjs ${target}${recipient === null ? "" : " --key FILE"}`);
} catch (error) {
  rmSync(target, { recursive: true, force: true });
  fail(`No backup was made. ${error.message}`);
}
process.exit(0);

async function ofTheFolder() {
  const scratch = mkdtempSync(path.join(os.tmpdir(), "pairwright-backup-"));
  try {
    const copy = path.join(scratch, "database");
    const rows = await step("Copying", () => copyOfTheFolder(copy));
    const { archive, sql } = await step("Packing and trying", () => maintenance.packCopy(copy, rows));
    return {
      rows,
      files: [
        ["database.tar.gz", archive],
        ["database.sql", Buffer.from(sql)],
      ],
    };
  } finally {
    rmSync(scratch, { recursive: true, force: true });
  }
}

/** From the running shop, which holds the database; or by ourselves when nobody does. */
async function copyOfTheFolder(copy) {
  try {
    const lock = await maintenance.lockFolder(database, { waitMs: 0 });
    lock.release();
  } catch (error) {
    if (error?.name !== "FolderInUse") throw error;
    return maintenance.requestCopy(database, copy);
  }
  const open = await maintenance.openDatabase({ kind: "embedded", folder: database });
  try {
    return await open.copyTo(copy);
  } finally {
    await open.close();
  }
}

async function ofTheServer() {
  const program = findProgram("pg_dump");
  if (program === null) throw new Error("pg_dump was not found: install PostgreSQL's client programs on this machine.");
  const { sql, rows } = await step("Dumping", () => maintenance.dumpPostgres(databaseUrl, program, process.env));
  await step("Trying", () => maintenance.tryDump(sql, rows));
  return { rows, files: [["database.sql", Buffer.from(sql)]] };
}

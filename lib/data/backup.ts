/**
 * Backups: a copy of one moment, taken while the shop runs; tried by bringing it back and counting; then written for its owner
 * alone, by choice for a key that only the owner has.
 */
import { chmodSync, existsSync, mkdirSync, readdirSync, readFileSync, rmSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";
import { PGlite } from "@electric-sql/pglite";
import { dataDir as preparedFiles } from "@electric-sql/pglite-prepopulatedfs";
import { pgDump } from "@electric-sql/pglite-tools/pg_dump";
import { Decrypter, Encrypter } from "age-encryption";
import { countRows } from "./copy";
import { syncTree } from "./durability";
import { openLocked } from "./embedded";
import { lockFolder } from "./lock";
import type { TableCounts } from "./thread/protocol";

export interface EmbeddedBackup {
  /** The database folder as .tar.gz; goes back with restoreFolder on the same version of the embedded database. */
  readonly archive: Uint8Array<ArrayBuffer>;
  /** The same as SQL; goes into an empty PostgreSQL database with psql. */
  readonly sql: string;
}

/** What a backup says of itself, readable without its key. */
export interface Manifest {
  readonly madeAt: string;
  readonly database: "embedded" | "postgres";
  /** Rows by table, as they were in the shop and as they came back on trial. */
  readonly rows: TableCounts;
  readonly isEncrypted: boolean;
  /** Every file but this, relative. */
  readonly files: readonly string[];
}

/** The copy came back with other rows than the shop had. */
export class TrialFailed extends Error {
  constructor(readonly differences: readonly string[]) {
    super(`The backup was tried and did not bring back what the shop holds: ${differences.join("; ")}`);
    this.name = "TrialFailed";
  }
}

const manifestName = "backup.json";

/**
 * Archive and SQL of a copied database folder, which is changed by it.
 * @throws TrialFailed when the archive, brought back, has not exactly these rows
 */
export async function packCopy(copy: string, rows: TableCounts): Promise<EmbeddedBackup> {
  const pglite = await openLocked(copy);
  try {
    await pglite.exec("CHECKPOINT");
    const archive = new Uint8Array(await (await pglite.dumpDataDir("gzip")).arrayBuffer());
    const dump = await pgDump({ pg: pglite, args: ["--no-owner"] });
    const trial = await PGlite.create({ loadDataDir: new Blob([archive]) });
    try {
      sameRows(rows, await countRows(trial));
    } finally {
      await trial.close();
    }
    return { archive, sql: forOlderServers(await dump.text()) };
  } finally {
    await pglite.close();
  }
}

/** Loads SQL into a new database in memory and counts. @throws TrialFailed */
export async function tryDump(sql: string, rows: TableCounts): Promise<void> {
  const trial = await PGlite.create({ loadDataDir: await preparedFiles() });
  try {
    await trial.exec(sql);
    sameRows(rows, await countRows(trial));
  } finally {
    await trial.close();
  }
}

function sameRows(expected: TableCounts, found: TableCounts): void {
  const tables = [...new Set([...Object.keys(expected), ...Object.keys(found)])].sort();
  const differences = tables
    .filter((table) => expected[table] !== found[table])
    .map((table) => `${table}: ${expected[table] ?? "none"} rows, ${found[table] ?? "none"} came back`);
  if (differences.length > 0) throw new TrialFailed(differences);
}

/** The dump begins with settings of the session; the newest of them is not known to servers before version 17. */
function forOlderServers(sql: string): string {
  return sql.replace(/^SET transaction_timeout = 0;\n/m, "");
}

/**
 * Writes a backup's files into a new folder, readable by their owner alone.
 * @param recipient an age public key ("age1…"): then only who holds its other half can read them
 */
export async function writeBackup(
  target: string,
  files: ReadonlyMap<string, Uint8Array>,
  { recipient, ...facts }: Omit<Manifest, "isEncrypted" | "files"> & { readonly recipient: string | null },
): Promise<void> {
  mkdirSync(target, { recursive: true, mode: 0o700 });
  chmodSync(target, 0o700);
  const names: string[] = [];
  for (const [name, bytes] of files) {
    const kept = recipient === null ? name : `${name}.age`;
    write(path.join(target, kept), recipient === null ? bytes : await sealed(bytes, recipient));
    names.push(kept);
  }
  const manifest: Manifest = { ...facts, isEncrypted: recipient !== null, files: names };
  // Last: a folder without it is no backup.
  write(path.join(target, manifestName), Buffer.from(JSON.stringify(manifest, null, 2)));
  syncTree(target);
}

async function sealed(bytes: Uint8Array, recipient: string): Promise<Uint8Array> {
  const encrypter = new Encrypter();
  encrypter.addRecipient(recipient);
  return encrypter.encrypt(bytes);
}

function write(file: string, bytes: Uint8Array): void {
  mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
  writeFileSync(file, bytes, { mode: 0o600, flag: "wx" });
}

/** Null where there is no backup; those made before backups described themselves have none either. */
export function readManifest(folder: string): Manifest | null {
  const file = path.join(folder, manifestName);
  return existsSync(file) ? (JSON.parse(readFileSync(file, "utf8")) as Manifest) : null;
}

/**
 * One file of a backup, opened.
 * @param identity the owner's own half ("AGE-SECRET-KEY-1…"), where the backup is encrypted
 */
export async function readBackupFile(
  folder: string,
  name: string,
  identity: string | null,
): Promise<Uint8Array<ArrayBuffer>> {
  const isSealed = readManifest(folder)?.isEncrypted ?? false;
  const bytes = new Uint8Array(readFileSync(path.join(folder, isSealed ? `${name}.age` : name)));
  if (!isSealed) return bytes;
  if (identity === null) throw new Error("This backup is encrypted: name the file with its key by --key FILE.");
  const decrypter = new Decrypter();
  decrypter.addIdentity(identity);
  return new Uint8Array(await decrypter.decrypt(bytes));
}

/** Removes the oldest finished backups of a folder beyond `keep`. @returns the names of those removed */
export function rotateBackups(folder: string, keep: number): readonly string[] {
  const made = readdirSync(folder)
    .filter((name) => /^\d{4}-\d{2}-\d{2}T\d{6}$/.test(name) && readManifest(path.join(folder, name)) !== null)
    .sort();
  const over = made.slice(0, Math.max(0, made.length - Math.max(1, keep)));
  for (const name of over) rmSync(path.join(folder, name), { recursive: true });
  return over;
}

/** Every file below a folder but those that `leaveOut` names at its top, by its path in there. */
export function filesOf(folder: string, leaveOut: RegExp): Map<string, Uint8Array> {
  const files = new Map<string, Uint8Array>();
  const walk = (below: string) => {
    for (const name of readdirSync(path.join(folder, below)).sort()) {
      if (below === "" && leaveOut.test(name)) continue;
      const inside = path.join(below, name);
      if (statSync(path.join(folder, inside)).isDirectory()) walk(inside);
      else files.set(path.join("data", inside), readFileSync(path.join(folder, inside)));
    }
  };
  walk("");
  return files;
}

/**
 * Makes a database folder from an archive.
 * @param whileHeld makes room for it, once nobody else can open the folder
 * @throws Error when there is something at that place already; FolderInUse
 */
export async function restoreFolder(
  folder: string,
  archive: Uint8Array<ArrayBuffer>,
  whileHeld: () => void | Promise<void> = () => {},
): Promise<void> {
  const lock = await lockFolder(folder);
  try {
    await whileHeld();
    if (existsSync(folder)) throw new Error(`${folder} is there already; move it away first`);
    const pglite = await PGlite.create({ dataDir: folder, loadDataDir: new Blob([archive]) });
    await pglite.close();
    syncTree(folder);
  } finally {
    lock.release();
  }
}

/** Copies of the embedded database: the folder as an archive, and the same as SQL that PostgreSQL loads. */
import { existsSync } from "node:fs";
import { PGlite } from "@electric-sql/pglite";
import { pgDump } from "@electric-sql/pglite-tools/pg_dump";
import { syncTree } from "./durability";
import { openFolder } from "./embedded";
import { lockFolder } from "./lock";

export interface EmbeddedBackup {
  /** The database folder as .tar.gz; goes back with restoreFolder on the same version of the embedded database. */
  readonly archive: Uint8Array;
  /** The same as SQL; goes into an empty PostgreSQL database with psql. */
  readonly sql: string;
}

/**
 * @param whileHeld writes the copies away, with whatever else must fit them; the folder stays locked until it is done
 * @throws FolderInUse while the shop runs
 */
export async function backUpFolder(
  folder: string,
  whileHeld: (backup: EmbeddedBackup) => void = () => {},
): Promise<EmbeddedBackup> {
  const { pglite, close } = await openFolder(folder);
  try {
    await pglite.exec("CHECKPOINT");
    const archive = new Uint8Array(await (await pglite.dumpDataDir("gzip")).arrayBuffer());
    const dump = await pgDump({ pg: pglite, args: ["--no-owner"] });
    const backup = { archive, sql: forOlderServers(await dump.text()) };
    whileHeld(backup);
    return backup;
  } finally {
    await close();
  }
}

/** The dump begins with settings of the session; the newest of them is not known to servers before version 17. */
function forOlderServers(sql: string): string {
  return sql.replace(/^SET transaction_timeout = 0;\n/m, "");
}

/**
 * Makes a database folder from an archive.
 * @param whileHeld makes room for it, once nobody else can open the folder
 * @throws Error when there is something at that place already; FolderInUse
 */
export async function restoreFolder(
  folder: string,
  archive: Uint8Array<ArrayBuffer>,
  whileHeld: () => void = () => {},
): Promise<void> {
  const lock = await lockFolder(folder);
  try {
    whileHeld();
    if (existsSync(folder)) throw new Error(`${folder} is there already; move it away first`);
    const pglite = await PGlite.create({ dataDir: folder, loadDataDir: new Blob([archive]) });
    await pglite.close();
    syncTree(folder);
  } finally {
    lock.release();
  }
}

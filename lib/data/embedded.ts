/** Opens the embedded database: PostgreSQL compiled to WebAssembly, in a folder or in memory. */
import { chmodSync, existsSync, mkdirSync, rmSync, writeFileSync } from "node:fs";
import { PGlite } from "@electric-sql/pglite";
import { dataDir as preparedFiles } from "@electric-sql/pglite-prepopulatedfs";
import { durableStartParams, syncToDisk, syncTree } from "./durability";
import { checkFolder, DatabaseProblem, refuseFullDisk } from "./folder-problem";
import { type FolderLock, lockFolder } from "./lock";

export interface EmbeddedDatabase {
  readonly pglite: PGlite;
  close(): Promise<void>;
}

/**
 * Opens (and on first use creates) the database in a folder, durable and locked to this process.
 * @throws FolderInUse
 */
export async function openFolder(folder: string): Promise<EmbeddedDatabase> {
  checkFolder(folder);
  const lock = await lockFolder(folder);
  try {
    const pglite = await openLocked(folder);
    return { pglite, close: () => closeAndRelease(pglite, lock) };
  } catch (error) {
    lock.release();
    throw error;
  }
}

/** A database that lives as long as the process; for tests and for comparing schemas. */
export async function openMemory(): Promise<EmbeddedDatabase> {
  const pglite = await PGlite.create({ loadDataDir: await preparedFiles() });
  await speakUtc(pglite);
  return { pglite, close: () => pglite.close() };
}

/** Opens the database of a folder that the caller has locked. @throws DatabaseProblem */
export async function openLocked(folder: string): Promise<PGlite> {
  // Present while a new folder is being filled. Nothing was acknowledged before it is gone, so start over.
  const unfinished = `${folder}.unfinished`;
  if (existsSync(unfinished)) rmSync(folder, { recursive: true, force: true });
  const isNew = !existsSync(`${folder}/PG_VERSION`);
  if (isNew) {
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    writeFileSync(unfinished, "");
  }
  const pglite = await create(folder, isNew);
  syncToDisk(pglite);
  await speakUtc(pglite);
  if (isNew) {
    // The prepared files bring their own rights; what is in here is nobody else's to read.
    chmodSync(folder, 0o700);
    await pglite.exec("CHECKPOINT");
    syncTree(folder);
  }
  rmSync(unfinished, { force: true });
  return pglite;
}

/** The database program says nothing useful of files it cannot read; it only ends. */
async function create(folder: string, isNew: boolean): Promise<PGlite> {
  try {
    const pglite = await PGlite.create({
      dataDir: folder,
      startParams: durableStartParams(),
      ...(isNew ? { loadDataDir: await preparedFiles() } : {}),
    });
    await pglite.query("SELECT 1");
    return pglite;
  } catch (error) {
    refuseFullDisk(folder);
    throw isNew ? error : new DatabaseProblem({ code: "damaged", folder }, { cause: error });
  }
}

/** The adapter drops the offset of a timestamp when it reads one, so the session must speak UTC. */
async function speakUtc(pglite: PGlite): Promise<void> {
  await pglite.exec("SET TIME ZONE 'UTC'");
}

async function closeAndRelease(pglite: PGlite, lock: FolderLock): Promise<void> {
  await pglite.close();
  lock.release();
}

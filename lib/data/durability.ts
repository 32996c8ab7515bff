/**
 * Makes the embedded database write through to the disk. As shipped it starts PostgreSQL with syncing switched off (-F)
 * and its file system has no fsync at all, so an acknowledged write would be lost in a power cut.
 */
import { closeSync, fsyncSync, openSync, readdirSync } from "node:fs";
import path from "node:path";
import { PGlite } from "@electric-sql/pglite";

/**
 * Start parameters with syncing on. wal_sync_method must be fsync: the build's fdatasync is an empty function.
 */
export function durableStartParams(): string[] {
  const withoutNoSync = PGlite.defaultStartParams.filter((parameter) => parameter !== "-F");
  return [...withoutNoSync, "-c", "fsync=on", "-c", "wal_sync_method=fsync"];
}

interface NodeFileStream {
  /** The system's file descriptor; a folder opened for syncing has none. */
  readonly nfd: number | undefined;
  readonly node: unknown;
}

interface NodeFileSystem {
  readonly stream_ops: { fsync?: (stream: NodeFileStream) => number };
  realPath(node: unknown): string;
  /** Runs an operation and turns Node's error into the errno PostgreSQL understands. */
  tryFSOperation<T>(operation: () => T): T;
}

/**
 * Gives the running database's file system its missing operation. Call right after it became ready.
 * Folders count too: a checkpoint syncs them, and a failure there stops the database for good.
 */
export function syncToDisk(database: PGlite): void {
  const files = (database.Module.FS as unknown as { filesystems: { NODEFS: NodeFileSystem } }).filesystems.NODEFS;
  files.stream_ops.fsync = (stream) =>
    files.tryFSOperation(() => {
      if (stream.nfd === undefined) syncOne(files.realPath(stream.node));
      else fsyncSync(stream.nfd);
      return 0;
    });
}

/** Syncs every file and folder below `folder`: the files of a new database were written before syncing was on. */
export function syncTree(folder: string): void {
  for (const entry of readdirSync(folder, { withFileTypes: true })) {
    const full = path.join(folder, entry.name);
    if (entry.isDirectory()) syncTree(full);
    else if (entry.isFile()) syncOne(full);
  }
  syncOne(folder);
}

function syncOne(file: string): void {
  const descriptor = openSync(file, "r");
  try {
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
  }
}

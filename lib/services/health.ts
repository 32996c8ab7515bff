/** Whether the shop can work right now: read, write, and keep what it is given. */
import { closeSync, existsSync, fsyncSync, openSync, rmSync, writeSync } from "node:fs";
import path from "node:path";
import { config } from "#config";
import { database } from "#data/client";
import { touchCounter } from "#data/counters";
import { translated } from "#data/transaction";
import { engineOn } from "#shop/catalogue/current";
import type { Context } from "./context";

/** A watcher that asks every second must not wear out the disk. */
const knownForMs = 3000;
const patienceMs = 5000;
const probeBytes = 64 * 1024;

let last: { readonly at: number; readonly outcome: Promise<void> } | undefined;

/**
 * Writes to the database and to the data folder and reads the catalogue in force. What was found is known for three seconds.
 * @throws Unavailable, or what stands in the way
 */
export function checkHealth(ctx: Context): Promise<void> {
  const at = performance.now();
  if (last === undefined || at - last.at > knownForMs) last = { at, outcome: withPatience(look(ctx)) };
  return last.outcome;
}

async function look(ctx: Context): Promise<void> {
  engineOn(ctx.now);
  const { kind } = await database();
  const { dataFolder, database: where } = config();
  const folders = { data: kind === "memory" ? null : dataFolder, database: null };
  const embedded = kind === "embedded" && where.kind === "embedded" ? { database: where.folder } : {};
  await tryWriting(ctx.db, { ...folders, ...embedded }, ctx.newId());
}

/**
 * Writes where the shop would write.
 * @param folders where there are files of ours to look at, else null
 * @throws Unavailable, or what stands in the way
 */
export async function tryWriting(
  client: Context["db"],
  folders: { readonly data: string | null; readonly database: string | null },
  name: string,
): Promise<void> {
  await translated(touchCounter(client, "health"));
  // Files that were deleted stay open: the database would go on writing into nothing.
  if (folders.database !== null && !existsSync(path.join(folders.database, "PG_VERSION"))) {
    throw new Error("the database's files are gone from the data folder");
  }
  if (folders.data !== null) writeProbe(folders.data, name);
}

/** A disk may be full although the database, which keeps room ahead, still writes for a while. */
function writeProbe(folder: string, name: string): void {
  const file = path.join(folder, `.probe-${name}`);
  const descriptor = openSync(file, "wx", 0o600);
  try {
    writeSync(descriptor, Buffer.alloc(probeBytes));
    fsyncSync(descriptor);
  } finally {
    closeSync(descriptor);
    rmSync(file, { force: true });
  }
}

async function withPatience(work: Promise<void>): Promise<void> {
  let timer: NodeJS.Timeout | undefined;
  const tooLong = new Promise<never>((_resolve, reject) => {
    timer = setTimeout(() => reject(new Error(`no answer within ${patienceMs / 1000} s`)), patienceMs);
  });
  try {
    await Promise.race([work, tooLong]);
  } finally {
    clearTimeout(timer);
  }
}

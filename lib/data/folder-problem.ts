/** What can be wrong with the place where the data is, found out before it is opened, and told in words. */
import { accessSync, constants, existsSync, readdirSync, readFileSync, statfsSync, statSync } from "node:fs";
import path from "node:path";
import words from "#content/copy/start.json";
import { fill } from "#engine/units";

/** The version of PostgreSQL inside the embedded database; its folders cannot be opened by another. */
const postgresVersion = "18";
/** Below this a start is refused: the database alone writes ahead in files of 16 MB. */
const leastFreeBytes = 64 * 1024 * 1024;
/** A new database with the demo shop. */
const newShopBytes = 256 * 1024 * 1024;

export type Problem =
  | { readonly code: "not-a-folder" | "not-writable" | "lost" | "foreign" | "damaged"; readonly folder: string }
  | { readonly code: "other-version"; readonly folder: string; readonly found: string; readonly wanted: string }
  | { readonly code: "disk-full"; readonly folder: string; readonly freeMb: number; readonly neededMb: number }
  | { readonly code: "not-ours" }
  | { readonly code: "newer"; readonly migration: string };

/** The message is a sentence for people: what is wrong and what to do. */
export class DatabaseProblem extends Error {
  constructor(
    readonly problem: Problem,
    options?: { cause: unknown },
  ) {
    const { code, ...parameters } = problem;
    super(fill(words.problems[code], parameters as Record<string, string | number>), options);
    this.name = "DatabaseProblem";
  }
}

/**
 * Looks at the folder of the embedded database before anything touches it.
 * @param folder the database's own folder, inside the data folder
 * @throws DatabaseProblem
 */
export function checkFolder(folder: string): void {
  const dataFolder = path.dirname(folder);
  const above = nearestThere(dataFolder);
  if (!statSync(above).isDirectory()) throw new DatabaseProblem({ code: "not-a-folder", folder: above });
  if (existsSync(folder) && !statSync(folder).isDirectory())
    throw new DatabaseProblem({ code: "not-a-folder", folder });
  for (const one of [above, ...(existsSync(folder) ? [folder] : [])]) {
    if (!isWritable(one)) throw new DatabaseProblem({ code: "not-writable", folder: one });
  }
  const isUnfinished = existsSync(`${folder}.unfinished`);
  const isThere = existsSync(path.join(folder, "PG_VERSION"));
  if (!isThere && !isUnfinished) refuseWhatIsNoDatabase(folder);
  if (isThere && !isUnfinished) refuseOtherVersions(folder);
  refuseFullDisk(above, isThere && !isUnfinished ? leastFreeBytes : newShopBytes);
}

function refuseWhatIsNoDatabase(folder: string): void {
  if (existsSync(folder) && readdirSync(folder).length > 0) throw new DatabaseProblem({ code: "foreign", folder });
  // Written when a database was ready here once.
  if (existsSync(`${folder}.stamp`)) throw new DatabaseProblem({ code: "lost", folder });
}

function refuseOtherVersions(folder: string): void {
  const found = readFileSync(path.join(folder, "PG_VERSION"), "utf8").trim();
  if (found === postgresVersion) return;
  if (!/^\d+(\.\d+)?$/.test(found)) throw new DatabaseProblem({ code: "damaged", folder });
  throw new DatabaseProblem({ code: "other-version", folder, found, wanted: postgresVersion });
}

/** @throws DatabaseProblem when there is less room than needed where `folder` is */
export function refuseFullDisk(folder: string, neededBytes: number = leastFreeBytes): void {
  const { bavail, bsize } = statfsSync(folder);
  const free = bavail * bsize;
  if (free >= neededBytes) return;
  const inMb = (bytes: number) => Math.floor(bytes / 1024 / 1024);
  throw new DatabaseProblem({ code: "disk-full", folder, freeMb: inMb(free), neededMb: inMb(neededBytes) });
}

function nearestThere(folder: string): string {
  return existsSync(folder) ? folder : nearestThere(path.dirname(folder));
}

function isWritable(folder: string): boolean {
  try {
    accessSync(folder, constants.W_OK | constants.R_OK | constants.X_OK);
    return true;
  } catch {
    return false;
  }
}

/**
 * One process per data folder. The embedded database has no lock of its own: a second process would open the same
 * folder without complaint and ruin it. A file beside the folder names the holder; a holder that is gone (killed, power
 * cut) is taken over.
 */
import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";

/** Another process holds the folder. The message is meant for people. */
export class FolderInUse extends Error {
  constructor(
    readonly folder: string,
    readonly holderPid: number,
  ) {
    super(
      `The data folder ${folder} is in use by another Pairwright process (number ${holderPid}). ` +
        "Stop that one first, or give this one its own folder with PAIRWRIGHT_DATA.",
    );
    this.name = "FolderInUse";
  }
}

export interface FolderLock {
  release(): void;
}

interface Holder {
  readonly pid: number;
  /** Start time of the process where the system tells it, so that a reused number is not taken for the old holder. */
  readonly started: string | null;
}

const heldHere = new Set<string>();

/**
 * Takes the lock of a folder for the life of this process or until released.
 * @throws FolderInUse when a living process (or this one) holds it
 */
export function lockFolder(folder: string): FolderLock {
  const file = `${folder}.lock`;
  mkdirSync(path.dirname(file), { recursive: true });
  if (heldHere.has(file)) throw new FolderInUse(folder, process.pid);
  const self = JSON.stringify({ pid: process.pid, started: startOf(process.pid) } satisfies Holder);
  for (;;) {
    if (writeExclusively(file, self)) break;
    const seen = readText(file);
    if (seen === null) continue;
    const holder = parseHolder(seen);
    if (holder !== null && isAlive(holder)) throw new FolderInUse(folder, holder.pid);
    takeAway(file, seen);
  }
  heldHere.add(file);
  const release = () => {
    if (!heldHere.delete(file)) return;
    process.off("exit", release);
    if (readText(file) === self) rmSync(file, { force: true });
  };
  process.once("exit", release);
  return { release };
}

function writeExclusively(file: string, text: string): boolean {
  const draft = `${file}.${process.pid}.new`;
  writeFileSync(draft, text);
  try {
    // A link appears whole or not at all, so nobody ever reads a half-written lock.
    linkSync(draft, file);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  } finally {
    rmSync(draft, { force: true });
  }
}

/** Removes a dead holder's file; puts it back when somebody else took it over in between. */
function takeAway(file: string, seen: string): void {
  const aside = `${file}.${process.pid}.old`;
  try {
    renameSync(file, aside);
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return;
    throw error;
  }
  if (readText(aside) !== seen) {
    try {
      linkSync(aside, file);
    } catch {
      // A third process was faster still; its lock stands.
    }
  }
  rmSync(aside, { force: true });
}

function readText(file: string): string | null {
  try {
    return readFileSync(file, "utf8");
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "ENOENT") return null;
    throw error;
  }
}

function parseHolder(text: string): Holder | null {
  try {
    const value: unknown = JSON.parse(text);
    if (typeof value !== "object" || value === null || !("pid" in value) || !Number.isSafeInteger(value.pid))
      return null;
    const started = "started" in value && typeof value.started === "string" ? value.started : null;
    return { pid: value.pid as number, started };
  } catch {
    return null;
  }
}

/** A lock bearing our own number that we do not hold is a leftover: in containers every start has the same number. */
function isAlive(holder: Holder): boolean {
  if (holder.pid === process.pid) return false;
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    return (error as NodeJS.ErrnoException).code === "EPERM";
  }
  const started = startOf(holder.pid);
  return holder.started === null || started === null || started === holder.started;
}

/** The kernel's start time of a process in clock ticks since boot (Linux); null where there is no /proc. */
function startOf(pid: number): string | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    return stat.slice(stat.lastIndexOf(")") + 2).split(" ")[19] ?? null;
  } catch {
    return null;
  }
}

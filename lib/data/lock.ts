/**
 * One process per data folder. The embedded database has no lock of its own: a second process would open the same
 * folder without complaint and ruin it. A file beside the folder names the holder. A holder that lives is never taken
 * over, however long it stands still; one that is gone (killed, power cut) or only waits to be buried is.
 */
import { createHash } from "node:crypto";
import { linkSync, mkdirSync, readFileSync, renameSync, rmSync, writeFileSync } from "node:fs";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";

/** Another process holds the folder. The message is meant for people. */
export class FolderInUse extends Error {
  constructor(
    readonly folder: string,
    readonly holderPid: number,
    waitedMs: number,
  ) {
    const waited = waitedMs > 0 ? ` Waited ${waitedMs / 1000} seconds for it to end.` : "";
    super(
      `The data folder ${folder} is in use by another Pairwright process (number ${holderPid}).${waited} ` +
        "Stop that one first, or give this one its own folder with PAIRWRIGHT_DATA.",
    );
    this.name = "FolderInUse";
  }
}

export interface FolderLock {
  release(): void;
}

export interface Patience {
  /** How long to wait for the holder to end before refusing. */
  readonly waitMs?: number;
  /** Hears, once, why the start takes longer. */
  readonly tell?: (words: string) => void;
  /** A thread of this process may still write while the process ends: then the lock is left for the next start to take over. */
  readonly leaveOnExit?: boolean;
}

interface Holder {
  readonly pid: number;
  /** Start time of the process where the system tells it, so that a reused number is not taken for the old holder. */
  readonly started: string | null;
  /** Which run of the machine that time is counted in. Locks made before this was kept have none. */
  readonly boot: string | null;
}

/** A start waits this long for the one before it to end: a restart begins while the old process still closes. */
export const patienceMs = 10_000;
const lookAgainMs = 100;

const heldHere = new Set<string>();

/**
 * Takes the lock of a folder for the life of this process or until released; waits a while for a holder that lives.
 * @throws FolderInUse when it still lives then, or when this process holds the lock itself
 */
export async function lockFolder(folder: string, patience: Patience = {}): Promise<FolderLock> {
  const { waitMs = patienceMs, tell = tellOnTerminal, leaveOnExit = false } = patience;
  const file = `${folder}.lock`;
  mkdirSync(path.dirname(file), { recursive: true, mode: 0o700 });
  if (heldHere.has(file)) throw new FolderInUse(folder, process.pid, 0);
  heldHere.add(file);
  const began = performance.now();
  let told = false;
  try {
    for (;;) {
      const holder = tryLock(file);
      if (holder === null) return heldLock(file, leaveOnExit);
      if (performance.now() - began >= waitMs) throw new FolderInUse(folder, holder, waitMs);
      if (!told) tell(waitingWords(folder, holder, waitMs));
      told = true;
      await sleep(lookAgainMs);
    }
  } catch (error) {
    heldHere.delete(file);
    throw error;
  }
}

function waitingWords(folder: string, holder: number, waitMs: number): string {
  return `The data folder ${folder} is in use by process number ${holder}; waiting up to ${waitMs / 1000} seconds for it to end.`;
}

/** At a start there is a person at the terminal, and no log yet. */
function tellOnTerminal(words: string): void {
  process.stderr.write(`\n${words}\n`);
}

function heldLock(file: string, leaveOnExit: boolean): FolderLock {
  const self = lockText();
  const release = () => {
    if (!heldHere.delete(file)) return;
    process.off("exit", release);
    if (readText(file) === self) rmSync(file, { force: true });
  };
  if (!leaveOnExit) process.once("exit", release);
  return { release };
}

/** @returns null when the lock is ours now, else the number of the process that stands in the way */
function tryLock(file: string): number | null {
  for (;;) {
    if (writeExclusively(file)) return null;
    const seen = readText(file);
    if (seen === null) continue;
    const holder = parseHolder(seen);
    if (holder !== null && isAlive(holder)) return holder.pid;
    const other = succeed(file, seen);
    if (other !== "again") return other;
  }
}

/**
 * Takes a dead holder's place. Of several that find it dead only one may: the one that can make the file named for the
 * dead. It puts its own lock over the old one in one step, so there is never a moment without a lock.
 */
function succeed(file: string, seen: string): number | null | "again" {
  const claim = claimOn(file, seen);
  if (!writeExclusively(claim)) {
    const text = readText(claim);
    if (text === null) return "again";
    const claimer = parseHolder(text);
    if (claimer !== null && isAlive(claimer)) return claimer.pid;
    // Died between its claim and its lock: who succeeds the claimer may clear the claim away, and all begin anew.
    const outcome = succeed(claim, text);
    if (outcome === null) rmSync(claim, { force: true });
    return outcome === null ? "again" : outcome;
  }
  try {
    // The claim may have been free because another succeeded in the meantime and tidied up.
    if (readText(file) !== seen) return "again";
    renameSync(draftOf(file), file);
    return null;
  } finally {
    rmSync(claim, { force: true });
  }
}

function claimOn(file: string, seen: string): string {
  return `${file}.after-${createHash("sha256").update(seen).digest("hex").slice(0, 16)}`;
}

/** A file with our own words, to be moved or linked to where it counts: it appears there whole or not at all. */
function draftOf(file: string): string {
  const draft = `${file}.${process.pid}.new`;
  writeFileSync(draft, lockText());
  return draft;
}

function writeExclusively(file: string): boolean {
  const draft = draftOf(file);
  try {
    linkSync(draft, file);
    return true;
  } catch (error) {
    if ((error as NodeJS.ErrnoException).code === "EEXIST") return false;
    throw error;
  } finally {
    rmSync(draft, { force: true });
  }
}

function lockText(): string {
  return JSON.stringify({
    pid: process.pid,
    started: statOf(process.pid)?.started ?? null,
    boot: bootOf(),
  } satisfies Holder);
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
    const boot = "boot" in value && typeof value.boot === "string" ? value.boot : null;
    return { pid: value.pid as number, started, boot };
  } catch {
    return null;
  }
}

/** A lock bearing our own number that we do not hold is a leftover: in containers every start has the same number. */
function isAlive(holder: Holder): boolean {
  if (holder.pid === process.pid) return false;
  const boot = bootOf();
  if (holder.boot !== null && boot !== null && holder.boot !== boot) return false;
  try {
    process.kill(holder.pid, 0);
  } catch (error) {
    // Somebody else's process may not be asked, but it is there.
    if ((error as NodeJS.ErrnoException).code !== "EPERM") return false;
  }
  const stat = statOf(holder.pid);
  if (stat === null) return true;
  if (deadStates.has(stat.state)) return false;
  return holder.started === null || stat.started === holder.started;
}

/** Ended, and only waiting for its parent to take note: it has no files open and comes back no more. */
const deadStates: ReadonlySet<string> = new Set(["Z", "X", "x"]);

interface ProcessStat {
  readonly state: string;
  /** The kernel's start time in clock ticks since boot. */
  readonly started: string;
}

/** What the kernel says of a process (Linux); null where there is no /proc or no such process. */
function statOf(pid: number): ProcessStat | null {
  try {
    const stat = readFileSync(`/proc/${pid}/stat`, "utf8");
    // The name before it stands in brackets and may hold spaces and brackets of its own.
    const [state, ...rest] = stat.slice(stat.lastIndexOf(")") + 2).split(" ");
    const started = rest[18];
    return state === undefined || started === undefined ? null : { state, started };
  } catch {
    return null;
  }
}

/** Names this run of the machine (Linux); null elsewhere. */
function bootOf(): string | null {
  try {
    return readFileSync("/proc/sys/kernel/random/boot_id", "utf8").trim();
  } catch {
    return null;
  }
}

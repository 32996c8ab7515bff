/**
 * The lock of a data folder, asked of real processes. Zombies, stopped processes and numbers used again are made, not
 * mimicked. PAIRWRIGHT_STALL_SECONDS=60 holds one still for a minute instead of three seconds.
 */
import { existsSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { pathToFileURL } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { FolderInUse, lockFolder, patienceMs } from "#data/lock";
import { bundle } from "../../.ci/bundle.mjs";
import { runModule, temporaryFolder } from "../support/child";

const stallSeconds = Number(process.env.PAIRWRIGHT_STALL_SECONDS ?? 3);
const noProc = "this system tells nothing of processes under /proc";
const tellsOfProcesses = existsSync("/proc/self/stat");
const atOnce = { waitMs: 0 };

/** Takes the lock of argv[3] and keeps it; waits argv[4] ms for it, or as long as a start does. */
const holder = `
  const { lockFolder } = await import(process.argv[2]);
  const [,,, folder, waitMs] = process.argv;
  try {
    await lockFolder(folder, {
      ...(waitMs === undefined ? {} : { waitMs: Number(waitMs) }),
      tell: (words) => console.log("waits " + words),
    });
    setInterval(() => {}, 1000);
    process.on("SIGTERM", () => process.exit(0));
    console.log("holds");
  } catch (error) {
    console.log("refused " + error.message);
  }`;

/** Starts a holder and leaves it unburied when it dies: its number stays, with nobody behind it. */
const parentOfZombie = `
  import { spawn } from "node:child_process";
  const [,, lock, folder, text] = process.argv;
  // The shell becomes "sleep", which never asks after its child.
  spawn("sh", ["-c", '"$0" --input-type=module --eval "$1" -- child "$2" "$3" & exec sleep 600',
    process.execPath, text, lock, folder], { stdio: "inherit" }).unref();
  setInterval(() => {}, 1000);`;

/** Dies between claiming a dead holder's place and writing its own lock. */
const takesOverAndDies = `
  import fs from "node:fs";
  import { syncBuiltinESMExports } from "node:module";
  const rename = fs.renameSync;
  fs.renameSync = (from, to) => (to.endsWith(".lock") ? process.kill(process.pid, "SIGKILL") : rename(from, to));
  syncBuiltinESMExports();
  const { lockFolder } = await import(process.argv[2]);
  await lockFolder(process.argv[3]);`;

let lockModule: string;
beforeAll(async () => {
  lockModule = pathToFileURL(await bundle("lib/data/lock.ts", "test-lock")).href;
});

const newFolder = () => path.join(temporaryFolder(), "database");
const lockOf = (folder: string) => JSON.parse(readFileSync(`${folder}.lock`, "utf8")) as { readonly pid: number };
const stateOf = (pid: number) => /\) (\S)/.exec(readFileSync(`/proc/${pid}/stat`, "utf8"))?.[1];

describe("lockFolder", () => {
  it("refuses a second process and names the first and the way out", async () => {
    const folder = newFolder();
    const first = runModule(holder, lockModule, folder);
    await first.waitForLine("holds");

    const second = runModule(holder, lockModule, folder, "200");
    const words = await second.waitForLine("refused");

    expect(words).toContain(`number ${first.process.pid}`);
    expect(words).toContain(folder);
    expect(words).toContain("Waited 0.2 seconds");
    expect(words).toContain("PAIRWRIGHT_DATA");
    await expect(lockFolder(folder, atOnce)).rejects.toThrow(FolderInUse);
  });

  it("waits ten seconds at a start before it refuses, and says so at once", async () => {
    const folder = newFolder();
    const first = runModule(holder, lockModule, folder);
    await first.waitForLine("holds");

    const second = runModule(holder, lockModule, folder);
    const told = await second.waitForLine("waits");
    const began = performance.now();
    expect(second.lines.some((line) => line.startsWith("refused"))).toBe(false);
    expect(told).toContain(`number ${first.process.pid}`);
    expect(told).toContain("up to 10 seconds");
    await second.waitForLine("refused");

    expect(patienceMs).toBe(10_000);
    expect(performance.now() - began).toBeGreaterThan(9_500);
    expect(lockOf(folder).pid).toBe(first.process.pid);
  });

  it("goes on as soon as the one before it has ended", async () => {
    const folder = newFolder();
    const first = runModule(holder, lockModule, folder);
    await first.waitForLine("holds");
    const second = runModule(holder, lockModule, folder);
    await second.waitForLine("waits");
    first.process.kill("SIGTERM");
    await second.waitForLine("holds");
    expect(lockOf(folder).pid).toBe(second.process.pid);
  });

  it(
    "never takes over a holder that stands still",
    async () => {
      const folder = newFolder();
      const first = runModule(holder, lockModule, folder);
      await first.waitForLine("holds");
      first.process.kill("SIGSTOP");
      const until = performance.now() + stallSeconds * 1000;
      while (performance.now() < until) {
        await expect(lockFolder(folder, atOnce)).rejects.toThrow(FolderInUse);
        await sleep(250);
      }
      expect(lockOf(folder).pid).toBe(first.process.pid);
      first.process.kill("SIGCONT");
      first.process.kill("SIGTERM");
      await first.ended;
      (await lockFolder(folder, atOnce)).release();
    },
    60_000 + stallSeconds * 1000,
  );

  it("takes over from a process that is dead and not yet buried", async ({ skip }) => {
    skip(!tellsOfProcesses, noProc);
    const folder = newFolder();
    const parent = runModule(parentOfZombie, lockModule, folder, holder);
    await parent.waitForLine("holds");
    const { pid } = lockOf(folder);
    const shell = Number(/\) \S (\d+)/.exec(readFileSync(`/proc/${pid}/stat`, "utf8"))?.[1]);
    try {
      process.kill(pid, "SIGKILL");
      await expect.poll(() => stateOf(pid)).toBe("Z");
      // The number still answers; only its state tells.
      expect(() => process.kill(pid, 0)).not.toThrow();
      (await lockFolder(folder, atOnce)).release();
      expect(stateOf(pid)).toBe("Z");
    } finally {
      process.kill(shell, "SIGKILL");
    }
  });

  it("takes over what a killed process left", async () => {
    const folder = newFolder();
    const first = runModule(holder, lockModule, folder);
    await first.waitForLine("holds");
    await first.kill9();
    expect(existsSync(`${folder}.lock`)).toBe(true);

    const lock = await lockFolder(folder, atOnce);
    expect(lockOf(folder)).toMatchObject({ pid: process.pid });
    lock.release();
    expect(readdirSync(path.dirname(folder))).toEqual([]);
  });

  it("is released by a process that ends in order", async () => {
    const folder = newFolder();
    const first = runModule(holder, lockModule, folder);
    await first.waitForLine("holds");
    first.process.kill("SIGTERM");
    await first.ended;
    expect(existsSync(`${folder}.lock`)).toBe(false);
  });

  it("gives the folder to exactly one of several that find a leftover at once", async () => {
    const folder = newFolder();
    writeFileSync(`${folder}.lock`, JSON.stringify({ pid: 2 ** 22 - 3, started: "1" }));
    const children = Array.from({ length: 6 }, () => runModule(holder, lockModule, folder, "500"));
    const words = await Promise.all(
      children.map((child) => Promise.race([child.waitForLine("holds"), child.waitForLine("refused")])),
    );
    expect(words.filter((line) => line === "holds")).toHaveLength(1);
  });

  it("is not held up by one that died while it took a leftover over", async () => {
    const folder = newFolder();
    const dead = { pid: 2 ** 22 - 3, started: "1" };
    writeFileSync(`${folder}.lock`, JSON.stringify(dead));
    const first = runModule(takesOverAndDies, lockModule, folder);
    await first.ended;
    const leftover = readdirSync(path.dirname(folder));
    expect(leftover.some((name) => name.includes(".after-"))).toBe(true);
    expect(lockOf(folder)).toEqual(dead);

    (await lockFolder(folder, atOnce)).release();
    expect(readdirSync(path.dirname(folder)).filter((name) => !name.endsWith(".new"))).toEqual([]);
  });

  it("takes over a lock whose number now belongs to another process", async ({ skip }) => {
    skip(!tellsOfProcesses, noProc);
    const folder = newFolder();
    // The parent lives, but did not start at tick 1.
    writeFileSync(`${folder}.lock`, JSON.stringify({ pid: process.ppid, started: "1" }));
    (await lockFolder(folder, atOnce)).release();
  });

  it("takes over a lock from before the machine was started anew", async ({ skip }) => {
    skip(!tellsOfProcesses, noProc);
    const folder = newFolder();
    const first = runModule(holder, lockModule, folder);
    await first.waitForLine("holds");
    const text = readFileSync(`${folder}.lock`, "utf8");
    await expect(lockFolder(folder, atOnce)).rejects.toThrow(FolderInUse);
    writeFileSync(`${folder}.lock`, JSON.stringify({ ...JSON.parse(text), boot: "another run of the machine" }));
    (await lockFolder(folder, atOnce)).release();
  });

  it("believes a lock of the version that did not name the run of the machine", async () => {
    const folder = newFolder();
    const first = runModule(holder, lockModule, folder);
    await first.waitForLine("holds");
    const { boot: _boot, ...older } = JSON.parse(readFileSync(`${folder}.lock`, "utf8")) as Record<string, unknown>;
    writeFileSync(`${folder}.lock`, JSON.stringify(older));
    await expect(lockFolder(folder, atOnce)).rejects.toThrow(FolderInUse);
  });

  it("takes over its own number, as containers give every start the same one", async () => {
    const folder = newFolder();
    writeFileSync(`${folder}.lock`, JSON.stringify({ pid: process.pid, started: null }));
    const lock = await lockFolder(folder, atOnce);
    await expect(lockFolder(folder)).rejects.toThrow(FolderInUse);
    lock.release();
    expect(existsSync(`${folder}.lock`)).toBe(false);
  });
});

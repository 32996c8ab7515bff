import { existsSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { FolderInUse, lockFolder } from "#data/lock";
import { bundle } from "../../.ci/bundle.mjs";
import { runModule, temporaryFolder } from "../support/child";

const holder = `
  const { lockFolder } = await import(process.argv[2]);
  try {
    lockFolder(process.argv[3]);
    setInterval(() => {}, 1000);
    process.on("SIGTERM", () => process.exit(0));
    console.log("holds");
  } catch (error) {
    console.log("refused " + error.message);
  }`;

let lockModule: string;
beforeAll(async () => {
  lockModule = pathToFileURL(await bundle("lib/data/lock.ts", "test-lock")).href;
});

describe("lockFolder", () => {
  it("refuses a second process and names the first and the way out", async () => {
    const folder = path.join(temporaryFolder(), "database");
    const first = runModule(holder, lockModule, folder);
    await first.waitForLine("holds");

    const second = runModule(holder, lockModule, folder);
    const words = await second.waitForLine("refused");

    expect(words).toContain(`number ${first.process.pid}`);
    expect(words).toContain(folder);
    expect(words).toContain("PAIRWRIGHT_DATA");
    expect(() => lockFolder(folder)).toThrow(FolderInUse);
  });

  it("takes over what a killed process left", async () => {
    const folder = path.join(temporaryFolder(), "database");
    const first = runModule(holder, lockModule, folder);
    await first.waitForLine("holds");
    await first.kill9();
    expect(existsSync(`${folder}.lock`)).toBe(true);

    const lock = lockFolder(folder);
    expect(JSON.parse(readFileSync(`${folder}.lock`, "utf8"))).toMatchObject({ pid: process.pid });
    lock.release();
  });

  it("is released by a process that ends in order", async () => {
    const folder = path.join(temporaryFolder(), "database");
    const first = runModule(holder, lockModule, folder);
    await first.waitForLine("holds");
    first.process.kill("SIGTERM");
    await first.ended;
    expect(existsSync(`${folder}.lock`)).toBe(false);
  });

  it("gives the folder to exactly one of several that find a leftover at once", async () => {
    const folder = path.join(temporaryFolder(), "database");
    writeFileSync(`${folder}.lock`, JSON.stringify({ pid: 2 ** 22 - 3, started: "1" }));
    const children = Array.from({ length: 6 }, () => runModule(holder, lockModule, folder));
    const words = await Promise.all(
      children.map((child) => Promise.race([child.waitForLine("holds"), child.waitForLine("refused")])),
    );
    expect(words.filter((line) => line === "holds")).toHaveLength(1);
  });

  it("takes over a lock whose number now belongs to another process", () => {
    const folder = path.join(temporaryFolder(), "database");
    // The parent lives, but did not start at tick 1.
    writeFileSync(`${folder}.lock`, JSON.stringify({ pid: process.ppid, started: "1" }));
    if (!existsSync("/proc/self/stat")) return expect(() => lockFolder(folder)).toThrow(FolderInUse);
    lockFolder(folder).release();
  });

  it("takes over its own number, as containers give every start the same one", () => {
    const folder = path.join(temporaryFolder(), "database");
    writeFileSync(`${folder}.lock`, JSON.stringify({ pid: process.pid, started: null }));
    const lock = lockFolder(folder);
    expect(() => lockFolder(folder)).toThrow(FolderInUse);
    lock.release();
    expect(existsSync(`${folder}.lock`)).toBe(false);
  });
});

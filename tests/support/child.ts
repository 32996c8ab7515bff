/** Other processes for tests about locks, crashes and scripts. */
import { type ChildProcess, spawn } from "node:child_process";
import { once } from "node:events";
import { mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { onTestFinished } from "vitest";

export interface Child {
  readonly process: ChildProcess;
  /** Everything it printed so far, line by line. */
  readonly lines: string[];
  /** Resolves when it printed a line that starts with `start`; rejects when it ends without. */
  waitForLine(start: string): Promise<string>;
  /** Resolves with its exit code, null when killed. */
  readonly ended: Promise<number | null>;
  /** Kills it as a power cut would: no handler runs. */
  kill9(): Promise<void>;
}

/** Runs module text in a new Node; `process.argv[2…]` are the arguments. It is killed when the test ends. */
export function runModule(text: string, ...args: readonly string[]): Child {
  const child = spawn(process.execPath, ["--input-type=module", "--eval", text, "--", "child", ...args], {
    stdio: ["ignore", "pipe", "pipe"],
  });
  onTestFinished(() => {
    child.kill("SIGKILL");
  });
  const lines: string[] = [];
  const listeners = new Set<() => void>();
  let rest = "";
  let over = false;
  const take = (chunk: Buffer) => {
    const parts = (rest + chunk.toString()).split("\n");
    rest = parts.pop() ?? "";
    lines.push(...parts);
    for (const listener of listeners) listener();
  };
  child.stdout.on("data", take);
  child.stderr.on("data", take);
  const ended = once(child, "close").then(([code]) => {
    over = true;
    for (const listener of listeners) listener();
    return code as number | null;
  });
  const waitForLine = (start: string) =>
    new Promise<string>((resolve, reject) => {
      const look = () => {
        const line = lines.find((one) => one.startsWith(start));
        if (line === undefined && !over) return;
        listeners.delete(look);
        if (line === undefined) reject(new Error(`ended without "${start}":\n${lines.join("\n")}${rest}`));
        else resolve(line);
      };
      listeners.add(look);
      look();
    });
  const kill9 = async () => {
    child.kill("SIGKILL");
    await ended;
  };
  return { process: child, lines, waitForLine, ended, kill9 };
}

/** A folder that is gone when the test is over. */
export function temporaryFolder(): string {
  const folder = mkdtempSync(path.join(os.tmpdir(), "pairwright-test-"));
  onTestFinished(() => rmSync(folder, { recursive: true, force: true }));
  return folder;
}

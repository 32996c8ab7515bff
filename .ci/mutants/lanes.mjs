// The parent's side of a lane: starts it, asks it, and ends it with everything it started when it hangs.
import { fork } from "node:child_process";
import { copyFileSync, rmSync } from "node:fs";
import path from "node:path";
import { workedSeconds } from "./clock.mjs";
import { copyProject } from "./tree.mjs";

const program = path.join(import.meta.dirname, "lane.mjs");
/** How long a run that was told to stop may take before it is ended by force. */
const graceSeconds = 4;
/** A lane may take this much longer than it works: it waits for a busy machine, or for what never comes. */
const mostWall = 6;
const ownSettings = ["DATABASE_URL", "PAIRWRIGHT_DATA", "PAIRWRIGHT_ORIGIN", "HOST", "PORT", "NODE_ENV"];

/** Seconds that a process group has worked; seconds on the wall where that cannot be told. */
function clockOf(group) {
  const start = workedSeconds(group);
  let latest = start ?? 0;
  return () => {
    if (start === null) return performance.now() / 1000;
    latest = Math.max(latest, workedSeconds(group) ?? 0);
    return latest;
  };
}

export class Lane {
  #root;
  #tree;
  #child = null;
  #listener = () => {};

  constructor(root, tree) {
    this.#root = root;
    this.#tree = tree;
    copyProject(root, tree);
  }

  async #start() {
    const env = { ...process.env };
    for (const name of ownSettings) delete env[name];
    const child = fork(program, [], {
      cwd: this.#tree,
      env,
      detached: true,
      stdio: ["ignore", "ignore", "pipe", "ipc"],
    });
    this.#child = child;
    let complaint = "";
    child.stderr.on("data", (chunk) => {
      complaint = (complaint + chunk).slice(-2000);
    });
    child.on("message", (message) => this.#listener(message));
    child.on("exit", () => {
      if (this.#child !== child) return;
      this.#child = null;
      this.#listener({ kind: "gone", complaint });
    });
    await new Promise((resolve, reject) => {
      this.#listener = ({ kind, complaint: words }) => {
        if (kind === "ready") resolve();
        if (kind === "gone") reject(new Error(`the test runner did not start:\n${words}`));
      };
    });
  }

  /**
   * Runs tests on a fault, or on sound code where `file` is null.
   * @param {{file?: string | null, text?: string, bundles?: readonly {entry: string, name: string}[],
   *   tests: readonly string[], seconds: number, patience?: (test: string) => number}} question
   *   `seconds` of work are the limit of the whole run, `patience` that of one test file
   * @returns {Promise<Answer>}
   * @typedef {{end: "judged" | "late" | "gone", failure: {test: string, message: string} | null,
   *   passed: ReadonlyMap<string, number>, running: {test: string, seconds: number} | null}} Answer
   */
  async judge({ file = null, text = "", bundles = [], tests, seconds, patience = () => seconds }) {
    if (this.#child === null) await this.#start();
    const clock = clockOf(this.#child.pid);
    const wallBegan = performance.now();
    const began = clock();
    const passed = new Map();
    let running = null;
    let stopped = null;
    let watch;
    const { isStuck, ...answer } = await new Promise((resolve) => {
      const since = () => (running === null ? null : { test: running.test, seconds: clock() - running.at });
      watch = setInterval(() => {
        const now = since();
        const wallSeconds = (performance.now() - wallBegan) / 1000;
        const isLate = clock() - began > seconds || wallSeconds > mostWall * seconds;
        if (stopped === null && (isLate || (now !== null && now.seconds > patience(now.test)))) {
          stopped = { running: now, at: performance.now() };
          this.#child?.send({ kind: "stop" });
        }
        if (stopped !== null && performance.now() - stopped.at > graceSeconds * 1000)
          resolve({ end: "late", failure: null, running: stopped.running, isStuck: true });
      }, 500);
      this.#listener = (message) => {
        if (message.kind === "started") running = { test: message.test, at: clock() };
        if (message.kind === "ended") {
          if (message.state === "passed" && stopped === null)
            passed.set(message.test, clock() - (running?.at ?? clock()));
          running = null;
        }
        if (message.kind === "judged" && stopped === null)
          resolve({ end: "judged", failure: message.failure, running: null });
        if (message.kind === "judged" && stopped !== null)
          resolve({ end: "late", failure: null, running: stopped.running });
        if (message.kind === "gone")
          resolve({
            end: "gone",
            failure: { test: running?.test ?? "", message: "the runner died" },
            running: since(),
          });
      };
      this.#child.send({ kind: "judge", file, text, bundles, tests });
    });
    clearInterval(watch);
    if (isStuck || answer.end === "gone") this.#reset(file);
    return { ...answer, passed };
  }

  /** Ends the runner by force; the next question starts another. The copy is put right. */
  #reset(file) {
    this.#end();
    if (file !== null) copyFileSync(path.join(this.#root, file), path.join(this.#tree, file));
  }

  close() {
    this.#end();
    // What a killed process was about to write may still arrive.
    rmSync(this.#tree, { recursive: true, force: true, maxRetries: 10, retryDelay: 100 });
  }

  #end() {
    const child = this.#child;
    this.#child = null;
    // Its workers are in its process group.
    if (child?.pid) {
      try {
        process.kill(-child.pid, "SIGKILL");
      } catch {
        child.kill("SIGKILL");
      }
    }
  }
}

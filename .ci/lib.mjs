// What the scripts here share. Node's own modules only: these run before anything is installed.

import { spawn } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdirSync, readdirSync, readFileSync, renameSync, statSync, writeFileSync } from "node:fs";
import path from "node:path";

/** The project folder; every script works from here, wherever it was called. */
export const root = path.resolve(import.meta.dirname, "..");
process.chdir(root);

export const cacheFolder = path.join(root, ".cache");

/** Says what is going on; to standard error, so that output stays clean. */
export function say(text) {
  process.stderr.write(`${text}\n`);
}

/** Ends with a message for people, not a stack. */
export function fail(text) {
  say(`\n${text}`);
  process.exit(1);
}

/** A number with its time, for progress lines. */
export async function step(words, work) {
  const began = performance.now();
  process.stderr.write(`${words} …`);
  const result = await work();
  process.stderr.write(` ${((performance.now() - began) / 1000).toFixed(1)} s\n`);
  return result;
}

/** SHA-256 over the names and contents of files; folders are walked. What is absent counts as absent. */
export function hashOf(paths, accepts = () => true) {
  const hash = createHash("sha256");
  for (const one of paths) {
    for (const file of filesUnder(path.join(root, one)).filter(accepts)) {
      hash.update(path.relative(root, file)).update("\0").update(readFileSync(file)).update("\0");
    }
  }
  return hash.digest("hex");
}

function filesUnder(start) {
  if (!existsSync(start)) return [];
  if (statSync(start).isFile()) return [start];
  return readdirSync(start, { withFileTypes: true })
    .filter((entry) => entry.name !== "generated" && entry.name !== "node_modules")
    .sort((a, b) => (a.name < b.name ? -1 : 1))
    .flatMap((entry) => filesUnder(path.join(start, entry.name)));
}

export function readStamp(file) {
  return existsSync(file) ? readFileSync(file, "utf8").trim() : null;
}

export function writeStamp(file, text) {
  mkdirSync(path.dirname(file), { recursive: true });
  writeFileSync(`${file}.${process.pid}`, text);
  renameSync(`${file}.${process.pid}`, file);
}

/** Runs a program to its end. `quiet` keeps its output back unless it fails. Resolves with {code, output}. */
export function run(command, args, { env = {}, quiet = false, capture = false, cwd = root } = {}) {
  return new Promise((resolve, reject) => {
    const piped = quiet || capture;
    const child = spawn(command, args, {
      cwd,
      env: { ...process.env, ...env },
      stdio: ["ignore", piped ? "pipe" : "inherit", piped ? "pipe" : "inherit"],
    });
    let output = "";
    const take = (stream, echo) =>
      stream?.on("data", (chunk) => {
        output += chunk;
        if (capture && !quiet) echo.write(chunk);
      });
    take(child.stdout, process.stdout);
    take(child.stderr, process.stderr);
    child.on("error", reject);
    child.on("close", (code, signal) => resolve({ code: code ?? (signal ? 1 : 0), output }));
  });
}

/** Runs a program that must succeed; shows its output and throws when it does not. */
export async function mustRun(command, args, options = {}) {
  const { code, output } = await run(command, args, { quiet: true, ...options });
  if (code !== 0) {
    process.stderr.write(`\n${output}\n`);
    throw new Error(`${path.basename(command)} ${args.join(" ")} ended with code ${code}`);
  }
  return output;
}

/** The file a package's program lives in, run by this very Node. */
export function bin(relative) {
  return path.join(root, "node_modules", relative);
}

export const programs = {
  next: bin("next/dist/bin/next"),
  prisma: bin("prisma/build/index.js"),
  vitest: bin("vitest/vitest.mjs"),
  playwright: bin("playwright/cli.js"),
};

/** npm as a program of this Node: npm tells its own path to scripts; else the one beside Node. */
export function npmCommand() {
  const own = process.env.npm_execpath;
  if (own?.endsWith(".js") || own?.endsWith(".cjs")) return { command: process.execPath, args: [own] };
  return { command: process.platform === "win32" ? "npm.cmd" : "npm", args: [] };
}

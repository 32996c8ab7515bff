// Bundles one TypeScript entry into .cache/NAME.mjs, with packages left outside, and only when a source changed.

import { createHash } from "node:crypto";
import { existsSync, readFileSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { cacheFolder, readStamp, root, writeStamp } from "./lib.mjs";

const settings = "2 node20 esm split";

/**
 * Makes sure the bundle of `entry` (relative to the project) is fresh and returns its path.
 * The inputs of the last run are remembered with their hash, so a fresh bundle costs a few milliseconds.
 */
export async function bundle(entry, name = path.basename(entry, path.extname(entry))) {
  const outfile = path.join(cacheFolder, `${name}.mjs`);
  const stamp = path.join(cacheFolder, `${name}.inputs.json`);
  if (existsSync(outfile) && isFresh(stamp)) return outfile;
  const { build } = await import("esbuild");
  const result = await build({
    absWorkingDir: root,
    entryPoints: { [name]: entry },
    outdir: cacheFolder,
    outExtension: { ".js": ".mjs" },
    // What is imported on demand stays apart, so that a small question does not load the whole house.
    splitting: true,
    chunkNames: "chunks/[name]-[hash]",
    bundle: true,
    platform: "node",
    target: "node20",
    format: "esm",
    packages: "external",
    jsx: "automatic",
    alias: { "server-only": path.join(root, ".ci", "nothing.mjs") },
    sourcemap: "linked",
    metafile: true,
    logLevel: "warning",
  });
  const inputs = Object.keys(result.metafile.inputs).filter((file) => existsSync(path.join(root, file)));
  writeStamp(stamp, JSON.stringify({ inputs, hash: hashOfInputs(inputs) }));
  return outfile;
}

/** The programs of threads and of the process for pictures: a server and whatever opens a data folder find them in .cache. */
export async function bundleThreads() {
  await bundle("lib/papers/worker.ts", "documents-worker");
  await bundle("lib/data/thread/worker.ts", "database-thread");
  await bundle("lib/services/graphics/picture-process.ts", "picture-process");
}

/** Bundles and loads a module. */
export async function loadBundled(entry, name) {
  return import(pathToFileURL(await bundle(entry, name)).href);
}

function isFresh(stamp) {
  const text = readStamp(stamp);
  if (text === null) return false;
  const { inputs, hash } = JSON.parse(text);
  return inputs.every((file) => existsSync(path.join(root, file))) && hashOfInputs(inputs) === hash;
}

function hashOfInputs(inputs) {
  const hash = createHash("sha256").update(settings);
  for (const file of inputs)
    hash
      .update(file)
      .update("\0")
      .update(readFileSync(path.join(root, file)));
  return hash.digest("hex");
}

if (process.argv[1] === import.meta.filename) {
  const [entry, name] = process.argv.slice(2);
  if (!entry) {
    process.stderr.write("node .ci/bundle.mjs ENTRY [NAME]\n");
    process.exit(2);
  }
  process.stdout.write(`${path.relative(root, await bundle(entry, name))}\n`);
}

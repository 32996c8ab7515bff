// npm run -s pairwright -- VERB < input.json: the command line, bundled once and started in well under a second.
// File names given to it count from the project folder, as npm runs scripts there.
import { existsSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { bundle } from "./bundle.mjs";
import { fail } from "./lib.mjs";

if (!existsSync("node_modules/zod/package.json"))
  fail("The packages are not installed yet: run npm ci (or npm start) first.");
// Papers are drawn in a thread of their own, from its own bundle.
if (process.argv[2] === "sheet") await bundle("lib/papers/worker.ts", "documents-worker");
await import(pathToFileURL(await bundle("lib/command/main.ts", "pairwright")).href);

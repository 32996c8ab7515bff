// npm run record -- FOLDER: what every verb, every paper and the pages say, one text file each, at a fixed instant. The shops
// are the demo as this version makes it and the one an earlier version stored. Two records of the same code are the same:
// diff -r BEFORE AFTER shows what a change did.
import { existsSync, mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "./build.mjs";
import { bundleThreads, loadBundled } from "./bundle.mjs";
import { fail, root, say, step } from "./lib.mjs";
import { prepare } from "./prepare.mjs";
import { openShop } from "./record/shop.mjs";
import { recordVerbs } from "./record/verbs.mjs";
import { recordShop } from "./record/walk.mjs";

const [given] = process.argv.slice(2);
if (!given) fail("node .ci/record.mjs FOLDER");
const folder = path.resolve(given);
if (existsSync(folder) && readdirSync(folder).length > 0) fail(`${folder} is not empty.`);
const instant = "2026-11-24T23:00:00.000Z";
const port = Number(process.env.PORT || 3230);
const scratch = mkdtempSync(path.join(os.tmpdir(), "pairwright-record-"));
let files = 0;

await prepare();
await build();
await bundleThreads();
await bundle("lib/command/main.ts", "pairwright");
try {
  process.env.RECORD_INSTANT = instant;
  process.env.NODE_OPTIONS = `--import=${pathToFileURL(path.join(root, ".ci/record/clock.mjs")).href}`;
  await step("The verbs", () => recordVerbs(keeper("")));
  delete process.env.NODE_OPTIONS;
  const demo = path.join(scratch, "demo");
  await step("The demo", () => recordOne("demo", demo));
  const signIns = path.join(demo, "demo-sign-ins.json");
  const { restoreFolder } = await loadBundled("lib/data/maintenance.ts", "maintenance");
  for (const version of storedVersions()) {
    const data = path.join(scratch, version);
    mkdirSync(data, { recursive: true });
    const archive = readFileSync(path.join(root, "tests/fixtures/stored", version, "database.tar.gz"));
    await restoreFolder(path.join(data, "database"), new Uint8Array(archive));
    await step(`The shop stored on ${version}`, () => recordOne(`stored-${version}`, data, signIns));
  }
  say(`${files} files in ${folder}`);
} catch (error) {
  say(`\nThe record is not whole: ${error?.stack ?? error}`);
  process.exitCode = 1;
} finally {
  rmSync(scratch, { recursive: true, force: true });
}
process.exit();

function storedVersions() {
  const stored = path.join(root, "tests/fixtures/stored");
  return readdirSync(stored).filter((name) => existsSync(path.join(stored, name, "database.tar.gz")));
}

function keeper(part) {
  return (name, text) => {
    const file = path.join(folder, part, `${name}.txt`);
    mkdirSync(path.dirname(file), { recursive: true });
    writeFileSync(file, `${text}\n`);
    files += 1;
  };
}

async function recordOne(part, data, signIns = path.join(data, "demo-sign-ins.json")) {
  const shop = await openShop({ data, port, instant, series: part });
  try {
    await recordShop(shop.address, JSON.parse(readFileSync(signIns, "utf8")), keeper(part));
  } finally {
    await shop.stop();
  }
}

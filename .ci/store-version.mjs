// node .ci/store-version.mjs NAME: keeps what this version stores as test material in tests/fixtures/stored/NAME, with what
// it says of it. Run once by a version, before anything changes what is stored; a version that has been kept is never remade.
import { existsSync, mkdtempSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";
import { bundleThreads, loadBundled } from "./bundle.mjs";
import { fail, root, say } from "./lib.mjs";
import { prepare } from "./prepare.mjs";

const [name] = process.argv.slice(2);
if (!name) fail("node .ci/store-version.mjs NAME");
const target = path.join(root, "tests/fixtures/stored", name);
if (existsSync(target)) fail(`${target} is there already: a stored version is never remade.`);
await prepare();
const data = mkdtempSync(path.join(os.tmpdir(), "pairwright-stored-"));
process.env.PAIRWRIGHT_DATA = data;
process.env.TZ = "UTC";
for (const other of ["DATABASE_URL", "PAIRWRIGHT_ORIGIN", "HOST", "PORT"]) delete process.env[other];
await bundleThreads();
const { storeVersion } = await loadBundled("tests/support/stored/store-version.ts", "store-version");
try {
  // A Tuesday morning in the shop, in the season.
  await storeVersion(path.join(data, "database"), target, new Date("2026-11-24T17:00:00.000Z"));
  say(`Stored in ${path.relative(root, target)}`);
} finally {
  rmSync(data, { recursive: true, force: true });
}
process.exit(0);

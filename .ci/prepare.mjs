// What must be there before anything runs: packages, the database client, the route types. Each step is skipped when its
// inputs have not changed since it last succeeded.
import { existsSync, rmSync } from "node:fs";
import path from "node:path";
import {
  cacheFolder,
  fail,
  hashOf,
  mustRun,
  npmCommand,
  programs,
  readStamp,
  root,
  say,
  step,
  writeStamp,
} from "./lib.mjs";

const [major = 0, minor = 0] = process.versions.node.split(".").map(Number);

export function requireNode() {
  if (major > 20 || (major === 20 && minor >= 19)) return;
  fail(`Pairwright needs Node 20.19 or newer; this is ${process.versions.node}.`);
}

/** Installs from the lock file when it differs from what was installed last. */
export async function install() {
  const stamp = path.join(root, "node_modules", ".pairwright-lock");
  const wanted = `${hashOf(["package-lock.json"])} node${major} ${process.platform}-${process.arch}`;
  if (readStamp(stamp) === wanted) return;
  if (!readStamp(stamp) && (await isInstalledAlready())) return writeStamp(stamp, wanted);
  say("Installing the packages named in package-lock.json (about a minute the first time)");
  const npm = npmCommand();
  await step("  npm ci", () =>
    mustRun(npm.command, [...npm.args, "ci", "--include=dev", "--no-fund", "--no-audit"], {
      env: { NODE_ENV: "development" },
    }),
  );
  writeStamp(stamp, wanted);
}

/** A tree installed by hand (npm install, npm ci) counts when npm itself finds it complete. */
async function isInstalledAlready() {
  if (!existsSync(path.join(root, "node_modules", ".package-lock.json"))) return false;
  const { readFileSync } = await import("node:fs");
  const read = (file) => JSON.parse(readFileSync(path.join(root, file), "utf8")).packages;
  const wanted = read("package-lock.json");
  const present = read("node_modules/.package-lock.json");
  return Object.entries(wanted).every(
    ([name, entry]) => name === "" || entry.optional || present[name]?.version === entry.version,
  );
}

/** Writes the database client when a model changed. */
export async function generate() {
  const stamp = path.join(cacheFolder, "generated.stamp");
  const wanted = hashOf(["prisma/schema.prisma", "prisma/models", "prisma.config.ts", "package-lock.json"]);
  if (readStamp(stamp) === wanted && existsSync(path.join(root, "lib/data/generated/client.ts"))) return;
  await step("Writing the database client", () => {
    rmSync(path.join(root, "lib/data/generated"), { recursive: true, force: true });
    return mustRun(process.execPath, [programs.prisma, "generate"]);
  });
  writeStamp(stamp, wanted);
}

/** Route types and next-env.d.ts, which the type check needs. */
export async function typegen() {
  await step("Writing the route types", () => mustRun(process.execPath, [programs.next, "typegen"]));
}

export async function prepare() {
  requireNode();
  await install();
  await generate();
}

// A throwaway PostgreSQL server from whatever binaries the system has. For tests only: it never syncs to disk.
import { spawn, spawnSync } from "node:child_process";
import { chownSync, existsSync, mkdtempSync, readdirSync, rmSync } from "node:fs";
import os from "node:os";
import path from "node:path";

/** The folder with initdb and postgres: from PATH, else the newest of Debian's versioned folders; null when absent. */
export function findPostgres() {
  return folderWith(["initdb", "postgres"]);
}

/** A program of PostgreSQL's by its full path, or null. */
export function findProgram(name) {
  const folder = folderWith([name]);
  return folder === null ? null : path.join(folder, name);
}

function folderWith(names) {
  const fromPath = (process.env.PATH ?? "").split(path.delimiter).filter(Boolean);
  const debian = "/usr/lib/postgresql";
  const versions = existsSync(debian) ? readdirSync(debian).sort((a, b) => Number(b) - Number(a)) : [];
  const candidates = [...fromPath, ...versions.map((version) => path.join(debian, version, "bin"))];
  return candidates.find((folder) => names.every((name) => existsSync(path.join(folder, name)))) ?? null;
}

/**
 * Starts a server that listens on a socket in its own folder.
 * @returns {Promise<{url: string, stop: () => Promise<void>} | null>} null when there are no binaries
 */
export async function startPostgres() {
  const binaries = findPostgres();
  if (binaries === null) return null;
  const folder = mkdtempSync(path.join(os.tmpdir(), "pairwright-pg-"));
  const identity = serverIdentity();
  if (identity.uid !== undefined) chownSync(folder, identity.uid, identity.gid);
  const options = { ...identity, cwd: folder, env: { ...process.env, HOME: folder, LC_ALL: "C.UTF-8" } };
  const data = path.join(folder, "data");
  const made = spawnSync(
    path.join(binaries, "initdb"),
    ["-D", data, "-U", "postgres", "--no-sync", "--auth=trust", "--locale=C.UTF-8", "--encoding=UTF8"],
    { ...options, encoding: "utf8" },
  );
  if (made.status !== 0) {
    rmSync(folder, { recursive: true, force: true });
    throw new Error(`initdb did not finish: ${made.stderr || made.error}`);
  }
  // A far zone on purpose: whoever forgets to ask for UTC sees it at once.
  const settings = [
    "TimeZone=Asia/Kathmandu",
    "listen_addresses=",
    "fsync=off",
    "synchronous_commit=off",
    "full_page_writes=off",
    "max_connections=120",
  ];
  const server = spawn(
    path.join(binaries, "postgres"),
    ["-D", data, "-k", folder, ...settings.flatMap((setting) => ["-c", setting])],
    { ...options, stdio: ["ignore", "ignore", "pipe"] },
  );
  const log = await untilReady(server);
  const stop = () =>
    new Promise((resolve) => {
      const done = () => {
        rmSync(folder, { recursive: true, force: true });
        resolve();
      };
      if (server.exitCode !== null) return done();
      server.once("exit", done);
      server.kill("SIGINT");
    });
  if (!log.ready) {
    await stop();
    throw new Error(`PostgreSQL did not start: ${log.text}`);
  }
  process.once("exit", () => server.kill("SIGINT"));
  return { url: `postgresql://postgres@localhost/postgres?host=${encodeURIComponent(folder)}`, stop };
}

/** initdb refuses root; the distribution's own account stands in. */
function serverIdentity() {
  if (process.getuid?.() !== 0) return {};
  const ask = (flag) => spawnSync("id", [flag, "postgres"], { encoding: "utf8" });
  const uid = ask("-u");
  if (uid.status !== 0) throw new Error("Running as root needs an account named postgres for the throwaway server.");
  return { uid: Number(uid.stdout), gid: Number(ask("-g").stdout) };
}

function untilReady(server) {
  return new Promise((resolve) => {
    let text = "";
    server.stderr.on("data", (chunk) => {
      text = (text + chunk).slice(-4000);
      if (text.includes("ready to accept connections")) resolve({ ready: true, text });
    });
    server.once("exit", () => resolve({ ready: false, text }));
    server.once("error", (error) => resolve({ ready: false, text: String(error) }));
  });
}

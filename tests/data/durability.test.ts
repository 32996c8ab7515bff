import { statSync } from "node:fs";
import path from "node:path";
import { pathToFileURL } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { openFolder } from "#data/embedded";
import { bundle } from "../../.ci/bundle.mjs";
import { runModule, temporaryFolder } from "../support/child";

let embeddedModule: string;
beforeAll(async () => {
  embeddedModule = pathToFileURL(await bundle("lib/data/embedded.ts", "test-embedded")).href;
});

/** Counts the real fsync calls of the process before the module binds to them. */
const countSyncs = `
  import fs from "node:fs";
  import { syncBuiltinESMExports } from "node:module";
  const real = fs.fsyncSync;
  let syncs = 0;
  fs.fsyncSync = (descriptor) => { syncs += 1; return real(descriptor); };
  syncBuiltinESMExports();
  const { openFolder } = await import(process.argv[2]);
  const { pglite } = await openFolder(process.argv[3]);
  await pglite.exec("CREATE TABLE log (n int)");
  const before = syncs;
  for (let n = 0; n < 25; n += 1) await pglite.query("INSERT INTO log VALUES ($1)", [n]);
  console.log("syncs " + (syncs - before));
  process.exit(0);`;

const writer = `
  const { openFolder } = await import(process.argv[2]);
  const { pglite } = await openFolder(process.argv[3]);
  await pglite.exec("CREATE TABLE IF NOT EXISTS log (n int PRIMARY KEY)");
  const { rows } = await pglite.query("SELECT coalesce(max(n), 0)::int AS n FROM log");
  for (let n = rows[0].n + 1; ; n += 1) {
    await pglite.query("INSERT INTO log VALUES ($1)", [n]);
    process.stdout.write("kept " + n + "\\n");
  }`;

describe("the embedded database", () => {
  it("syncs to the disk at least once for every commit, in folders that nobody else can look into", async () => {
    const data = path.join(temporaryFolder(), "data");
    const child = runModule(countSyncs, embeddedModule, path.join(data, "database"));
    const words = await child.waitForLine("syncs");
    expect(Number(words.split(" ")[1])).toBeGreaterThanOrEqual(25);
    for (const folder of [data, path.join(data, "database")]) expect(statSync(folder).mode & 0o777).toBe(0o700);
  });

  it("keeps every acknowledged row over two kills in the middle of writing", async () => {
    const folder = path.join(temporaryFolder(), "database");
    let acknowledged = 0;
    for (const target of [40, 90]) {
      const child = runModule(writer, embeddedModule, folder);
      await child.waitForLine(`kept ${target}`);
      await child.kill9();
      acknowledged = Number(
        child.lines
          .filter((line) => /^kept \d+$/.test(line))
          .at(-1)
          ?.split(" ")[1],
      );
    }

    const { pglite, close } = await openFolder(folder);
    const { rows } = await pglite.query<{ count: number; last: number }>(
      "SELECT count(*)::int AS count, max(n)::int AS last FROM log",
    );
    await close();
    // One more than was acknowledged may have been written before the kill; none may be missing.
    expect(rows[0]?.count).toBe(rows[0]?.last);
    expect(rows[0]?.last).toBeGreaterThanOrEqual(acknowledged);
    expect(acknowledged).toBeGreaterThanOrEqual(90);
  });

  it("survives checkpoints, which sync folders as well as files", async () => {
    const folder = path.join(temporaryFolder(), "database");
    const { pglite, close } = await openFolder(folder);
    await pglite.exec("CREATE TABLE log (n int); INSERT INTO log SELECT generate_series(1, 5000)");
    await pglite.exec("CHECKPOINT");
    await pglite.exec("DELETE FROM log WHERE n > 4000");
    await pglite.exec("CHECKPOINT");
    const { rows } = await pglite.query<{ count: number }>("SELECT count(*)::int AS count FROM log");
    const settings = await pglite.query(
      "SELECT name, setting FROM pg_settings WHERE name IN ('fsync', 'wal_sync_method') ORDER BY 1",
    );
    await close();
    expect(rows).toEqual([{ count: 4000 }]);
    expect(settings.rows).toEqual([
      { name: "fsync", setting: "on" },
      { name: "wal_sync_method", setting: "fsync" },
    ]);
  });

  it("starts over when the first creation was interrupted", async () => {
    const folder = path.join(temporaryFolder(), "database");
    const { mkdirSync, writeFileSync, existsSync } = await import("node:fs");
    mkdirSync(folder);
    writeFileSync(path.join(folder, "PG_VERSION"), "18\n");
    writeFileSync(`${folder}.unfinished`, "");
    const { pglite, close } = await openFolder(folder);
    const { rows } = await pglite.query<{ one: number }>("SELECT 1 AS one");
    await close();
    expect(rows).toEqual([{ one: 1 }]);
    expect(existsSync(`${folder}.unfinished`)).toBe(false);
    expect(existsSync(`${folder}.lock`)).toBe(false);
  });
});

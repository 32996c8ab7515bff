/**
 * A first start that is ended at any instant, on a real folder by a real process. Where it is ended is drawn; the seed is
 * printed. PAIRWRIGHT_PROOF=first-start ends it twenty times, else three times.
 */
import { appendFileSync, mkdirSync, rmSync, truncateSync, writeFileSync } from "node:fs";
import path from "node:path";
import { setTimeout as sleep } from "node:timers/promises";
import { pathToFileURL } from "node:url";
import { beforeAll, describe, expect, it } from "vitest";
import { openDatabase } from "#data/client";
import { openFolder } from "#data/embedded";
import { prepareDatabase } from "#data/first-start";
import { checkFolder, DatabaseProblem, type Problem, refuseFullDisk } from "#data/folder-problem";
import { bundle } from "../../.ci/bundle.mjs";
import { runModule, temporaryFolder } from "../support/child";
import { isWhole, proofSeed } from "../support/proof";

const prismaFolder = path.resolve(import.meta.dirname, "../../prisma");
const kills = isWhole("first-start") ? 20 : 3;

/** Fills a new shop slowly, as the demo does: many transactions, what others wait for last. */
const firstStart = `
  const { openDatabase, prepareDatabase } = await import(process.argv[2]);
  const open = await openDatabase({ kind: "embedded", folder: process.argv[3] });
  await prepareDatabase(open, process.argv[4], async () => {
    for (let n = 0; n < 40; n += 1) {
      await open.db.counter.create({ data: { name: "row " + n, value: n } });
      await new Promise((resume) => setTimeout(resume, 20));
    }
    await open.db.counter.create({ data: { name: "last", value: 40 } });
  });
  console.log("ready");
  await open.close();
  process.exit(0);`;

let maintenance: string;
beforeAll(async () => {
  maintenance = pathToFileURL(await bundle("lib/data/maintenance.ts", "test-maintenance")).href;
});

describe("a first start", () => {
  it(`may be ended at ${kills} random instants, and the next one succeeds`, async () => {
    const folder = path.join(temporaryFolder(), "data", "database");
    const start = () => runModule(firstStart, maintenance, folder, prismaFolder);
    const began = performance.now();
    const whole = start();
    await whole.waitForLine("ready");
    await whole.ended;
    const longest = performance.now() - began;
    rmSync(path.dirname(folder), { recursive: true });
    let state = proofSeed;
    for (let n = 0; n < kills; n += 1) {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) >>> 0;
      const child = start();
      await sleep((state / 2 ** 32) * longest);
      await child.kill9();
    }
    const last = start();
    await last.waitForLine("ready");
    await last.ended;
    const { pglite, close } = await openFolder(folder);
    const { rows } = await pglite.query("SELECT count(*)::int AS rows, sum(value)::int AS sum FROM counters");
    const marks = await pglite.query("SELECT 1 FROM pg_namespace WHERE nspname = 'pairwright_first_start'");
    await close();
    // 0 + 1 + … + 40 = 40 · 41 / 2, each row once.
    expect(rows).toEqual([{ rows: 41, sum: 820 }]);
    expect(marks.rows).toEqual([]);
  });

  it("fills an empty database only, touches none of somebody else's or a newer program's, and does a step again that did nothing", async () => {
    const open = await openDatabase({ kind: "memory" });
    const filled: string[] = [];
    const prepare = () => prepareDatabase(open, prismaFolder, async () => void filled.push("filled"));
    await open.runScript("CREATE TABLE guests (name text)");
    await expect(prepare()).rejects.toMatchObject({ problem: { code: "not-ours" } });
    await open.runScript("DROP TABLE guests");
    await prepare();
    await prepare();
    expect(filled).toEqual(["filled"]);
    await open.runScript(`DROP TABLE letters;
      UPDATE _prisma_migrations SET finished_at = NULL, applied_steps_count = 0 WHERE migration_name LIKE '%_letters'`);
    expect((await prepare()).applied).toEqual([expect.stringMatching(/_letters$/)]);
    expect(await open.db.letter.count()).toBe(0);
    await open.runScript(`INSERT INTO _prisma_migrations (id, checksum, migration_name, finished_at)
      VALUES ('x', 'x', '20991231235959_of_the_future', now())`);
    await expect(prepare()).rejects.toMatchObject({
      problem: { code: "newer", migration: "20991231235959_of_the_future" },
    });
    await open.close();
  });
});

describe("a data folder that cannot be used", () => {
  const place = () => path.join(temporaryFolder(), "data", "database");
  const code = (folder: string): Problem["code"] | null => {
    try {
      checkFolder(folder);
      return null;
    } catch (error) {
      if (error instanceof DatabaseProblem) return error.problem.code;
      throw error;
    }
  };
  const madeOf = (folder: string, files: Readonly<Record<string, string>>) => {
    mkdirSync(folder, { recursive: true });
    for (const [name, text] of Object.entries(files)) writeFileSync(path.join(folder, name), text);
  };

  it("is told apart before anything is touched", () => {
    expect(code(place())).toBeNull();
    const file = path.join(temporaryFolder(), "data");
    writeFileSync(file, "");
    expect(code(path.join(file, "database"))).toBe("not-a-folder");
    const foreign = place();
    madeOf(foreign, { "holiday.jpg": "x" });
    expect(code(foreign)).toBe("foreign");
    const other = place();
    madeOf(other, { PG_VERSION: "16\n" });
    expect(code(other)).toBe("other-version");
    const lost = place();
    madeOf(path.dirname(lost), { "database.stamp": "x" });
    expect(code(lost)).toBe("lost");
    const folder = temporaryFolder();
    expect(() => refuseFullDisk(folder, Number.MAX_SAFE_INTEGER)).toThrow(/has \d+ MB free.*Make room/);
  });

  it("is named damaged, with the way on, when the database in it cannot be read", async () => {
    const folder = place();
    const { pglite, close } = await openFolder(folder);
    await pglite.exec("CHECKPOINT");
    await close();
    truncateSync(path.join(folder, "global", "pg_control"), 0);
    appendFileSync(path.join(folder, "global", "pg_control"), "no");
    await expect(openFolder(folder)).rejects.toThrow(/damaged.*restore\.mjs/);
  });
});

import { existsSync, readdirSync, rmSync } from "node:fs";
import path from "node:path";
import { expect, it } from "vitest";
import { openDatabase } from "#data/client";
import { tryWriting } from "#services/health";
import { temporaryFolder } from "../support/child";

it("a shop is healthy while it can write, and not when its files are gone although the database still answers", async () => {
  const data = path.join(temporaryFolder(), "data");
  const database = path.join(data, "database");
  const open = await openDatabase({ kind: "embedded", folder: database });
  await open.runScript("CREATE TABLE counters (name text PRIMARY KEY, value int NOT NULL)");
  const look = () => tryWriting(open.db, { data, database }, "one");
  await look();
  expect(readdirSync(data).filter((name) => name.startsWith(".probe"))).toEqual([]);
  await open.runScript("ALTER TABLE counters RENAME TO away");
  await expect(look()).rejects.toThrow();
  await open.runScript("ALTER TABLE away RENAME TO counters");
  rmSync(database, { recursive: true });
  // Deleted files stay open: the database notices nothing.
  expect((await open.run("SELECT 1 AS one")).rows).toEqual([{ one: 1 }]);
  await expect(look()).rejects.toThrow("are gone");
  rmSync(data, { recursive: true });
  await expect(tryWriting(open.db, { data, database: null }, "two")).rejects.toThrow("ENOENT");
  expect(existsSync(data)).toBe(false);
  await open.close().catch(() => {});
});

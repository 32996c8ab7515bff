/** Makes a shop at a fixed instant and writes it down: its data folder, the same as SQL, and what it says of itself. */
import { mkdirSync, readdirSync, readFileSync, writeFileSync } from "node:fs";
import path from "node:path";
import { gunzipSync, gzipSync } from "node:zlib";
import { signIn } from "#auth";
import { packCopy } from "#data/backup";
import { closeDatabase, type Db, database } from "#data/client";
import { applyMigrations } from "#data/migrate";
import { storeRelease } from "#data/releases";
import { type Context, openContext } from "#services";
import { seedDemo } from "../../../prisma/seed";
import { demoStaff } from "../../../prisma/seed/people";
import { must } from "../builders/shop";
import { fillShop } from "./fill-shop";
import { paperFacts, shopFacts } from "./shop-facts";
import { slimArchive } from "./slim-archive";

/** When the stored shop is looked at: a working day of it, hours after the last thing that happened. */
export function lookedAt(seededAt: Date): Date {
  return new Date(seededAt.getTime() + 6 * 3_600_000);
}

export async function storedOwner(now: Date): Promise<Context> {
  const owner = demoStaff.find(({ role }) => role === "owner");
  const { email = "", password = "" } = owner ?? {};
  const { actor } = must(await signIn({ email, password, address: "127.0.0.1" }, now));
  return { ...(await openContext(actor, now)), promiseRuns: 16 };
}

/** @param databaseFolder of the embedded database that the settings name; empty at first */
export async function storeVersion(databaseFolder: string, target: string, seededAt: Date): Promise<void> {
  const open = await database();
  await applyMigrations(open, path.resolve("prisma"));
  await olderReleases(open.db, seededAt);
  await seedDemo(seededAt, open.db);
  await fillShop(open.db, seededAt);
  const copy = path.join(path.dirname(databaseFolder), "copy");
  const rows = (await open.copyTo?.(copy)) ?? {};
  await closeDatabase();
  const { sql } = await packCopy(copy, rows);
  mkdirSync(target, { recursive: true });
  writeFileSync(path.join(target, "database.tar.gz"), await slimArchive(databaseFolder));
  writeFileSync(path.join(target, "database.sql.gz"), gzipSync(sql, { level: 9 }));
  // Asked last: looking at papers counts prints.
  const ctx = await storedOwner(lookedAt(seededAt));
  const facts = { seededAt: seededAt.toISOString(), shop: await shopFacts(ctx), papers: await paperFacts(ctx) };
  writeFileSync(path.join(target, "expected.json"), `${JSON.stringify(facts, null, 1)}\n`);
  await closeDatabase();
}

/** Catalogues that a shop may have sold from before: one for each content whose release this version can read. */
async function olderReleases(db: Db, now: Date): Promise<void> {
  const folder = path.resolve("tests/fixtures/stored/releases");
  for (const name of readdirSync(folder)) {
    await storeRelease(db, JSON.parse(gunzipSync(readFileSync(path.join(folder, name))).toString("utf8")), now);
  }
}

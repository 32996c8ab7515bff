import path from "node:path";
import { describe, expect, it } from "vitest";
import { backUpFolder, restoreFolder } from "#data/backup";
import { openFolder } from "#data/embedded";
import { temporaryFolder } from "../support/child";

describe("a backup", () => {
  it("brings every row back, says the same as SQL, and never overwrites", async () => {
    const folder = temporaryFolder();
    const shop = path.join(folder, "shop");
    const first = await openFolder(shop);
    await first.pglite.exec("CREATE TABLE log (n int); INSERT INTO log SELECT generate_series(1, 300)");
    await first.close();

    const { archive, sql } = await backUpFolder(shop);
    expect(sql).toContain("CREATE TABLE public.log");
    expect(sql).toContain("INSERT INTO public.log VALUES (300);");
    // PostgreSQL 15 and 16 do not know this setting and would stop at it.
    expect(sql).not.toContain("transaction_timeout");
    await expect(restoreFolder(shop, new Uint8Array(archive))).rejects.toThrow("is there already");

    const copy = path.join(folder, "copy");
    await restoreFolder(copy, new Uint8Array(archive));
    const second = await openFolder(copy);
    const { rows } = await second.pglite.query("SELECT count(*)::int AS count, sum(n)::int AS sum FROM log");
    await second.close();
    // 1 + 2 + … + 300 = 300 · 301 / 2.
    expect(rows).toEqual([{ count: 300, sum: 45_150 }]);
  });

  it("cannot be made while the shop runs", async () => {
    const shop = path.join(temporaryFolder(), "shop");
    const open = await openFolder(shop);
    await expect(backUpFolder(shop)).rejects.toThrow("is in use");
    await open.close();
  });
});

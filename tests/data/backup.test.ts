/** The drill: a backup taken while somebody writes, brought back, and compared with what the shop had. */
import { readdirSync, statSync } from "node:fs";
import path from "node:path";
import { generateX25519Identity, identityToRecipient } from "age-encryption";
import { describe, expect, it } from "vitest";
import {
  filesOf,
  packCopy,
  readBackupFile,
  readManifest,
  restoreFolder,
  rotateBackups,
  tryDump,
  writeBackup,
} from "#data/backup";
import { openDatabase } from "#data/client";
import { answerCopyRequest, requestCopy } from "#data/copy-request";
import { openFolder } from "#data/embedded";
import { temporaryFolder } from "../support/child";

const facts = { madeAt: "2026-11-30T02:30:00.000Z", database: "embedded" } as const;

describe("a backup", () => {
  it("is of one moment while the shop writes, tried before it is kept, its owner's alone, and comes back", async () => {
    const folder = temporaryFolder();
    const shop = path.join(folder, "shop", "database");
    const open = await openDatabase({ kind: "embedded", folder: shop });
    await open.runScript("CREATE TABLE log (n int); INSERT INTO log SELECT generate_series(1, 300)");
    let writes = 300;
    let isWriting = true;
    const writer = (async () => {
      while (isWriting) {
        writes += 1;
        await open.run("INSERT INTO log VALUES ($1)", [writes]);
      }
    })();
    const copy = path.join(folder, "copy");
    const asked = requestCopy(shop, copy);
    while (!readdirSync(folder).includes("copy")) {
      await answerCopyRequest(open, shop);
      await new Promise((resume) => setTimeout(resume, 20));
    }
    const rows = await asked;
    const atTheCopy = rows["public.log"] ?? 0;
    expect(atTheCopy).toBeGreaterThanOrEqual(300);
    while (writes < atTheCopy + 5) await new Promise((resume) => setTimeout(resume, 5));
    isWriting = false;
    await writer;
    await open.close();

    const { archive, sql } = await packCopy(copy, rows);
    expect(sql).toContain("INSERT INTO public.log VALUES (300);");
    // PostgreSQL 15 and 16 do not know this setting and would stop at it.
    expect(sql).not.toContain("transaction_timeout");
    const identity = await generateX25519Identity();
    const target = path.join(folder, "backups", "2026-11-30T023000");
    const files = new Map<string, Uint8Array>([["database.tar.gz", archive]]);
    await writeBackup(target, files, { ...facts, rows, recipient: await identityToRecipient(identity) });
    expect(readdirSync(target).sort()).toEqual(["backup.json", "database.tar.gz.age"]);
    for (const name of readdirSync(target)) expect(statSync(path.join(target, name)).mode & 0o777).toBe(0o600);
    await expect(readBackupFile(target, "database.tar.gz", null)).rejects.toThrow("encrypted");
    await expect(readBackupFile(target, "database.tar.gz", await generateX25519Identity())).rejects.toThrow();

    const back = path.join(folder, "back");
    await restoreFolder(back, await readBackupFile(target, "database.tar.gz", identity));
    await expect(restoreFolder(back, archive)).rejects.toThrow("is there already");
    const restored = await openFolder(back);
    const { rows: found } = await restored.pglite.query("SELECT count(*)::int AS count, max(n)::int AS last FROM log");
    await restored.close();
    // Rows are numbered without a gap: as many as the last one's number, and as many as were counted.
    expect(found).toEqual([{ count: atTheCopy, last: atTheCopy }]);
    const wrong = tryDump(sql, { ...rows, "public.log": atTheCopy + 1 });
    await expect(wrong).rejects.toThrow(`public.log: ${atTheCopy + 1} rows, ${atTheCopy} came back`);
  });

  it("makes room by removing the oldest finished ones", async () => {
    const folder = temporaryFolder();
    const files = new Map([["data/letters/one.eml", new Uint8Array([1])]]);
    for (const day of ["27", "28", "29"]) {
      await writeBackup(path.join(folder, `2026-11-${day}T023000`), files, { ...facts, rows: {}, recipient: null });
    }
    expect(rotateBackups(folder, 2)).toEqual(["2026-11-27T023000"]);
    expect(readManifest(path.join(folder, "2026-11-28T023000"))?.files).toEqual(["data/letters/one.eml"]);
    expect([...filesOf(folder, /^2026-11-29/).keys()]).toContain("data/2026-11-28T023000/data/letters/one.eml");
  });
});

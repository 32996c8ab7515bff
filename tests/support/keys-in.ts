/** Looks for keys in a whole database: text anywhere whose hash is that of a link, a sign-in or a device. */
import { createHash } from "node:crypto";
import type { Db } from "#data/client";

/** @returns the tables that hold one, by name */
export async function keysIn(db: Db): Promise<readonly string[]> {
  const tables = await db.$queryRaw<{ name: string }[]>`
    SELECT tablename::text AS name FROM pg_tables WHERE schemaname = 'public' ORDER BY 1`;
  const hashes = new Set(
    (
      await Promise.all([
        db.privateLink.findMany({ select: { tokenHash: true } }),
        db.staffSession.findMany({ select: { tokenHash: true } }),
        db.device.findMany({ select: { tokenHash: true } }),
      ])
    )
      .flat()
      .map(({ tokenHash }) => tokenHash),
  );
  const found: string[] = [];
  for (const { name } of tables) {
    // Pictures are bytes, which a row's text holds as hexadecimal: nobody's key.
    const rows = await db.$queryRawUnsafe<{ row: string }[]>(`SELECT to_jsonb(t)::text AS row FROM "${name}" t`);
    const isKey = (text: string) => hashes.has(createHash("sha256").update(text).digest("hex"));
    const texts = rows.flatMap(({ row }) => row.match(/(?<![\w-])[\w-]{43}(?![\w-])/g) ?? []);
    if (texts.some(isKey)) found.push(name);
  }
  return found;
}

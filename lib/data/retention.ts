/** How long what is kept: each setting a row, the newest holds. */
import { storedRetention } from "#schemas/stored/index";
import type { Tx } from "./client";
import { json, readRow } from "./columns";
import { asJson } from "./json";

const columns = { rules: json(storedRetention) } as const;

export async function retentionInForce(client: Tx) {
  const row = await client.retentionRule.findFirst({ orderBy: { number: "desc" } });
  return row === null ? null : readRow("retention_rules", columns, row, ({ number }) => String(number));
}

export async function insertRetention(
  tx: Tx,
  setting: {
    readonly rules: Readonly<Record<string, number | null>>;
    readonly reason: string;
    readonly by: string;
    readonly at: Date;
  },
): Promise<void> {
  const last = await tx.retentionRule.findFirst({ orderBy: { number: "desc" }, select: { number: true } });
  const number = (last?.number ?? 0) + 1;
  const { rules, reason, by, at } = setting;
  await tx.retentionRule.create({ data: { number, rules: asJson(rules), reason, setByName: by, setAt: at } });
}

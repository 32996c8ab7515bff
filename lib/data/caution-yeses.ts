/** Who has read the cautions and said yes, season by season. */
import type { StaffRole } from "./access";
import type { Db, Tx } from "./client";

export interface CautionYes {
  readonly staffId: string;
  /** The year in which the season began. */
  readonly season: number;
  /** SHA-256 of the very texts, hexadecimal. */
  readonly textsHash: string;
  readonly saidAt: Date;
}

/** Keeps a yes; the same texts in the same season are kept once, with the first day. @returns whether it is new */
export async function insertCautionYes(tx: Tx, yes: CautionYes & { readonly id: string }): Promise<boolean> {
  const { count } = await tx.cautionYes.createMany({ data: [yes], skipDuplicates: true });
  return count === 1;
}

export interface StaffWithYes {
  readonly id: string;
  readonly name: string;
  readonly role: StaffRole;
  /** The latest first. */
  readonly yeses: readonly CautionYes[];
}

/** Everybody who is still here with what they said yes to, by name. */
export async function staffWithYes(client: Db | Tx): Promise<readonly StaffWithYes[]> {
  const rows = await client.staff.findMany({
    where: { closedAt: null },
    include: { cautionYeses: { orderBy: { saidAt: "desc" } } },
    orderBy: [{ name: "asc" }, { id: "asc" }],
  });
  return rows.map(({ id, name, role, cautionYeses }) => ({ id, name, role, yeses: cautionYeses }));
}

/** What one person said yes to, the latest first. */
export async function cautionYesesOf(client: Db | Tx, staffId: string): Promise<readonly CautionYes[]> {
  return client.cautionYes.findMany({ where: { staffId }, orderBy: { saidAt: "desc" } });
}

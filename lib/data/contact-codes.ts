/** Codes by letter: who types one reads the mail of the order's address. */
import type { Tx } from "./client";

export interface NewContactCode {
  readonly id: string;
  readonly orderId: string;
  readonly codeHash: string;
  readonly sentTo: string;
  readonly sentAt: Date;
  readonly expiresAt: Date;
}

export async function insertContactCode(tx: Tx, code: NewContactCode): Promise<void> {
  await tx.contactCode.create({ data: { ...code, misses: 0 } });
}

/** Newest first. */
export async function contactCodesOf(client: Tx, orderId: string) {
  return client.contactCode.findMany({ where: { orderId }, orderBy: [{ sentAt: "desc" }, { id: "desc" }], take: 20 });
}

/** Counts a wrong answer; false when it had as many as it may have. */
export async function missContactCode(tx: Tx, id: string, most: number): Promise<boolean> {
  const { count } = await tx.contactCode.updateMany({
    where: { id, usedAt: null, misses: { lt: most } },
    data: { misses: { increment: 1 } },
  });
  return count === 1;
}

/** Uses a code up; false when it was used, or had too many wrong answers meanwhile. */
export async function useContactCode(tx: Tx, id: string, most: number, at: Date): Promise<boolean> {
  const { count } = await tx.contactCode.updateMany({
    where: { id, usedAt: null, misses: { lt: most } },
    data: { usedAt: at },
  });
  return count === 1;
}

import type { Tx } from "./client";

/** A delivery of one material, and where it lies. */
export interface LotRecord {
  readonly id: string;
  /** As the parts list names it. */
  readonly material: string;
  readonly number: string;
  readonly quantity: number;
  readonly unit: string;
  readonly location: string;
  readonly receivedAt: Date;
  readonly expiresAt: Date | null;
}

/** Lots of these materials that hold something and have not expired, oldest first. */
export async function usableLots(client: Tx, materials: readonly string[], now: Date): Promise<readonly LotRecord[]> {
  return client.lot.findMany({
    where: {
      material: { in: [...materials] },
      quantity: { gt: 0 },
      OR: [{ expiresAt: null }, { expiresAt: { gt: now } }],
    },
    orderBy: [{ receivedAt: "asc" }, { number: "asc" }],
  });
}

export async function insertLots(tx: Tx, lots: readonly LotRecord[]): Promise<void> {
  await tx.lot.createMany({ data: [...lots] });
}

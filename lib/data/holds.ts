/** Pairs that wait at a station for something that is not the customer's. */
import type { Tx } from "./client";

export interface NewPairHold {
  readonly id: string;
  readonly pairId: string;
  readonly reason: "material" | "decision";
  readonly station: string;
  readonly expectedOn: string | null;
  readonly note: string;
  readonly incidentId: string | null;
  readonly madeAt: Date;
  readonly madeByName: string;
}

/** Holds a pair; what was computed from it is computed anew. */
export async function insertPairHolds(tx: Tx, holds: readonly NewPairHold[]): Promise<void> {
  if (holds.length === 0) return;
  await tx.pairHold.createMany({ data: [...holds] });
  await tx.pair.updateMany({
    where: { id: { in: holds.map(({ pairId }) => pairId) } },
    data: { version: { increment: 1 } },
  });
}

/** Ends every open hold of an incident; returns how many. */
export async function clearIncidentHolds(
  tx: Tx,
  incidentId: string,
  how: { readonly at: Date; readonly by: string },
): Promise<number> {
  const open = await tx.pairHold.findMany({ where: { incidentId, clearedAt: null }, select: { pairId: true } });
  const { count } = await tx.pairHold.updateMany({
    where: { incidentId, clearedAt: null },
    data: { clearedAt: how.at, clearedByName: how.by },
  });
  await tx.pair.updateMany({
    where: { id: { in: open.map(({ pairId }) => pairId) } },
    data: { version: { increment: 1 } },
  });
  return count;
}

/** What makes the floor different from its settings. */

import type { Tx } from "./client";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";

export type FloorChangeRecord = Prisma.FloorChangeGetPayload<object>;

export interface NewFloorChange {
  readonly id: string;
  readonly kind: string;
  /** The engine's change without its minutes. */
  readonly data: unknown;
  readonly fromAt: Date | null;
  readonly toAt: Date | null;
  readonly reason: string;
  readonly incidentId: string | null;
  readonly source: "incident" | "option" | "what-if";
  readonly costCents: number | null;
  readonly madeAt: Date;
  readonly madeByName: string;
}

export async function insertFloorChange(tx: Tx, change: NewFloorChange): Promise<void> {
  await tx.floorChange.create({ data: { ...change, data: asJson(change.data) } });
}

/** Those that count now or later, oldest first. */
export async function floorChangesInForce(client: Tx, now: Date): Promise<readonly FloorChangeRecord[]> {
  return client.floorChange.findMany({
    where: { withdrawnAt: null, OR: [{ toAt: null }, { toAt: { gt: now } }] },
    orderBy: [{ madeAt: "asc" }, { id: "asc" }],
  });
}

/** Presses that were ever added, those that are gone again too. */
export async function extraPressChanges(client: Tx): Promise<readonly FloorChangeRecord[]> {
  return client.floorChange.findMany({ where: { kind: "extra-press" }, orderBy: { madeAt: "asc" } });
}

/** False when it was withdrawn before. */
export async function withdrawFloorChange(
  tx: Tx,
  id: string,
  how: { readonly at: Date; readonly by: string; readonly reason: string },
): Promise<boolean> {
  const { count } = await tx.floorChange.updateMany({
    where: { id, withdrawnAt: null },
    data: { withdrawnAt: how.at, withdrawnByName: how.by, withdrawReason: how.reason },
  });
  return count === 1;
}

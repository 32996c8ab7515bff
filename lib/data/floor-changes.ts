/** What makes the floor different from its settings. */
import type { FloorChange } from "#engine/routing";
import type { FloorChangeData } from "#schemas/stored/index";
import type { Tx } from "./client";
import { type Read, readableRows, readRow, UnreadableRow } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { floorChangeColumns } from "./records/tables";

export type FloorChangeRecord = Read<Prisma.FloorChangeGetPayload<object>, typeof floorChangeColumns>;

/** @throws UnreadableRow also when an instant is missing that its kind needs */
export function readChange(row: Prisma.FloorChangeGetPayload<object>): FloorChangeRecord {
  const record = readRow("floor_changes", floorChangeColumns, row, ({ id }) => id);
  floorChangeIn(record, Number);
  return record;
}

/** The engine's change: what it is about, with its instants in the minutes that `minuteOf` counts. */
export function floorChangeIn(record: FloorChangeRecord, minuteOf: (at: Date) => number): FloorChange {
  const { data, toAt } = record;
  if (data.kind === "rework-factor") return data;
  const needed = (column: "fromAt" | "toAt") => {
    const at = record[column];
    if (at === null) throw new UnreadableRow("floor_changes", record.id, column, `${data.kind} needs it`);
    return minuteOf(at);
  };
  if (data.kind === "extra-press" || data.kind === "extra-person") {
    return { ...data, fromMinute: needed("fromAt"), toMinute: toAt === null ? null : minuteOf(toAt) };
  }
  return { ...data, fromMinute: needed("fromAt"), toMinute: needed("toAt") };
}

export interface NewFloorChange {
  readonly id: string;
  readonly kind: string;
  /** The engine's change without its minutes. */
  readonly data: FloorChangeData;
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
  const rows = await client.floorChange.findMany({
    where: { withdrawnAt: null, OR: [{ toAt: null }, { toAt: { gt: now } }] },
    orderBy: [{ madeAt: "asc" }, { id: "asc" }],
  });
  return readableRows(rows, readChange);
}

/** Presses that were ever added, those that are gone again too. */
export async function extraPressChanges(client: Tx): Promise<readonly FloorChangeRecord[]> {
  const rows = await client.floorChange.findMany({ where: { kind: "extra-press" }, orderBy: { madeAt: "asc" } });
  return readableRows(rows, readChange);
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

/** What the floor wrote down of itself: starts and ends, work begun again, what was different. */
import type { Tx } from "./client";
import { readableRows, readRow } from "./columns";
import { type EventRecord, readEventRow } from "./events";
import { type FloorChangeRecord, readChange } from "./floor-changes";
import type { Prisma } from "./generated/client";
import { operationColumns, pairColumns } from "./records/tables";

const tick = {
  id: true,
  pairId: true,
  station: true,
  startedAt: true,
  startedByName: true,
  finishedAt: true,
  minutesShare: true,
  pair: { select: { serial: true, spec: true, releaseHash: true } },
} as const satisfies Prisma.OperationSelect;

function readTick(row: Prisma.OperationGetPayload<{ select: typeof tick }>) {
  return {
    ...readRow("operations", operationColumns, row, ({ id }) => id),
    pair: readRow("pairs", pairColumns, row.pair, ({ serial }) => serial),
  };
}

export type FloorTick = ReturnType<typeof readTick>;

/** Work that was begun in a time, by its start. What was broken off has no end and is left out. */
export async function floorTicks(client: Tx, from: Date, to: Date): Promise<readonly FloorTick[]> {
  const rows = await client.operation.findMany({
    where: { startedAt: { gte: from, lt: to }, state: { in: ["running", "done"] } },
    select: tick,
    orderBy: [{ startedAt: "asc" }, { id: "asc" }],
  });
  return readableRows(rows, readTick);
}

/** Skis begun again in a time, oldest first. */
export async function reworkEvents(client: Tx, from: Date, to: Date): Promise<readonly EventRecord[]> {
  const rows = await client.event.findMany({
    where: { kind: "rework-started", at: { gte: from, lt: to } },
    orderBy: { seq: "asc" },
  });
  return rows.map(readEventRow);
}

/** What made the floor different since then, by its beginning; what was withdrawn ended when it was. */
export async function floorChangesSince(client: Tx, from: Date): Promise<readonly FloorChangeRecord[]> {
  const rows = await client.floorChange.findMany({
    where: {
      kind: { in: ["press-down", "person-away", "shop-closed", "overtime"] },
      OR: [{ toAt: null }, { toAt: { gt: from } }],
    },
    orderBy: [{ fromAt: "asc" }, { id: "asc" }],
  });
  return readableRows(rows, readChange).flatMap((change) => {
    const { fromAt, toAt, withdrawnAt } = change;
    const isCut = withdrawnAt !== null && (toAt === null || withdrawnAt < toAt);
    if (isCut && fromAt !== null && withdrawnAt <= fromAt) return [];
    return [isCut ? { ...change, toAt: withdrawnAt } : change];
  });
}

/** Places given by hand, with what they were before. */
import type { Tx } from "./client";
import { readRow } from "./columns";
import type { Prisma } from "./generated/client";
import { planMoveColumns } from "./records/tables";

const readMove = (row: Prisma.PlanMoveGetPayload<{ include: { pair: { select: { serial: true } } } }>) =>
  readRow("plan_moves", planMoveColumns, row, ({ id }) => id);

export type PlanMoveRecord = ReturnType<typeof readMove>;

export interface NewPlanMove {
  readonly id: string;
  readonly pairId: string;
  readonly fromPlace: number | null;
  readonly toPlace: number | null;
  readonly decisionId: string;
  readonly reason: string;
  readonly at: Date;
  readonly byName: string;
}

export async function insertPlanMoves(tx: Tx, moves: readonly NewPlanMove[]): Promise<void> {
  await tx.planMove.createMany({ data: [...moves] });
}

/** Newest first. */
export async function recentPlanMoves(client: Tx, take: number): Promise<readonly PlanMoveRecord[]> {
  const rows = await client.planMove.findMany({
    include: { pair: { select: { serial: true } } },
    orderBy: [{ at: "desc" }, { id: "asc" }],
    take,
  });
  return rows.map(readMove);
}

export async function planMovesOf(client: Tx, decisionId: string): Promise<readonly PlanMoveRecord[]> {
  const include = { pair: { select: { serial: true } } } as const;
  return (await client.planMove.findMany({ where: { decisionId }, include })).map(readMove);
}

/** How many of a decision's moves were taken back by this call; 0 when somebody was first. */
export async function markPlanMovesUndone(
  tx: Tx,
  decisionId: string,
  undone: { readonly at: Date; readonly by: string },
): Promise<number> {
  const { count } = await tx.planMove.updateMany({
    where: { decisionId, undoneAt: null },
    data: { undoneAt: undone.at, undoneByName: undone.by },
  });
  return count;
}

/** Sets the place a pair ranks by. */
export async function setPlace(tx: Tx, pairId: string, placeMinute: number | null): Promise<void> {
  await tx.pair.update({ where: { id: pairId }, data: { placeMinute, version: { increment: 1 } } });
}

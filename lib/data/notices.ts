/** Letters to customers, drafted and waiting for a person. */
import type { NoticeState } from "#engine/floor";
import type { Tx } from "./client";
import { readableRows, readRow } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { buyerColumns, buyerOf, orderName } from "./records/order";
import { noticeColumns, orderColumns } from "./records/tables";

/** A letter goes with its order and who it is for. */
export const noticeOrder = {
  order: { select: { id: true, number: true, promisedOn: true, state: true, ...buyerColumns } },
} as const satisfies Prisma.NoticeInclude;

export function readNotice(row: Prisma.NoticeGetPayload<{ include: typeof noticeOrder }>) {
  const order = readRow("orders", orderColumns, row.order, orderName);
  return {
    ...readRow("notices", noticeColumns, row, ({ id }) => id),
    order: { ...order, customer: buyerOf(order) },
  };
}

export type NoticeRecord = ReturnType<typeof readNotice>;

export interface NewNotice {
  readonly id: string;
  readonly orderId: string;
  readonly incidentId: string | null;
  readonly kind: "delay" | "colour-offer" | "slot-slid" | "hold-lapsed" | "date-changed";
  readonly body: string;
  readonly data: unknown;
  readonly draftedAt: Date;
  readonly draftedByName: string;
}

export async function insertNotice(tx: Tx, notice: NewNotice): Promise<void> {
  await tx.notice.create({ data: { ...notice, data: asJson(notice.data), state: "draft", version: 1 } });
}

export async function noticeById(client: Tx, id: string): Promise<NoticeRecord | null> {
  const row = await client.notice.findUnique({ where: { id }, include: noticeOrder });
  return row === null ? null : readNotice(row);
}

/** Drafts first, newest first. */
export async function listNoticeRecords(client: Tx, take: number): Promise<readonly NoticeRecord[]> {
  const orderBy = [{ state: "asc" as const }, { draftedAt: "desc" as const }];
  return readableRows(await client.notice.findMany({ include: noticeOrder, orderBy, take }), readNotice);
}

/** False when somebody decided before. */
export async function decideNotice(
  tx: Tx,
  id: string,
  version: number,
  decision: {
    readonly state: Exclude<NoticeState, "draft">;
    readonly body: string;
    readonly at: Date;
    readonly by: string;
    readonly reason: string | null;
  },
): Promise<boolean> {
  const { count } = await tx.notice.updateMany({
    where: { id, version, state: "draft" },
    data: {
      state: decision.state,
      body: decision.body,
      decidedAt: decision.at,
      decidedByName: decision.by,
      decidedReason: decision.reason,
      version: { increment: 1 },
    },
  });
  return count === 1;
}

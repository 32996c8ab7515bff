/** Letters to customers, drafted and waiting for a person. */
import type { NoticeState } from "#engine/floor";
import type { Tx } from "./client";
import { readableRows, readRow, UnreadableRow } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { buyerColumns, buyerOf, orderName } from "./records/order";
import { noticeColumns, orderColumns } from "./records/tables";
import { seal, Unopenable, unseal } from "./sealed";

/** A letter goes with its order and who it is for. */
export const noticeOrder = {
  order: { select: { id: true, number: true, promisedOn: true, state: true, ...buyerColumns } },
} as const satisfies Prisma.NoticeInclude;

/** What is written may hold a link or a code: tables and backups have it sealed, as letters are. */
const rowOf = (id: string) => `notice ${id}`;

/** @throws UnreadableRow, also when its text was sealed with another key */
export function readNoticeRow(row: Prisma.NoticeGetPayload<object>) {
  return { ...readRow("notices", noticeColumns, row, ({ id }) => id), body: textOf(row) };
}

export function readNotice({ order: of, ...row }: Prisma.NoticeGetPayload<{ include: typeof noticeOrder }>) {
  const order = readRow("orders", orderColumns, of, orderName);
  return { ...readNoticeRow(row), order: { ...order, customer: buyerOf(order) } };
}

function textOf({ id, body }: { readonly id: string; readonly body: string }): string {
  try {
    return unseal(body, rowOf(id));
  } catch (error) {
    if (!(error instanceof Unopenable)) throw error;
    throw new UnreadableRow("notices", id, "body", error.message, { cause: error });
  }
}

/** A row with what it says, for its person's file; what cannot be opened stays sealed. */
export function noticeWithText<Row extends { readonly id: string; readonly body: string }>(row: Row): Row {
  try {
    return { ...row, body: unseal(row.body, rowOf(row.id)) };
  } catch (error) {
    if (error instanceof Unopenable) return row;
    throw error;
  }
}

/** Takes words out of what notices say: no question to the database finds them there. */
export async function sweepNotices(tx: Tx, words: RegExp, word: string): Promise<void> {
  for (const row of await tx.notice.findMany({ select: { id: true, body: true } })) {
    const { id, body } = noticeWithText(row);
    const rest = body.replaceAll(words, word);
    if (rest !== body) await tx.notice.update({ where: { id }, data: { body: seal(rest, rowOf(id)) } });
  }
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
  const body = seal(notice.body, rowOf(notice.id));
  await tx.notice.create({ data: { ...notice, body, data: asJson(notice.data), state: "draft", version: 1 } });
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
      body: seal(decision.body, rowOf(id)),
      decidedAt: decision.at,
      decidedByName: decision.by,
      decidedReason: decision.reason,
      version: { increment: 1 },
    },
  });
  return count === 1;
}

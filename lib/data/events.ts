/** What happened: written once, in the transaction that made it happen. */
import type { Tx } from "./client";
import { asJson } from "./json";

export type EventSubject =
  | "sheet"
  | "quote"
  | "club"
  | "order"
  | "pair"
  | "customer"
  | "measured-pair"
  | "correction-book"
  | "incident"
  | "floor";

export interface NewEvent {
  readonly at: Date;
  readonly kind: string;
  readonly subjectKind: EventSubject;
  readonly subjectId: string;
  readonly actorKind: string;
  readonly actorId: string | null;
  readonly actorName: string;
  readonly data: Readonly<Record<string, unknown>>;
}

export interface EventRecord extends NewEvent {
  readonly seq: bigint;
}

export async function recordEvents(tx: Tx, events: readonly NewEvent[]): Promise<void> {
  await tx.event.createMany({ data: events.map((event) => ({ ...event, data: asJson(event.data) })) });
}

/** Oldest first. */
export async function eventsOf(
  client: Tx,
  subjectKind: EventSubject,
  subjectIds: readonly string[],
): Promise<readonly EventRecord[]> {
  const rows = await client.event.findMany({
    where: { subjectKind, subjectId: { in: [...subjectIds] } },
    orderBy: { seq: "asc" },
  });
  return rows.map((row) => ({
    ...row,
    subjectKind: row.subjectKind as EventSubject,
    data: row.data as Readonly<Record<string, unknown>>,
  }));
}

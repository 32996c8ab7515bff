/** What happened: written once, in the transaction that made it happen. */
import { type EventFacts, type OtherEvent, readEvent } from "#schemas/events";
import type { Tx } from "./client";
import { oneOf, readRow } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";

export const eventSubjects = [
  "sheet",
  "quote",
  "club",
  "order",
  "pair",
  "customer",
  "measured-pair",
  "correction-book",
  "floor-book",
  "incident",
  "floor",
  "staff",
  "device",
  "wall",
  "door",
  "retention",
] as const;
export type EventSubject = (typeof eventSubjects)[number];

/** When, about whom and by whom. */
export interface Occasion {
  readonly at: Date;
  readonly subjectKind: EventSubject;
  readonly subjectId: string;
  readonly actorKind: string;
  readonly actorId: string | null;
  readonly actorName: string;
}

/** Of a kind that there is, with that kind's own particulars. */
export type NewEvent = Occasion & EventFacts;

export interface EventRecord extends Occasion {
  readonly seq: bigint;
  /** As written, whatever it was. */
  readonly kind: string;
  readonly data: Readonly<Record<string, unknown>>;
  /** The same by its kind; of another kind when it is older than its kind's particulars. */
  readonly facts: EventFacts | OtherEvent;
}

export async function recordEvents(tx: Tx, events: readonly NewEvent[]): Promise<void> {
  await tx.event.createMany({ data: events.map((event) => ({ ...event, data: asJson(event.data) })) });
}

const subjectColumns = { subjectKind: oneOf(eventSubjects) } as const;

function membersOf(data: unknown): Readonly<Record<string, unknown>> {
  return typeof data === "object" && data !== null ? Object.fromEntries(Object.entries(data)) : { data };
}

export function readEventRow(row: Prisma.EventGetPayload<object>): EventRecord {
  return {
    ...readRow("events", subjectColumns, row, ({ seq }) => seq.toString()),
    data: membersOf(row.data),
    facts: readEvent(row.kind, row.data),
  };
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
  return rows.map(readEventRow);
}

/** What happened to these kinds of subject, whichever they were; the newest first. */
export async function latestEvents(
  client: Tx,
  subjectKinds: readonly EventSubject[],
  take: number,
): Promise<readonly EventRecord[]> {
  const where = { subjectKind: { in: [...subjectKinds] } };
  const rows = await client.event.findMany({ where, orderBy: { seq: "desc" }, take });
  return rows.map(readEventRow);
}

/** What happened of one kind since; the newest first. */
export async function eventsSince(client: Tx, kind: string, since: Date): Promise<readonly EventRecord[]> {
  const rows = await client.event.findMany({ where: { kind, at: { gte: since } }, orderBy: { seq: "desc" } });
  return rows.map(readEventRow);
}

/** When a kind of event happened since, oldest first. */
export async function eventTimes(client: Tx, kind: string, since: Date): Promise<readonly Date[]> {
  const rows = await client.event.findMany({
    where: { kind, at: { gte: since } },
    select: { at: true },
    orderBy: { seq: "asc" },
  });
  return rows.map(({ at }) => at);
}

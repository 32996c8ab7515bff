/** What the slots and promises of orders are read from. */
import type { Tx } from "./client";
import type { EventRecord, EventSubject } from "./events";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";

const slot = {
  customer: { select: { name: true, email: true, phone: true } },
  pairs: { include: { proofs: { orderBy: { revision: "asc" } } } },
} as const satisfies Prisma.OrderInclude;

export type SlotOrder = Prisma.OrderGetPayload<{ include: typeof slot }>;

/** Orders that wait for their customer and have a place in the queue. */
export async function waitingWithSlot(client: Tx): Promise<readonly SlotOrder[]> {
  return client.order.findMany({
    where: { state: "waiting", slotLostAt: null },
    include: slot,
    orderBy: { number: "asc" },
  });
}

const dated = {
  pairs: { select: { id: true, spec: true }, orderBy: { serialNumber: "asc" } },
} as const satisfies Prisma.OrderInclude;

export type WaitingOrder = Prisma.OrderGetPayload<{ include: typeof dated }>;

/** Orders that wait for their customer, with a place in the queue or without. */
export async function waitingOrders(client: Tx): Promise<readonly WaitingOrder[]> {
  return client.order.findMany({ where: { state: "waiting" }, include: dated, orderBy: { number: "asc" } });
}

/** Keeps the version: what somebody is about to decide on the order does not hang on its estimate. */
export async function renewEstimate(tx: Tx, id: string, version: number, estimate: unknown): Promise<boolean> {
  const { count } = await tx.order.updateMany({
    where: { id, version, state: "waiting" },
    data: { estimate: asJson(estimate) },
  });
  return count === 1;
}

/** All events of some kinds about orders, oldest first. */
export async function orderEventsOf(client: Tx, kinds: readonly string[]): Promise<readonly EventRecord[]> {
  const rows = await client.event.findMany({
    where: { subjectKind: "order", kind: { in: [...kinds] } },
    orderBy: { seq: "asc" },
  });
  return rows.map((row) => ({
    ...row,
    subjectKind: row.subjectKind as EventSubject,
    data: row.data as Readonly<Record<string, unknown>>,
  }));
}

export async function pairsWithEventSince(client: Tx, kind: string, since: Date): Promise<ReadonlySet<string>> {
  const rows = await client.event.findMany({
    where: { subjectKind: "pair", kind, at: { gte: since } },
    select: { subjectId: true },
  });
  return new Set(rows.map(({ subjectId }) => subjectId));
}

export async function orderNumbersOf(client: Tx, ids: readonly string[]): Promise<ReadonlyMap<string, number>> {
  const rows = await client.order.findMany({ where: { id: { in: [...ids] } }, select: { id: true, number: true } });
  return new Map(rows.map(({ id, number }) => [id, number] as const));
}

/** The pairs of an order take their place behind all who have one. */
export async function queuePairsAgain(tx: Tx, orderId: string, at: Date): Promise<void> {
  await tx.pair.updateMany({ where: { orderId }, data: { queuedAt: at, version: { increment: 1 } } });
}

/** What the slots and promises of orders are read from. */
import type { DateRange } from "#schemas/stored/index";
import type { Tx } from "./client";
import { readableRows, readRow } from "./columns";
import { type EventRecord, readEventRow } from "./events";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { buyerOf, orderName } from "./records/order";
import { readProof } from "./records/pair";
import { orderColumns, pairColumns } from "./records/tables";

const slot = {
  pairs: { include: { proofs: { orderBy: { revision: "asc" } } } },
} as const satisfies Prisma.OrderInclude;

function readSlot(row: Prisma.OrderGetPayload<{ include: typeof slot }>) {
  const order = readRow("orders", orderColumns, row, orderName);
  return {
    ...order,
    customer: buyerOf(order),
    pairs: row.pairs.map((pair) => ({
      ...readRow("pairs", pairColumns, pair, ({ serial }) => serial),
      proofs: pair.proofs.map(readProof),
    })),
  };
}

export type SlotOrder = ReturnType<typeof readSlot>;

/** Confirmed orders that wait for their customer and have a place in the queue. */
export async function waitingWithSlot(client: Tx): Promise<readonly SlotOrder[]> {
  const rows = await client.order.findMany({
    where: { state: "waiting", slotLostAt: null, confirmedAt: { not: null } },
    include: slot,
    orderBy: { number: "asc" },
  });
  return readableRows(rows, readSlot);
}

const dated = {
  pairs: { select: { id: true, spec: true }, orderBy: { serialNumber: "asc" } },
} as const satisfies Prisma.OrderInclude;

function readDated(row: Prisma.OrderGetPayload<{ include: typeof dated }>) {
  return {
    ...readRow("orders", orderColumns, row, orderName),
    pairs: row.pairs.map((pair) => readRow("pairs", pairColumns, pair, ({ id }) => id)),
  };
}

export type WaitingOrder = ReturnType<typeof readDated>;

/** Confirmed orders that wait for their customer, with a place in the queue or without. */
export async function waitingOrders(client: Tx): Promise<readonly WaitingOrder[]> {
  const where = { state: "waiting", confirmedAt: { not: null } };
  return readableRows(await client.order.findMany({ where, include: dated, orderBy: { number: "asc" } }), readDated);
}

/** Keeps the version: what somebody is about to decide on the order does not hang on its estimate. */
export async function renewEstimate(tx: Tx, id: string, version: number, estimate: DateRange): Promise<boolean> {
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
  return rows.map(readEventRow);
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

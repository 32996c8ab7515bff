import type { PaymentState } from "#engine/floor";
import type { Tx } from "./client";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";

export interface NewOrder {
  readonly id: string;
  readonly number: number;
  readonly quoteId: string;
  readonly clubId: string | null;
  readonly customerId: string;
  readonly price: unknown;
  readonly priceBook: string;
  readonly totalCents: number;
  readonly depositCents: number;
  readonly estimate: unknown;
  readonly acceptedAt: Date;
  readonly acceptedByName: string;
  readonly acceptedHow: string;
  /** Until when it keeps its place in the queue unpaid. */
  readonly softHoldUntil: Date;
  readonly customerSpecified: readonly string[];
}

const whole = {
  customer: true,
  club: { select: { id: true, number: true, name: true } },
  quote: { select: { id: true, number: true, revision: true, releaseHash: true, sheetId: true } },
  payments: { orderBy: { requestedAt: "asc" } },
  pairs: {
    orderBy: { serialNumber: "asc" },
    include: { operations: true, proofs: { orderBy: { revision: "asc" } } },
  },
} as const satisfies Prisma.OrderInclude;

export type OrderRecord = Prisma.OrderGetPayload<{ include: typeof whole }>;

export async function insertOrder(tx: Tx, order: NewOrder): Promise<void> {
  await tx.order.create({
    data: {
      ...order,
      state: "waiting",
      version: 1,
      promiseClass: "estimate",
      price: asJson(order.price),
      estimate: asJson(order.estimate),
      customerSpecified: asJson(order.customerSpecified),
    },
  });
}

export async function orderById(client: Tx, id: string): Promise<OrderRecord | null> {
  return client.order.findUnique({ where: { id }, include: whole });
}

/** What may change beside the state, which is moved. */
export type OrderChange = Omit<Prisma.OrderUncheckedUpdateManyInput, "id" | "version" | "state">;

/** Changes the order if it is still at this version; false when someone was first. */
export async function updateOrder(tx: Tx, id: string, version: number, change: OrderChange): Promise<boolean> {
  const { count } = await tx.order.updateMany({
    where: { id, version },
    data: { ...change, version: { increment: 1 } },
  });
  return count === 1;
}

/** Moves the order on if it is still in this state and version. */
export async function moveOrder(
  tx: Tx,
  id: string,
  from: { readonly state: string; readonly version: number },
  to: string,
  change: OrderChange = {},
): Promise<boolean> {
  const { count } = await tx.order.updateMany({
    where: { id, ...from },
    data: { ...change, state: to, version: { increment: 1 } },
  });
  return count === 1;
}

export interface NewPayment {
  readonly id: string;
  readonly orderId: string;
  readonly kind: "deposit" | "rush" | "balance" | "refund";
  readonly state: Extract<PaymentState, "requested" | "received">;
  readonly cents: number;
  readonly method: string | null;
  readonly reference: string | null;
  readonly requestedAt: Date;
  readonly receivedAt: Date | null;
  readonly takenByName: string | null;
}

export async function insertPayment(tx: Tx, payment: NewPayment): Promise<void> {
  await tx.payment.create({ data: payment });
}

/** Marks the requested payment received; false when it already was. */
export async function receivePayment(
  tx: Tx,
  id: string,
  received: { readonly method: string; readonly reference: string | null; readonly at: Date; readonly by: string },
): Promise<boolean> {
  const { count } = await tx.payment.updateMany({
    where: { id, state: "requested" },
    data: {
      state: "received",
      method: received.method,
      reference: received.reference,
      receivedAt: received.at,
      takenByName: received.by,
    },
  });
  return count === 1;
}

/** Gives a requested payment up; false when it is not open any more. */
export async function waivePayment(tx: Tx, id: string): Promise<boolean> {
  const { count } = await tx.payment.updateMany({ where: { id, state: "requested" }, data: { state: "waived" } });
  return count === 1;
}

/** The payment row has decided who was first; the order only follows. */
export async function markDepositPaid(tx: Tx, orderId: string, paidAt: Date): Promise<void> {
  await tx.order.updateMany({
    where: { id: orderId, depositPaidAt: null },
    data: { depositPaidAt: paidAt, version: { increment: 1 } },
  });
}

/** How the skier said they would pay; the money is still to come. */
export async function announcePayment(tx: Tx, id: string, method: string): Promise<void> {
  await tx.payment.updateMany({ where: { id, state: "requested" }, data: { method } });
}

export interface OrderFilter {
  readonly state?: string;
  readonly waitingFor?: "deposit" | "specification-lock" | "proof" | "rights";
  readonly text?: string;
  readonly number?: number;
}

export async function listOrderRecords(
  client: Tx,
  filter: OrderFilter,
  slice: { readonly skip: number; readonly take: number },
): Promise<{ readonly rows: readonly OrderRecord[]; readonly total: number }> {
  const where = whereOrders(filter);
  const [rows, total] = await Promise.all([
    client.order.findMany({ where, include: whole, orderBy: [{ acceptedAt: "desc" }, { number: "desc" }], ...slice }),
    client.order.count({ where }),
  ]);
  return { rows, total };
}

export async function ordersOfCustomer(
  client: Tx,
  customerId: string,
): Promise<readonly { readonly id: string; readonly number: number; readonly state: string }[]> {
  return client.order.findMany({
    where: { customerId },
    select: { id: true, number: true, state: true },
    orderBy: { acceptedAt: "desc" },
    take: 20,
  });
}

function whereOrders(filter: OrderFilter): Prisma.OrderWhereInput {
  const clauses: Prisma.OrderWhereInput[] = [];
  if (filter.state !== undefined) clauses.push({ state: filter.state });
  if (filter.waitingFor !== undefined) clauses.push({ state: "waiting", ...whereWaiting(filter.waitingFor) });
  if (filter.text !== undefined) {
    const any: Prisma.OrderWhereInput[] = [
      { customer: { name: { contains: filter.text, mode: "insensitive" } } },
      { pairs: { some: { serial: { contains: filter.text, mode: "insensitive" } } } },
    ];
    if (filter.number !== undefined) any.push({ number: filter.number });
    clauses.push({ OR: any });
  }
  return { AND: clauses };
}

function whereWaiting(condition: NonNullable<OrderFilter["waitingFor"]>): Prisma.OrderWhereInput {
  switch (condition) {
    case "deposit":
      return { depositPaidAt: null };
    case "specification-lock":
      return { pairs: { some: { specLockedAt: null } } };
    case "proof":
      return { pairs: { some: { proofNeeded: true, proofState: { not: "approved" } } } };
    case "rights":
      return { pairs: { some: { rightsNeeded: true, rightsAt: null } } };
  }
}

import type { PaymentState } from "#engine/floor";
import type { Price } from "#engine/pricing";
import type { confirmedHows, DateRange } from "#schemas/stored/index";
import { type Buyer, buyerData } from "./buyer";
import type { Tx } from "./client";
import { type ReadRows, readableRows, readRow, readRows } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import {
  type OrderAloneRecord,
  type OrderLineRecord,
  type OrderRecord,
  orderAlone,
  orderLine,
  orderName,
  readOrder,
  readOrderAlone,
  readOrderLine,
  wholeOrder,
} from "./records/order";
import { orderColumns, pairColumns } from "./records/tables";

export type { OrderAloneRecord, OrderLineRecord, OrderRecord } from "./records/order";

export type ConfirmedHow = (typeof confirmedHows)[number];

export interface NewOrder {
  readonly id: string;
  readonly number: number;
  readonly quoteId: string;
  readonly clubId: string | null;
  readonly customerId: string;
  readonly buyer: Buyer;
  /** By what it is known that somebody stands behind it; null while nobody does. */
  readonly confirmed: { readonly at: Date; readonly how: ConfirmedHow; readonly by: string } | null;
  readonly visitorMark: string | null;
  readonly price: Price;
  readonly priceBook: string;
  readonly totalCents: number;
  readonly depositCents: number;
  readonly estimate: DateRange;
  readonly acceptedAt: Date;
  readonly acceptedByName: string;
  readonly acceptedHow: string;
  /** Until when it keeps its place in the queue unpaid; null without a place. */
  readonly softHoldUntil: Date | null;
  readonly customerSpecified: readonly string[];
}

export async function insertOrder(tx: Tx, { buyer, confirmed, ...order }: NewOrder): Promise<void> {
  await tx.order.create({
    data: {
      ...order,
      ...buyerData(buyer),
      confirmedAt: confirmed?.at ?? null,
      confirmedHow: confirmed?.how ?? null,
      confirmedByName: confirmed?.by ?? null,
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
  const row = await client.order.findUnique({ where: { id }, include: wholeOrder });
  return row === null ? null : readOrder(row);
}

/** An order as far as it concerns one of its pairs. */
export async function orderAloneById(client: Tx, id: string): Promise<OrderAloneRecord | null> {
  const row = await client.order.findUnique({ where: { id }, include: orderAlone });
  return row === null ? null : readOrderAlone(row);
}

/** Which pairs an order has, by their names alone. */
export async function pairNamesOfOrder(client: Tx, orderId: string) {
  const rows = await client.pair.findMany({
    where: { orderId },
    select: { id: true, serial: true },
    orderBy: { serialNumber: "asc" },
  });
  return rows.map((row) => readRow("pairs", pairColumns, row, ({ serial }) => serial));
}

/** What may change beside the state, which is moved. */
export type OrderChange = Omit<
  Prisma.OrderUncheckedUpdateManyInput,
  "id" | "version" | "state" | "price" | "estimate" | "buyerAddress"
> & {
  readonly price?: Price;
  readonly estimate?: DateRange;
};

/** Changes the order if it is still at this version; false when someone was first. */
export async function updateOrder(tx: Tx, id: string, version: number, change: OrderChange): Promise<boolean> {
  const { count } = await tx.order.updateMany({
    where: { id, version },
    data: { ...columnsOf(change), version: { increment: 1 } },
  });
  return count === 1;
}

/** What the columns hold: JSON as JSON. */
function columnsOf({ price, estimate, ...rest }: OrderChange) {
  return {
    ...rest,
    ...(price === undefined ? {} : { price: asJson(price) }),
    ...(estimate === undefined ? {} : { estimate: asJson(estimate) }),
  };
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
    data: { ...columnsOf(change), state: to, version: { increment: 1 } },
  });
  return count === 1;
}

export interface Confirmation {
  readonly at: Date;
  readonly how: ConfirmedHow;
  readonly by: string;
  readonly softHoldUntil: Date;
  readonly estimate: DateRange;
}

/** Says that somebody stands behind an order; false when that was known, or it is not waiting any more. */
export async function markConfirmed(tx: Tx, id: string, { at, how, by, ...given }: Confirmation): Promise<boolean> {
  const { count } = await tx.order.updateMany({
    where: { id, state: "waiting", confirmedAt: null },
    data: {
      confirmedAt: at,
      confirmedHow: how,
      confirmedByName: by,
      softHoldUntil: given.softHoldUntil,
      estimate: asJson(given.estimate),
      version: { increment: 1 },
    },
  });
  return count === 1;
}

/** A payment with the order it is of, by its plain columns; null when there is none. */
export async function orderOfPayment(client: Tx, paymentId: string): Promise<string | null> {
  const row = await client.payment.findUnique({ where: { id: paymentId }, select: { orderId: true } });
  return row?.orderId ?? null;
}

/** Keeps that a message of the payment service was acted on. @throws Conflict when it was before */
export async function keepPaymentMessage(
  tx: Tx,
  message: { readonly id: string; readonly paymentId: string; readonly receivedAt: Date },
): Promise<void> {
  await tx.paymentMessage.create({ data: message });
}

export async function isPaymentMessageKnown(client: Tx, id: string): Promise<boolean> {
  return (await client.paymentMessage.count({ where: { id } })) > 0;
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
  /** Those that nobody is known to stand behind. */
  readonly unconfirmed?: boolean;
  readonly waitingFor?: "deposit" | "specification-lock" | "proof" | "rights";
  readonly text?: string;
  readonly number?: number;
}

export async function listOrderRecords(
  client: Tx,
  filter: OrderFilter,
  slice: { readonly skip: number; readonly take: number },
): Promise<ReadRows<OrderLineRecord> & { readonly total: number }> {
  const where = whereOrders(filter);
  const [rows, total] = await Promise.all([
    client.order.findMany({
      where,
      select: orderLine,
      orderBy: [{ acceptedAt: "desc" }, { number: "desc" }],
      ...slice,
    }),
    client.order.count({ where }),
  ]);
  return { ...readRows(rows, readOrderLine), total };
}

export async function ordersOfCustomer(client: Tx, customerId: string) {
  const rows = await client.order.findMany({
    where: { customerId },
    select: { id: true, number: true, state: true },
    orderBy: { acceptedAt: "desc" },
    take: 20,
  });
  return readableRows(rows, (row) => readRow("orders", orderColumns, row, orderName));
}

function whereOrders(filter: OrderFilter): Prisma.OrderWhereInput {
  const clauses: Prisma.OrderWhereInput[] = [];
  if (filter.state !== undefined) clauses.push({ state: filter.state });
  if (filter.unconfirmed === true) clauses.push({ state: "waiting", confirmedAt: null });
  if (filter.waitingFor !== undefined) clauses.push({ state: "waiting", ...whereWaiting(filter.waitingFor) });
  if (filter.text !== undefined) {
    const any: Prisma.OrderWhereInput[] = [
      { buyerName: { contains: filter.text, mode: "insensitive" } },
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

/** An order with its customer, its payments and its pairs. */
import type { PostalAddress } from "#schemas/stored/index";
import { readRow } from "../columns";
import type { Prisma } from "../generated/client";
import { readOperation, readProof } from "./pair";
import { clubColumns, customerColumns, orderColumns, pairColumns, paymentColumns, quoteColumns } from "./tables";

export const orderName = ({ number }: { readonly number: number }) => `O-${number}`;
const byId = (row: { readonly id: string }) => row.id;
const bySerial = (row: { readonly serial: string }) => row.serial;

export const readCustomer = <Row extends Pick<Prisma.CustomerGetPayload<object>, "id">>(row: Row) =>
  readRow("customers", customerColumns, row, byId);

/** The columns that say who bought. */
export const buyerColumns = {
  customerId: true,
  buyerName: true,
  buyerEmail: true,
  buyerPhone: true,
  buyerAddress: true,
} as const;

/** Who bought, in the words of the quote or order itself: what is known of the customer today may be something else. */
export function buyerOf<Id>(row: {
  readonly customerId: Id;
  readonly buyerName: string;
  readonly buyerEmail: string | null;
  readonly buyerPhone: string | null;
  readonly buyerAddress: PostalAddress | null;
}) {
  const { customerId: id, buyerName: name, buyerEmail: email, buyerPhone: phone, buyerAddress: address } = row;
  return { id, name, email, phone, address };
}

export const orderAlone = {
  club: { select: { id: true, number: true, name: true } },
  quote: { select: { id: true, number: true, revision: true, releaseHash: true, sheetId: true } },
  payments: { orderBy: { requestedAt: "asc" } },
} as const satisfies Prisma.OrderInclude;

export const wholeOrder = {
  ...orderAlone,
  pairs: {
    orderBy: { serialNumber: "asc" },
    include: { operations: true, proofs: { orderBy: { revision: "asc" } } },
  },
} as const satisfies Prisma.OrderInclude;

type WholeOrderRow = Prisma.OrderGetPayload<{ include: typeof wholeOrder }>;

/** An order without its pairs: one of them that cannot be read is no reason not to show the others. */
export function readOrderAlone(row: Prisma.OrderGetPayload<{ include: typeof orderAlone }>) {
  const order = readRow("orders", orderColumns, row, orderName);
  return {
    ...order,
    customer: buyerOf(order),
    club: row.club === null ? null : readRow("clubs", clubColumns, row.club, byId),
    quote: readRow("quotes", quoteColumns, row.quote, byId),
    payments: row.payments.map((each) => readRow("payments", paymentColumns, each, byId)),
  };
}
export type OrderAloneRecord = ReturnType<typeof readOrderAlone>;

/** @throws UnreadableRow when anything of it cannot be read */
export function readOrder({ pairs, ...row }: WholeOrderRow) {
  return {
    ...readOrderAlone(row),
    pairs: pairs.map((pair) => ({
      ...readRow("pairs", pairColumns, pair, bySerial),
      operations: pair.operations.map(readOperation),
      proofs: pair.proofs.map(readProof),
    })),
  };
}
export type OrderRecord = ReturnType<typeof readOrder>;

/** A line of the list of orders: no prices by line, no work, no money. */
export const orderLine = {
  id: true,
  number: true,
  state: true,
  totalCents: true,
  acceptedAt: true,
  promisedOn: true,
  depositPaidAt: true,
  rushCents: true,
  payments: { select: { kind: true, state: true, cents: true, receivedAt: true } },
  ...buyerColumns,
  confirmedAt: true,
  visitorMark: true,
  pairs: {
    orderBy: { serialNumber: "asc" },
    select: {
      id: true,
      serial: true,
      spec: true,
      specLockedAt: true,
      proofNeeded: true,
      proofAt: true,
      rightsNeeded: true,
      rightsAt: true,
    },
  },
} as const satisfies Prisma.OrderSelect;

export function readOrderLine(row: Prisma.OrderGetPayload<{ select: typeof orderLine }>) {
  const order = readRow("orders", orderColumns, row, orderName);
  return {
    ...order,
    customer: buyerOf(order),
    payments: row.payments.map((each) => readRow("payments", paymentColumns, each, () => orderName(row))),
    pairs: row.pairs.map((pair) => readRow("pairs", pairColumns, pair, bySerial)),
  };
}
export type OrderLineRecord = ReturnType<typeof readOrderLine>;

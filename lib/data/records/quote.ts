/** A quote with its neighbours; a line of the list of quotes. */
import { readRow } from "../columns";
import type { Prisma } from "../generated/client";
import { buyerColumns, buyerOf } from "./order";
import { orderColumns, pairColumns, quoteColumns } from "./tables";

export const quoteName = ({ number, revision }: { readonly number: number; readonly revision: number }) =>
  `Q-${number} r${revision}`;
const byId = (row: { readonly id: string }) => row.id;
const bySerial = (row: { readonly serial: string }) => row.serial;

export const quoteNeighbours = {
  replaces: { select: { id: true, number: true, revision: true } },
  next: { select: { id: true, number: true, revision: true } },
  pair: { select: { id: true, serial: true, order: { select: { id: true, number: true } } } },
} as const satisfies Prisma.QuoteInclude;

type NeighbourRow = Pick<Prisma.QuoteGetPayload<object>, "id" | "number" | "revision">;
type PairRow = Prisma.QuoteGetPayload<{ select: { pair: (typeof quoteNeighbours)["pair"] } }>["pair"];

const readNeighbour = (row: NeighbourRow | null) =>
  row === null ? null : readRow("quotes", quoteColumns, row, quoteName);

const readItsPair = (row: PairRow) =>
  row === null
    ? null
    : {
        ...readRow("pairs", pairColumns, row, bySerial),
        order: readRow("orders", orderColumns, row.order, byId),
      };

/** @throws UnreadableRow when anything of it cannot be read */
export function readQuote(row: Prisma.QuoteGetPayload<{ include: typeof quoteNeighbours }>) {
  const quote = readRow("quotes", quoteColumns, row, quoteName);
  return {
    ...quote,
    customer: buyerOf(quote),
    replaces: readNeighbour(row.replaces),
    next: readNeighbour(row.next),
    pair: readItsPair(row.pair),
  };
}
export type QuoteRecord = ReturnType<typeof readQuote>;

/** A line of the list of quotes. */
export const quoteLine = {
  id: true,
  number: true,
  revision: true,
  state: true,
  spec: true,
  fit: true,
  totalCents: true,
  priceBook: true,
  createdAt: true,
  validUntil: true,
  honouredUntil: true,
  changeRequest: true,
  ...buyerColumns,
  next: quoteNeighbours.next,
} as const satisfies Prisma.QuoteSelect;

export function readQuoteLine(row: Prisma.QuoteGetPayload<{ select: typeof quoteLine }>) {
  const quote = readRow("quotes", quoteColumns, row, quoteName);
  return { ...quote, customer: buyerOf(quote) };
}
export type QuoteLineRecord = ReturnType<typeof readQuoteLine>;

import type { PartialAnswers, SheetChoices } from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import type { TypedMeasures } from "#engine/fit";
import type { ShownQuoteState } from "#engine/floor";
import type { Price } from "#engine/pricing";
import type { DateRange, FlagAck, FrozenFit } from "#schemas/stored/index";
import { type Buyer, buyerData } from "./buyer";
import type { Tx } from "./client";
import { type ReadRows, readableRows, readRow, readRows } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import {
  type QuoteLineRecord,
  type QuoteRecord,
  quoteLine,
  quoteName,
  quoteNeighbours,
  readQuote,
  readQuoteLine,
} from "./records/quote";
import { quoteColumns } from "./records/tables";

export type { QuoteLineRecord, QuoteRecord } from "./records/quote";

/** Frozen parts of a quote. */
export interface FrozenQuote {
  readonly answers: PartialAnswers;
  readonly choices: SheetChoices;
  readonly typed: TypedMeasures;
  readonly spec: PairSpec;
  readonly price: Price;
  readonly fit: FrozenFit;
  readonly flagAcks: readonly FlagAck[];
  readonly dateRange: DateRange;
}

export interface NewQuote extends FrozenQuote {
  readonly id: string;
  readonly number: number;
  readonly revision: number;
  readonly sheetId: string;
  readonly customerId: string;
  readonly buyer: Buyer;
  /** Who gave the contact. */
  readonly contactBy: "desk" | "skier";
  readonly specHash: string;
  readonly priceBook: string;
  readonly totalCents: number;
  readonly releaseHash: string;
  readonly engineVersion: string;
  readonly validUntil: Date;
  readonly createdAt: Date;
  readonly createdByName: string;
  readonly replacesId: string | null;
  readonly clubId: string | null;
  /** Who rides it when that is not the customer. */
  readonly skierName: string | null;
}

export async function insertQuote(tx: Tx, { buyer, ...quote }: NewQuote): Promise<void> {
  await tx.quote.create({
    data: {
      ...quote,
      ...buyerData(buyer),
      state: "open",
      version: 1,
      answers: asJson(quote.answers),
      choices: asJson(quote.choices),
      typed: asJson(quote.typed),
      spec: asJson(quote.spec),
      price: asJson(quote.price),
      fit: asJson(quote.fit),
      flagAcks: asJson(quote.flagAcks),
      dateRange: asJson(quote.dateRange),
    },
  });
}

export async function quoteById(client: Tx, id: string): Promise<QuoteRecord | null> {
  const row = await client.quote.findUnique({ where: { id }, include: quoteNeighbours });
  return row === null ? null : readQuote(row);
}

/** The winner of a race gets true: exactly one call can move an open quote to `accepted`. */
export async function markQuoteAccepted(tx: Tx, id: string, now: Date): Promise<boolean> {
  const { count } = await tx.quote.updateMany({
    where: {
      id,
      state: "open",
      OR: [{ validUntil: { gt: now } }, { honouredUntil: { gt: now } }],
    },
    data: { state: "accepted", version: { increment: 1 } },
  });
  return count === 1;
}

/** Takes an open quote out of play; false when it is no longer open. */
export async function markQuoteWithdrawn(tx: Tx, id: string, reason: string): Promise<boolean> {
  const { count } = await tx.quote.updateMany({
    where: { id, state: "open" },
    data: { state: "withdrawn", withdrawReason: reason, version: { increment: 1 } },
  });
  return count === 1;
}

export type QuoteNote = Partial<Pick<QuoteRecord, "changeRequest" | "honouredUntil" | "honouredBy" | "honourReason">>;

export async function noteOnOpenQuote(tx: Tx, id: string, note: QuoteNote): Promise<boolean> {
  const { count } = await tx.quote.updateMany({
    where: { id, state: "open" },
    data: { ...note, version: { increment: 1 } },
  });
  return count === 1;
}

export interface QuoteFilter {
  readonly state?: ShownQuoteState;
  readonly notPriceBook?: string;
  readonly text?: string;
  readonly number?: number;
  readonly now: Date;
}

export async function listQuoteRecords(
  client: Tx,
  filter: QuoteFilter,
  slice: { readonly skip: number; readonly take: number },
): Promise<ReadRows<QuoteLineRecord> & { readonly total: number }> {
  const where = whereQuotes(filter);
  const [rows, total] = await Promise.all([
    client.quote.findMany({
      where,
      select: quoteLine,
      orderBy: [{ createdAt: "desc" }, { number: "desc" }, { revision: "desc" }],
      ...slice,
    }),
    client.quote.count({ where }),
  ]);
  return { ...readRows(rows, readQuoteLine), total };
}

export async function quotesOfSheet(client: Tx, sheetId: string) {
  const rows = await client.quote.findMany({
    where: { sheetId },
    select: { id: true, number: true, revision: true, state: true },
    orderBy: [{ number: "asc" }, { revision: "asc" }],
  });
  return readableRows(rows, (row) => readRow("quotes", quoteColumns, row, quoteName));
}

export async function quotesOfCustomer(client: Tx, customerId: string): Promise<readonly QuoteLineRecord[]> {
  const rows = await client.quote.findMany({
    where: { customerId },
    select: quoteLine,
    orderBy: { createdAt: "desc" },
    take: 20,
  });
  return readableRows(rows, readQuoteLine);
}

function whereQuotes(filter: QuoteFilter): Prisma.QuoteWhereInput {
  const clauses: Prisma.QuoteWhereInput[] = [whereState(filter.state, filter.now)];
  if (filter.notPriceBook !== undefined) clauses.push({ priceBook: { not: filter.notPriceBook } });
  if (filter.text !== undefined) {
    const any: Prisma.QuoteWhereInput[] = [{ buyerName: { contains: filter.text, mode: "insensitive" } }];
    if (filter.number !== undefined) any.push({ number: filter.number });
    clauses.push({ OR: any });
  }
  return { AND: clauses };
}

function whereState(state: QuoteFilter["state"], now: Date): Prisma.QuoteWhereInput {
  const isValid: Prisma.QuoteWhereInput = { OR: [{ validUntil: { gt: now } }, { honouredUntil: { gt: now } }] };
  switch (state) {
    case undefined:
      return {};
    case "open":
      return { state: "open", ...isValid };
    case "expired":
      // Spelt out: a NOT over a column that may be null would leave out every quote without honoured days.
      return {
        state: "open",
        validUntil: { lte: now },
        OR: [{ honouredUntil: null }, { honouredUntil: { lte: now } }],
      };
    case "replaced":
      return { state: "withdrawn", next: { isNot: null } };
    case "withdrawn":
      return { state: "withdrawn", next: null };
    case "accepted":
      return { state: "accepted" };
  }
}

/** What an owner let pass when these quotes were made, with the flags that had stopped them. */
export async function wordsOnQuotes(client: Tx, ids: readonly string[]) {
  const rows = await client.quote.findMany({
    where: { id: { in: [...ids] } },
    select: { number: true, revision: true, fit: true, flagAcks: true },
    orderBy: [{ number: "asc" }, { revision: "asc" }],
  });
  return readableRows(rows, (row) => readRow("quotes", quoteColumns, row, quoteName));
}

/** What the newest accepted quotes say of skier and ski, without whose they are. */
export async function acceptedFits(client: Tx, take: number) {
  const rows = await client.quote.findMany({
    where: { state: "accepted" },
    select: { number: true, revision: true, answers: true, spec: true },
    orderBy: [{ createdAt: "desc" }, { number: "desc" }],
    take,
  });
  return readableRows(rows, (row) => readRow("quotes", quoteColumns, row, quoteName));
}

import type { ShownQuoteState } from "#engine/floor";
import type { Tx } from "./client";
import type { Prisma } from "./generated/client";
import { asJson, fromJson } from "./json";

/** Frozen parts of a quote; their types belong to the services that freeze them. */
export interface FrozenQuote {
  readonly answers: unknown;
  readonly choices: unknown;
  readonly typed: unknown;
  readonly spec: unknown;
  readonly price: unknown;
  readonly fit: unknown;
  readonly flagAcks: unknown;
  readonly dateRange: unknown;
}

export interface NewQuote extends FrozenQuote {
  readonly id: string;
  readonly number: number;
  readonly revision: number;
  readonly sheetId: string;
  readonly customerId: string;
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

const withNeighbours = {
  customer: true,
  replaces: { select: { id: true, number: true, revision: true } },
  next: { select: { id: true, number: true, revision: true } },
  pair: { select: { id: true, serial: true, order: { select: { id: true, number: true } } } },
} as const satisfies Prisma.QuoteInclude;

export type QuoteRecord = Prisma.QuoteGetPayload<{ include: typeof withNeighbours }>;

export async function insertQuote(tx: Tx, quote: NewQuote): Promise<void> {
  await tx.quote.create({
    data: {
      ...quote,
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
  return client.quote.findUnique({ where: { id }, include: withNeighbours });
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
): Promise<{ readonly rows: readonly QuoteRecord[]; readonly total: number }> {
  const where = whereQuotes(filter);
  const [rows, total] = await Promise.all([
    client.quote.findMany({
      where,
      include: withNeighbours,
      orderBy: [{ createdAt: "desc" }, { number: "desc" }, { revision: "desc" }],
      ...slice,
    }),
    client.quote.count({ where }),
  ]);
  return { rows, total };
}

export async function quotesOfSheet(
  client: Tx,
  sheetId: string,
): Promise<
  readonly { readonly id: string; readonly number: number; readonly revision: number; readonly state: string }[]
> {
  return client.quote.findMany({
    where: { sheetId },
    select: { id: true, number: true, revision: true, state: true },
    orderBy: [{ number: "asc" }, { revision: "asc" }],
  });
}

export async function quotesOfCustomer(client: Tx, customerId: string): Promise<readonly QuoteRecord[]> {
  return client.quote.findMany({
    where: { customerId },
    include: withNeighbours,
    orderBy: { createdAt: "desc" },
    take: 20,
  });
}

function whereQuotes(filter: QuoteFilter): Prisma.QuoteWhereInput {
  const clauses: Prisma.QuoteWhereInput[] = [whereState(filter.state, filter.now)];
  if (filter.notPriceBook !== undefined) clauses.push({ priceBook: { not: filter.notPriceBook } });
  if (filter.text !== undefined) {
    const any: Prisma.QuoteWhereInput[] = [{ customer: { name: { contains: filter.text, mode: "insensitive" } } }];
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

/** Frozen JSON of a quote, as the service that froze it typed it. */
export function frozen<T>(column: unknown): T {
  return fromJson<T>(column);
}

/** What the newest accepted quotes say of skier and ski, without whose they are. */
export async function acceptedFits(
  client: Tx,
  take: number,
): Promise<readonly { readonly answers: unknown; readonly spec: unknown }[]> {
  return client.quote.findMany({
    where: { state: "accepted" },
    select: { answers: true, spec: true },
    orderBy: [{ createdAt: "desc" }, { number: "desc" }],
    take,
  });
}

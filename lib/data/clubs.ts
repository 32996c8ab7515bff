/** Clubs: skiers who order together. */
import type { ClubPalette } from "#schemas/stored/index";
import type { Tx } from "./client";
import { readableRows, readRow } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { orderName, readCustomer } from "./records/order";
import { quoteName } from "./records/quote";
import { clubColumns, orderColumns, pairColumns, quoteColumns, sheetColumns } from "./records/tables";

const whole = {
  customer: true,
  sheets: {
    select: { id: true, state: true, skierName: true, openedAt: true },
    orderBy: [{ openedAt: "asc" }, { id: "asc" }],
  },
  quotes: {
    include: {
      next: { select: { id: true } },
      pair: {
        select: {
          id: true,
          serial: true,
          state: true,
          mould: true,
          proofNeeded: true,
          proofState: true,
          order: { select: { id: true, number: true } },
        },
      },
    },
    orderBy: [{ number: "asc" }, { revision: "asc" }],
  },
  orders: { select: { id: true, number: true }, orderBy: { number: "asc" } },
} as const satisfies Prisma.ClubInclude;

type ClubRow = Prisma.ClubGetPayload<{ include: typeof whole }>;

/** @throws UnreadableRow when the club's own row or its customer's cannot be read */
function readClub(row: ClubRow) {
  return {
    ...readRow("clubs", clubColumns, row, ({ number }) => `C-${number}`),
    customer: readCustomer(row.customer),
    sheets: readableRows(row.sheets, (each) => readRow("sheets", sheetColumns, each, ({ id }) => id)),
    quotes: readableRows(row.quotes, readClubQuote),
    orders: row.orders.map((each) => readRow("orders", orderColumns, each, orderName)),
  };
}

function readClubQuote(row: ClubRow["quotes"][number]) {
  const { next, pair } = row;
  return {
    ...readRow("quotes", quoteColumns, row, quoteName),
    next: next === null ? null : readRow("quotes", quoteColumns, next, ({ id }) => id),
    pair:
      pair === null
        ? null
        : {
            ...readRow("pairs", pairColumns, pair, ({ serial }) => serial),
            order: readRow("orders", orderColumns, pair.order, orderName),
          },
  };
}

export type ClubRecord = ReturnType<typeof readClub>;

export interface NewClub {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly customerId: string;
  readonly palette: ClubPalette;
  readonly wantedOn: string | null;
  readonly createdAt: Date;
  readonly createdByName: string;
}

export async function insertClub(tx: Tx, club: NewClub): Promise<void> {
  await tx.club.create({ data: { ...club, palette: asJson(club.palette) } });
}

export async function clubById(client: Tx, id: string): Promise<ClubRecord | null> {
  const row = await client.club.findUnique({ where: { id }, include: whole });
  return row === null ? null : readClub(row);
}

/** Newest first. */
export async function recentClubs(client: Tx, take: number): Promise<readonly ClubRecord[]> {
  return readableRows(await client.club.findMany({ include: whole, orderBy: { number: "desc" }, take }), readClub);
}

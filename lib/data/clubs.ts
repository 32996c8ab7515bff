/** Clubs: skiers who order together. */
import type { Tx } from "./client";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";

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

export type ClubRecord = Prisma.ClubGetPayload<{ include: typeof whole }>;

export interface NewClub {
  readonly id: string;
  readonly number: number;
  readonly name: string;
  readonly customerId: string;
  readonly palette: unknown;
  readonly wantedOn: string | null;
  readonly createdAt: Date;
  readonly createdByName: string;
}

export async function insertClub(tx: Tx, club: NewClub): Promise<void> {
  await tx.club.create({ data: { ...club, palette: asJson(club.palette) } });
}

export async function clubById(client: Tx, id: string): Promise<ClubRecord | null> {
  return client.club.findUnique({ where: { id }, include: whole });
}

/** Newest first. */
export async function recentClubs(client: Tx, take: number): Promise<readonly ClubRecord[]> {
  return client.club.findMany({ include: whole, orderBy: { number: "desc" }, take });
}

/** Books for the floor: approved once, never changed. */
import type { Tx } from "./client";
import { readableRows, readRow } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { floorBookColumns } from "./records/tables";

export const readFloorBook = (row: Prisma.FloorBookGetPayload<object>) =>
  readRow("floor_books", floorBookColumns, row, ({ version }) => version);

export type FloorBookRow = ReturnType<typeof readFloorBook>;

/** Latest first. */
export async function allFloorBooks(client: Tx): Promise<readonly FloorBookRow[]> {
  return readableRows(await client.floorBook.findMany({ orderBy: { number: "desc" } }), readFloorBook);
}

/** The book in force: the latest that can be read. */
export async function latestFloorBook(client: Tx): Promise<Pick<FloorBookRow, "number" | "book"> | null> {
  const rows = await client.floorBook.findMany({
    orderBy: { number: "desc" },
    select: { number: true, book: true },
    take: 3,
  });
  const read = readableRows(rows, (row) =>
    readRow("floor_books", floorBookColumns, row, ({ number }) => `FB-${number}`),
  );
  return read[0] ?? null;
}

/** Stores the next book; false when somebody else's has this number. */
export async function insertFloorBook(tx: Tx, row: FloorBookRow): Promise<boolean> {
  const { count } = await tx.floorBook.createMany({
    data: [{ ...row, book: asJson(row.book), summary: asJson(row.summary) }],
    skipDuplicates: true,
  });
  return count === 1;
}

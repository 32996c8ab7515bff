import type { Tx } from "./client";
import { readableRows, readRow } from "./columns";
import type { Prisma } from "./generated/client";
import { stripColumns } from "./records/tables";

const readStrip = (row: Prisma.StripGetPayload<object>) => readRow("strips", stripColumns, row, ({ id }) => id);

export type StripRecord = ReturnType<typeof readStrip>;

/** Free strips of these species, oldest measurement first. */
export async function freeStrips(
  client: Tx,
  species: readonly string[],
  minLengthMm: number,
): Promise<readonly StripRecord[]> {
  const rows = await client.strip.findMany({
    where: { state: "free", species: { in: [...species] }, lengthMm: { gte: minLengthMm } },
    orderBy: [{ measuredAt: "asc" }, { id: "asc" }],
  });
  return readableRows(rows, readStrip);
}

/** Where in which ski a strip will lie. */
export interface StripPlace {
  readonly pairId: string;
  readonly side: "L" | "R";
  readonly position: string;
  readonly place: "left" | "centre" | "right";
}

/** Takes a free strip for one place in one ski; false when somebody else has it. */
export async function holdStrip(tx: Tx, stripId: string, place: StripPlace): Promise<boolean> {
  const { count } = await tx.strip.updateMany({
    where: { id: stripId, state: "free", heldByPairId: null },
    data: {
      state: "reserved",
      heldByPairId: place.pairId,
      side: place.side,
      position: place.position,
      place: place.place,
    },
  });
  return count === 1;
}

/** Puts back every strip of the pair that was not cut. @returns how many came back */
export async function releaseStrips(tx: Tx, pairId: string): Promise<number> {
  const { count } = await tx.strip.updateMany({
    where: { heldByPairId: pairId, state: "reserved" },
    data: { state: "free", heldByPairId: null, side: null, position: null, place: null },
  });
  return count;
}

/** The strips went into a core: they stay with the pair's record for ever. */
export async function consumeStrips(tx: Tx, pairId: string): Promise<void> {
  await tx.strip.updateMany({ where: { heldByPairId: pairId, state: "reserved" }, data: { state: "used" } });
}

export type NewStrip = Omit<StripRecord, "state" | "heldByPairId" | "side" | "position" | "place">;

export async function insertStrips(tx: Tx, strips: readonly NewStrip[]): Promise<void> {
  await tx.strip.createMany({ data: strips.map((strip) => ({ ...strip, state: "free" })) });
}

/** The core they went into is given up: the strips are gone from stock and from the pair. */
export async function detachUsedStrips(tx: Tx, pairId: string): Promise<void> {
  await tx.strip.updateMany({
    where: { heldByPairId: pairId, state: "used" },
    data: { heldByPairId: null, side: null, position: null, place: null },
  });
}

/** The ski they lie in is scrapped: they are used up, and no longer the pair's. */
export async function scrapSkiStrips(tx: Tx, pairId: string, side: "L" | "R"): Promise<void> {
  await tx.strip.updateMany({
    where: { heldByPairId: pairId, side, state: { not: "free" } },
    data: { state: "used", heldByPairId: null, side: null, position: null, place: null },
  });
}

export async function stripsHeldBy(client: Tx, pairId: string): Promise<readonly StripRecord[]> {
  return (await client.strip.findMany({ where: { heldByPairId: pairId }, orderBy: { id: "asc" } })).map(readStrip);
}

/** How many strips of each species lie in each bin in each state. */
export async function countStrips(
  client: Tx,
): Promise<
  readonly { readonly species: string; readonly location: string; readonly state: string; readonly count: number }[]
> {
  const rows = await client.strip.groupBy({ by: ["species", "location", "state"], _count: { _all: true } });
  return rows.map(({ species, location, state, _count }) => ({ species, location, state, count: _count._all }));
}

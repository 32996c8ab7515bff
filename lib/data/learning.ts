/** Measured skis, what was decided about their readings, and the books of corrections. */
import type { Tx } from "./client";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";

export type BenchRecordRow = Prisma.BenchRecordGetPayload<object>;
export type ReadingDecisionRow = Prisma.ReadingDecisionGetPayload<object>;
export type CorrectionBookRow = Prisma.CorrectionBookGetPayload<object>;

export interface NewBenchRecord {
  readonly id: string;
  readonly pairId: string | null;
  readonly serial: string;
  readonly pairSerial: string;
  readonly side: "L" | "R";
  readonly spec: unknown;
  readonly releaseHash: string | null;
  /** Null when no strip of it was measured. */
  readonly strips: unknown;
  readonly measured: unknown;
  readonly measuredAt: Date;
  readonly measuredByName: string;
  readonly origin: "bench" | "book";
}

/** Stores first readings. @returns how many were new: a serial that has readings already is passed over */
export async function insertBenchRecords(tx: Tx, records: readonly NewBenchRecord[]): Promise<number> {
  const { count } = await tx.benchRecord.createMany({
    data: records.map(({ strips, ...record }) => ({
      ...record,
      spec: asJson(record.spec),
      measured: asJson(record.measured),
      ...(strips === null ? {} : { strips: asJson(strips) }),
      version: 1,
    })),
    skipDuplicates: true,
  });
  return count;
}

/** Puts other readings in the place of these, if they are still at this version. */
export async function replaceReadings(
  tx: Tx,
  from: { readonly serial: string; readonly version: number },
  to: Pick<NewBenchRecord, "spec" | "releaseHash" | "strips" | "measured" | "measuredAt" | "measuredByName">,
): Promise<boolean> {
  const { strips, ...rest } = to;
  const { count } = await tx.benchRecord.updateMany({
    where: { serial: from.serial, version: from.version },
    data: {
      ...rest,
      spec: asJson(to.spec),
      measured: asJson(to.measured),
      ...(strips === null ? {} : { strips: asJson(strips) }),
      version: { increment: 1 },
    },
  });
  return count === 1;
}

export async function benchRecordOf(client: Tx, serial: string): Promise<BenchRecordRow | null> {
  return client.benchRecord.findUnique({ where: { serial } });
}

export async function benchRecordsOfPair(client: Tx, pairId: string): Promise<readonly BenchRecordRow[]> {
  return client.benchRecord.findMany({ where: { pairId }, orderBy: { side: "asc" } });
}

export async function allBenchRecords(client: Tx): Promise<readonly BenchRecordRow[]> {
  return client.benchRecord.findMany({ orderBy: { serial: "asc" } });
}

/** Writes what the bench read on the ski's own row. */
export async function setSkiMeasured(tx: Tx, skiId: string, measured: unknown): Promise<void> {
  await tx.ski.update({ where: { id: skiId }, data: { measured: asJson(measured) } });
}

export async function insertDecision(tx: Tx, decision: Omit<ReadingDecisionRow, "seq">): Promise<void> {
  await tx.readingDecision.create({ data: decision });
}

/** All that were ever made, oldest first. */
export async function allDecisions(client: Tx): Promise<readonly ReadingDecisionRow[]> {
  return client.readingDecision.findMany({ orderBy: { seq: "asc" } });
}

/** Latest first. */
export async function allBooks(client: Tx): Promise<readonly CorrectionBookRow[]> {
  return client.correctionBook.findMany({ orderBy: { number: "desc" } });
}

/** The book in force: the latest approved one. */
export async function latestBook(client: Tx): Promise<Pick<CorrectionBookRow, "number" | "corrections"> | null> {
  return client.correctionBook.findFirst({ orderBy: { number: "desc" }, select: { number: true, corrections: true } });
}

/** Stores the next book; false when somebody else's has this number. */
export async function insertBook(
  tx: Tx,
  book: Omit<CorrectionBookRow, "corrections" | "summary"> & {
    readonly corrections: unknown;
    readonly summary: unknown;
  },
): Promise<boolean> {
  const { count } = await tx.correctionBook.createMany({
    data: [{ ...book, corrections: asJson(book.corrections), summary: asJson(book.summary) }],
    skipDuplicates: true,
  });
  return count === 1;
}

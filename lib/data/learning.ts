/** Measured skis, what was decided about their readings, and the books of corrections. */
import type { BenchValues, MeasuredSki } from "#engine/calibration";
import type { BuildableSpec } from "#engine/configuration";
import type { Tx } from "./client";
import { readableRows, readRow } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { benchColumns, bookColumns, decisionColumns } from "./records/tables";

const readBench = (row: Prisma.BenchRecordGetPayload<object>) =>
  readRow("bench_records", benchColumns, row, ({ serial }) => serial);
const readDecision = (row: Prisma.ReadingDecisionGetPayload<object>) =>
  readRow("reading_decisions", decisionColumns, row, ({ serial, measure }) => `${serial} ${measure}`);
export const readBook = (row: Prisma.CorrectionBookGetPayload<object>) =>
  readRow("correction_books", bookColumns, row, ({ version }) => version);

export type BenchRecordRow = ReturnType<typeof readBench>;
export type ReadingDecisionRow = ReturnType<typeof readDecision>;
export type CorrectionBookRow = ReturnType<typeof readBook>;

export interface NewBenchRecord {
  readonly id: string;
  readonly pairId: string | null;
  readonly serial: string;
  readonly pairSerial: string;
  readonly side: "L" | "R";
  readonly spec: BuildableSpec;
  readonly releaseHash: string | null;
  /** Null when no strip of it was measured. */
  readonly strips: NonNullable<MeasuredSki["strips"]> | null;
  readonly measured: BenchValues;
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
  const row = await client.benchRecord.findUnique({ where: { serial } });
  return row === null ? null : readBench(row);
}

export async function benchRecordsOfPair(client: Tx, pairId: string): Promise<readonly BenchRecordRow[]> {
  return readableRows(await client.benchRecord.findMany({ where: { pairId }, orderBy: { side: "asc" } }), readBench);
}

export async function allBenchRecords(client: Tx): Promise<readonly BenchRecordRow[]> {
  return readableRows(await client.benchRecord.findMany({ orderBy: { serial: "asc" } }), readBench);
}

/** Writes what the bench read on the ski's own row. */
export async function setSkiMeasured(tx: Tx, skiId: string, measured: BenchValues): Promise<void> {
  await tx.ski.update({ where: { id: skiId }, data: { measured: asJson(measured) } });
}

export async function insertDecision(tx: Tx, decision: Omit<ReadingDecisionRow, "seq">): Promise<void> {
  await tx.readingDecision.create({ data: decision });
}

/** All that were ever made, oldest first. */
export async function allDecisions(client: Tx): Promise<readonly ReadingDecisionRow[]> {
  return readableRows(await client.readingDecision.findMany({ orderBy: { seq: "asc" } }), readDecision);
}

/** Latest first. */
export async function allBooks(client: Tx): Promise<readonly CorrectionBookRow[]> {
  return readableRows(await client.correctionBook.findMany({ orderBy: { number: "desc" } }), readBook);
}

/**
 * The book in force: the latest approved one. Where that cannot be read the one before it counts, and the desk is told: a shop
 * whose every page fails helps nobody.
 */
export async function latestBook(client: Tx): Promise<Pick<CorrectionBookRow, "number" | "corrections"> | null> {
  const rows = await client.correctionBook.findMany({
    orderBy: { number: "desc" },
    select: { number: true, corrections: true },
    take: 3,
  });
  const read = readableRows(rows, (row) =>
    readRow("correction_books", bookColumns, row, ({ number }) => `CB-${number}`),
  );
  return read[0] ?? null;
}

/** Stores the next book; false when somebody else's has this number. */
export async function insertBook(tx: Tx, book: CorrectionBookRow): Promise<boolean> {
  const { count } = await tx.correctionBook.createMany({
    data: [{ ...book, corrections: asJson(book.corrections), summary: asJson(book.summary) }],
    skipDuplicates: true,
  });
  return count === 1;
}

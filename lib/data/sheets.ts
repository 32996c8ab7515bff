import type { Tx } from "./client";
import { asJson, fromJson } from "./json";

/** One field of a sheet: the value and who set it, at which version of the sheet. */
export interface FieldEntry {
  readonly value: unknown;
  readonly version: number;
  readonly by: string;
  readonly at: string;
}

export type SheetFields = Readonly<Record<string, FieldEntry>>;

export interface SheetRecord {
  readonly id: string;
  readonly state: string;
  readonly channel: string;
  readonly version: number;
  readonly fields: SheetFields;
  readonly customerId: string | null;
  readonly phoneNormalised: string | null;
  readonly leaseHolderId: string | null;
  readonly leaseHolderName: string | null;
  readonly leaseUntil: Date | null;
  readonly callBackAt: Date | null;
  readonly callBackReason: string | null;
  readonly callBackPhone: string | null;
  readonly reviewNote: string | null;
  readonly reviewAskedAt: Date | null;
  readonly turnedDownReason: string | null;
  readonly clubId: string | null;
  readonly skierName: string | null;
  readonly openedByName: string;
  readonly openedAt: Date;
  readonly updatedAt: Date;
}

export type NewSheet = Pick<
  SheetRecord,
  | "id"
  | "channel"
  | "fields"
  | "phoneNormalised"
  | "customerId"
  | "leaseHolderId"
  | "leaseHolderName"
  | "leaseUntil"
  | "openedByName"
> &
  Partial<Pick<SheetRecord, "clubId" | "skierName">> & { readonly now: Date };

export async function insertSheet(tx: Tx, sheet: NewSheet): Promise<SheetRecord> {
  const { now, fields, ...rest } = sheet;
  const row = await tx.sheet.create({
    data: { ...rest, fields: asJson(fields), state: "open", version: 1, openedAt: now, updatedAt: now },
  });
  return toRecord(row);
}

export async function sheetById(client: Tx, id: string): Promise<SheetRecord | null> {
  const row = await client.sheet.findUnique({ where: { id } });
  return row === null ? null : toRecord(row);
}

/**
 * Takes the sheet's row for this transaction and raises its version: others wait here until it commits.
 * Null when the sheet is not open (or not there).
 */
export async function lockOpenSheet(tx: Tx, id: string, now: Date): Promise<SheetRecord | null> {
  const { count } = await tx.sheet.updateMany({
    where: { id, state: "open" },
    data: { version: { increment: 1 }, updatedAt: now },
  });
  return count === 0 ? null : sheetById(tx, id);
}

export type SheetChange = Partial<Omit<SheetRecord, "id" | "version" | "fields" | "openedAt" | "openedByName">> & {
  readonly fields?: SheetFields;
};

export async function updateSheet(tx: Tx, id: string, change: SheetChange): Promise<SheetRecord> {
  const { fields, ...rest } = change;
  const row = await tx.sheet.update({
    where: { id },
    data: { ...rest, ...(fields === undefined ? {} : { fields: asJson(fields) }) },
  });
  return toRecord(row);
}

/** An open sheet stored under one of these forms of a number, the one changed last. */
export async function openSheetByPhone(client: Tx, forms: readonly string[]): Promise<SheetRecord | null> {
  const row = await client.sheet.findFirst({
    where: { phoneNormalised: { in: [...forms] }, state: "open" },
    orderBy: [{ updatedAt: "desc" }, { id: "asc" }],
  });
  return row === null ? null : toRecord(row);
}

export interface SheetFilter {
  readonly state?: string;
  readonly text?: string;
  /** Runs of digits within a number. */
  readonly digits?: readonly string[];
  /** The forms of one whole number. */
  readonly phoneForms?: readonly string[];
}

export async function listSheets(
  client: Tx,
  filter: SheetFilter,
  slice: { readonly skip: number; readonly take: number },
): Promise<{ readonly rows: readonly SheetRecord[]; readonly total: number }> {
  const where = {
    ...(filter.state === undefined ? {} : { state: filter.state }),
    ...(filter.phoneForms === undefined ? {} : { phoneNormalised: { in: [...filter.phoneForms] } }),
    ...(filter.text === undefined
      ? {}
      : {
          OR: [
            { fields: { path: ["contact.name", "value"], string_contains: filter.text, mode: "insensitive" as const } },
            ...(filter.digits ?? []).map((run) => ({ phoneNormalised: { contains: run } })),
          ],
        }),
  };
  const [rows, total] = await Promise.all([
    client.sheet.findMany({ where, orderBy: [{ updatedAt: "desc" }, { id: "asc" }], ...slice }),
    client.sheet.count({ where }),
  ]);
  return { rows: rows.map(toRecord), total };
}

export async function sheetsCalledBackBefore(client: Tx, until: Date): Promise<readonly SheetRecord[]> {
  const rows = await client.sheet.findMany({
    where: { state: "open", callBackAt: { lte: until } },
    orderBy: [{ callBackAt: "asc" }, { id: "asc" }],
    take: 50,
  });
  return rows.map(toRecord);
}

export async function sheetsUnderReview(client: Tx): Promise<readonly SheetRecord[]> {
  const rows = await client.sheet.findMany({
    where: { state: "open", reviewAskedAt: { not: null } },
    orderBy: [{ reviewAskedAt: "asc" }, { id: "asc" }],
    take: 50,
  });
  return rows.map(toRecord);
}

export async function countOpenSheets(client: Tx): Promise<number> {
  return client.sheet.count({ where: { state: "open" } });
}

function toRecord(row: Awaited<ReturnType<Tx["sheet"]["findFirstOrThrow"]>>): SheetRecord {
  return { ...row, fields: fromJson<SheetFields>(row.fields) };
}

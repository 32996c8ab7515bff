import { z } from "zod";
import type { SheetId } from "#engine/units";
import { idOf } from "#schemas/ids";
import { type SheetContent, type SheetFields, sheetContent } from "#schemas/stored/index";
import type { Tx } from "./client";
import { issueText, type ReadRows, readableRows, readRow, readRows, UnreadableRow } from "./columns";
import type { Prisma } from "./generated/client";
import { asJson } from "./json";
import { sheetColumns } from "./records/tables";

export type { FieldEntry, SheetFields } from "#schemas/stored/index";

type SheetRow = Prisma.SheetGetPayload<object>;

/** @throws UnreadableRow when a field holds what is none for it */
export function readSheet(row: SheetRow) {
  const read = readRow("sheets", sheetColumns, row, ({ id }) => id);
  return { ...read, content: contentOf(read.id, read.fields) };
}

/** A row with its fields by meaning. */
export type SheetRecord = ReturnType<typeof readSheet>;

const contents = new WeakMap<SheetFields, SheetContent>();

/** Worked out once for each version of the fields: they are shared by all who read the same text. */
function contentOf(id: string, fields: SheetFields): SheetContent {
  const known = contents.get(fields);
  if (known !== undefined) return known;
  try {
    const content = sheetContent(fields);
    contents.set(fields, content);
    return content;
  } catch (error) {
    if (!(error instanceof z.ZodError)) throw error;
    throw new UnreadableRow("sheets", id, "fields", issueText(error), { cause: error });
  }
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
  return readSheet(row);
}

export async function sheetById(client: Tx, id: string): Promise<SheetRecord | null> {
  const row = await client.sheet.findUnique({ where: { id } });
  return row === null ? null : readSheet(row);
}

export async function versionsOfSheets(client: Tx, ids: readonly SheetId[]): Promise<ReadonlyMap<SheetId, number>> {
  const rows = await client.sheet.findMany({ where: { id: { in: [...ids] } }, select: { id: true, version: true } });
  return new Map(rows.map(({ id, version }) => [idOf("sheet", id), version]));
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

/** What may change beside the state, which is moved. */
export type SheetChange = Partial<
  Omit<SheetRecord, "id" | "version" | "state" | "fields" | "content" | "openedAt" | "openedByName">
> & {
  readonly fields?: SheetFields;
};

export async function updateSheet(tx: Tx, id: string, change: SheetChange): Promise<SheetRecord> {
  const { fields, ...rest } = change;
  const row = await tx.sheet.update({
    where: { id },
    data: { ...rest, ...(fields === undefined ? {} : { fields: asJson(fields) }) },
  });
  return readSheet(row);
}

/** Moves the sheet on if it is still in this state. */
export async function moveSheet(
  tx: Tx,
  id: string,
  from: string,
  to: string,
  change: Omit<SheetChange, "fields"> = {},
): Promise<boolean> {
  const { count } = await tx.sheet.updateMany({ where: { id, state: from }, data: { ...change, state: to } });
  return count === 1;
}

/** An open sheet stored under one of these forms of a number, the one changed last. */
export async function openSheetByPhone(client: Tx, forms: readonly string[]): Promise<SheetRecord | null> {
  const row = await client.sheet.findFirst({
    where: { phoneNormalised: { in: [...forms] }, state: "open" },
    orderBy: [{ updatedAt: "desc" }, { id: "asc" }],
  });
  return row === null ? null : readSheet(row);
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
): Promise<ReadRows<SheetRecord> & { readonly total: number }> {
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
  return { ...readRows(rows, readSheet), total };
}

export async function sheetsCalledBackBefore(client: Tx, until: Date): Promise<readonly SheetRecord[]> {
  const rows = await client.sheet.findMany({
    where: { state: "open", callBackAt: { lte: until } },
    orderBy: [{ callBackAt: "asc" }, { id: "asc" }],
    take: 50,
  });
  return readableRows(rows, readSheet);
}

export async function sheetsUnderReview(client: Tx): Promise<readonly SheetRecord[]> {
  const rows = await client.sheet.findMany({
    where: { state: "open", reviewAskedAt: { not: null } },
    orderBy: [{ reviewAskedAt: "asc" }, { id: "asc" }],
    take: 50,
  });
  return readableRows(rows, readSheet);
}

export async function countOpenSheets(client: Tx): Promise<number> {
  return client.sheet.count({ where: { state: "open" } });
}

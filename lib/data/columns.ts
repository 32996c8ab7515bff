/**
 * Columns as records have them: ids with their brand, days, states, JSON read by its schema. A row is translated here once
 * and nobody above casts what the database gave.
 */
import type { z } from "zod";
import { type IsoDate, isoDate } from "#engine/units";
import { type IdName, type IdsByName, idOf } from "#schemas/ids";

/** How a column's value becomes a record's. `read` throws an Error whose message says what is wrong. */
export interface Column<T> {
  readonly read: (value: unknown) => T;
}

type Columns = Readonly<Record<string, Column<unknown>>>;
type Value<C> = C extends Column<infer T> ? T : never;

/** A row with these columns read; the others stay as they are. */
export type Read<Row, C extends Columns> = {
  readonly [Key in keyof Row]: Key extends keyof C ? Value<C[Key]> : Row[Key];
};

/** A row that does not say what it should: which, where in it, and why. It harms nobody but those who need this row. */
export class UnreadableRow extends Error {
  constructor(
    readonly table: string,
    /** As people call it where it has such a name, else its id. */
    readonly row: string,
    readonly column: string,
    readonly why: string,
    options?: { cause: unknown },
  ) {
    super(`${table} ${row}, column ${column}: ${why}`, options);
    this.name = "UnreadableRow";
  }
}

/** @throws UnreadableRow naming the first column that cannot be read */
export function readRow<Row extends Readonly<Record<string, unknown>>, C extends Columns>(
  table: string,
  columns: C,
  row: Row,
  nameOf: (row: Row) => string,
): Read<Row, C> {
  const record: Record<string, unknown> = { ...row };
  for (const key of Object.keys(row)) {
    const column = columns[key];
    if (column === undefined) continue;
    try {
      record[key] = column.read(record[key]);
    } catch (error) {
      const why = error instanceof Error ? error.message : String(error);
      throw new UnreadableRow(table, nameOf(row), key, why, { cause: error });
    }
  }
  // Key by key as the type says: the compiler cannot follow the loop.
  return record as Read<Row, C>;
}

/** Rows of a list: those that can be read, and what is wrong with the others. */
export interface ReadRows<T> {
  readonly rows: readonly T[];
  readonly unreadable: readonly UnreadableRow[];
}

export function readRows<Row, T>(rows: readonly Row[], read: (row: Row) => T): ReadRows<T> {
  const good: T[] = [];
  const unreadable: UnreadableRow[] = [];
  for (const row of rows) {
    try {
      good.push(read(row));
    } catch (error) {
      if (!(error instanceof UnreadableRow)) throw error;
      unreadable.push(error);
    }
  }
  return { rows: good, unreadable };
}

/** The rows of a list that can be read; the desk's list tells of the others. */
export function readableRows<Row, T>(rows: readonly Row[], read: (row: Row) => T): readonly T[] {
  return readRows(rows, read).rows;
}

/** An opaque id with its brand. */
export function id<Name extends IdName>(name: Name): Column<IdsByName[Name]> {
  return { read: (value) => idOf(name, textOf(value)) };
}

/** A calendar day. */
export const isoDay: Column<IsoDate> = { read: (value) => isoDate(textOf(value)) };

/** One of the states that there are. */
export function oneOf<const State extends string>(states: readonly State[]): Column<State> {
  return {
    read: (value) => {
      const state = states.find((each) => each === value);
      if (state === undefined) throw new RangeError(`${JSON.stringify(value)} is none of ${states.join(", ")}`);
      return state;
    },
  };
}

/** Nothing, or what the column says. */
export function nullable<T>(column: Column<T>): Column<T | null> {
  return { read: (value) => (value === null ? null : column.read(value)) };
}

function textOf(value: unknown): string {
  if (typeof value !== "string") throw new RangeError(`${JSON.stringify(value)} is not text`);
  return value;
}

/** What one JSON column keeps at most; the oldest is forgotten first. */
const mostKept = 2000;

/**
 * JSON by its schema. What was read once is known by its own text, so a row version is checked once however often it is
 * read, and a row that was changed by whatever means is read anew. The value is shared, and therefore frozen.
 */
export function json<Schema extends z.ZodType>(schema: Schema): Column<z.output<Schema>> {
  const known = new Map<string, z.output<Schema>>();
  return {
    read: (value) => {
      const text = JSON.stringify(value);
      const before = known.get(text);
      if (before !== undefined) return before;
      const parsed = schema.safeParse(value);
      if (!parsed.success) throw new RangeError(issueText(parsed.error));
      const read = frozen(parsed.data);
      const [oldest] = known.size < mostKept ? [] : known.keys();
      if (oldest !== undefined) known.delete(oldest);
      known.set(text, read);
      return read;
    },
  };
}

/** The first thing that is wrong, with the place in the JSON. */
export function issueText(error: z.ZodError): string {
  const [issue] = error.issues;
  if (issue === undefined) return "cannot be read";
  return issue.path.length === 0 ? issue.message : `${issue.path.map(String).join(".")}: ${issue.message}`;
}

function frozen<T>(value: T): T {
  if (typeof value !== "object" || value === null) return value;
  for (const member of Object.values(value)) frozen(member);
  return Object.freeze(value);
}

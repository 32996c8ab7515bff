/** What the server's thread and the database's thread say to each other. Everything can be cloned between threads. */
import type { SqlQuery } from "@prisma/driver-adapter-utils";

/** Which database the thread opens; the folder is locked by who starts the thread. */
export interface ThreadStart {
  readonly folder: string;
}

/** Calls by name with what they take and give back. `transaction` is a number that `begin` handed out; null outside one. */
export interface Calls {
  readonly queryRaw: { readonly takes: Asked; readonly gives: unknown };
  readonly executeRaw: { readonly takes: Asked; readonly gives: number };
  readonly begin: { readonly takes: { readonly isolationLevel: string | null }; readonly gives: number };
  readonly commit: { readonly takes: { readonly transaction: number }; readonly gives: null };
  readonly rollback: { readonly takes: { readonly transaction: number }; readonly gives: null };
  readonly run: {
    readonly takes: { readonly sql: string; readonly values: readonly unknown[] | null };
    readonly gives: readonly Readonly<Record<string, unknown>>[];
  };
  readonly copyTo: { readonly takes: { readonly target: string }; readonly gives: TableCounts };
  readonly close: { readonly takes: null; readonly gives: null };
}

interface Asked {
  readonly transaction: number | null;
  readonly query: SqlQuery;
}

/** Rows by table, "schema.table". */
export type TableCounts = Readonly<Record<string, number>>;

export type CallName = keyof Calls;

export interface Request {
  readonly id: number;
  readonly call: CallName;
  readonly takes: unknown;
}

export type Answer =
  | { readonly id: 0; readonly opened: true }
  | { readonly id: number; readonly gives: unknown }
  | { readonly id: number; readonly fault: Fault };

/** An error, taken apart: one of the driver's, one of the database's with its particulars, or another. */
export interface Fault {
  readonly kind: "driver" | "problem" | "other";
  readonly name: string;
  readonly message: string;
  readonly stack: string | undefined;
  /** What the error holds beside that. */
  readonly more: Readonly<Record<string, unknown>>;
}

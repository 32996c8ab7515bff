import type { CustomerId, Instant } from "#engine/units";
import type { PostalAddress } from "#schemas/stored/index";

export type { DateRange, PostalAddress } from "#schemas/stored/index";

/** One line of history: who did what, when. `data` holds the event's own particulars. */
export interface EventView {
  readonly seq: string;
  readonly at: Instant;
  readonly kind: string;
  readonly by: string;
  readonly data: Readonly<Record<string, unknown>>;
}

export interface CustomerView {
  readonly customerId: CustomerId;
  readonly name: string;
  readonly email: string | null;
  readonly phone: string | null;
  readonly address: PostalAddress | null;
}

/** A page of a list that can grow. */
export interface Page<T> {
  readonly rows: readonly T[];
  readonly total: number;
  readonly page: number;
  readonly pageSize: number;
  /** Rows of this page that cannot be read and are therefore left out. */
  readonly unreadable: readonly UnreadableView[];
}

/** Bytes to hand to a browser or a printer. */
export interface DocumentBytes {
  readonly bytes: Uint8Array;
  readonly contentType: string;
  readonly fileName: string;
}

/** A row that cannot be read: where, by the name people have for it, and what is wrong. */
export interface UnreadableView {
  readonly table: string;
  readonly row: string;
  readonly column: string;
  readonly why: string;
}

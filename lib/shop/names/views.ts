import type { DateDriver } from "#engine/routing";
import type { CustomerId, Instant, IsoDate } from "#engine/units";

/** One line of history: who did what, when. `data` holds the event's own particulars. */
export interface EventView {
  readonly seq: string;
  readonly at: Instant;
  readonly kind: string;
  readonly by: string;
  readonly data: Readonly<Record<string, unknown>>;
}

/** When a pair would be ready: half of such orders by `p50`, nine of ten by `p90`. */
export interface DateRange {
  readonly p50: IsoDate;
  readonly p90: IsoDate;
  /** Not in what was stored before these were told. */
  readonly p10?: IsoDate;
  readonly p80?: IsoDate;
  readonly p95?: IsoDate;
  readonly workingDays: { readonly p50: number; readonly p90: number };
  /** What the days are spent on, largest first. */
  readonly drivers: readonly DateDriver[];
  /** Enough to compute the very same range again. */
  readonly basis: {
    readonly queueRevision: number;
    readonly runs: number;
    readonly seed: number;
    readonly at: Instant;
  };
}

export interface CustomerView {
  readonly customerId: CustomerId;
  readonly name: string;
  readonly email: string | null;
  readonly phone: string | null;
  readonly address: PostalAddress | null;
}

export interface PostalAddress {
  readonly lines: readonly string[];
  readonly town: string;
  readonly region?: string;
  readonly postcode: string;
  readonly country: string;
}

/** A page of a list that can grow. */
export interface Page<T> {
  readonly rows: readonly T[];
  readonly total: number;
  readonly page: number;
  readonly pageSize: number;
}

/** Bytes to hand to a browser or a printer. */
export interface DocumentBytes {
  readonly bytes: Uint8Array;
  readonly contentType: string;
  readonly fileName: string;
}

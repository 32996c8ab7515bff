import type { Instant, IsoDate, OrderId } from "#engine/units";
import type { DayShares } from "#schemas/stored/index";
import type { QueueEffect } from "#shop/queue/views";

/** How many of some promises were ready by one of the days they were told, and what chance alone would allow. */
export interface KeptShare {
  readonly level: "p50" | "p80" | "p90";
  /** Mean share that was told with the day; where none was told, the level. */
  readonly expected: number;
  /** Whose day has passed, ready or not. */
  readonly orders: number;
  readonly kept: number;
  /** Counts that chance alone gives nineteen times of twenty. */
  readonly band: { readonly low: number; readonly high: number };
}

export interface KeptPeriod {
  /** YYYY-MM in which the clock started; null: all of them. */
  readonly month: string | null;
  readonly shares: readonly KeptShare[];
  /** By the promised day that stands: one moved with the customer's consent counts by its new day. */
  readonly onTime: { readonly orders: number; readonly kept: number };
  /** Working days from the P90 day to the day it was ready, or to today; negative is early. */
  readonly meanLateness: number | null;
}

export interface KeptOrder {
  readonly orderId: OrderId;
  readonly number: string;
  readonly fixedAt: Instant;
  readonly p50: IsoDate | null;
  readonly p80: IsoDate | null;
  readonly p90: IsoDate;
  /** Shares that were told with the days; null when the order was told before they were. */
  readonly shares: DayShares | null;
  /** The promised day that stands. */
  readonly promisedOn: IsoDate;
  readonly readyOn: IsoDate | null;
  /** Promise dates changed afterwards, with their reasons. */
  readonly changes: readonly {
    readonly at: Instant;
    readonly to: IsoDate;
    readonly reason: string;
    readonly by: string;
  }[];
}

export interface KeptPromises {
  readonly all: KeptPeriod;
  readonly months: readonly KeptPeriod[];
  readonly orders: readonly KeptOrder[];
  /** Fixed and not ready yet. */
  readonly open: number;
  /** Of the open ones, past their P90 day. */
  readonly overdue: number;
}

/** What a hard date would take. Nothing of it is stored. */
export interface HardDatePreview {
  readonly orderId: OrderId;
  readonly on: IsoDate;
  readonly revision: number;
  /** The 95 % day where it stands now, and where it would have to stand. */
  readonly p95: { readonly now: IsoDate; readonly moved: IsoDate };
  readonly fits: "now" | "by-moving" | "not-at-all";
  /** Pairs that give way. */
  readonly movedSerials: readonly string[];
  readonly breaksPromises: readonly string[];
  /** Due only when somebody gives way, and once. */
  readonly feeCents: number;
  /** What the fee adds to the order's tax. */
  readonly feeTaxCents: number;
  readonly effect: QueueEffect | null;
}

import type { PromiseStanding, RangeLevel } from "#engine/routing";
import type { Instant, IsoDate, OrderId, PairId } from "#engine/units";
import type { PromiseClass } from "#shop/order/views";

/** What a change does to one pair, before anybody has agreed to it or after. */
export interface PromiseEffect {
  readonly pairId: PairId;
  readonly orderId: OrderId;
  readonly serial: string;
  readonly skierFirstName: string;
  readonly ski: string;
  readonly promiseClass: PromiseClass;
  readonly promisedOn: IsoDate | null;
  readonly before: { readonly p50: IsoDate; readonly p90: IsoDate };
  readonly after: { readonly p50: IsoDate; readonly p90: IsoDate };
  readonly movedWorkingDays: number;
  readonly slackWorkingDays: number | null;
  readonly standingBefore: PromiseStanding;
  readonly standingAfter: PromiseStanding;
}

/** Who moves and who crosses a promise. Worst first. */
export interface QueueEffect {
  readonly basis: {
    readonly queueRevision: number;
    readonly runs: number;
    readonly seed: number;
    readonly at: Instant;
  };
  readonly moved: readonly PromiseEffect[];
  readonly crossing: readonly PromiseEffect[];
  readonly rescued: readonly PromiseEffect[];
  /** Open pairs looked at, those that do not move included. */
  readonly pairs: number;
  /** Working days in hand of every pair with a promise; negative is late. */
  readonly slack: readonly { readonly pairId: PairId; readonly before: number; readonly after: number }[];
  readonly expectedLate: { readonly before: number; readonly after: number };
  /** An ordinary pair ordered now. */
  readonly oneMore: {
    readonly before: {
      readonly p50: IsoDate;
      readonly p90: IsoDate;
      readonly workingDays: Readonly<Record<RangeLevel, number>>;
    };
    readonly after: {
      readonly p50: IsoDate;
      readonly p90: IsoDate;
      readonly workingDays: Readonly<Record<RangeLevel, number>>;
    };
  } | null;
  readonly changeoverMinutes: { readonly before: number; readonly after: number };
}

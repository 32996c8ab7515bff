/** What a change of the queue would do, as it was looked at when somebody decided. */
import { z } from "zod";
import { type PromiseClass, promiseClasses } from "#engine/floor";
import type { PromiseStanding, RangeLevel } from "#engine/routing";
import type { IsoDate, OrderId, PairId } from "#engine/units";
import { idSchema } from "../ids";
import { amount, listOf, storedDay, words } from "./common";
import { type DayShares, type RunsBasis, runsBasis, storedShares } from "./dates";

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
  readonly after: { readonly p50: IsoDate; readonly p90: IsoDate; readonly shares?: DayShares };
  readonly movedWorkingDays: number;
  readonly slackWorkingDays: number | null;
  readonly standingBefore: PromiseStanding;
  readonly standingAfter: PromiseStanding;
}

interface ShortRange {
  readonly p50: IsoDate;
  readonly p90: IsoDate;
  readonly shares?: DayShares;
  readonly workingDays: Readonly<Record<RangeLevel, number>>;
}

/** Who moves and who crosses a promise. Worst first. */
export interface QueueEffect {
  readonly basis: RunsBasis;
  readonly moved: readonly PromiseEffect[];
  readonly crossing: readonly PromiseEffect[];
  readonly rescued: readonly PromiseEffect[];
  /** Open pairs looked at, those that do not move included. */
  readonly pairs: number;
  /** Working days in hand of every pair with a promise; negative is late. */
  readonly slack: readonly { readonly pairId: PairId; readonly before: number; readonly after: number }[];
  readonly expectedLate: { readonly before: number; readonly after: number };
  /** An ordinary pair ordered now. */
  readonly oneMore: { readonly before: ShortRange; readonly after: ShortRange } | null;
  readonly changeoverMinutes: { readonly before: number; readonly after: number };
}

const pairId = idSchema("pair");
const ends = z.object({ p50: storedDay, p90: storedDay });
const standing = z.enum(["safe", "at-risk", "late", "open"]);
const both = z.object({ before: amount, after: amount });

export const storedPromiseEffect = z.object({
  pairId,
  orderId: idSchema("order"),
  serial: words,
  skierFirstName: words,
  ski: words,
  promiseClass: z.enum(promiseClasses),
  promisedOn: storedDay.nullable(),
  before: ends,
  after: ends.extend({ shares: storedShares.exactOptional() }),
  movedWorkingDays: amount,
  slackWorkingDays: amount.nullable(),
  standingBefore: standing,
  standingAfter: standing,
}) satisfies z.ZodType<PromiseEffect>;

const shortRange = z.object({
  p50: storedDay,
  p90: storedDay,
  shares: storedShares.exactOptional(),
  workingDays: z.object({ p10: amount, p50: amount, p80: amount, p90: amount, p95: amount }),
}) satisfies z.ZodType<ShortRange>;

export const storedQueueEffect = z.object({
  basis: runsBasis,
  moved: listOf(storedPromiseEffect),
  crossing: listOf(storedPromiseEffect),
  rescued: listOf(storedPromiseEffect),
  pairs: amount,
  slack: listOf(z.object({ pairId, before: amount, after: amount })),
  expectedLate: both,
  oneMore: z.object({ before: shortRange, after: shortRange }).nullable(),
  changeoverMinutes: both,
}) satisfies z.ZodType<QueueEffect>;

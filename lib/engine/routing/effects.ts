/** What a change of the situation does to every promise: two sets of runs with common random numbers, compared run by run. */

import type { IsoDate } from "#engine/units";
import type { DateRange, PairOnFloor, RangeLevel } from "./types";

/**
 * How a promise stands: safe when nine of ten runs keep it, late when not even half do, at risk in between; "open" without a
 * promise.
 */
export type PromiseStanding = "safe" | "at-risk" | "late" | "open";

export interface PairEffect {
  readonly pairId: string;
  readonly promise: PairOnFloor["promise"];
  readonly before: Readonly<Record<RangeLevel, IsoDate>>;
  readonly after: Readonly<Record<RangeLevel, IsoDate>>;
  /** Share of the runs that are ready by the close of the two days after the change. */
  readonly shareAfter: { readonly p50: number; readonly p90: number };
  /** Working days by which the nine-of-ten day moves; positive is later. */
  readonly movedWorkingDays: number;
  /** Working days from the nine-of-ten day after the change to the promised day; negative is late; null without a promise. */
  readonly slackWorkingDays: number | null;
  /** Share of runs that are ready on the promised day; null without a promise. */
  readonly keptBefore: number | null;
  readonly keptAfter: number | null;
  readonly standingBefore: PromiseStanding;
  readonly standingAfter: PromiseStanding;
}

export interface SituationEffect {
  readonly runs: number;
  readonly seed: number;
  /** Pairs that are open in both, in the order of the queue. */
  readonly pairs: readonly PairEffect[];
  /** Pairs whose promise stands worse afterwards, better afterwards. */
  readonly crossing: readonly string[];
  readonly rescued: readonly string[];
  /** Mean number of promises broken over the runs. */
  readonly expectedLate: { readonly before: number; readonly after: number };
  /** An ordinary pair ordered now; null when it was not asked. */
  readonly oneMore: { readonly before: DateRange; readonly after: DateRange } | null;
  readonly changeoverMinutes: { readonly before: number; readonly after: number };
}

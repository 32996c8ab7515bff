/** What the floor wrote down of itself, and what is learnt from it. Minutes are shop minutes, touch minutes where it says so. */
import type { StationId, ThreePointMinutes } from "#engine/floor";
import type { FloorChange, ShopMinute } from "#engine/routing";
import type { IsoDate } from "#engine/units";

/** One start and end at a station. */
export interface FloorVisit {
  readonly pair: string;
  readonly station: StationId;
  readonly startMinute: ShopMinute;
  /** Null while it is open. */
  readonly endMinute: ShopMinute | null;
  /** Whose tick it was: what one person has open at a station at once is one batch. Null: nobody knows. */
  readonly by: string | null;
  /** Touch minutes that the pair's options add. */
  readonly extraMinutes: number;
  /** Share of the station's minutes that this visit was for: a redo of one ski, a print of more sheets. */
  readonly share: number;
}

/** Work that was begun again because it had failed. */
export interface FloorRedo {
  readonly pair: string;
  /** The first station done again. */
  readonly from: StationId;
  readonly atMinute: ShopMinute;
}

export interface FloorHistory {
  /** The first and last moment that was looked at. */
  readonly fromMinute: ShopMinute;
  readonly toMinute: ShopMinute;
  readonly visits: readonly FloorVisit[];
  readonly redos: readonly FloorRedo[];
  /** What made the floor different in that time. */
  readonly changes: readonly FloorChange[];
  /** Days on which the shop was shut on purpose: no loss, and not looked at. */
  readonly plannedShut: readonly IsoDate[];
}

/** How much is believed before anything was seen, and what is no honest visit. The shop's own settings. */
export interface FloorLearningSettings {
  /** Pairs through the whole floor before a book may be made. */
  readonly leastPairs: number;
  /** Working days looked back. */
  readonly lookBackWorkingDays: number;
  /** The settings weigh as much as so many visits, passes, days, windows, shocks, weeks. */
  readonly prior: {
    readonly visits: number;
    readonly passes: number;
    readonly days: number;
    readonly windows: number;
    readonly shocks: number;
    readonly weeks: number;
  };
  /** A visit shorter than this share of the station's least minutes was no work. */
  readonly tooShortShareOfLow: number;
  /** A visit longer than so many times the station's most minutes was not finished when the work was. */
  readonly forgottenTimesHigh: number;
  /** The same for a visit that was open over a night. */
  readonly overnightTimesHigh: number;
  /** So many working days in a row without a tick, with so many pairs under way, are a standstill. */
  readonly still: { readonly leastDays: number; readonly leastPairs: number };
  /** A closure entered so many working days before is planned. */
  readonly plannedAheadWorkingDays: number;
}

/** Nine of ten lie in it, as far as anybody can tell from what was seen. */
export interface Interval {
  readonly low: number;
  readonly high: number;
}

export interface StationLearning {
  readonly station: StationId;
  /** Counted, and left out because too short, or because the finish was forgotten. */
  readonly visits: number;
  readonly tooShort: number;
  readonly forgotten: number;
  readonly assumed: ThreePointMinutes;
  readonly assumedMeanMinutes: number;
  /** Mean touch minutes of the visits counted; null without any. */
  readonly takenMeanMinutes: number | null;
  readonly learnt: ThreePointMinutes;
  readonly learntMeanMinutes: number;
  readonly interval: Interval;
}

/** A chance learnt from counts. */
export interface RateLearning {
  /** Days, passes or windows looked at, and how many of them went wrong. */
  readonly trials: number;
  readonly failures: number;
  readonly assumed: number;
  readonly learnt: number;
  readonly interval: Interval;
}

export interface ReworkLearning extends RateLearning {
  readonly loop: string;
  /** Whose pass is counted. */
  readonly afterStation: StationId;
}

export interface ShockLearning extends RateLearning {
  /** A window's length: trials are counted in these. */
  readonly windowWorkingDays: number;
  /** Working days of each standstill, in order of time. */
  readonly standstills: readonly { readonly from: IsoDate; readonly workingDays: number }[];
  readonly assumedDelay: Interval;
  readonly learntDelay: Interval;
}

/** How whole weeks differ: standard deviation of the logarithm of the pace that all work of a week shares. */
export interface WeekLearning {
  readonly weeks: number;
  readonly visits: number;
  readonly assumed: number;
  readonly learnt: number;
  readonly interval: Interval;
}

/** What dates are made with from the approval on. */
export interface FloorBook {
  /** FB-1, FB-2 … */
  readonly version: string;
  readonly stations: readonly { readonly station: StationId; readonly minutes: ThreePointMinutes }[];
  readonly rework: readonly { readonly loop: string; readonly probability: number }[];
  readonly pressDayLostProbability: number;
  readonly personDayLostProbability: number;
  readonly sharedShock: { readonly probability: number; readonly delayWorkingDays: Interval };
  readonly weekPaceLogSd: number;
}

export interface FloorLearning {
  readonly fromDate: IsoDate;
  readonly toDate: IsoDate;
  readonly workingDays: number;
  /** Pairs that came through the whole floor. */
  readonly pairs: number;
  readonly enoughPairs: boolean;
  readonly stations: readonly StationLearning[];
  readonly rework: readonly ReworkLearning[];
  readonly pressDays: RateLearning;
  readonly personDays: RateLearning;
  readonly shocks: ShockLearning;
  readonly weeks: WeekLearning;
  /** What was left out, in order of time. */
  readonly leftOut: readonly LeftOutVisit[];
  readonly proposal: FloorBook;
}

export interface LeftOutVisit {
  readonly visit: FloorVisit;
  readonly why: "too-short" | "forgotten";
  /** Working minutes from start to end, or to now while it is open. */
  readonly workMinutes: number;
}

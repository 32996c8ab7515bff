/**
 * What the queue is told and what it answers. Times are shop minutes: whole minutes of the shop's own clock since
 * 1970-01-01 00:00 local ({@link file://./shop-time.ts}); the caller turns instants into shop minutes at the edge.
 */
import type { OperationState, PromiseClass, StationId } from "#engine/floor";
import type { IsoDate } from "#engine/units";

/** Minutes of the shop's local clock since 1970-01-01 00:00 local time. */
export type ShopMinute = number;

/** What decides a pair's way over the floor. */
export interface RouteFacts {
  readonly kind: "pair" | "print-only";
  /** Mould id (model-length) and its family; null for print-only jobs. */
  readonly mould: string | null;
  readonly mouldFamily: string | null;
  /** Touch minutes that options add at a station. */
  readonly extraMinutes: readonly { readonly station: StationId; readonly minutes: number }[];
  /** An own graphic waits for the skier's approval of the proof before it is printed. */
  readonly hasOwnGraphic: boolean;
  /** Print-only: number of sheets, which scales the print time; a pair needs 2. */
  readonly printSheets?: number;
}

/** State of one station's work on a pair. Stations that are not listed are still to do. */
export interface OperationOnFloor {
  readonly station: StationId;
  readonly state: OperationState;
  /** Needed while running. */
  readonly startedAtMinute?: ShopMinute;
  /** Needed when done and a cure or rest may still be running. */
  readonly doneAtMinute?: ShopMinute;
  /** Which press holds the pair, at the press. */
  readonly press?: string;
  /** 0 first time, 1 for the first redo and so on. */
  readonly visit?: number;
  /** Share of the full minutes, for a redo of one ski. */
  readonly minutesShare?: number;
}

export const waitReasons = ["deposit", "specification-lock", "proof", "rights", "material", "decision"] as const;
export type WaitReason = (typeof waitReasons)[number];

export interface WaitingOn {
  readonly reason: WaitReason;
  /** When it is expected; absent: the usual turnaround is sampled (proof) or it is taken as open until further notice. */
  readonly expectedDate?: IsoDate;
  /** The first station that cannot begin without it: the print without a proof, the release without a deposit. */
  readonly holdsUpStation: StationId;
}

/** One open pair or print job, as it stands on the floor. */
export interface PairOnFloor {
  readonly pairId: string;
  readonly route: RouteFacts;
  readonly operations: readonly OperationOnFloor[];
  readonly waitingOn: readonly WaitingOn[];
  /** When it took its place in the queue (clock start, or acceptance while it waits). */
  readonly queuedAtMinute: ShopMinute;
  readonly promise: { readonly class: PromiseClass; readonly date: IsoDate } | null;
  /** Its place by hand: it ranks as if it were promised at this minute, whatever its promise is. */
  readonly placeMinute?: ShopMinute;
  /** Its place beside others of its mould, as the plan groups them: it ranks by this minute unless it has a place by hand. */
  readonly groupMinute?: ShopMinute;
  /** A press start that is not moved any more. */
  readonly frozenPressStart?: { readonly press: string; readonly startMinute: ShopMinute };
}

/** A pair that is not in the queue: what a quote asks about. */
export interface CandidatePair {
  readonly route: RouteFacts;
  readonly waitingOn: readonly WaitingOn[];
}

export interface PlannedOperation {
  readonly pairId: string;
  readonly station: StationId;
  readonly visit: number;
  readonly startMinute: ShopMinute;
  /** End of the work; a press holds the pair until {@link freeMinute}. */
  readonly workEndMinute: ShopMinute;
  /** End of cure, rest or press cycle: the next station may begin. */
  readonly freeMinute: ShopMinute;
  readonly date: IsoDate;
  readonly crew: readonly string[];
  readonly state: "running" | "planned";
}

export interface PressSlot {
  readonly press: string;
  readonly pairId: string;
  readonly mould: string;
  readonly startMinute: ShopMinute;
  readonly freeMinute: ShopMinute;
  readonly date: IsoDate;
  readonly changeoverMinutes: number;
}

export interface PlannedPair {
  readonly pairId: string;
  readonly finishMinute: ShopMinute;
  readonly finishDate: IsoDate;
  readonly promise: PairOnFloor["promise"];
  /** Working days between the planned finish and the promised day; negative is late; null without a promise. */
  readonly slackWorkingDays: number | null;
  readonly waitingOn: readonly WaitingOn[];
  /** Held until further notice: planned as if it were free today. */
  readonly isOpenEnded: boolean;
}

/** The deterministic plan: typical minutes, nothing goes wrong. */
export interface QueuePlan {
  readonly madeAtMinute: ShopMinute;
  readonly operations: readonly PlannedOperation[];
  readonly pairs: readonly PlannedPair[];
  readonly pressPlan: readonly PressSlot[];
  readonly totals: {
    readonly weightedLateMinutes: number;
    readonly changeoverMinutes: number;
    readonly finishMinute: ShopMinute;
  };
}

export const rangeLevels = ["p10", "p50", "p80", "p90", "p95"] as const;
export type RangeLevel = (typeof rangeLevels)[number];

/** Why the date is where it is: working days of the typical run that each cause takes, largest first. */
export interface DateDriver {
  readonly code:
    | "work"
    | "rest-and-cure"
    | "press-queue"
    | "mould"
    | "crew"
    | "station-queue"
    | "proof"
    | "deposit"
    | "material"
    | "other-wait"
    | "rework-and-shocks";
  readonly workingDays: number;
  /** The station or mould it is about, where there is one. */
  readonly station?: StationId;
  readonly mould?: string;
  /** The day on which the wait is usually over: the press is taken until then. Absent: no day is usual. */
  readonly untilDate?: IsoDate;
  /** Days before it on which others have the mould in a press. */
  readonly mouldDays?: readonly IsoDate[];
}

/** Quantiles of the finish (ready to leave the shop): estimated on the working-time axis, then mapped to days. */
export interface DateRange {
  readonly runs: number;
  readonly seed: number;
  readonly dates: Readonly<Record<RangeLevel, IsoDate>>;
  /** Share of the runs that are ready by the close of each of these days: a whole day holds more than its quantile. */
  readonly shares: Readonly<Record<RangeLevel, number>>;
  readonly workingDays: Readonly<Record<RangeLevel, number>>;
  readonly drivers: readonly DateDriver[];
}

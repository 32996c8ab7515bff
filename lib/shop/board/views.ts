import type { ClockStartCondition, StationId } from "#engine/floor";
import type { FloorChangeKind, PromiseStanding } from "#engine/routing";
import type { Instant, IsoDate, OperationId, OrderId, PairId, QuoteId, SheetId } from "#engine/units";
import type { DayShares, ExpectedDays } from "#schemas/stored/index";
import type { UnreadableView } from "#shop/names/views";
import type { OrderState, PromiseClass } from "#shop/order/views";
import type { OperationState } from "#shop/pair/views";

export interface QueueStation {
  readonly station: StationId;
  /** As on the route card. */
  readonly number: number;
  readonly name: string;
  readonly capacity: number;
  readonly ready: number;
  readonly running: number;
  readonly blocked: number;
  readonly minutesWaiting: number;
}

/** One operation as the plan places it. */
export interface QueueCell {
  readonly pairId: PairId;
  readonly serial: string;
  readonly operationId: OperationId;
  readonly key: string;
  readonly station: StationId;
  readonly state: OperationState;
  readonly startsAt: Instant;
  /** End of the work by hand. */
  readonly endsAt: Instant;
  /** End of press cycle, cure or rest. */
  readonly freeAt: Instant;
}

export interface QueueDay {
  readonly date: IsoDate;
  readonly isWorkingDay: boolean;
  readonly cells: readonly QueueCell[];
}

/** Minutes of the shop's day, half-open. */
export interface DaySpan {
  readonly fromMinute: number;
  readonly toMinute: number;
}

/** A day of the board: weekends are left out, closed weekdays stay as a mark. */
export interface BoardDay {
  readonly date: IsoDate;
  /** From the earliest opening to the latest closing, overtime included; empty on a closed day. */
  readonly axis: DaySpan;
  /** When somebody works, ascending. */
  readonly open: readonly DaySpan[];
  readonly overtime: readonly DaySpan[];
  /** Why nobody works on a weekday; null when it is open. */
  readonly closedBecause: string | null;
}

/** A piece of a bar that lies within one day. */
export interface BarPiece extends DaySpan {
  readonly date: IsoDate;
}

/** A visit to a station as the board draws it. */
export interface QueueBar extends QueueCell {
  /** Which of the station's lines it lies on, from 0. */
  readonly lane: number;
  readonly standing: PromiseStanding;
  /** Hands at work. */
  readonly attended: readonly BarPiece[];
  /** Press cycle, cure or rest, as far as it falls into the day's axis. */
  readonly unattended: readonly BarPiece[];
  /** The piece that carries the serial, its widest; behind the last of that day where it is too short for the word. */
  readonly label: { readonly piece: BarPiece; readonly isBeside: boolean };
}

export interface BoardRow {
  readonly station: StationId;
  readonly lanes: number;
  readonly bars: readonly QueueBar[];
  /** When the station, or its press, is down. */
  readonly down: readonly BarPiece[];
}

/** Something that is different about the floor. */
export interface QueueChange {
  readonly kind: FloorChangeKind;
  /** The press, person, mould or station it is about, by its name; null for the whole shop. */
  readonly what: string | null;
  readonly from: Instant | null;
  /** Null: for good. */
  readonly to: Instant | null;
  readonly reason: string;
}

export interface StationBoard {
  readonly days: readonly BoardDay[];
  readonly rows: readonly BoardRow[];
  /** Where on today's axis it is now; null outside of it. */
  readonly now: { readonly date: IsoDate; readonly minute: number } | null;
  readonly changes: readonly QueueChange[];
}

/** Why a pair cannot be worked on. */
export type BlockedReason =
  /** `isAsked`: a proof is with the customer, so it is theirs to answer. */
  | { readonly kind: "customer"; readonly condition: ClockStartCondition; readonly isAsked: boolean }
  | {
      readonly kind: "material" | "decision";
      readonly station: StationId;
      readonly stationNumber: number | string;
      readonly expectedOn: IsoDate | null;
      readonly note: string;
    }
  | {
      readonly kind: "rest";
      readonly station: StationId;
      readonly stationNumber: number | string;
      readonly until: Instant;
    }
  | { readonly kind: "before"; readonly station: StationId; readonly stationNumber: number | string }
  /** The press, person, mould or station that its next work needs. */
  | {
      readonly kind: "away";
      readonly station: StationId;
      readonly stationNumber: number | string;
      readonly what: string;
      readonly until: Instant | null;
    }
  | { readonly kind: "no-slot" };

export interface BlockedPair {
  readonly pairId: PairId;
  readonly serial: string;
  readonly skierFirstName: string;
  readonly reasons: readonly (BlockedReason & { readonly since: Instant | null })[];
}

export interface QueuePair {
  readonly pairId: PairId;
  /** Its row cannot be read: model and length are the usual ones of its mould. */
  readonly isUnreadable: boolean;
  readonly orderId: OrderId;
  readonly serial: string;
  readonly skierFirstName: string;
  readonly modelName: string;
  readonly lengthCm: number;
  readonly mould: string;
  readonly state: OrderState;
  readonly now: {
    readonly station: StationId;
    readonly stationNumber: number | string;
    readonly stationName: string;
    readonly state: OperationState;
  } | null;
  readonly doneOperations: number;
  readonly allOperations: number;
  readonly plannedReady: IsoDate | null;
  readonly expected: ExpectedDays | null;
  readonly promiseClass: PromiseClass;
  readonly standing: PromiseStanding;
  /** Share of the runs that keep the promise; null without one. */
  readonly chanceKept: number | null;
  readonly promisedOn: IsoDate | null;
  /** Working days between the plan's nine-of-ten day and the promise; negative = at risk. Null without a promise. */
  readonly slackDays: number | null;
  readonly waitingFor: readonly ClockStartCondition[];
}

export interface PressSlot {
  /** By its name. */
  readonly press: string;
  readonly pairId: PairId;
  readonly serial: string;
  readonly mould: string;
  readonly startsAt: Instant;
  readonly endsAt: Instant;
  readonly changeoverMinutes: number;
  /** In the press, or so near that its start is not moved any more. */
  readonly isFixed: boolean;
  /** The press is still busy when the shop closes: it cures with nobody there and is opened when somebody is. */
  readonly curesPastClosing: boolean;
}

export interface PressDay {
  readonly date: IsoDate;
  readonly slots: readonly PressSlot[];
}

export interface QueueBoard {
  readonly revision: number;
  readonly today: IsoDate;
  readonly stations: readonly QueueStation[];
  readonly days: readonly QueueDay[];
  readonly pairs: readonly QueuePair[];
  readonly waitingOn: readonly {
    readonly pairId: PairId;
    readonly serial: string;
    readonly skierFirstName: string;
    readonly waitingFor: readonly ClockStartCondition[];
    readonly since: Instant;
  }[];
  readonly blocked: readonly BlockedPair[];
  readonly board: StationBoard;
  readonly pressPlan: readonly PressDay[];
  readonly backlogPairs: number;
  /** Pairs that cannot be read: planned with their model's usual minutes until somebody puts them right. */
  readonly unreadable: readonly UnreadableView[];
}

export interface DeskOverview {
  readonly today: IsoDate;
  readonly counts: {
    readonly drafts: number;
    readonly callBacksDue: number;
    readonly quotesOpen: number;
    readonly quotesExpiringSoon: number;
    readonly quotesOnOldBook: number;
    readonly ordersToConfirm: number;
    readonly depositsWaiting: number;
    readonly proofsWaiting: number;
    readonly rightsWaiting: number;
    readonly reviewsAsked: number;
    readonly pairsInBuild: number;
    readonly promisesAtRisk: number;
  };
  readonly callBacks: readonly {
    readonly sheetId: SheetId;
    readonly name: string | null;
    readonly phone: string;
    readonly at: Instant;
    readonly reason: string;
  }[];
  readonly reviews: readonly {
    readonly sheetId: SheetId;
    readonly name: string | null;
    readonly note: string;
    readonly askedAt: Instant;
  }[];
  readonly quotesExpiring: readonly {
    readonly quoteId: QuoteId;
    readonly number: string;
    readonly name: string;
    readonly validUntilDay: IsoDate;
  }[];
  readonly waiting: QueueBoard["waitingOn"];
  readonly atRisk: readonly QueuePair[];
  /** Whatever of the open business cannot be read. */
  readonly unreadable: readonly UnreadableView[];
}

export interface SearchHit {
  readonly kind: "sheet" | "customer" | "quote" | "order" | "pair";
  readonly id: string;
  readonly title: string;
  readonly detail: string;
}

/** What the home page says today. */
export interface LeadTimeToday {
  readonly p50: IsoDate;
  readonly p90: IsoDate;
  readonly shares?: DayShares;
  readonly workingDays: { readonly p50: number; readonly p90: number };
  readonly pairsAhead: number;
}

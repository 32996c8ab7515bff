import type { ClockStartCondition } from "../../engine/lifecycle";
import type { IsoDate } from "../../engine/units";
import type { Instant, OperationId, OrderId, PairId, QuoteId, SheetId } from "./ids";
import type { OrderState } from "./order";
import type { OperationState } from "./pair";

export interface QueueStation {
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
  readonly station: number;
  readonly state: OperationState;
  readonly startsAt: Instant;
  readonly endsAt: Instant;
}

export interface QueueDay {
  readonly date: IsoDate;
  readonly isWorkingDay: boolean;
  readonly cells: readonly QueueCell[];
}

export interface QueuePair {
  readonly pairId: PairId;
  readonly orderId: OrderId;
  readonly serial: string;
  readonly skierFirstName: string;
  readonly modelName: string;
  readonly lengthCm: number;
  readonly mould: string;
  readonly state: OrderState;
  readonly now: { readonly station: number; readonly stationName: string; readonly state: OperationState } | null;
  readonly doneOperations: number;
  readonly allOperations: number;
  readonly plannedReady: IsoDate | null;
  readonly expected: { readonly p50: IsoDate; readonly p90: IsoDate } | null;
  readonly promisedOn: IsoDate | null;
  /** Working days between the plan's nine-of-ten day and the promise; negative = at risk. Null without a promise. */
  readonly slackDays: number | null;
  readonly waitingFor: readonly ClockStartCondition[];
}

export interface PressSlot {
  readonly pairId: PairId;
  readonly serial: string;
  readonly mould: string;
  readonly startsAt: Instant;
  readonly endsAt: Instant;
  readonly changeoverMinutes: number;
  readonly isFixed: boolean;
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
  readonly pressPlan: readonly PressDay[];
  readonly backlogPairs: number;
}

export interface DeskOverview {
  readonly today: IsoDate;
  readonly counts: {
    readonly drafts: number;
    readonly callBacksDue: number;
    readonly quotesOpen: number;
    readonly quotesExpiringSoon: number;
    readonly quotesOnOldBook: number;
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
  readonly workingDays: { readonly p50: number; readonly p90: number };
  readonly pairsAhead: number;
}

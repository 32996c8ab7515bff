import type { OrderCost, PromiseStanding } from "#engine/routing";
import type { Instant, IsoDate, OrderId, PairId } from "#engine/units";
import type { ExpectedDays } from "#schemas/stored/index";
import type { PromiseClass } from "#shop/order/views";
import type { QueueEffect } from "#shop/queue/views";

/** A pair in the order in which the queue serves it. */
export interface QueuePlace {
  readonly pairId: PairId;
  readonly orderId: OrderId;
  readonly serial: string;
  readonly skierFirstName: string;
  readonly ski: string;
  readonly mould: string;
  readonly promiseClass: PromiseClass;
  readonly promisedOn: IsoDate | null;
  readonly expected: ExpectedDays | null;
  readonly standing: PromiseStanding;
  /** Its place was given by hand. */
  readonly isByHand: boolean;
  /** Null: it may be moved. */
  readonly fixedBecause: "frozen" | "in-lay-up" | null;
}

export interface QueueOrder {
  readonly revision: number;
  readonly places: readonly QueuePlace[];
  readonly moves: readonly {
    readonly decisionId: string;
    readonly at: Instant;
    readonly by: string;
    readonly reason: string;
    readonly serials: readonly string[];
    readonly undone: { readonly at: Instant; readonly by: string } | null;
  }[];
}

/** What a move would do; nothing of it is stored. */
export interface MovePreview {
  readonly pairId: PairId;
  readonly serial: string;
  readonly before: { readonly pairId: PairId; readonly serial: string } | null;
  /** Counted from 1. */
  readonly fromPosition: number;
  readonly toPosition: number;
  readonly revision: number;
  readonly effect: QueueEffect;
}

/** An order that the search has found; nothing of it is stored. */
export interface SuggestedOrder {
  readonly revision: number;
  /** Empty: nothing better was found. Shop minutes to rank by. */
  readonly places: readonly { readonly pairId: PairId; readonly serial: string; readonly placeMinute: number }[];
  readonly before: OrderCost;
  readonly after: OrderCost;
  readonly effect: QueueEffect | null;
}

import type { IncidentState } from "#engine/floor";

export type { IncidentState } from "#engine/floor";

import type { ReworkFault, StationId } from "#engine/floor";
import type { FloorChange } from "#engine/routing";
import type { IncidentId, Instant, IsoDate, OrderId, PairId } from "#engine/units";
import type { NoticeView } from "#services/letters/views";
import type { EventView } from "#shop/names/views";
import type { PromiseEffect, QueueEffect } from "#shop/queue/views";

/** What went wrong, as it is entered. */
export type BreakdownInput =
  | { readonly kind: "press-down"; readonly press: string; readonly from: Instant; readonly until: Instant }
  | { readonly kind: "person-away"; readonly person: string; readonly from: Instant; readonly until: Instant }
  | {
      readonly kind: "supplier-late";
      /** The first station that cannot begin without it: every pair that has not begun there waits. */
      readonly station: StationId;
      readonly material: string;
      readonly expectedOn: IsoDate;
    }
  | {
      readonly kind: "base-short";
      readonly colour: string;
      /** What is left of the roll, m. */
      readonly leftM: number;
      readonly expectedOn: IsoDate;
    }
  | {
      readonly kind: "ski-rebuild";
      readonly pairId: PairId;
      readonly side: "L" | "R";
      readonly fromStation: StationId;
      readonly fault: ReworkFault;
    }
  | { readonly kind: "proof-late"; readonly pairId: PairId; readonly expectedOn: IsoDate };

export type BreakdownKind = BreakdownInput["kind"];

export type RemedyCode = "wait" | "offer-colour" | "overtime" | "overnight-cure" | "second-press" | "swap-with-slack";

/** One way on, with what it does to the promises and what it costs. What is applied is what stands here. */
export interface RemedyOption {
  readonly way: RemedyCode;
  readonly costCents: number;
  /** What its words say: hours, days, weeks. Absent where they say no number. */
  readonly figures?: Readonly<Record<string, number>>;
  readonly changes: readonly FloorChange[];
  /** Places in the queue, as shop minutes to rank by. */
  readonly places: readonly { readonly pairId: string; readonly placeMinute: number }[];
  /** Promises that stand worse than before the breakdown, even so. */
  readonly crossing: readonly PromiseEffect[];
  /** Promises that would stand worse without it and do not with it. */
  readonly saved: number;
  readonly expectedLate: number;
}

/** A colour with what its lot is called: bases of one lot are of one thickness. */
export interface BaseLot {
  readonly colour: string;
  readonly label: string;
  readonly lot: string;
}

/** A pair that asks for a base colour that is short, in the order in which bases are cut by the plan. */
export interface BaseNeed {
  readonly pairId: PairId;
  readonly orderId: OrderId;
  readonly serial: string;
  readonly skierFirstName: string;
  readonly needM: number;
  /** False: what is left does not reach for it. */
  readonly isServed: boolean;
  /** Its letters are counterchanged with this colour: both must come from one thickness lot. Lot null: none on the shelf. */
  readonly counterchangedWith: { readonly label: string; readonly lot: string | null } | null;
  /** Colours on the shelf that could take its place, of a lot that fits. */
  readonly alternatives: readonly BaseLot[];
}

export interface BaseShortage {
  readonly colour: string;
  readonly label: string;
  readonly neededM: number;
  readonly leftM: number;
  readonly shortM: number;
  readonly expectedOn: IsoDate;
  readonly pairs: readonly BaseNeed[];
}

/** What a breakdown does and what can be done. Nothing is stored. */
export interface BreakdownPreview {
  /** Of a base colour that is short; else null. */
  readonly base: BaseShortage | null;
  readonly effect: QueueEffect;
  readonly options: readonly RemedyOption[];
}

export interface IncidentSummary {
  readonly incidentId: IncidentId;
  /** "INC-3" */
  readonly number: string;
  readonly state: IncidentState;
  readonly version: number;
  readonly input: BreakdownInput;
  readonly note: string;
  readonly crossing: number;
  readonly reportedAt: Instant;
  readonly reportedBy: string;
}

export interface IncidentView extends IncidentSummary {
  readonly effect: QueueEffect;
  readonly options: readonly RemedyOption[];
  readonly base: BaseShortage | null;
  readonly chosen: {
    readonly option: RemedyCode;
    readonly reason: string;
    readonly costCents: number;
    readonly at: Instant;
    readonly by: string;
  } | null;
  readonly closed: { readonly at: Instant; readonly by: string } | null;
  /** Empty for who may not read letters. */
  readonly notices: readonly NoticeView[];
  readonly history: readonly EventView[];
}

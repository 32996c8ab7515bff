import type { ReworkFault } from "../../engine/lifecycle";
import type { FloorChange } from "../../engine/routing";
import type { IsoDate } from "../../engine/units";
import type { EventView } from "./common";
import type { PromiseEffect, QueueEffect } from "./effects";
import type { IncidentId, Instant, PairId } from "./ids";
import type { NoticeView } from "./notice";

/** What went wrong, as it is entered. */
export type BreakdownInput =
  | { readonly kind: "press-down"; readonly press: string; readonly from: Instant; readonly until: Instant }
  | { readonly kind: "person-away"; readonly person: string; readonly from: Instant; readonly until: Instant }
  | {
      readonly kind: "supplier-late";
      /** The first station that cannot begin without it: every pair that has not begun there waits. */
      readonly station: number;
      readonly material: string;
      readonly expectedOn: IsoDate;
    }
  | {
      readonly kind: "ski-rebuild";
      readonly pairId: PairId;
      readonly side: "L" | "R";
      readonly fromStation: number;
      readonly fault: ReworkFault;
    }
  | { readonly kind: "proof-late"; readonly pairId: PairId; readonly expectedOn: IsoDate };

export type BreakdownKind = BreakdownInput["kind"];

export type RemedyCode = "wait" | "overtime" | "overnight-cure" | "second-press" | "swap-with-slack";

/** One way on, with what it does to the promises and what it costs. What is applied is what stands here. */
export interface RemedyOption {
  readonly way: RemedyCode;
  readonly costCents: number;
  readonly changes: readonly FloorChange[];
  /** Places in the queue, as shop minutes to rank by. */
  readonly places: readonly { readonly pairId: string; readonly placeMinute: number }[];
  /** Promises that stand worse than before the breakdown, even so. */
  readonly crossing: readonly PromiseEffect[];
  /** Promises that would stand worse without it and do not with it. */
  readonly saved: number;
  readonly expectedLate: number;
}

/** What a breakdown does and what can be done. Nothing is stored. */
export interface BreakdownPreview {
  readonly effect: QueueEffect;
  readonly options: readonly RemedyOption[];
}

export type IncidentState = "open" | "decided" | "closed";

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

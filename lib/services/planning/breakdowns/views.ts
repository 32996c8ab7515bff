import type { IncidentState } from "#engine/floor";
import type { IncidentId, Instant } from "#engine/units";
import type { BaseShortage, BreakdownInput, RemedyCode, RemedyOption } from "#schemas/stored/index";
import type { NoticeView } from "#services/letters/views";
import type { EventView } from "#shop/names/views";
import type { QueueEffect } from "#shop/queue/views";

export type {
  BaseLot,
  BaseNeed,
  BaseShortage,
  BreakdownInput,
  BreakdownKind,
  RemedyCode,
  RemedyOption,
} from "#schemas/stored/index";

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

import type { StationId } from "#engine/floor";
import type { FloorChange } from "#engine/routing";
import type { FloorChangeId, Instant, IsoDate } from "#engine/units";
import type { QueueEffect } from "#shop/queue/views";

/** A question that changes nothing. */
export type WhatIfInput =
  | { readonly kind: "hire"; readonly stations: readonly StationId[]; readonly from: IsoDate }
  | { readonly kind: "second-press"; readonly from: IsoDate }
  | { readonly kind: "closure"; readonly from: IsoDate; readonly until: IsoDate }
  | { readonly kind: "club-order"; readonly pairs: number }
  | { readonly kind: "rework"; readonly factor: number }
  | { readonly kind: "drop-mould"; readonly mould: string; readonly from: IsoDate; readonly until: IsoDate }
  | { readonly kind: "supplier-lead"; readonly station: StationId; readonly weeks: number };

export type WhatIfKind = WhatIfInput["kind"];

export interface WhatIfAnswer {
  readonly effect: QueueEffect;
  /** What it costs for each week it lasts; null where it costs nothing or is not known. */
  readonly costCentsPerWeek: number | null;
  /** Orders whose promise stands better with it. */
  readonly ordersRescued: number;
  /** A hire, a press and a closure can be made so; the others are questions only. */
  readonly canApply: boolean;
}

/** What makes the floor different from its settings, now or later. */
export interface FloorChangeView {
  readonly floorChangeId: FloorChangeId;
  readonly kind: FloorChange["kind"];
  readonly fromAt: Instant | null;
  readonly toAt: Instant | null;
  readonly reason: string;
  readonly source: "incident" | "option" | "what-if";
  readonly costCents: number | null;
  readonly madeAt: Instant;
  readonly madeBy: string;
}

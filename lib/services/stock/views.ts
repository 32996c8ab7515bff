import type { UnmetReason } from "#engine/matching";
import type { IsoDate, PairId } from "#engine/units";
import type { PromiseEffect } from "#shop/queue/views";

/** A way out when stock holds no set for a pair; figures are against the core as ordered. */
export type StripOption = { readonly id: string } & (
  | { readonly kind: "as-ordered" }
  | {
      readonly kind: "other-species";
      readonly position: string;
      readonly from: string;
      readonly species: string;
      /** Of one ski, with the core solved again for the ordered flex, g. */
      readonly massG: number;
      /** Of the flex ratio, were the core milled as if nothing had changed, per cent. */
      readonly ratioPercent: number;
      /** In the middle, solved again, mm. */
      readonly thicknessMm: number;
      /** Dense wood belongs under the foot: this would put it elsewhere. */
      readonly isDenseOutside: boolean;
    }
  | {
      readonly kind: "other-thickness";
      /** Modulus of the strips there are against the design's, per cent. */
      readonly modulusPercent: number;
      readonly thicknessMm: number;
      readonly massG: number;
    }
  | {
      readonly kind: "take-from";
      readonly fromPairId: PairId;
      readonly serial: string;
      readonly promisedOn: IsoDate | null;
      /** Working days between its nine-of-ten day and its promise; null without a promise. */
      readonly slackWorkingDays: number | null;
    }
  | { readonly kind: "wait" }
);

export interface StripsShortView {
  readonly pairId: PairId;
  readonly serial: string;
  readonly version: number;
  readonly isShort: boolean;
  readonly promisedOn: IsoDate | null;
  readonly why: readonly UnmetReason[];
  readonly options: readonly StripOption[];
  /** What waiting until a day would do to this pair; null when no day was asked or nothing moves. */
  readonly waiting: PromiseEffect | null;
  readonly waitsUntil: IsoDate | null;
}

export interface StripStockView {
  readonly reorderLevel: number;
  readonly species: readonly {
    readonly species: string;
    readonly free: number;
    readonly reserved: number;
    readonly used: number;
    /** Strips to buy to be back at the level; 0 when there are enough. */
    readonly toBuy: number;
    readonly bins: readonly { readonly bin: string; readonly free: number; readonly reserved: number }[];
  }[];
  readonly short: readonly {
    readonly pairId: PairId;
    readonly serial: string;
    readonly promisedOn: IsoDate | null;
    readonly held: number;
    readonly needed: number;
    readonly waitsUntil: IsoDate | null;
  }[];
}

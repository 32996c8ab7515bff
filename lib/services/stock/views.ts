import type { UnmetReason } from "#engine/matching";
import type { IsoDate, PairId } from "#engine/units";
import type { StripOption } from "#schemas/stored/index";
import type { PromiseEffect } from "#shop/queue/views";

export type { StripOption } from "#schemas/stored/index";

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

import type { ReworkFault, StationId } from "#engine/floor";
import type { PairId } from "#engine/units";
import type { ExpectedDays } from "#schemas/stored/index";
import type { PromiseEffect, QueueEffect } from "#shop/queue/views";

/** What building one ski again takes, before anybody agrees to it. */
export interface ReworkView {
  readonly pairId: PairId;
  readonly serial: string;
  readonly version: number;
  readonly side: "L" | "R";
  readonly fault: ReworkFault;
  readonly fromStation: StationId;
  readonly fromNumber: number | string;
  readonly scrappedSerial: string;
  readonly newSerial: string;
  /** The other ski, which waits. */
  readonly heldSerial: string;
  readonly stations: readonly {
    readonly station: StationId;
    readonly number: number;
    readonly name: string;
    readonly isOneSki: boolean;
  }[];
  /** Null when the core is kept. */
  readonly strips: ReworkStrips | null;
  /** Counterchange: what the new base needs cut from the other colour; null when nothing. */
  readonly letters: { readonly text: string; readonly sheetColour: string } | null;
  readonly effect: {
    /** Of this pair; null when it was ready and so had no place in the queue, or has none. */
    readonly own: PromiseEffect | null;
    /** When the pair is ready again. */
    readonly ready: ExpectedDays | null;
    readonly queue: QueueEffect;
  };
}

export type ReworkStrips =
  | {
      readonly isFound: true;
      readonly count: number;
      readonly differencePercent: number;
      readonly bins: readonly string[];
    }
  /** No set meets the other ski within the limit: the pair will wait for wood at the glue-up. */
  | { readonly isFound: false; readonly limitPercent: number };

/** What a quote prints. */
import type { Price } from "#engine/pricing";
import type { IsoDate } from "#engine/units";
import type { LocalDateTime, OfferedDates, PrintStamp, Row, ShopFacts } from "#papers/parts/facts";

/** A number that was computed and what it came from. */
export interface ReasonLine {
  readonly label: string;
  readonly amount: string;
}

export interface QuoteData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly number: string;
  /** What the code opens. */
  readonly url: string;
  readonly urlNote: string;
  readonly madeAt: LocalDateTime;
  readonly validUntil: IsoDate;
  readonly seller: string;
  readonly skierName: string;
  /** Null when the skier buys for themself. */
  readonly buyerName: string | null;
  /** Fit answers with the unit they were typed in first. */
  readonly answers: readonly Row[];
  readonly recommendation: {
    readonly summary: string;
    readonly reasons: readonly ReasonLine[];
    readonly alternatives: readonly string[];
  };
  readonly flags: readonly { readonly message: string; readonly acknowledgedBy: string | null }[];
  /** From readableSpec(). */
  readonly specification: readonly Row[];
  readonly price: Price;
  readonly taxNote: string;
  readonly dates: OfferedDates;
  readonly customerSpecified: readonly string[];
  readonly howToAccept: readonly string[];
  readonly cancellation: readonly Row[];
  readonly cautions: readonly string[];
}

/** What an offer to a club prints. */
import type { Price } from "#engine/pricing";
import type { IsoDate } from "#engine/units";
import type { LocalDateTime, OfferedDates, PrintStamp, Row, ShopFacts } from "#papers/parts/facts";

/** Open quotes of a club as one paper: who rides what, one price, one day. */
export interface ClubQuoteData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly number: string;
  readonly name: string;
  readonly url: string;
  readonly urlNote: string;
  readonly madeAt: LocalDateTime;
  /** The first of the quotes' last days. */
  readonly validUntil: IsoDate;
  readonly buyerName: string;
  readonly palette: readonly Row[];
  readonly members: readonly {
    readonly skierName: string;
    readonly quoteNumber: string;
    readonly ski: string;
    readonly flexClass: string;
    readonly lettering: string | null;
    readonly totalCents: number;
  }[];
  readonly price: Price;
  readonly taxNote: string;
  readonly dates: OfferedDates;
  readonly howToAccept: readonly string[];
  readonly cancellation: readonly Row[];
  readonly cautions: readonly string[];
}

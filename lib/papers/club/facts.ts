/** What an offer to a club is about. */
import type { Destination, Price } from "#engine/pricing";
import type { IsoDate } from "#engine/units";
import type { LocalDateTime, PrintStamp, ShopFacts, TermFacts } from "#papers/parts/facts";
import type { RangeFacts } from "#papers/parts/told-shares";

export interface ClubMemberFacts {
  readonly skierName: string;
  readonly quoteNumber: string;
  /** Model and length, as quoted. */
  readonly ski: string;
  readonly flexClass: string;
  readonly lettering: string | null;
  readonly totalCents: number;
}

export interface ClubQuoteFacts extends TermFacts {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly number: string;
  readonly name: string;
  readonly url: string;
  readonly madeAt: LocalDateTime;
  /** The first of the quotes' last days. */
  readonly validUntil: IsoDate;
  readonly buyerName: string;
  /** Colours and graphic by their names. */
  readonly palette: {
    readonly left: string;
    readonly right: string;
    readonly graphic: string;
    readonly destination: Destination;
  };
  readonly members: readonly ClubMemberFacts[];
  readonly price: Price;
  /** Half and nine tenths of all runs have the last of the pairs ready by these. */
  readonly dates: RangeFacts;
}

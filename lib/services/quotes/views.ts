import type { PartialAnswers, SheetChoices } from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import type { TypedMeasures } from "#engine/fit";
import type { Price, PriceComparison } from "#engine/pricing";
import type { ClubId, Instant, IsoDate, OrderId, PairId, QuoteId, SheetId } from "#engine/units";
import type { FrozenFit } from "#schemas/stored/index";
import type { FlagAck } from "#services/sheets/views";
import type { CustomerView, DateRange, EventView } from "#shop/names/views";
import type { QuoteState } from "#shop/order/views";

export type { FrozenFit } from "#schemas/stored/index";

/** `expired` is an open quote after its last day; `replaced` one with a newer revision. */

export interface QuoteView {
  readonly quoteId: QuoteId;
  /** As people say it: r2 from the second revision on. */
  readonly number: string;
  readonly revision: number;
  readonly state: QuoteState;
  readonly version: number;
  readonly sheetId: SheetId;
  readonly customer: CustomerView;
  /** Of a club order: who rides it. */
  readonly club: { readonly clubId: ClubId; readonly skierName: string } | null;
  readonly answers: PartialAnswers;
  readonly choices: SheetChoices;
  readonly typed: TypedMeasures;
  readonly spec: PairSpec;
  readonly specHash: string;
  readonly price: Price;
  readonly releaseHash: string;
  readonly engineVersion: string;
  readonly fit: FrozenFit;
  readonly flagAcks: readonly FlagAck[];
  readonly dateRange: DateRange;
  /** What makes these skis the customer's own, in words; decides which withdrawal notice fits. */
  readonly customerSpecified: readonly string[];
  readonly validUntil: Instant;
  /** The last day on which it may be accepted, in the shop's zone. */
  readonly validUntilDay: IsoDate;
  readonly createdAt: Instant;
  readonly createdBy: string;
  readonly replaces: { readonly quoteId: QuoteId; readonly number: string } | null;
  readonly replacedBy: { readonly quoteId: QuoteId; readonly number: string } | null;
  readonly changeRequest: string | null;
  readonly withdrawn: string | null;
  readonly honoured: { readonly by: string; readonly reason: string; readonly until: Instant } | null;
  readonly order: { readonly orderId: OrderId; readonly number: string; readonly pairIds: readonly PairId[] } | null;
  /** Uses a price book that is no longer the current one. */
  readonly onOldBook: boolean;
  readonly history: readonly EventView[];
}

/** What a page showed of a sheet when a quote was asked for; null is what it did not show. */
export interface QuoteSeen {
  /** The sheet's, as the page knew it. */
  readonly version: number;
  readonly spec: PairSpec | null;
  readonly totalCents: number | null;
  readonly dates: { readonly p50: string; readonly p90: string } | null;
}

/** Paths: choices.KEY, price, date. */
export interface SeenDifference {
  readonly path: string;
  readonly seen: unknown;
  readonly now: unknown;
}

export interface MadeQuote {
  readonly quote: QuoteView;
  /** The skier's private token for this quote, told once. */
  readonly token: string;
}

export interface QuoteRow {
  readonly quoteId: QuoteId;
  readonly number: string;
  readonly state: QuoteState;
  readonly customerName: string;
  readonly summary: string;
  readonly totalCents: number;
  readonly priceBook: string;
  readonly onOldBook: boolean;
  readonly createdAt: Instant;
  readonly validUntilDay: IsoDate;
  readonly changeRequested: boolean;
}

export interface RepriceOffer {
  readonly quoteId: QuoteId;
  readonly number: string;
  readonly before: Price;
  readonly after: Price;
  readonly comparison: PriceComparison;
  readonly dateRange: DateRange;
  /** Why it cannot be made again as it stands (an option gone, a rule changed); empty when it can. */
  readonly blockedBy: readonly { readonly code: string; readonly [parameter: string]: unknown }[];
}

/** The quote became this order. `token` opens the skier's pages of the order and its pairs; it is told once. */
export interface AcceptedQuote {
  readonly orderId: OrderId;
  readonly orderNumber: string;
  /** Whether it has a place: somebody of the shop knows who buys. */
  readonly isConfirmed: boolean;
  readonly token: string;
  readonly pairs: readonly { readonly pairId: PairId; readonly serial: string }[];
  readonly depositCents: number;
}

import type { SoldFor } from "#engine/floor";
import type { Price } from "#engine/pricing";
import type { ClubId, Instant, IsoDate, OrderId, PairId, QuoteId, SheetId } from "#engine/units";
import type { ClubPalette } from "#schemas/stored/index";
import type { SheetState } from "#services/sheets/views";
import type { CustomerView, DateRange } from "#shop/names/views";
import type { QuoteState } from "#shop/order/views";

export type { ClubPalette } from "#schemas/stored/index";

export interface ClubQuote {
  readonly quoteId: QuoteId;
  readonly number: string;
  readonly state: QuoteState;
  readonly totalCents: number;
  /** "Midlow 95, 178 cm" */
  readonly ski: string;
  readonly flexClassLabel: string;
  readonly mould: string;
  readonly lettering: string | null;
  /** Base or house graphic are not the club's. */
  readonly leavesPalette: boolean;
  readonly validUntilDay: IsoDate;
  /** What makes this pair its skier's own, in words. */
  readonly customerSpecified: readonly string[];
  /** What its cautions depend on. */
  readonly soldFor: SoldFor;
}

export interface ClubPair {
  readonly pairId: PairId;
  readonly serial: string;
  readonly orderId: OrderId;
  readonly orderNumber: string;
  readonly state: string;
  readonly proofNeeded: boolean;
  readonly proofState: string;
}

/** One skier of a club, from the first answers to the pair. */
export interface ClubMember {
  readonly sheetId: SheetId;
  readonly skierName: string;
  readonly sheetState: SheetState;
  /** The latest revision. */
  readonly quote: ClubQuote | null;
  readonly pair: ClubPair | null;
}

/** Neighbouring press starts of the club's pairs with one mould. */
export interface ClubPressGroup {
  readonly mould: string;
  readonly press: string;
  readonly from: Instant;
  readonly serials: readonly string[];
}

export interface ClubRow {
  readonly clubId: ClubId;
  /** "C-21" */
  readonly number: string;
  readonly name: string;
  readonly customerName: string;
  readonly skiers: number;
  readonly quoted: number;
  readonly ordered: number;
  readonly wantedOn: IsoDate | null;
  readonly createdAt: Instant;
}

export interface ClubView {
  readonly clubId: ClubId;
  readonly number: string;
  readonly name: string;
  readonly customer: CustomerView;
  readonly palette: ClubPalette;
  readonly wantedOn: IsoDate | null;
  readonly members: readonly ClubMember[];
  /** Of the quotes that were asked for, else of all that can be accepted; null without one, or when they cannot go together. */
  readonly open: {
    readonly quoteIds: readonly QuoteId[];
    /** The last day on which all of them can be accepted. */
    readonly validUntilDay: IsoDate;
    readonly price: Price;
    /** When the last of them is ready. */
    readonly dateRange: DateRange;
    /** Nine of ten times all are ready by the day they want; null without such a day. */
    readonly keepsWish: boolean | null;
  } | null;
  /** What was asked for and cannot be accepted here now: the skier's name, or the id itself where the club knows none. */
  readonly leftOut: readonly string[];
  /** Empty for who may not read the queue. */
  readonly press: readonly ClubPressGroup[];
  readonly orders: readonly { readonly orderId: OrderId; readonly number: string }[];
  readonly createdAt: Instant;
  readonly createdBy: string;
}

/** What an order confirmation prints. */
import type { Price } from "#engine/pricing";
import type { IsoDate } from "#engine/units";
import type { LocalDateTime, PrintStamp, Row, ShopFacts } from "#papers/parts/facts";

/** A date as it is promised at the hour of the print: a range, or one day. */
export type PromiseFact = (
  | { readonly class: "estimate"; readonly from: IsoDate; readonly to: IsoDate }
  | { readonly class: "promise"; readonly on: IsoDate }
  | { readonly class: "hard-date"; readonly on: IsoDate; readonly planB: string }
) & {
  /** What is still missing before the clock starts. */
  readonly waitingFor: readonly string[];
  /** Something that went wrong with its place; null as a rule. */
  readonly note: string | null;
};

/** The frozen price and what has been paid on it. */
export interface ConfirmedMoney {
  readonly price: Price;
  readonly taxNote: string;
  readonly deposit: { readonly cents: number; readonly on: IsoDate; readonly how: string } | null;
  /** The fee of a hard date, tax in. */
  readonly rush: { readonly cents: number; readonly isPaid: boolean } | null;
  readonly totalCents: number;
  readonly paidCents: number;
  readonly openCents: number;
  readonly cancellation: readonly Row[];
}

export interface OrderConfirmationData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly orderNumber: string;
  readonly url: string;
  readonly urlNote: string;
  /** One as a rule; one for each pair of an order that a club placed. */
  readonly quotes: readonly string[];
  readonly club: string | null;
  readonly customerName: string;
  readonly acceptedBy: string;
  readonly acceptedAt: LocalDateTime;
  readonly acceptedHow: string;
  readonly pairs: readonly {
    readonly serial: string;
    readonly skierName: string;
    readonly revision: number;
    readonly specification: readonly Row[];
    readonly specHash: string;
  }[];
  /** Null on a copy without prices, for somebody who is given the pair. */
  readonly money: ConfirmedMoney | null;
  readonly promise: PromiseFact;
  readonly changeCutOffs: readonly Row[];
  readonly notices: readonly string[];
  readonly cautions: readonly string[];
}

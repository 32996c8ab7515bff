/** What an order confirmation is about: the order as accepted and since changed, dates and money as they stand. */
import type { BuildCatalog, PairSpec } from "#engine/configuration";
import type { ClockStartCondition, SpecificationPart, StationId } from "#engine/floor";
import type { Price } from "#engine/pricing";
import type { IsoDate } from "#engine/units";
import type { LocalDateTime, PrintStamp, ShopFacts, SkiPictures, TermFacts } from "#papers/parts/facts";
import type { RangeFacts } from "#papers/parts/told-shares";

export interface ConfirmedPairFacts {
  readonly serial: string;
  readonly skierName: string;
  readonly revision: number;
  readonly spec: PairSpec;
  /** Of a picture of the skier's own, while the shop has it. */
  readonly pictures: SkiPictures | null;
  /** The one that the pair is built by. */
  readonly catalog: BuildCatalog;
  readonly specHash: string;
}

/** The frozen price and what has been paid on it. */
export interface MoneyFacts {
  readonly price: Price;
  readonly deposit: { readonly cents: number; readonly on: IsoDate; readonly method: string } | null;
  /** The fee of a hard date, tax in. */
  readonly rush: { readonly cents: number; readonly isPaid: boolean } | null;
  readonly totalCents: number;
  readonly paidCents: number;
  readonly openCents: number;
}

/** A date as it is promised at the hour of the print: a range, or one day. */
export type PromiseFacts = (
  | ({ readonly class: "estimate" } & RangeFacts)
  | { readonly class: "promise"; readonly on: IsoDate }
  | { readonly class: "hard-date"; readonly on: IsoDate; readonly planB: string }
) & {
  /** What is still missing before the clock starts. */
  readonly waitingFor: readonly ClockStartCondition[];
  /** Why it has no place in the queue: given up, or nobody is known to stand behind it yet; null as a rule. */
  readonly slotLost: "hold-lapsed" | "proof-late" | "unconfirmed" | null;
};

/** Until when one part of the specification may still be changed, pair by pair. */
export interface CutOffFacts {
  readonly part: SpecificationPart;
  /** Absent: until the pair is shipped. */
  readonly closesAt?: { readonly station: StationId; readonly label: string };
  readonly pairs: readonly {
    readonly serial: string;
    readonly state: "open" | "closed" | "shipped";
  }[];
}

export interface OrderFacts extends TermFacts {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly orderNumber: string;
  /** What its code opens: the customer's own page. */
  readonly url: string;
  /** One as a rule; one for each pair of an order that a club placed. */
  readonly quotes: readonly string[];
  readonly club: { readonly number: string; readonly name: string } | null;
  readonly customerName: string;
  readonly acceptedBy: string;
  readonly acceptedAt: LocalDateTime;
  readonly acceptedHow: "online" | "phone" | "counter";
  readonly pairs: readonly ConfirmedPairFacts[];
  /** Null on a copy without prices, for somebody who is given the pair. */
  readonly money: MoneyFacts | null;
  readonly promise: PromiseFacts;
  readonly cutOffs: readonly CutOffFacts[];
  /** What was made to the customer's own specification, and the notices of the release for both cases. */
  readonly customerSpecified: readonly string[];
  readonly notices: {
    readonly chosenFromOptions: string;
    /** With a place for `{items}`. */
    readonly madeToSpecification: string;
    readonly delay: string;
    readonly warranty: string;
  };
}

import type { OrderState, PaymentState, PromiseClass, ProofIssueState, ProofState } from "#engine/floor";

export type { OrderState, PromiseClass, ProofState, ShownQuoteState as QuoteState } from "#engine/floor";

import type { PairSpec } from "#engine/configuration";
import type {
  CancellationStage,
  ClockStartCondition,
  EditConsequence,
  SoldFor,
  SpecificationPart,
} from "#engine/floor";
import type { Price, PriceComparison } from "#engine/pricing";
import type { PairLook } from "#engine/scene";
import type { ArtworkId, ClubId, Instant, IsoDate, OrderId, PairId, ProofId, QuoteId } from "#engine/units";
import type { OrderMoney } from "#shop/money/views";
import type { CustomerView, DateRange, EventView } from "#shop/names/views";

/** By what staff book or a skier chooses; what a payment service says by itself is booked as its own. */
export type DepositMethod = "pay-later" | "bank-transfer" | "counter" | "demo-card";
export type BookedMethod = DepositMethod | "payment-service";

/** Of an order that nobody is known to stand behind: it has no place yet. */
export interface UnconfirmedView {
  /** Where the code was sent, told in part; null where there is no address. */
  readonly sentTo: string | null;
  /** Until when the newest code can be typed; null when none can. */
  readonly codeUntil: Instant | null;
}

export interface PaymentView {
  readonly kind: "deposit" | "rush" | "balance" | "refund";
  readonly state: PaymentState;
  readonly cents: number;
  readonly method: BookedMethod | null;
  readonly reference: string | null;
  readonly at: Instant;
}

/** The four things a clock start waits for, for one pair. */
export interface GatesView {
  readonly deposit: Instant | null;
  readonly specificationLock: Instant | null;
  readonly proof: Instant | null | "not-needed";
  readonly rights: Instant | null | "not-needed";
  readonly waitingFor: readonly ClockStartCondition[];
}

export interface ProofView {
  readonly proofId: ProofId;
  readonly revision: number;
  readonly state: ProofIssueState;
  readonly specHash: string;
  readonly note: string | null;
  readonly issuedAt: Instant;
  readonly answeredAt: Instant | null;
  readonly answeredBy: string | null;
}

/** A proof that waits for its answer, as the page shows it. */
export interface ProofToAnswer {
  readonly look: PairLook;
  /** Nothing that must be seen lies nearer to the edge. */
  readonly safeMm: number;
  /** The last day of it; null where no place in the queue depends on it. */
  readonly answerBy: IsoDate | null;
  /** The order waits for the answer, has lost its place, has none yet, or is being built. */
  readonly meanwhile: "waiting" | "slot-lost" | "unconfirmed" | "building";
}

export interface OrderPairView {
  readonly pairId: PairId;
  readonly serial: string;
  readonly state: OrderState;
  readonly version: number;
  readonly revision: number;
  readonly spec: PairSpec;
  readonly specHash: string;
  readonly modelName: string;
  readonly skierName: string;
  readonly gates: GatesView;
  readonly proofState: ProofState;
  readonly proofs: readonly ProofView[];
  readonly artworkId: ArtworkId | null;
  readonly rights: RightsStatement | null;
  /** How far the floor is: done of all operations. */
  readonly doneOperations: number;
  readonly allOperations: number;
  /** A press start that stands fast. */
  readonly pressSlot: { readonly at: Instant; readonly press: string } | null;
}

export interface AllowedSale {
  readonly code: string;
  /** The flag's words; null where what stopped it had none of its own. */
  readonly message: string | null;
  readonly by: string;
  readonly reason: string;
}

export interface OrderView {
  readonly orderId: OrderId;
  readonly number: string;
  readonly state: OrderState;
  readonly version: number;
  readonly quote: { readonly quoteId: QuoteId; readonly number: string };
  readonly customer: CustomerView;
  /** Ordered together with others. */
  readonly club: { readonly clubId: ClubId; readonly number: string; readonly name: string } | null;
  readonly price: Price;
  readonly releaseHash: string;
  readonly acceptedAt: Instant;
  readonly acceptedBy: string;
  readonly acceptedHow: string;
  /** By what it is known that somebody stands behind it; null while it has no place for that. */
  readonly confirmed: {
    readonly at: Instant;
    readonly how: "desk" | "staff" | "money" | "letter" | "earlier";
    readonly by: string;
  } | null;
  readonly customerSpecified: readonly string[];
  readonly promiseClass: PromiseClass;
  /** What was told at acceptance and after; the promise, once fixed, stands in promisedOn. */
  readonly estimate: DateRange;
  readonly promisedOn: IsoDate | null;
  /** Its place in the queue was given up. */
  readonly slotLost: { readonly at: Instant; readonly reason: "hold-lapsed" | "proof-late" } | null;
  readonly hardDate: { readonly planB: string; readonly rushCents: number } | null;
  readonly clockStartedAt: Instant | null;
  readonly waitingFor: readonly ClockStartCondition[];
  readonly payments: readonly PaymentView[];
  readonly money: OrderMoney;
  readonly pairs: readonly OrderPairView[];
  /** Flags that had stopped the sale, and why an owner let it go on. */
  readonly allowed: readonly AllowedSale[];
  /** What cancelling now would keep and give back. */
  readonly ifCancelled: {
    readonly stage: CancellationStage;
    readonly keepCents: number;
    readonly refundCents: number;
  } | null;
  readonly cancelled: {
    readonly at: Instant;
    readonly reason: string;
    readonly feeCents: number;
    readonly refundCents: number;
  } | null;
  readonly history: readonly EventView[];
}

export interface OrderRow {
  readonly orderId: OrderId;
  readonly number: string;
  readonly state: OrderState;
  readonly customerName: string;
  readonly summary: string;
  readonly totalCents: number;
  readonly acceptedAt: Instant;
  readonly promisedOn: IsoDate | null;
  readonly waitingFor: readonly ClockStartCondition[];
  readonly serials: readonly string[];
  readonly isConfirmed: boolean;
}

/** What an edit would do, before anybody agrees to it, and what it did afterwards. */
export interface EditPreview {
  readonly pairId: PairId;
  readonly parts: readonly SpecificationPart[];
  readonly consequences: readonly EditConsequence[];
  readonly before: { readonly spec: PairSpec; readonly price: Price };
  readonly after: { readonly spec: PairSpec; readonly price: Price };
  readonly comparison: PriceComparison;
  /** Work already done that the edit would throw away; only an owner may approve it. */
  readonly lostCents: number;
  readonly promise: { readonly before: IsoDate | null; readonly after: DateRange } | null;
}

/** The skier's own page: no other person's data, no shop internals. */
export interface ProgressView {
  readonly pairId: PairId;
  readonly serial: string;
  readonly orderId: OrderId;
  readonly orderNumber: string;
  readonly state: OrderState;
  readonly modelName: string;
  readonly lengthCm: number;
  readonly flexClassLabel: string;
  readonly skierName: string;
  readonly spec: PairSpec;
  /** Of the catalogue that it was sold from. */
  readonly releaseHash: string;
  readonly steps: readonly {
    readonly key: string;
    readonly label: string;
    readonly state: "done" | "now" | "to-come";
    readonly at: Instant | null;
  }[];
  readonly gates: GatesView;
  readonly deposit: {
    readonly cents: number;
    readonly paidAt: Instant | null;
    readonly method: BookedMethod | null;
  };
  /** Null once it is confirmed. */
  readonly unconfirmed: UnconfirmedView | null;
  readonly money: OrderMoney;
  readonly promiseClass: PromiseClass;
  readonly dateRange: DateRange;
  readonly promisedOn: IsoDate | null;
  readonly slotLost: OrderView["slotLost"];
  readonly dateHistory: readonly {
    readonly at: Instant;
    readonly on: IsoDate;
    readonly from: IsoDate;
    readonly to: IsoDate;
    readonly why: string;
  }[];
  readonly proof: ProofView | null;
  /** Null where no proof waits for its answer. */
  readonly proofToAnswer: ProofToAnswer | null;
  readonly artworkId: ArtworkId | null;
  readonly rights: RightsStatement | null;
  readonly customerSpecified: readonly string[];
  /** What its cautions depend on. */
  readonly soldFor: SoldFor;
}

/** What the skier states about a picture. The shop keeps it with the order. */
export interface RightsStatement {
  readonly basis: "own" | "licensed" | "public-domain" | "commissioned";
  readonly name: string;
  readonly at: Instant;
}

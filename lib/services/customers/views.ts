import type { CustomerId, Instant, OrderId, QuoteId } from "#engine/units";
import type { RetentionKind, RetentionRules } from "#schemas/stored/index";
import type { CustomerView, EventView } from "#shop/names/views";
import type { OrderState, QuoteState } from "#shop/order/views";

/** Somebody else with the same number. */
export interface Namesake {
  readonly customerId: CustomerId;
  readonly name: string;
  readonly email: string | null;
}

export interface CustomerRow extends CustomerView {
  readonly orders: number;
  readonly quotes: number;
  /** Nobody of the shop has spoken with them: the row is a guest's word. */
  readonly isGuestsWord: boolean;
  readonly sameNumber: readonly Namesake[];
}

export interface CustomerPageView extends CustomerView {
  readonly isGuestsWord: boolean;
  readonly erasedAt: Instant | null;
  /** Who they turned out to be. */
  readonly mergedInto: Namesake | null;
  /** Who turned out to be them. */
  readonly merged: readonly Namesake[];
  readonly sameNumber: readonly Namesake[];
  readonly orders: readonly { readonly orderId: OrderId; readonly number: string; readonly state: OrderState }[];
  readonly quotes: readonly {
    readonly quoteId: QuoteId;
    readonly number: string;
    readonly state: QuoteState;
    /** In the words of the quote itself. */
    readonly name: string;
  }[];
  readonly history: readonly EventView[];
}

export interface PersonFile {
  readonly fileName: string;
  /** JSON. */
  readonly text: string;
}

export interface ErasedPerson {
  readonly orders: readonly string[];
  readonly quotes: number;
  readonly sheets: number;
  readonly pictures: number;
}

/** What a rule would forget today. */
export interface RetentionLine {
  readonly kind: RetentionKind;
  readonly days: number | null;
  readonly count: number;
  /** The first of them, as people call them. */
  readonly first: readonly string[];
}

/** A place where a person can stand. */
export interface PlaceOfPersons {
  readonly place: string;
  readonly holds: "nothing" | "customer" | "staff" | "words";
}

export interface RetentionView {
  /** Tables that can hold a person, with their columns, and files beside them. */
  readonly tables: readonly (PlaceOfPersons & { readonly columns: readonly string[] })[];
  readonly files: readonly PlaceOfPersons[];
  readonly rules: RetentionRules;
  readonly set: { readonly by: string; readonly at: Instant; readonly reason: string } | null;
  readonly lines: readonly RetentionLine[];
}

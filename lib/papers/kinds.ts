/** Every paper with its data. */
import type { BuildSheetData } from "#papers/build-sheet/facts";
import type { ClubQuoteData } from "#papers/club/facts";
import type { OrderConfirmationData } from "#papers/confirmation/facts";
import type { KitListData } from "#papers/kit-list/facts";
import type { LabelsData } from "#papers/labels/facts";
import type { ProofData } from "#papers/proof/facts";
import type { QuoteData } from "#papers/quote/facts";

export interface DocumentData {
  readonly "build-sheet": BuildSheetData;
  readonly "kit-list": KitListData;
  readonly labels: LabelsData;
  readonly quote: QuoteData;
  readonly "club-quote": ClubQuoteData;
  readonly "order-confirmation": OrderConfirmationData;
  readonly proof: ProofData;
}

export type DocumentKind = keyof DocumentData;

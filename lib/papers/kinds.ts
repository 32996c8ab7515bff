/** Every paper with its data. */
import type { BuildSheetData } from "#papers/build-sheet/printed";
import type { ClubQuoteData } from "#papers/club/compose";
import type { OrderConfirmationData } from "#papers/confirmation/compose";
import type { KitListData } from "#papers/kit-list/compose";
import type { LabelsData } from "#papers/labels/compose";
import type { ProofData } from "#papers/proof/compose";
import type { QuoteData } from "#papers/quote/compose";

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

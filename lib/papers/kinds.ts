/** Every paper with its data. */
import type { BuildSheetData } from "./build-sheet/facts";
import type { ClubQuoteData } from "./club/facts";
import type { OrderConfirmationData } from "./confirmation/facts";
import type { KitListData } from "./kit-list/facts";
import type { LabelsData } from "./labels/facts";
import type { ProofData } from "./proof/facts";
import type { QuoteData } from "./quote/facts";

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

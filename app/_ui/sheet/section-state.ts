/** What a section's form comes back with, where it was sent without scripts. */
import type { DateRange, SeenDifference } from "#services/views";
import type { FormSection } from "./section-fields";

export interface SectionState {
  readonly section: FormSection | null;
  /** What was not taken, as typed, by the name of its control. */
  readonly typed: Readonly<Record<string, string>>;
  /** Why, in words, by the name of its control; "" is the section as a whole. */
  readonly wrong: Readonly<Record<string, string>>;
  /** The same where a field knows it: its path, what was sent and why not. */
  readonly refused: Readonly<Record<string, { readonly value: unknown; readonly message: string }>>;
  readonly dateRange: DateRange | null;
}

export const newSection: SectionState = { section: null, typed: {}, wrong: {}, refused: {}, dateRange: null };

/** What came of asking for a quote. */
export interface QuoteReply {
  readonly ok: boolean;
  readonly message?: string;
  /** What is not what the page showed. */
  readonly differences?: readonly SeenDifference[];
}

export type SectionAction = (previous: SectionState, form: FormData) => Promise<SectionState>;
export type QuoteAction = (previous: QuoteReply | null, form: FormData) => Promise<QuoteReply>;

import type { QuoteState } from "./views";

export interface QuoteStanding {
  readonly state: string;
  readonly validUntil: Date;
  readonly honouredUntil: Date | null;
  readonly next: unknown;
}

/** What the stored state means at this instant: an open quote past its last day has expired. */
export function quoteStateOf(quote: QuoteStanding, now: Date): QuoteState {
  if (quote.state === "accepted") return "accepted";
  if (quote.state === "withdrawn") return quote.next === null ? "withdrawn" : "replaced";
  return acceptableUntil(quote) > now ? "open" : "expired";
}

/** Half-open: the first instant at which it can no longer be accepted. */
export function acceptableUntil(quote: QuoteStanding): Date {
  const { validUntil, honouredUntil } = quote;
  return honouredUntil !== null && honouredUntil > validUntil ? honouredUntil : validUntil;
}

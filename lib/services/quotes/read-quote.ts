import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { Page, QuoteId, QuoteRow, QuoteState, QuoteView } from "../views";

export interface ListQuotesInput {
  readonly state?: QuoteState;
  readonly onOldBook?: boolean;
  readonly text?: string;
  readonly page?: number;
}

/** A quote as it was made; its skier and staff who may see prices. */
export async function readQuote(ctx: Context, input: { readonly quoteId: QuoteId }): Promise<Outcome<QuoteView>> {
  throw new Error(`readQuote is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Quotes, newest first; staff who may see prices. */
export async function listQuotes(ctx: Context, input: ListQuotesInput): Promise<Outcome<Page<QuoteRow>>> {
  throw new Error(`listQuotes is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { MadeQuote, QuoteId, RepriceOffer } from "../views";

/** The same spec on today's price book and queue, line by line beside the old. */
export async function previewReprice(
  ctx: Context,
  input: { readonly quoteId: QuoteId },
): Promise<Outcome<RepriceOffer>> {
  throw new Error(`previewReprice is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** Makes that offer the quote's next revision; the old one is replaced. */
export async function repriceQuote(ctx: Context, input: { readonly quoteId: QuoteId }): Promise<Outcome<MadeQuote>> {
  throw new Error(`repriceQuote is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

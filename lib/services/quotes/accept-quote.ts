import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { AcceptedQuote, QuoteId } from "../views";

export interface AcceptQuoteInput {
  readonly quoteId: QuoteId;
  readonly how: "online" | "phone" | "counter";
  /** Who says yes, in their own words. */
  readonly name: string;
}

/** Makes the order, exactly once. Refuses `quote-already-accepted` (orderId, orderNumber), `quote-expired` (quoteId; see previewReprice), `quote-not-open`. */
export async function acceptQuote(ctx: Context, input: AcceptQuoteInput): Promise<Outcome<AcceptedQuote>> {
  throw new Error(`acceptQuote is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

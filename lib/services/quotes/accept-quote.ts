import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { AcceptedQuote, OrderId, QuoteId } from "../views";

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

/** Who holds the quote's link, or staff, may open the order it became: a new link, told once. Refuses `not-accepted`. */
export async function orderLinkOfQuote(
  ctx: Context,
  input: { readonly quoteId: QuoteId },
): Promise<Outcome<{ readonly orderId: OrderId; readonly token: string }>> {
  throw new Error(`orderLinkOfQuote is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

import type { Outcome } from "../../engine/units";
import type { Context } from "../context";
import type { QuoteId, QuoteView } from "../views";

/** Takes an open quote back. */
export async function withdrawQuote(
  ctx: Context,
  input: { readonly quoteId: QuoteId; readonly reason: string },
): Promise<Outcome<QuoteView>> {
  throw new Error(`withdrawQuote is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** The skier asks for a change; the desk sees it. */
export async function requestChange(
  ctx: Context,
  input: { readonly quoteId: QuoteId; readonly note: string },
): Promise<Outcome<QuoteView>> {
  throw new Error(`requestChange is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

/** The owner stands by an expired quote's price for some days more, with a reason. */
export async function honourOldPrice(
  ctx: Context,
  input: { readonly quoteId: QuoteId; readonly reason: string },
): Promise<Outcome<QuoteView>> {
  throw new Error(`honourOldPrice is not built yet for ${ctx.actor.kind} ${typeof input}`);
}

import { issueLink } from "#auth";
import { recordEvents } from "#data/events";
import { markQuoteAccepted } from "#data/quotes";
import { transaction } from "#data/transaction";
import type { OrderId, QuoteId } from "#engine/units";
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { moveState } from "#services/move";
import { eventOf } from "#services/record";
import { catalogOf } from "#shop/catalogue/current";
import { quoteStateOf } from "#shop/order/quote-state";
import { rangeOf } from "#shop/queue/range";
import { notOpen } from "./change-quote";
import { findQuote } from "./find-quote";
import { makeOrder } from "./make-order";
import { rightsOfSpec } from "./rights";
import type { AcceptedQuote } from "./views";

export interface AcceptQuoteInput {
  readonly quoteId: QuoteId;
  readonly how: "online" | "phone" | "counter";
  /** Who says yes, in their own words. */
  readonly name: string;
}

/**
 * Makes the order, exactly once: order, pair, two skis, route, strips, deposit request and record in one transaction. Where
 * nobody of the shop knows who buys, it takes no place and no strips until that is known (see confirmOrder).
 * Refuses `quote-already-accepted` (orderId, orderNumber), `quote-expired` (see previewReprice), `quote-not-open`,
 * `name-missing`. Every attempt stands in the quote's history.
 */
export async function acceptQuote(ctx: Context, input: AcceptQuoteInput): Promise<Outcome<AcceptedQuote>> {
  const found = await findQuote(ctx, ctx.db, "quote.accept", input.quoteId);
  if (!found.ok) return found;
  const name = input.name.trim();
  if (name === "") return refuse({ code: "name-missing", path: "name" });
  const quote = found.value;
  if (quoteStateOf(quote, ctx.now) !== "open") return heldBack(ctx, notOpen(quote, ctx.now));
  const within = await spend(ctx, "accept");
  if (!within.ok) return within;
  const catalog = await catalogOf(ctx.db, quote);
  const estimate = await rangeOf(ctx, quote.spec);
  const rights = await rightsOfSpec(ctx.db, quote.spec);
  const made = await transaction(ctx.db, async (tx) => {
    const isFirst = await moveState(tx, { kind: "quote", from: quote.state, to: "accepted" }, () =>
      markQuoteAccepted(tx, quote.id, ctx.now),
    );
    if (!isFirst) return null;
    const clubId = quote.clubId;
    return makeOrder(ctx, tx, { members: [{ quote, catalog, rights }], clubId, estimate, name, how: input.how });
  });
  if (made !== null) return accept(made);
  const now = await findQuote(ctx, ctx.db, "quote.accept", input.quoteId);
  return now.ok ? heldBack(ctx, notOpen(now.value, ctx.now)) : now;
}

/** Who holds the quote's link, or staff, may open the order it became: a new link, told once. Refuses `not-accepted`. */
export async function orderLinkOfQuote(
  ctx: Context,
  input: { readonly quoteId: QuoteId },
): Promise<Outcome<{ readonly orderId: OrderId; readonly token: string }>> {
  const found = await findQuote(ctx, ctx.db, "quote.read", input.quoteId);
  if (!found.ok) return found;
  const order = found.value.pair?.order;
  if (order === undefined) return refuse({ code: "not-accepted", quoteId: input.quoteId });
  const within = await spend(ctx, "question");
  if (!within.ok) return within;
  const token = await issueLink(ctx.db, { kind: "order", id: order.id }, { id: ctx.newId(), now: ctx.now });
  return accept({ orderId: order.id, token });
}

/** Says why not, and leaves the attempt in the record. */
async function heldBack(ctx: Context, refusal: Refusal): Promise<Outcome<AcceptedQuote>> {
  const subject = { kind: "quote", id: String(refusal.quoteId) } as const;
  const { code, orderId } = refusal;
  await recordEvents(ctx.db, [
    eventOf(ctx, "acceptance-refused", subject, {
      code,
      orderId: typeof orderId === "string" ? orderId : null,
    }),
  ]);
  return refuse(refusal);
}

import { endLinksSoon, permit } from "#auth";
import type { Tx } from "#data/client";
import { recordEvents } from "#data/events";
import { queueMessages } from "#data/outbox";
import { markQuoteWithdrawn, noteOnOpenQuote, type QuoteNote, type QuoteRecord } from "#data/quotes";
import { transaction } from "#data/transaction";
import type { QuoteId } from "#engine/units";
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import type { EventFacts } from "#schemas/events";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { moveState } from "#services/move";
import { eventWith, isOwner, messageOf, nameOf } from "#services/record";
import { currentCatalog } from "#shop/catalogue/current";
import { orderNumber } from "#shop/names/numbers";
import { quoteStateOf } from "#shop/order/quote-state";
import { addDays, shopDay, startOfShopDay } from "#shop/time/shop-time";
import { findQuote } from "./find-quote";
import { quoteView } from "./view";
import type { QuoteView } from "./views";

/** How long an owner's word on an expired price holds. Shop practice, no source. */
const honouredDays = 7;
const noteLength = { min: 1, max: 2000 } as const;

/** Takes an open or expired quote back. Refuses `quote-already-accepted`, `quote-not-open`, `reason-length`. */
export async function withdrawQuote(
  ctx: Context,
  input: { readonly quoteId: QuoteId; readonly reason: string },
): Promise<Outcome<QuoteView>> {
  const found = await findQuote(ctx, ctx.db, "quote.withdraw", input.quoteId);
  if (!found.ok) return found;
  const reason = checkNote(input.reason, "reason");
  if (!reason.ok) return reason;
  const { state } = found.value;
  if (state !== "open") return refuse(notOpen(found.value, ctx.now));
  return change(ctx, found.value, { kind: "quote-withdrawn", data: { reason: reason.value } }, (tx) =>
    moveState(tx, { kind: "quote", from: state, to: "withdrawn", reason: reason.value }, () =>
      markQuoteWithdrawn(tx, input.quoteId, reason.value),
    ),
  );
}

/** The skier asks for a change; the desk sees it. */
export async function requestChange(
  ctx: Context,
  input: { readonly quoteId: QuoteId; readonly note: string },
): Promise<Outcome<QuoteView>> {
  const found = await findQuote(ctx, ctx.db, "quote.accept", input.quoteId);
  if (!found.ok) return found;
  const note = checkNote(input.note, "note");
  if (!note.ok) return note;
  const within = await spend(ctx, "question");
  if (!within.ok) return within;
  return change(ctx, found.value, { kind: "quote-change-requested", data: { note: note.value } }, (tx) =>
    noteOnOpenQuote(tx, input.quoteId, { changeRequest: note.value }),
  );
}

/** The owner stands by an expired quote's price for some days more. Refuses `owner-needed`, `quote-not-expired`. */
export async function honourOldPrice(
  ctx: Context,
  input: { readonly quoteId: QuoteId; readonly reason: string },
): Promise<Outcome<QuoteView>> {
  const found = await findQuote(ctx, ctx.db, "quote.reprice", input.quoteId);
  if (!found.ok) return found;
  const owner = permit(ctx.actor, "pair.override");
  if (!owner.ok || !isOwner(ctx.actor)) return refuse({ code: "owner-needed", action: "honour-old-price" });
  const reason = checkNote(input.reason, "reason");
  if (!reason.ok) return reason;
  const state = quoteStateOf(found.value, ctx.now);
  if (state === "open") return refuse({ code: "quote-not-expired", quoteId: input.quoteId });
  const zone = currentCatalog().shop.timeZone;
  const honouredUntil = startOfShopDay(addDays(shopDay(ctx.now, zone), honouredDays + 1), zone);
  const note: QuoteNote = { honouredUntil, honouredBy: nameOf(ctx.actor), honourReason: reason.value };
  const data = { reason: reason.value, until: honouredUntil.toISOString() };
  return change(ctx, found.value, { kind: "old-price-honoured", data }, (tx) =>
    noteOnOpenQuote(tx, input.quoteId, note),
  );
}

async function change(
  ctx: Context,
  quote: QuoteRecord,
  facts: EventFacts,
  move: (tx: Tx) => Promise<boolean>,
): Promise<Outcome<QuoteView>> {
  const subject = { kind: "quote", id: quote.id } as const;
  return transaction(ctx.db, async (tx) => {
    const isMoved = await move(tx);
    const now = await findQuote(ctx, tx, "quote.read", quote.id);
    if (!now.ok) return now;
    if (!isMoved) return refuse(notOpen(now.value, ctx.now));
    await recordEvents(tx, [eventWith(ctx, subject, facts)]);
    if (facts.kind === "quote-withdrawn") await endLinksSoon(tx, subject, ctx.now);
    if (facts.kind === "quote-change-requested") {
      await queueMessages(tx, [messageOf(ctx, facts.kind, "desk", subject, facts.data)]);
    }
    return accept(await quoteView(tx, now.value, ctx.now));
  });
}

/** Why a quote can no longer be moved: who was first, or what it has become. */
export function notOpen(quote: QuoteRecord, now: Date): Refusal {
  if (quote.pair !== null) {
    const { order } = quote.pair;
    return {
      code: "quote-already-accepted",
      quoteId: quote.id,
      orderId: order.id,
      orderNumber: orderNumber(order),
    };
  }
  const state = quoteStateOf(quote, now);
  if (state === "expired")
    return { code: "quote-expired", quoteId: quote.id, validUntil: quote.validUntil.toISOString() };
  return { code: "quote-not-open", quoteId: quote.id, state, replacedBy: quote.next?.id ?? null };
}

function checkNote(text: string, path: string): Outcome<string> {
  const trimmed = text.trim();
  const isFitting = trimmed.length >= noteLength.min && trimmed.length <= noteLength.max;
  return isFitting ? accept(trimmed) : refuse({ code: "reason-length", path, length: trimmed.length, ...noteLength });
}

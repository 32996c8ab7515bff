import { permit } from "#auth";
import { listQuoteRecords } from "#data/quotes";
import type { QuoteId } from "#engine/units";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { pageOf, sliceOf } from "#services/paging";
import { currentBook } from "#shop/catalogue/current";
import { numberIn } from "#shop/names/numbers";
import type { Page } from "#shop/names/views";
import type { QuoteState } from "#shop/order/views";
import { findQuote } from "./find-quote";
import { quoteRow, quoteView } from "./view";
import type { QuoteRow, QuoteView } from "./views";

export interface ListQuotesInput {
  readonly state?: QuoteState;
  /** Open quotes that still stand on an earlier price book. */
  readonly onOldBook?: boolean;
  /** Part of a name, or a number. */
  readonly text?: string;
  /** From 1. */
  readonly page?: number;
}

/** A quote as it was made; its skier and staff who may see prices. */
export async function readQuote(ctx: Context, input: { readonly quoteId: QuoteId }): Promise<Outcome<QuoteView>> {
  const found = await findQuote(ctx, ctx.db, "quote.read", input.quoteId);
  if (!found.ok) return found;
  return accept(await quoteView(ctx.db, found.value, ctx.now));
}

/** Quotes, newest first; staff who may see prices. */
export async function listQuotes(ctx: Context, input: ListQuotesInput): Promise<Outcome<Page<QuoteRow>>> {
  const allowed = permit(ctx.actor, "quote.list");
  if (!allowed.ok) return allowed;
  const text = input.text?.trim();
  const number = text ? numberIn(text, "Q") : undefined;
  const state = input.onOldBook ? "open" : input.state;
  const found = await listQuoteRecords(
    ctx.db,
    {
      now: ctx.now,
      ...(state === undefined ? {} : { state }),
      ...(input.onOldBook ? { notPriceBook: currentBook(ctx.now) } : {}),
      ...(text ? { text } : {}),
      ...(number === undefined ? {} : { number }),
    },
    sliceOf(input.page),
  );
  return accept(pageOf(found, (record) => quoteRow(record, ctx.now), input.page));
}

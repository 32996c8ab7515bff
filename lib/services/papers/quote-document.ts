import { config } from "#config";
import { soldFor } from "#engine/floor";
import type { QuoteId } from "#engine/units";
import { accept, type Outcome } from "#engine/units";
import { composeQuote, type Paper, type QuoteFacts } from "#papers";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { ownPictures } from "#services/graphics/own-pictures";
import { drawInTurn } from "#services/papers/draw-in-turn";
import { linkForPaper } from "#services/people/links";
import { findQuote } from "#services/quotes/find-quote";
import { quoteView } from "#services/quotes/view";
import type { QuoteView } from "#services/quotes/views";
import { catalogOf, type FrozenCatalog } from "#shop/catalogue/current";
import type { DocumentBytes } from "#shop/names/views";
import { shopClock } from "#shop/time/shop-time";
import { pdf, shopFacts } from "./pair-documents";
import { termFacts } from "./terms";

/**
 * The quote as PDF, exactly as frozen. Its code opens the quote's private page by the link it is asked for through, or by one
 * made for this paper when the shop prints it.
 */
export async function quoteDocument(
  ctx: Context,
  input: { readonly quoteId: QuoteId; readonly paper: Paper; readonly token?: string },
): Promise<Outcome<DocumentBytes>> {
  const found = await findQuote(ctx, ctx.db, "quote.read", input.quoteId);
  if (!found.ok) return found;
  const within = await spend(ctx, "drawing");
  if (!within.ok) return within;
  const view = await quoteView(ctx.db, found.value, ctx.now);
  const catalog = await catalogOf(ctx.db, { releaseHash: view.releaseHash, priceBook: view.price.priceBook });
  const { publicOrigin } = config();
  const token = input.token ?? (await linkForPaper(ctx, { kind: "quote", id: view.quoteId }));
  const pictures = await ownPictures(ctx.db, view.spec, catalog.engine.build);
  const data = composeQuote({ ...quoteFacts(view, catalog, `${publicOrigin}/quote/${token}`), pictures });
  return accept(pdf(await drawInTurn(ctx, "quote", data, input.paper), `${view.number.replace(" ", "-")}.pdf`));
}

function quoteFacts(quote: QuoteView, { released, engine }: FrozenCatalog, url: string): Omit<QuoteFacts, "pictures"> {
  const { shop } = released;
  const madeAt = shopClock(new Date(quote.createdAt), shop.timeZone);
  return {
    shop: shopFacts(shop),
    stamp: { printedAt: madeAt, revision: quote.revision, specHash: quote.specHash },
    number: quote.number,
    url,
    madeAt,
    validUntil: quote.validUntilDay,
    seller: quote.createdBy === "skier" ? shop.name : quote.createdBy,
    skierName: quote.club?.skierName ?? quote.customer.name,
    buyerName: quote.club !== null || quote.answers.buyerIsSkier === false ? quote.customer.name : null,
    answers: quote.answers,
    typed: quote.typed,
    fit: quote.fit,
    flagAcks: quote.flagAcks,
    catalog: engine.build,
    spec: quote.spec,
    price: quote.price,
    dates: { from: quote.dateRange.p50, to: quote.dateRange.p90, shares: quote.dateRange.shares },
    customerSpecified: quote.customerSpecified,
    ...termFacts(shop, "quote", [soldFor(quote.spec, engine.build.models, quote.answers)]),
  };
}

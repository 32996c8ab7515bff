import { sha256Of } from "#catalog";
import { config } from "#config";
import type { QuoteRecord } from "#data/quotes";
import { soldFor } from "#engine/floor";
import type { ClubId, QuoteId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import { type ClubQuoteFacts, composeClubQuote, type Paper, type TermFacts } from "#papers";
import { readClub } from "#services/clubs/read-club";
import type { ClubView } from "#services/clubs/views";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { drawInTurn } from "#services/papers/draw-in-turn";
import { linkForPaper } from "#services/people/links";
import { findQuote } from "#services/quotes/find-quote";
import { catalogOf, currentCatalog } from "#shop/catalogue/current";
import type { DocumentBytes } from "#shop/names/views";
import { shopClock } from "#shop/time/shop-time";
import { pdf, shopFacts } from "./pair-documents";
import { termFacts } from "./terms";

/** A club's open quotes as one paper, whose code opens the club's page by a link of its own. Refuses `not-found`, and `nothing-open` when none can be accepted together. */
export async function clubDocument(
  ctx: Context,
  input: { readonly clubId: ClubId; readonly paper: Paper },
): Promise<Outcome<DocumentBytes>> {
  const read = await readClub(ctx, input);
  if (!read.ok) return read;
  const { open } = read.value;
  if (open === null) return refuse({ code: "nothing-open-together", clubId: input.clubId });
  const terms = await termsOfNewest(ctx, open.quoteIds);
  if (!terms.ok) return terms;
  const within = await spend(ctx, "drawing");
  if (!within.ok) return within;
  const token = await linkForPaper(ctx, { kind: "club", id: input.clubId });
  const url = `${config().publicOrigin}/club/${token}`;
  const data = composeClubQuote(clubFacts(read.value, open, terms.value, { url, now: ctx.now }));
  return accept(pdf(await drawInTurn(ctx, "club-quote", data, input.paper), `${read.value.number}-offer.pdf`));
}

/** What was agreed to with the latest of the quotes: the terms of its own release; cautions as all of them need. */
async function termsOfNewest(ctx: Context, quoteIds: readonly QuoteId[]): Promise<Outcome<TermFacts>> {
  const quotes: QuoteRecord[] = [];
  for (const quoteId of quoteIds) {
    const found = await findQuote(ctx, ctx.db, "quote.read", quoteId);
    if (!found.ok) return found;
    quotes.push(found.value);
  }
  const newest = quotes.reduce((last, quote) => (quote.createdAt > last.createdAt ? quote : last));
  const { released } = await catalogOf(ctx.db, { releaseHash: newest.releaseHash, priceBook: newest.price.priceBook });
  const soldTo = quotes.map(({ spec, answers }) => soldFor(spec, released.build.models, answers));
  return accept(termFacts(released.shop, "club-quote", soldTo));
}

function clubFacts(
  club: ClubView,
  open: NonNullable<ClubView["open"]>,
  terms: TermFacts,
  { url, now }: { readonly url: string; readonly now: Date },
): ClubQuoteFacts {
  const { shop, build } = currentCatalog();
  const { palette } = club;
  const colour = (id: string) => build.baseColours.find((each) => each.id === id)?.label ?? id;
  const at = shopClock(now, shop.timeZone);
  return {
    shop: shopFacts(shop),
    stamp: { printedAt: at, revision: 1, specHash: sha256Of(open.quoteIds) },
    number: club.number,
    name: club.name,
    url,
    madeAt: at,
    validUntil: open.validUntilDay,
    buyerName: club.customer.name,
    palette: {
      left: colour(palette.base.left),
      right: colour(palette.base.right),
      graphic: build.houseGraphics.find(({ id }) => id === palette.house)?.label ?? palette.house,
      destination: palette.destination,
    },
    members: club.members.flatMap(({ skierName, quote }) =>
      quote !== null && open.quoteIds.includes(quote.quoteId) ? [memberFacts(skierName, quote)] : [],
    ),
    price: open.price,
    dates: { from: open.dateRange.p50, to: open.dateRange.p90, shares: open.dateRange.shares },
    ...terms,
  };
}

function memberFacts(
  skierName: string,
  { number, ski, flexClassLabel, lettering, totalCents }: NonNullable<ClubView["members"][number]["quote"]>,
): ClubQuoteFacts["members"][number] {
  return { skierName, quoteNumber: number, ski, flexClass: flexClassLabel, lettering, totalCents };
}

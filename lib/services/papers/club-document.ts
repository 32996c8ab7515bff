import { sha256Of } from "#catalog";
import { config } from "#config";
import sheetWords from "#content/copy/sheet.json";
import type { ClubId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import { type ClubQuoteData, type Paper, renderDocument } from "#papers";
import { readClub } from "#services/clubs/read-club";
import type { ClubView } from "#services/clubs/views";
import type { Context } from "#services/context";
import { currentCatalog } from "#shop/catalogue/current";
import type { DocumentBytes } from "#shop/names/views";
import { shopClock } from "#shop/time/shop-time";
import { pdf, shopFacts } from "./pair-documents";
import { cancellationRows, cautionsOf, clockStartTerms, taxNote } from "./terms";

/** A club's open quotes as one paper. Refuses `not-found`, and `nothing-open` when none can be accepted together. */
export async function clubDocument(
  ctx: Context,
  input: { readonly clubId: ClubId; readonly paper: Paper },
): Promise<Outcome<DocumentBytes>> {
  const read = await readClub(ctx, input);
  if (!read.ok) return read;
  const { open } = read.value;
  if (open === null) return refuse({ code: "nothing-open-together", clubId: input.clubId });
  const data = clubData(read.value, open, ctx.now);
  return accept(pdf(await renderDocument("club-quote", data, input.paper), `${read.value.number}-offer.pdf`));
}

function clubData(club: ClubView, open: NonNullable<ClubView["open"]>, now: Date): ClubQuoteData {
  const { shop } = currentCatalog();
  const members = club.members.flatMap(({ skierName, quote }) =>
    quote !== null && open.quoteIds.includes(quote.quoteId) ? [{ skierName, quote }] : [],
  );
  const at = shopClock(now, shop.timeZone);
  return {
    shop: shopFacts(shop),
    stamp: { printedAt: at, revision: 1, specHash: sha256Of(open.quoteIds) },
    number: club.number,
    name: club.name,
    url: `${config().publicOrigin}/shop/clubs/${club.clubId}`,
    urlNote: "the shop's page of this offer",
    madeAt: at,
    validUntil: open.validUntilDay,
    buyerName: club.customer.name,
    palette: paletteRows(club),
    members: members.map(({ skierName, quote }) => ({
      skierName,
      quoteNumber: quote.number,
      ski: quote.ski,
      flexClass: quote.flexClassLabel,
      lettering: quote.lettering,
      totalCents: quote.totalCents,
    })),
    price: open.price,
    taxNote: taxNote(open.price),
    dates: {
      from: open.dateRange.p50,
      to: open.dateRange.p90,
      confidence: "nine times out of ten all of these pairs are ready by the later date",
      startsWhen: clockStartTerms,
    },
    howToAccept: [
      `Call ${shop.phone} and name ${club.number}: all of these pairs, or some of them`,
      "Pairs that are not ordered now stay open until their own quote ends",
    ],
    cancellation: cancellationRows(shop),
    cautions: cautionsOf(shop),
  };
}

function paletteRows({ palette }: ClubView): ClubQuoteData["palette"] {
  const { baseColours, houseGraphics } = currentCatalog().build;
  const colour = (id: string) => baseColours.find((each) => each.id === id)?.label ?? id;
  const { left, right } = palette.base;
  return [
    { label: "Bases", value: left === right ? colour(left) : `${colour(left)}, ${colour(right)}` },
    { label: "Graphic", value: houseGraphics.find(({ id }) => id === palette.house)?.label ?? palette.house },
    { label: "Delivery", value: sheetWords.price.destinations[palette.destination] },
  ];
}

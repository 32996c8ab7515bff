import { permit } from "#auth";
import { type ClubRecord, clubById, recentClubs } from "#data/clubs";
import { translated } from "#data/transaction";
import { soldFor } from "#engine/floor";
import { joinPrices } from "#engine/pricing";
import type { ClubId } from "#engine/units";
import { accept, type IsoDate, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { readable } from "#services/readable";
import { currentCatalog } from "#shop/catalogue/current";
import { mouldOf } from "#shop/floor/facts";
import { customerView } from "#shop/names/common-view";
import { clubNumber, orderNumber, quoteNumber } from "#shop/names/numbers";
import { skiText } from "#shop/names/ski-text";
import { customerSpecified } from "#shop/order/customer-specified";
import { acceptableUntil, quoteStateOf } from "#shop/order/quote-state";
import { rangeOfPairs } from "#shop/queue/range";
import { addDays, shopDay } from "#shop/time/shop-time";
import { leavesPalette } from "./palette";
import { clubPress } from "./press";
import type { ClubMember, ClubPair, ClubPalette, ClubQuote, ClubRow, ClubView } from "./views";

const most = 100;

type Quote = ClubRecord["quotes"][number];

/** Newest first, at most a hundred. */
export async function listClubs(ctx: Context): Promise<Outcome<readonly ClubRow[]>> {
  const allowed = permit(ctx.actor, "club.work");
  if (!allowed.ok) return allowed;
  return accept((await translated(recentClubs(ctx.db, most))).map(clubRow));
}

interface ReadClubInput {
  readonly clubId: ClubId;
  /** The quotes whose price and day are asked for; absent: all that are open. */
  readonly quoteIds?: readonly string[];
}

/**
 * A club with one price and one day for what can be accepted of it. Refuses `not-found`; of quotes that are asked for
 * `nothing-chosen` without one, `none-of-chosen-open` when none of them can be accepted now, and `club-deliveries-differ`; those
 * that cannot be accepted among others are left out and named.
 */
export async function readClub(ctx: Context, input: ReadClubInput): Promise<Outcome<ClubView>> {
  const allowed = permit(ctx.actor, "club.read", { kind: "club", id: input.clubId });
  if (!allowed.ok) return allowed;
  const read = await readable(clubById(ctx.db, input.clubId));
  if (!read.ok) return read;
  const club = read.value;
  if (club === null) return refuse({ code: "not-found", what: "club", id: input.clubId });
  const asked = input.quoteIds;
  if (asked?.length === 0) return refuse({ code: "nothing-chosen", path: "quoteIds" });
  const quotes = openQuotes(club, ctx.now);
  const chosen = asked === undefined ? quotes : quotes.filter(({ id }) => asked.includes(id));
  if (asked !== undefined && chosen.length === 0) return refuse({ code: "none-of-chosen-open", path: "quoteIds" });
  const places = [...new Set(chosen.map(({ price }) => price.destination))];
  if (asked !== undefined && places.length > 1) {
    return refuse({ code: "club-deliveries-differ", path: "quoteIds", destinations: places });
  }
  const members = membersOf(club, ctx.now);
  const serials = new Map(members.flatMap(({ pair }) => (pair === null ? [] : [[pair.pairId, pair.serial] as const])));
  return accept({
    clubId: club.id,
    number: clubNumber(club),
    name: club.name,
    customer: customerView(club.customer),
    palette: club.palette,
    wantedOn: club.wantedOn,
    members,
    open: await openTogether(ctx, club, chosen),
    leftOut: leftOut(club, asked ?? [], chosen),
    press: permit(ctx.actor, "queue.read").ok ? await clubPress(ctx, serials) : [],
    orders: club.orders.map((order) => ({ orderId: order.id, number: orderNumber(order) })),
    createdAt: club.createdAt.toISOString(),
    createdBy: club.createdByName,
  });
}

function clubRow(club: ClubRecord): ClubRow {
  const latest = club.sheets.flatMap(({ id }) => latestQuote(club, id) ?? []);
  return {
    clubId: club.id,
    number: clubNumber(club),
    name: club.name,
    customerName: club.customer.name,
    skiers: club.sheets.length,
    quoted: latest.length,
    ordered: latest.filter(({ pair }) => pair !== null).length,
    wantedOn: club.wantedOn,
    createdAt: club.createdAt.toISOString(),
  };
}

const latestQuote = (club: ClubRecord, sheetId: string): Quote | undefined =>
  club.quotes.filter((quote) => quote.sheetId === sheetId).at(-1);

function membersOf(club: ClubRecord, now: Date): readonly ClubMember[] {
  const palette = club.palette;
  return club.sheets.map(({ id, state, skierName }) => {
    const quote = latestQuote(club, id);
    return {
      sheetId: id,
      skierName: skierName ?? "",
      sheetState: state,
      quote: quote === undefined ? null : clubQuote(quote, palette, now),
      pair: quote?.pair ? clubPair(quote.pair) : null,
    };
  });
}

function clubQuote(quote: Quote, palette: ClubPalette, now: Date): ClubQuote {
  const { build, shop } = currentCatalog();
  const spec = quote.spec;
  return {
    quoteId: quote.id,
    number: quoteNumber(quote),
    state: quoteStateOf(quote, now),
    totalCents: quote.totalCents,
    ski: skiText(spec),
    flexClassLabel: quote.fit.flexClassLabel,
    mould: quote.pair?.mould ?? mouldOf(spec, build),
    lettering: spec.graphic.text?.text ?? null,
    leavesPalette: leavesPalette(spec, palette),
    validUntilDay: validUntilDay(quote, shop.timeZone),
    customerSpecified: customerSpecified(spec),
    soldFor: soldFor(spec, build.models, quote.answers),
  };
}

const validUntilDay = (quote: Quote, timeZone: string): IsoDate =>
  addDays(shopDay(acceptableUntil(quote), timeZone), -1);

function clubPair(pair: NonNullable<Quote["pair"]>): ClubPair {
  return {
    pairId: pair.id,
    serial: pair.serial,
    orderId: pair.order.id,
    orderNumber: orderNumber(pair.order),
    state: pair.state,
    proofNeeded: pair.proofNeeded,
    proofState: pair.proofState,
  };
}

/** The latest quote of every skier that can be accepted now. */
const openQuotes = (club: ClubRecord, now: Date): readonly Quote[] =>
  club.sheets.flatMap(({ id }) => {
    const quote = latestQuote(club, id);
    return quote !== undefined && quoteStateOf(quote, now) === "open" ? [quote] : [];
  });

function leftOut(club: ClubRecord, asked: readonly string[], chosen: readonly Quote[]): readonly string[] {
  const missing = [...new Set(asked)].filter((id) => !chosen.some((quote) => quote.id === id));
  const names = missing.map((id) => {
    const sheetId = club.quotes.find((quote) => quote.id === id)?.sheetId;
    return club.sheets.find((sheet) => sheet.id === sheetId)?.skierName ?? id;
  });
  return [...new Set(names)];
}

/** Some open quotes as one: their price, and one day for all of them from the queue as it stands. */
async function openTogether(ctx: Context, club: ClubRecord, open: readonly Quote[]): Promise<ClubView["open"]> {
  const { timeZone } = currentCatalog().shop;
  const prices = open.map(({ price }) => price);
  const [validUntil] = open.map((quote) => validUntilDay(quote, timeZone)).sort();
  if (validUntil === undefined || new Set(prices.map(({ destination }) => destination)).size > 1) return null;
  const dateRange = await rangeOfPairs(
    ctx,
    open.map(({ spec }) => ({ spec: spec })),
  );
  return {
    quoteIds: open.map(({ id }) => id),
    validUntilDay: validUntil,
    price: joinPrices(prices),
    dateRange,
    keepsWish: club.wantedOn === null ? null : dateRange.p90 <= club.wantedOn,
  };
}

import { permit } from "#auth";
import { clubById } from "#data/clubs";
import { recordEvents } from "#data/events";
import { markQuoteAccepted, type QuoteRecord, quoteById } from "#data/quotes";
import { transaction } from "#data/transaction";
import type { ClubId, QuoteId } from "#engine/units";
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { moveState } from "#services/move";
import { notOpen } from "#services/quotes/change-quote";
import { makeOrder, type OrderMember } from "#services/quotes/make-order";
import { rightsOfSpec } from "#services/quotes/rights";
import type { AcceptedQuote } from "#services/quotes/views";
import { eventOf } from "#services/record";
import { catalogOf } from "#shop/catalogue/current";
import { mouldOf } from "#shop/floor/facts";
import { quoteNumber } from "#shop/names/numbers";
import { quoteStateOf } from "#shop/order/quote-state";
import { rangeOfPairs } from "#shop/queue/range";

export interface AcceptClubInput {
  readonly clubId: ClubId;
  /** Those that are wanted; the others stay open. */
  readonly quoteIds: readonly QuoteId[];
  /** Those whose price and day as one were shown to whoever says yes. */
  readonly pricedIds: readonly string[];
  readonly how: "online" | "phone" | "counter";
  /** Who says yes. */
  readonly name: string;
}

/** Somebody else accepted one of the quotes first: nothing of this order may stay. */
class LostRace extends Error {}

/**
 * One order from some of a club's quotes, exactly once: a pair, two skis and a route for each. Refuses `nothing-chosen`,
 * `name-missing`, `not-found`, `club-deliveries-differ`, `other-pairs-priced` when price and day were shown for others than those
 * chosen, and whatever a single quote is refused for; then nothing is accepted.
 */
export async function acceptClub(ctx: Context, input: AcceptClubInput): Promise<Outcome<AcceptedQuote>> {
  const allowed = permit(ctx.actor, "club.accept", { kind: "club", id: input.clubId });
  if (!allowed.ok) return allowed;
  const name = input.name.trim();
  if (name === "") return refuse({ code: "name-missing", path: "name" });
  const ids = [...new Set(input.quoteIds)];
  if (ids.length === 0) return refuse({ code: "nothing-chosen", path: "quoteIds" });
  const club = await clubById(ctx.db, input.clubId);
  if (club === null) return refuse({ code: "not-found", what: "club", id: input.clubId });
  const quotes: QuoteRecord[] = [];
  for (const id of ids) {
    const quote = await quoteById(ctx.db, id);
    if (quote === null || quote.clubId !== club.id) return refuse({ code: "not-found", what: "quote", id });
    quotes.push(quote);
  }
  const refusal = whyNotTogether(quotes, ctx.now);
  if (refusal !== null) return refuse(refusal);
  const priced = new Set(input.pricedIds);
  if (priced.size !== ids.length || ids.some((id) => !priced.has(id))) {
    return refuse({ code: "other-pairs-priced", path: "quoteIds" });
  }
  const within = await spend(ctx, "accept");
  if (!within.ok) return within;
  const members: OrderMember[] = [];
  for (const quote of quotes) {
    const spec = quote.spec;
    members.push({ quote, catalog: await catalogOf(ctx.db, quote), rights: await rightsOfSpec(ctx.db, spec) });
  }
  // They are promised for one day, so their serials decide who is kitted first: one mould after the other.
  members.sort((a, b) => (mouldOfMember(a) < mouldOfMember(b) ? -1 : mouldOfMember(a) > mouldOfMember(b) ? 1 : 0));
  const estimate = await rangeOfPairs(
    ctx,
    quotes.map(({ spec }) => ({ spec: spec })),
  );
  try {
    return await transaction(ctx.db, async (tx) => {
      for (const { id, state } of quotes) {
        const isFirst = await moveState(tx, { kind: "quote", from: state, to: "accepted" }, () =>
          markQuoteAccepted(tx, id, ctx.now),
        );
        if (!isFirst) throw new LostRace();
      }
      const made = await makeOrder(ctx, tx, { members, clubId: club.id, estimate, name, how: input.how });
      const data = { orderNumber: made.orderNumber, quotes: quotes.map(quoteNumber), of: club.sheets.length };
      await recordEvents(tx, [eventOf(ctx, "club-accepted", { kind: "club", id: club.id }, data)]);
      return accept(made);
    });
  } catch (error) {
    if (!(error instanceof LostRace)) throw error;
    const now = await Promise.all(ids.map((id) => quoteById(ctx.db, id)));
    const lost = now.find((quote) => quote !== null && quoteStateOf(quote, ctx.now) !== "open");
    return refuse(lost == null ? { code: "not-found", what: "quote", id: ids[0] } : notOpen(lost, ctx.now));
  }
}

const mouldOfMember = ({ quote, catalog }: OrderMember) => mouldOf(quote.spec, catalog.engine.build);

/** Null when all are open and go to one place. */
export function whyNotTogether(quotes: readonly QuoteRecord[], now: Date): Refusal | null {
  const closed = quotes.find((quote) => quoteStateOf(quote, now) !== "open");
  if (closed !== undefined) return notOpen(closed, now);
  const places = [...new Set(quotes.map(({ price }) => price.destination))];
  return places.length > 1 ? { code: "club-deliveries-differ", path: "quoteIds", destinations: places } : null;
}

import { sha256Of } from "#catalog";
import { buyerFrom } from "#data/buyer";
import { recordEvents } from "#data/events";
import { lockName } from "#data/locks";
import { markQuoteWithdrawn, type QuoteRecord } from "#data/quotes";
import { transaction } from "#data/transaction";
import { type Assessment, assessSheet, type EngineCatalog, type SheetChoices } from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import { comparePrices, type Price } from "#engine/pricing";
import type { QuoteId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { moveState } from "#services/move";
import { eventOf, nameOf } from "#services/record";
import { stoppedBy } from "#services/sheets/assess-sheet";
import { currentCatalog, engineOn, engineVersion } from "#shop/catalogue/current";
import { quoteNumber } from "#shop/names/numbers";
import type { DateRange } from "#shop/names/views";
import { rangeOf } from "#shop/queue/range";
import { notOpen } from "./change-quote";
import { insertAndTell } from "./create-quote";
import { findQuote } from "./find-quote";
import { frozenFit, validUntil } from "./freeze";
import { rightsOfSpec } from "./rights";
import type { MadeQuote, RepriceOffer } from "./views";

/** The same spec on today's price book and queue, line by line beside the old. Changes nothing. */
export async function previewReprice(
  ctx: Context,
  input: { readonly quoteId: QuoteId },
): Promise<Outcome<RepriceOffer>> {
  const found = await findQuote(ctx, ctx.db, "quote.reprice", input.quoteId);
  if (!found.ok) return found;
  const offer = await workOut(ctx, found.value, engineOn(ctx.now));
  if (!offer.ok) return offer;
  const { before, price, dateRange, blockedBy } = offer.value;
  return accept({
    quoteId: input.quoteId,
    number: quoteNumber(found.value),
    before,
    after: price,
    comparison: comparePrices(before, price),
    dateRange,
    blockedBy,
  });
}

/** Makes that offer the quote's next revision; the old one is replaced. Refuses as createQuote does. */
export async function repriceQuote(ctx: Context, input: { readonly quoteId: QuoteId }): Promise<Outcome<MadeQuote>> {
  const found = await findQuote(ctx, ctx.db, "quote.reprice", input.quoteId);
  if (!found.ok) return found;
  const within = await spend(ctx, "quote");
  if (!within.ok) return within;
  const old = found.value;
  const catalog = currentCatalog();
  const engine = engineOn(ctx.now, catalog);
  const offer = await workOut(ctx, old, engine);
  if (!offer.ok) return offer;
  const { assessment, spec, price, dateRange, blockedBy } = offer.value;
  if (blockedBy.length > 0) return refuse({ code: "sale-blocked", by: blockedBy });
  return transaction(ctx.db, async (tx) => {
    await lockName(tx, `quote ${old.number}`);
    const reason = "re-priced";
    const isReplaced = await moveState(tx, { kind: "quote", from: old.state, to: "withdrawn", reason }, () =>
      markQuoteWithdrawn(tx, old.id, reason),
    );
    if (!isReplaced) {
      const now = await findQuote(ctx, tx, "quote.reprice", old.id);
      return now.ok ? refuse(notOpen(now.value, ctx.now)) : now;
    }
    const made = await insertAndTell(ctx, tx, catalog, {
      number: old.number,
      revision: old.revision + 1,
      replacesId: old.id,
      sheetId: old.sheetId,
      clubId: old.clubId,
      skierName: old.skierName,
      customerId: old.customerId,
      buyer: buyerFrom(old.customer),
      contactBy: old.contactBy,
      answers: old.answers,
      typed: old.typed,
      choices: old.choices,
      spec,
      specHash: sha256Of(spec),
      price,
      priceBook: price.priceBook,
      totalCents: price.totalCents,
      fit: frozenFit(assessment, engine),
      flagAcks: old.flagAcks,
      dateRange,
      engineVersion,
      validUntil: validUntil(ctx.now, engine.priceBook.quoteValidDays, catalog.shop.timeZone),
      createdAt: ctx.now,
      createdByName: nameOf(ctx.actor),
    });
    const subject = { kind: "quote", id: old.id } as const;
    await recordEvents(tx, [eventOf(ctx, "quote-repriced", subject, { by: made.quote.quoteId })]);
    return accept(made);
  });
}

interface WorkedOffer {
  readonly before: Price;
  readonly assessment: Assessment;
  readonly spec: PairSpec;
  readonly price: Price;
  readonly dateRange: DateRange;
  readonly blockedBy: RepriceOffer["blockedBy"];
}

/** The frozen spec (not the recommendation of today) under today's rules and prices. */
async function workOut(ctx: Context, quote: QuoteRecord, engine: EngineCatalog): Promise<Outcome<WorkedOffer>> {
  if (quote.state !== "open") return refuse(notOpen(quote, ctx.now));
  const spec = quote.spec;
  const answers = {
    ...quote.answers,
    typed: quote.typed,
  };
  const rightsConfirmed = (await rightsOfSpec(ctx.db, spec)) !== null;
  const choices: SheetChoices = { ...quote.choices, ...spec };
  const assessment = assessSheet({ answers, choices, rightsConfirmed }, engine);
  const blockedBy = stoppedBy(assessment, quote.flagAcks);
  if (assessment.spec === null || assessment.price === null) return refuse({ code: "sale-blocked", by: blockedBy });
  return accept({
    before: quote.price,
    assessment,
    spec: assessment.spec,
    price: assessment.price,
    dateRange: await rangeOf(ctx, assessment.spec),
    blockedBy,
  });
}

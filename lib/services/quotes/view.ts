/** A quote's row as pages see it. */
import names from "#content/copy/names.json";
import type { Tx } from "#data/client";
import { eventsOf } from "#data/events";
import type { QuoteLineRecord, QuoteRecord } from "#data/quotes";
import { fill, type QuoteId } from "#engine/units";
import { currentBook, currentCatalog } from "#shop/catalogue/current";
import { customerView, eventView } from "#shop/names/common-view";
import { orderNumber, quoteNumber } from "#shop/names/numbers";
import { customerSpecified } from "#shop/order/customer-specified";
import { acceptableUntil, quoteStateOf } from "#shop/order/quote-state";
import { addDays, shopDay } from "#shop/time/shop-time";
import type { QuoteRow, QuoteView } from "./views";

export async function quoteView(client: Tx, record: QuoteRecord, now: Date): Promise<QuoteView> {
  const events = await eventsOf(client, "quote", [record.id]);
  const zone = currentCatalog().shop.timeZone;
  const spec = record.spec;
  const state = quoteStateOf(record, now);
  return {
    quoteId: record.id,
    number: quoteNumber(record),
    revision: record.revision,
    state,
    version: record.version,
    sheetId: record.sheetId,
    customer: customerView(record.customer),
    club: record.clubId === null ? null : { clubId: record.clubId, skierName: record.skierName ?? "" },
    answers: record.answers,
    choices: record.choices,
    typed: record.typed,
    spec,
    specHash: record.specHash,
    price: record.price,
    releaseHash: record.releaseHash,
    engineVersion: record.engineVersion,
    fit: record.fit,
    flagAcks: record.flagAcks,
    dateRange: record.dateRange,
    customerSpecified: customerSpecified(spec),
    validUntil: acceptableUntil(record).toISOString(),
    validUntilDay: addDays(shopDay(acceptableUntil(record), zone), -1),
    createdAt: record.createdAt.toISOString(),
    createdBy: record.createdByName,
    replaces: neighbour(record.replaces),
    replacedBy: neighbour(record.next),
    changeRequest: record.changeRequest,
    withdrawn: state === "withdrawn" ? (record.withdrawReason ?? "") : null,
    honoured: honouredOf(record),
    order: orderOf(record),
    onOldBook: isOnOldBook(record, now),
    history: events.map(eventView),
  };
}

export function quoteRow(record: QuoteLineRecord, now: Date): QuoteRow {
  const zone = currentCatalog().shop.timeZone;
  const spec = record.spec;
  return {
    quoteId: record.id,
    number: quoteNumber(record),
    state: quoteStateOf(record, now),
    customerName: record.customer.name,
    summary: fill(names.ski, { model: record.fit.modelName, lengthCm: spec.lengthCm }),
    totalCents: record.totalCents,
    priceBook: record.priceBook,
    onOldBook: isOnOldBook(record, now),
    createdAt: record.createdAt.toISOString(),
    validUntilDay: addDays(shopDay(acceptableUntil(record), zone), -1),
    changeRequested: record.changeRequest !== null,
  };
}

function isOnOldBook(record: Pick<QuoteRecord, "state" | "priceBook">, now: Date): boolean {
  return record.state === "open" && record.priceBook !== currentBook(now);
}

function neighbour(quote: { readonly id: QuoteId; readonly number: number; readonly revision: number } | null) {
  return quote === null ? null : { quoteId: quote.id, number: quoteNumber(quote) };
}

function honouredOf(record: QuoteRecord): QuoteView["honoured"] {
  if (record.honouredUntil === null) return null;
  return {
    by: record.honouredBy ?? "",
    reason: record.honourReason ?? "",
    until: record.honouredUntil.toISOString(),
  };
}

function orderOf({ pair }: QuoteRecord): QuoteView["order"] {
  if (pair === null) return null;
  return { orderId: pair.order.id, number: orderNumber(pair.order), pairIds: [pair.id] };
}

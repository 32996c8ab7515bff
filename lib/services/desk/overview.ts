import { permit } from "#auth";
import names from "#content/copy/names.json";
import { searchCustomers } from "#data/customers";
import { listOrderRecords } from "#data/orders";
import { searchPairs } from "#data/pairs";
import { listQuoteRecords } from "#data/quotes";
import { countOpenSheets, listSheets, sheetsCalledBackBefore, sheetsUnderReview } from "#data/sheets";
import { unreadableRows } from "#data/unreadable";
import { accept, type Outcome } from "#engine/units";
import type { Context } from "#services/context";
import { queueBoardOf } from "#shop/board/board";
import type { DeskOverview, QueueBoard, SearchHit } from "#shop/board/views";
import { currentBook, currentCatalog } from "#shop/catalogue/current";
import { unreadableView } from "#shop/names/common-view";
import { numberIn, orderNumber, quoteNumber } from "#shop/names/numbers";
import { digitsToFind } from "#shop/names/phone";
import { quoteStateOf } from "#shop/order/quote-state";
import { addDays, shopDay, startOfShopDay } from "#shop/time/shop-time";

/** Days ahead in which an open quote's end is worth a call. Shop practice, no source. */
const expiringDays = 5;
const most = { skip: 0, take: 200 } as const;

/** What the desk must see this morning. */
export async function deskOverview(ctx: Context): Promise<Outcome<DeskOverview>> {
  const allowed = permit(ctx.actor, "call.work");
  if (!allowed.ok) return allowed;
  const zone = currentCatalog().shop.timeZone;
  const today = shopDay(ctx.now, zone);
  const endOfDay = startOfShopDay(addDays(today, 1), zone);
  const soon = startOfShopDay(addDays(today, expiringDays + 1), zone);
  const [drafts, callBacks, reviews, open, onOldBook, toConfirm, board, unreadable] = await Promise.all([
    countOpenSheets(ctx.db),
    sheetsCalledBackBefore(ctx.db, endOfDay),
    sheetsUnderReview(ctx.db),
    listQuoteRecords(ctx.db, { state: "open", now: ctx.now }, most),
    listQuoteRecords(ctx.db, { state: "open", notPriceBook: currentBook(ctx.now), now: ctx.now }, { skip: 0, take: 1 }),
    listOrderRecords(ctx.db, { unconfirmed: true }, { skip: 0, take: 1 }),
    queueBoardOf(ctx, 1),
    unreadableRows(ctx.db),
  ]);
  const expiring = open.rows.filter((quote) => quote.validUntil <= soon);
  const atRisk = board.pairs.filter((pair) => pair.slackDays !== null && pair.slackDays < 0);
  return accept({
    today,
    counts: {
      drafts,
      callBacksDue: callBacks.length,
      quotesOpen: open.total,
      quotesExpiringSoon: expiring.length,
      quotesOnOldBook: onOldBook.total,
      ordersToConfirm: toConfirm.total,
      ...waitingCounts(board),
      reviewsAsked: reviews.length,
      pairsInBuild: board.pairs.filter((pair) => pair.state === "building").length,
      promisesAtRisk: atRisk.length,
    },
    callBacks: callBacks.map((sheet) => ({
      sheetId: sheet.id,
      name: sheet.content.contact.name ?? null,
      phone: sheet.callBackPhone ?? "",
      at: sheet.callBackAt?.toISOString() ?? "",
      reason: sheet.callBackReason ?? "",
    })),
    reviews: reviews.map((sheet) => ({
      sheetId: sheet.id,
      name: sheet.content.contact.name ?? null,
      note: sheet.reviewNote ?? "",
      askedAt: sheet.reviewAskedAt?.toISOString() ?? "",
    })),
    quotesExpiring: expiring.map((quote) => ({
      quoteId: quote.id,
      number: quoteNumber(quote),
      name: quote.customer.name,
      validUntilDay: addDays(shopDay(quote.validUntil, zone), -1),
    })),
    waiting: board.waitingOn,
    atRisk,
    unreadable: [...board.unreadable, ...unreadable.map(unreadableView)],
  });
}

function waitingCounts({ waitingOn }: QueueBoard) {
  const waitFor = (condition: QueueBoard["waitingOn"][number]["waitingFor"][number]) =>
    waitingOn.filter((pair) => pair.waitingFor.includes(condition)).length;
  return { depositsWaiting: waitFor("deposit"), proofsWaiting: waitFor("proof"), rightsWaiting: waitFor("rights") };
}

const fewest = 2;
const top = { skip: 0, take: 10 } as const;

/** One search over names, phones, numbers and serials; makers find pairs only. */
export async function search(ctx: Context, input: { readonly text: string }): Promise<Outcome<readonly SearchHit[]>> {
  const forPairs = permit(ctx.actor, "pair.read");
  if (!forPairs.ok) return forPairs;
  const text = input.text.trim().slice(0, 120);
  if (text.length < fewest) return accept([]);
  const pairs = (await searchPairs(ctx.db, text)).map(
    (pair): SearchHit => ({
      kind: "pair",
      id: pair.id,
      title: pair.serial,
      detail: `${pair.mould}, ${pair.state}`,
    }),
  );
  if (!permit(ctx.actor, "search.everything").ok) return accept(pairs);
  return accept([...pairs, ...(await officeHits(ctx, text))]);
}

async function officeHits(ctx: Context, text: string): Promise<readonly SearchHit[]> {
  const digits = digitsToFind(text);
  const quoteNo = numberIn(text, "Q");
  const orderNo = numberIn(text, "O");
  const [quotes, orders, customers, sheets] = await Promise.all([
    listQuoteRecords(ctx.db, { text, now: ctx.now, ...(quoteNo === undefined ? {} : { number: quoteNo }) }, top),
    listOrderRecords(ctx.db, { text, ...(orderNo === undefined ? {} : { number: orderNo }) }, top),
    searchCustomers(ctx.db, text, digits),
    listSheets(ctx.db, { state: "open", text, digits }, top),
  ]);
  return [
    ...orders.rows.map(
      (order): SearchHit => ({
        kind: "order",
        id: order.id,
        title: orderNumber(order),
        detail: `${order.customer.name}, ${order.state}`,
      }),
    ),
    ...quotes.rows.map(
      (quote): SearchHit => ({
        kind: "quote",
        id: quote.id,
        title: quoteNumber(quote),
        detail: `${quote.customer.name}, ${quoteStateOf(quote, ctx.now)}`,
      }),
    ),
    ...sheets.rows.map(
      (sheet): SearchHit => ({
        kind: "sheet",
        id: sheet.id,
        title: sheet.content.contact.name ?? names.unnamedSheet,
        detail: sheet.content.contact.phone ?? sheet.channel,
      }),
    ),
    ...customers.map(
      (customer): SearchHit => ({
        kind: "customer",
        id: customer.id,
        title: customer.name,
        detail: customer.phone ?? customer.email ?? "",
      }),
    ),
  ];
}

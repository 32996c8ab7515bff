import { type ReleasedCatalog, sha256Of } from "#catalog";
import { config } from "#config";
import paperWords from "#content/copy/papers.json";
import promiseWords from "#content/copy/promises.json";
import sheetWords from "#content/copy/sheet.json";
import shopWords from "#content/copy/shop.json";
import skierWords from "#content/copy/skier.json";
import type { OrderRecord } from "#data/orders";
import { quoteById } from "#data/quotes";
import {
  closingStation,
  type EditRule,
  editAllowed,
  editRules,
  isOneOf,
  type Station,
  shippedStates,
} from "#engine/floor";
import type { OrderId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import {
  type ConfirmedMoney,
  type OrderConfirmationData,
  type Paper,
  type PromiseFact,
  readableSpec,
  renderDocument,
} from "#papers";
import type { Context } from "#services/context";
import { findOrder } from "#services/orders/find-order";
import { currentCatalog, releasedCatalog } from "#shop/catalogue/current";
import { floorCatalog } from "#shop/floor/recipe";
import { orderMoney } from "#shop/money/money";
import { clubNumber, orderNumber, quoteNumber } from "#shop/names/numbers";
import type { DocumentBytes } from "#shop/names/views";
import { orderClock } from "#shop/order/gate-facts";
import { slotLostView, startedStations } from "#shop/order/view";
import { shopClock, shopDay } from "#shop/time/shop-time";
import { pdf, shopFacts } from "./pair-documents";
import { cancellationRows, cautionsOf, taxNote } from "./terms";

const words = paperWords.confirmation;

export interface OrderDocumentInput {
  readonly orderId: OrderId;
  readonly paper: Paper;
  /** Of the link it is asked for through: its code opens the order's private page, else the shop's own. */
  readonly token?: string;
  /** A copy without any price, for somebody who is given the pair. */
  readonly isWithoutPrices?: boolean;
}

/**
 * The order confirmation as PDF: as accepted and since changed, with dates and money as they stand now. Refuses
 * `order-closed` once the order is cancelled.
 */
export async function orderDocument(ctx: Context, input: OrderDocumentInput): Promise<Outcome<DocumentBytes>> {
  const found = await findOrder(ctx, ctx.db, "order.read", input.orderId);
  if (!found.ok) return found;
  const order = found.value;
  if (order.state === "cancelled") return refuse({ code: "order-closed", state: order.state });
  const data = await confirmationData(ctx, order, input);
  const bytes = await renderDocument("order-confirmation", data, input.paper);
  return accept(pdf(bytes, `${data.orderNumber}-confirmation.pdf`));
}

async function confirmationData(
  ctx: Context,
  order: OrderRecord,
  { token, isWithoutPrices = false }: OrderDocumentInput,
): Promise<OrderConfirmationData> {
  const { shop } = currentCatalog();
  const sold = await catalogNamed(ctx, order.quote.releaseHash);
  const { publicOrigin } = config();
  const quotes: string[] = [];
  const pairs: OrderConfirmationData["pairs"][number][] = [];
  for (const pair of order.pairs) {
    const quote = await quoteById(ctx.db, pair.quoteId);
    if (quote !== null) quotes.push(quoteNumber(quote));
    const catalog = await catalogNamed(ctx, pair.releaseHash);
    const { serial, skierName, revision, specHash } = pair;
    const specification = readableSpec(pair.spec, catalog.build);
    pairs.push({ serial, skierName, revision, specification, specHash });
  }
  return {
    shop: shopFacts(shop),
    stamp: {
      printedAt: shopClock(ctx.now, shop.timeZone),
      revision: pairs.reduce((sum, { revision }) => sum + revision - 1, 1),
      specHash: pairs.length === 1 && pairs[0] ? pairs[0].specHash : sha256Of(pairs.map(({ specHash }) => specHash)),
    },
    orderNumber: orderNumber(order),
    url: token === undefined ? `${publicOrigin}/shop/orders/${order.id}` : `${publicOrigin}/pair/${token}`,
    urlNote: token === undefined ? words.shopNote : words.privateNote,
    quotes,
    club:
      order.club &&
      words.club.replace("{number}", clubNumber(order.club)).replace("{name}", () => order.club?.name ?? ""),
    customerName: order.customer.name,
    acceptedBy: order.acceptedByName,
    acceptedAt: shopClock(order.acceptedAt, shop.timeZone),
    acceptedHow: words.acceptedHow[order.acceptedHow as keyof typeof words.acceptedHow],
    pairs,
    money: isWithoutPrices ? null : confirmedMoney(order, sold),
    promise: promiseFact(order),
    changeCutOffs: cutOffs(order),
    notices: isWithoutPrices
      ? [sold.shop.warranty]
      : [withdrawal(order, sold), sold.shop.delayNotice, sold.shop.warranty],
    cautions: cautionsOf(sold.shop),
  };
}

async function catalogNamed(ctx: Context, hash: string): Promise<ReleasedCatalog> {
  const catalog = await releasedCatalog(ctx.db, hash);
  if (catalog === null) throw new Error(`catalogue release ${hash} is not stored`);
  return catalog;
}

function confirmedMoney(order: OrderRecord, sold: ReleasedCatalog): ConfirmedMoney {
  const price = order.price;
  const { rush, totalCents, paidCents, openCents } = orderMoney(order);
  const deposit = order.payments.find(({ kind, state }) => kind === "deposit" && state === "received");
  const how = shopWords.order.depositMethods;
  return {
    price,
    taxNote: taxNote(price),
    deposit: deposit?.receivedAt
      ? {
          cents: deposit.cents,
          on: shopDay(deposit.receivedAt, currentCatalog().shop.timeZone),
          how: how[deposit.method as keyof typeof how],
        }
      : null,
    rush: rush && { cents: rush.totalCents, isPaid: rush.paidAt !== null },
    totalCents,
    paidCents,
    openCents,
    cancellation: cancellationRows(sold.shop),
  };
}

function promiseFact(order: OrderRecord): PromiseFact {
  const clock = orderClock(order.depositPaidAt, order.pairs);
  const lost = slotLostView(order);
  const about = {
    waitingFor: clock.started ? [] : clock.waitingFor.map((condition) => skierWords.pair.gates[condition]),
    note: lost && promiseWords.skier[lost.reason],
  };
  const on = order.promisedOn;
  if (on === null) {
    const { p50, p90 } = order.estimate;
    return { class: "estimate", from: p50, to: p90, ...about };
  }
  if (order.promiseClass === "hard-date") return { class: "hard-date", on, planB: order.hardDatePlanB ?? "", ...about };
  return { class: "promise", on, ...about };
}

/** Which notice fits hangs on what was made to the customer's own specification. */
function withdrawal({ customerSpecified }: OrderRecord, { shop }: ReleasedCatalog): string {
  const items = customerSpecified;
  if (items.length === 0) return shop.withdrawal.chosenFromOptions;
  return shop.withdrawal.madeToSpecification.replace("{items}", () => items.join(", "));
}

/** What closes together stands in one row. */
function cutOffs(order: OrderRecord): OrderConfirmationData["changeCutOffs"] {
  const labels = new Map<string, string[]>();
  for (const rule of editRules) {
    const value = cutOff(rule, order);
    labels.set(value, [...(labels.get(value) ?? []), words.parts[rule.part]]);
  }
  return [...labels].map(([value, parts]) => ({ label: sentence(parts.join(", ")), value }));
}

/** Of all pairs alike, else of each by its serial. */
function cutOff(rule: EditRule, { pairs }: OrderRecord): string {
  const each = pairs.map((pair) => ({ serial: pair.serial, text: cutOffOf(rule, pair) }));
  const texts = [...new Set(each.map(({ text }) => text))];
  if (texts.length === 1) return texts[0] ?? "";
  const serials = (of: string) => each.filter(({ text }) => text === of).map(({ serial }) => serial);
  return texts.map((text) => `${serials(text).join(", ")} ${text}`).join("; ");
}

function cutOffOf({ part }: EditRule, pair: OrderRecord["pairs"][number]): string {
  const { stations } = sheetWords.date;
  const floor = floorCatalog();
  const closing = closingStation(floor, part);
  const at = (text: string) => text.replace("{station}", wordOf(stations, closing));
  const answer = editAllowed(
    part,
    {
      startedStations: startedStations(pair.operations),
      shipped: isOneOf(shippedStates, pair.state),
    },
    floor,
  );
  if (!answer.ok) return answer.refusal.station === null ? words.closedShipped : at(words.closed);
  return closing === null ? words.untilShipped : at(words.until);
}

/** What happens there, in the skier's words; the shop's own name where there are none. */
function wordOf(words: Readonly<Record<string, string>>, station: Station | null): string {
  return station === null ? "" : (words[station.id] ?? station.label);
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

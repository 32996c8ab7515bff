import { type ReleasedCatalog, sha256Of } from "#catalog";
import { config } from "#config";
import type { OrderRecord } from "#data/orders";
import { quoteById } from "#data/quotes";
import { closingStation, editAllowed, editRules, isOneOf, type SoldFor, shippedStates, soldFor } from "#engine/floor";
import type { OrderId } from "#engine/units";
import { accept, type Outcome, refuse } from "#engine/units";
import { composeOrderConfirmation, type MoneyFacts, type OrderFacts, type Paper, type PromiseFacts } from "#papers";
import type { Context } from "#services/context";
import { spend } from "#services/doors/budgets";
import { ownPictures } from "#services/graphics/own-pictures";
import { findOrder } from "#services/orders/find-order";
import { drawInTurn } from "#services/papers/draw-in-turn";
import { type LinkSubjectInput, linkForPaper } from "#services/people/links";
import { currentCatalog, releasedCatalog } from "#shop/catalogue/current";
import { floorCatalog } from "#shop/floor/recipe";
import { orderMoney } from "#shop/money/money";
import { clubNumber, orderNumber, quoteNumber } from "#shop/names/numbers";
import type { DocumentBytes } from "#shop/names/views";
import { orderClock } from "#shop/order/gate-facts";
import { slotLostView, startedStations } from "#shop/order/view";
import { shopClock, shopDay } from "#shop/time/shop-time";
import { pdf, shopFacts } from "./pair-documents";
import { termFacts } from "./terms";

export interface OrderDocumentInput {
  readonly orderId: OrderId;
  readonly paper: Paper;
  /** Of the link it is asked for through: its code opens the same page. Without it the paper gets a link of its own. */
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
  const within = await spend(ctx, "drawing");
  if (!within.ok) return within;
  const data = composeOrderConfirmation(await orderFacts(ctx, order, input));
  const bytes = await drawInTurn(ctx, "order-confirmation", data, input.paper);
  return accept(pdf(bytes, `${data.orderNumber}-confirmation.pdf`));
}

async function orderFacts(
  ctx: Context,
  order: OrderRecord,
  { token, isWithoutPrices = false }: OrderDocumentInput,
): Promise<OrderFacts> {
  const { shop } = currentCatalog();
  const sold = await catalogNamed(ctx, order.quote.releaseHash);
  const { publicOrigin } = config();
  const quotes: string[] = [];
  const soldTo: SoldFor[] = [];
  const pairs: OrderFacts["pairs"][number][] = [];
  for (const pair of order.pairs) {
    const quote = await quoteById(ctx.db, pair.quoteId);
    if (quote !== null) quotes.push(quoteNumber(quote));
    const { build } = await catalogNamed(ctx, pair.releaseHash);
    soldTo.push(soldFor(pair.spec, build.models, quote?.answers ?? {}));
    const { serial, skierName, revision, specHash } = pair;
    const pictures = await ownPictures(ctx.db, pair.spec, build);
    pairs.push({ serial, skierName, revision, spec: pair.spec, catalog: build, pictures, specHash });
  }
  const { withdrawal, delayNotice, warranty } = sold.shop;
  return {
    shop: shopFacts(shop),
    stamp: {
      printedAt: shopClock(ctx.now, shop.timeZone),
      revision: pairs.reduce((sum, { revision }) => sum + revision - 1, 1),
      specHash: pairs.length === 1 && pairs[0] ? pairs[0].specHash : sha256Of(pairs.map(({ specHash }) => specHash)),
    },
    orderNumber: orderNumber(order),
    url: `${publicOrigin}/pair/${token ?? (await linkForPaper(ctx, readerOf(order, isWithoutPrices)))}`,
    quotes,
    club: order.club && { number: clubNumber(order.club), name: order.club.name },
    customerName: order.customer.name,
    acceptedBy: order.acceptedByName,
    acceptedAt: shopClock(order.acceptedAt, shop.timeZone),
    acceptedHow: order.acceptedHow,
    pairs,
    money: isWithoutPrices ? null : moneyFacts(order),
    promise: promiseFacts(order),
    cutOffs: cutOffs(order),
    customerSpecified: order.customerSpecified,
    notices: { ...withdrawal, delay: delayNotice, warranty },
    ...termFacts(sold.shop, "order-confirmation", soldTo),
  };
}

/** Whoever is given a copy without prices follows the pair, and sees nothing of the order. */
function readerOf({ id, pairs: [first] }: OrderRecord, isWithoutPrices: boolean): LinkSubjectInput {
  return isWithoutPrices && first ? { kind: "pair", id: first.id } : { kind: "order", id };
}

async function catalogNamed(ctx: Context, hash: string): Promise<ReleasedCatalog> {
  const catalog = await releasedCatalog(ctx.db, hash);
  if (catalog === null) throw new Error(`catalogue release ${hash} is not stored`);
  return catalog;
}

function moneyFacts(order: OrderRecord): MoneyFacts {
  const { rush, totalCents, paidCents, openCents } = orderMoney(order);
  const deposit = order.payments.find(({ kind, state }) => kind === "deposit" && state === "received");
  return {
    price: order.price,
    deposit: deposit?.receivedAt
      ? {
          cents: deposit.cents,
          on: shopDay(deposit.receivedAt, currentCatalog().shop.timeZone),
          method: deposit.method ?? "",
        }
      : null,
    rush: rush && { cents: rush.totalCents, isPaid: rush.paidAt !== null },
    totalCents,
    paidCents,
    openCents,
  };
}

function promiseFacts(order: OrderRecord): PromiseFacts {
  const clock = orderClock(order.depositPaidAt, order.pairs);
  const about = {
    waitingFor: clock.started ? [] : clock.waitingFor,
    slotLost: order.confirmedAt === null ? ("unconfirmed" as const) : (slotLostView(order)?.reason ?? null),
  };
  const on = order.promisedOn;
  if (on === null) {
    const { p50, p90, shares } = order.estimate;
    return { class: "estimate", from: p50, to: p90, shares, ...about };
  }
  if (order.promiseClass === "hard-date") return { class: "hard-date", on, planB: order.hardDatePlanB ?? "", ...about };
  return { class: "promise", on, ...about };
}

function cutOffs({ pairs }: OrderRecord): OrderFacts["cutOffs"] {
  const floor = floorCatalog();
  return editRules.map(({ part }) => {
    const closing = closingStation(floor, part);
    return {
      part,
      ...(closing === null ? {} : { closesAt: { station: closing.id, label: closing.label } }),
      pairs: pairs.map((pair) => {
        const answer = editAllowed(
          part,
          { startedStations: startedStations(pair.operations), shipped: isOneOf(shippedStates, pair.state) },
          floor,
        );
        const state = answer.ok ? "open" : answer.refusal.station === null ? "shipped" : "closed";
        return { serial: pair.serial, state };
      }),
    };
  });
}

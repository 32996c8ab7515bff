/** Orders as pages see them. */

import names from "#content/copy/names.json";
import type { Tx } from "#data/client";
import { eventsOf } from "#data/events";
import type { OrderAloneRecord, OrderLineRecord, OrderRecord } from "#data/orders";
import { wordsOnQuotes } from "#data/quotes";
import type { PairSpec } from "#engine/configuration";
import type { StationId } from "#engine/floor";
import { begunOperationStates, cancellationStage, isFinal, isOneOf, keptOnCancellation } from "#engine/floor";
import { artFeeCents } from "#engine/pricing";
import { type ArtworkId, fill } from "#engine/units";
import { idOf } from "#schemas/ids";
import { currentCatalog, releasedCatalog } from "#shop/catalogue/current";
import { orderMoney, paidCents } from "#shop/money/money";
import { customerView, eventView } from "#shop/names/common-view";
import { clubNumber, orderNumber, quoteNumber } from "#shop/names/numbers";
import { gatesView, orderClock } from "./gate-facts";
import type { AllowedSale, OrderPairView, OrderRow, OrderView, PaymentView, ProofView, RightsStatement } from "./views";

type OrderPair = OrderRecord["pairs"][number];

export async function orderView(client: Tx, record: OrderRecord): Promise<OrderView> {
  const ids = record.pairs.map((pair) => pair.id);
  // One after the other: inside a transaction there is one connection.
  const own = await eventsOf(client, "order", [record.id]);
  const ofPairs = await eventsOf(client, "pair", ids);
  const catalog = await releasedCatalog(client, record.quote.releaseHash);
  const history = [...own, ...ofPairs].sort((a, b) => (a.seq < b.seq ? -1 : 1));
  const modelName = (spec: PairSpec) =>
    catalog?.build.models.find((model) => model.id === spec.model)?.name ?? spec.model;
  const clock = orderClock(record.depositPaidAt, record.pairs);
  return {
    orderId: record.id,
    number: orderNumber(record),
    state: record.state,
    version: record.version,
    quote: { quoteId: record.quote.id, number: quoteNumber(record.quote) },
    customer: customerView(record.customer),
    club:
      record.club === null ? null : { clubId: record.club.id, number: clubNumber(record.club), name: record.club.name },
    price: record.price,
    releaseHash: record.quote.releaseHash,
    acceptedAt: record.acceptedAt.toISOString(),
    acceptedBy: record.acceptedByName,
    acceptedHow: record.acceptedHow,
    confirmed:
      record.confirmedAt === null
        ? null
        : {
            at: record.confirmedAt.toISOString(),
            how: record.confirmedHow ?? "earlier",
            by: record.confirmedByName ?? "",
          },
    customerSpecified: record.customerSpecified,
    promiseClass: record.promiseClass,
    estimate: record.estimate,
    promisedOn: record.promisedOn,
    slotLost: slotLostView(record),
    hardDate: record.hardDatePlanB === null ? null : { planB: record.hardDatePlanB, rushCents: record.rushCents ?? 0 },
    clockStartedAt: record.clockStartedAt?.toISOString() ?? null,
    waitingFor: clock.started ? [] : clock.waitingFor,
    payments: record.payments.map(paymentView),
    money: orderMoney(record),
    pairs: record.pairs.map((pair) => orderPairView(record, pair, modelName(pair.spec))),
    allowed: await allowedSales(client, record),
    ifCancelled: await ifCancelled(client, record),
    cancelled: cancelledOf(record),
    history: history.map(eventView),
  };
}

/** Each owner's word once, whatever the number of pairs. */
async function allowedSales(client: Tx, { pairs }: OrderRecord): Promise<readonly AllowedSale[]> {
  const quotes = await wordsOnQuotes(client, [...new Set(pairs.map((pair) => pair.quoteId))]);
  return quotes.flatMap(({ fit, flagAcks }) =>
    flagAcks
      .filter((ack) => ack.byOwner)
      .map(({ code, by, reason }) => {
        const flag = fit.flags.find((each) => each.code === code);
        return { code, message: flag?.message ?? null, by, reason };
      }),
  );
}

export function orderRow(record: OrderLineRecord): OrderRow {
  const clock = orderClock(record.depositPaidAt, record.pairs);
  const specs = record.pairs.map((pair) => pair.spec);
  return {
    orderId: record.id,
    number: orderNumber(record),
    state: record.state,
    customerName: record.customer.name,
    summary: specs.map((spec) => fill(names.ski, { model: modelNameToday(spec), lengthCm: spec.lengthCm })).join("; "),
    totalCents: orderMoney(record).totalCents,
    acceptedAt: record.acceptedAt.toISOString(),
    promisedOn: record.promisedOn,
    waitingFor: clock.started ? [] : clock.waitingFor,
    serials: record.pairs.map((pair) => pair.serial),
    isConfirmed: record.confirmedAt !== null,
  };
}

/** Lists name a model as the shop calls it today; the order's own page uses the release it was sold from. */
function modelNameToday(spec: PairSpec): string {
  return currentCatalog().build.models.find((model) => model.id === spec.model)?.name ?? spec.model;
}

function orderPairView(order: OrderRecord, pair: OrderPair, modelName: string): OrderPairView {
  const spec = pair.spec;
  return {
    pairId: pair.id,
    serial: pair.serial,
    state: pair.state,
    version: pair.version,
    revision: pair.revision,
    spec,
    specHash: pair.specHash,
    modelName,
    skierName: pair.skierName,
    gates: gatesView(order.depositPaidAt, pair),
    proofState: pair.proofState,
    proofs: pair.proofs.map(proofView),
    artworkId: artworkIdOf(spec),
    rights: rightsView(pair),
    doneOperations: pair.operations.filter((operation) => operation.state === "done").length,
    allOperations: pair.operations.length,
    pressSlot:
      pair.pressSlotAt === null ? null : { at: pair.pressSlotAt.toISOString(), press: pair.pressSlotPress ?? "" },
  };
}

export function slotLostView({ slotLostAt, slotLostReason }: OrderAloneRecord): OrderView["slotLost"] {
  if (slotLostAt === null) return null;
  return { at: slotLostAt.toISOString(), reason: slotLostReason === "proof-late" ? "proof-late" : "hold-lapsed" };
}

export function proofView(proof: OrderPair["proofs"][number]): ProofView {
  return {
    proofId: proof.id,
    revision: proof.revision,
    state: proof.state,
    specHash: proof.specHash,
    note: proof.note,
    issuedAt: proof.issuedAt.toISOString(),
    answeredAt: proof.answeredAt?.toISOString() ?? null,
    answeredBy: proof.answeredByName,
  };
}

export function rightsView(pair: Pick<OrderPair, "rights" | "rightsAt">): RightsStatement | null {
  if (pair.rights === null || pair.rightsAt === null) return null;
  const { basis, name } = pair.rights;
  return { basis, name, at: pair.rightsAt.toISOString() };
}

export function paymentView(payment: OrderRecord["payments"][number]): PaymentView {
  return {
    kind: payment.kind,
    state: payment.state,
    cents: payment.cents,
    method: payment.method,
    reference: payment.reference,
    at: (payment.receivedAt ?? payment.requestedAt).toISOString(),
  };
}

/** What cancelling now would keep and give back; null when it can no longer be cancelled. */
export async function ifCancelled(client: Tx, record: OrderRecord): Promise<OrderView["ifCancelled"]> {
  const state = record.state;
  if (isFinal("order", state) || state === "shipped") return null;
  const catalog = await releasedCatalog(client, record.quote.releaseHash);
  if (catalog === null) return null;
  const price = record.price;
  const stage = cancellationStage(
    {
      specificationLocked: record.pairs.some((pair) => pair.specLockedAt !== null),
      proofApproved: record.pairs.some((pair) => pair.proofAt !== null),
      startedStations: startedStations(record.pairs.flatMap((pair) => pair.operations)),
      shipped: false,
    },
    currentCatalog().floor,
  );
  const amounts = { totalCents: price.exTaxCents, artFeeCents: artFeeCents(price) };
  const kept = keptOnCancellation(catalog.shop.cancellation, stage, amounts);
  const keepCents = Math.min(kept, paidCents(record));
  return { stage, keepCents, refundCents: paidCents(record) - keepCents };
}

/** Stations whose work has begun on the pair. */
export function startedStations(
  operations: readonly { readonly station: StationId; readonly state: string; readonly visit: number }[],
): readonly StationId[] {
  const begun = operations.filter((operation) => operation.visit > 0 || isOneOf(begunOperationStates, operation.state));
  return [...new Set(begun.map((operation) => operation.station))];
}

function cancelledOf(record: OrderRecord): OrderView["cancelled"] {
  if (record.cancelledAt === null) return null;
  return {
    at: record.cancelledAt.toISOString(),
    reason: record.cancelReason ?? "",
    feeCents: record.feeCents ?? 0,
    refundCents: record.refundCents ?? 0,
  };
}

/** The picture on the skis; null without one of the skier's own. */
export function artworkIdOf({ graphic }: PairSpec): ArtworkId | null {
  return graphic.artwork === undefined ? null : idOf("artwork", graphic.artwork.id);
}

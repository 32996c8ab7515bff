/** Puts an order into words. */
import words from "#content/copy/papers.json";
import promiseWords from "#content/copy/promises.json";
import sheetWords from "#content/copy/sheet.json";
import shopWords from "#content/copy/shop.json";
import skierWords from "#content/copy/skier.json";
import type { Price } from "#engine/pricing";
import type { PairLook } from "#engine/scene";
import { fill, type IsoDate } from "#engine/units";
import type { CautionFacts, LocalDateTime, PrintStamp, Row, ShopFacts, SkiPictures } from "#papers/parts/facts";
import { lookOf, readableSpec } from "#papers/parts/spec-rows";
import { cancellationRows, taxNote } from "#papers/parts/terms";
import type { RangeFacts } from "#papers/parts/told-shares";
import type { CutOffFacts, MoneyFacts, OrderFacts, PromiseFacts } from "./facts";

const w = words.confirmation;

/** A date as it is promised at the hour of the print: a range, or one day. */
export type PromiseFact = (
  | ({ readonly class: "estimate" } & RangeFacts)
  | { readonly class: "promise"; readonly on: IsoDate }
  | { readonly class: "hard-date"; readonly on: IsoDate; readonly planB: string }
) & {
  /** What is still missing before the clock starts. */
  readonly waitingFor: readonly string[];
  /** Something that went wrong with its place; null as a rule. */
  readonly note: string | null;
};

/** The frozen price and what has been paid on it. */
export interface ConfirmedMoney {
  readonly price: Price;
  readonly taxNote: string;
  readonly deposit: { readonly cents: number; readonly on: IsoDate; readonly how: string } | null;
  /** The fee of a hard date, tax in. */
  readonly rush: { readonly cents: number; readonly isPaid: boolean } | null;
  readonly totalCents: number;
  readonly paidCents: number;
  readonly openCents: number;
  readonly cancellation: readonly Row[];
}

export interface OrderConfirmationData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly orderNumber: string;
  readonly url: string;
  readonly urlNote: string;
  /** One as a rule; one for each pair of an order that a club placed. */
  readonly quotes: readonly string[];
  readonly club: string | null;
  readonly customerName: string;
  readonly acceptedBy: string;
  readonly acceptedAt: LocalDateTime;
  readonly acceptedHow: string;
  readonly pairs: readonly {
    readonly serial: string;
    readonly skierName: string;
    readonly revision: number;
    readonly specification: readonly Row[];
    readonly look: PairLook;
    readonly pictures: SkiPictures | null;
    readonly specHash: string;
  }[];
  /** Null on a copy without prices, for somebody who is given the pair. */
  readonly money: ConfirmedMoney | null;
  readonly promise: PromiseFact;
  readonly changeCutOffs: readonly Row[];
  readonly notices: readonly string[];
  readonly cautions: CautionFacts;
}

/** @throws RangeError when a spec names a model its catalogue does not have */
export function composeOrderConfirmation(facts: OrderFacts): OrderConfirmationData {
  const { url, club, money, notices } = facts;
  return {
    shop: facts.shop,
    stamp: facts.stamp,
    orderNumber: facts.orderNumber,
    url,
    urlNote: w.privateNote,
    quotes: facts.quotes,
    club: club && fill(w.club, { number: club.number, name: club.name }),
    customerName: facts.customerName,
    acceptedBy: facts.acceptedBy,
    acceptedAt: facts.acceptedAt,
    acceptedHow: w.acceptedHow[facts.acceptedHow],
    pairs: facts.pairs.map(({ serial, skierName, revision, spec, catalog, pictures, specHash }) => ({
      serial,
      skierName,
      revision,
      specification: readableSpec(spec, catalog),
      look: lookOf(spec, catalog),
      pictures,
      specHash,
    })),
    money: money && confirmedMoney(money, facts),
    promise: promiseFact(facts.promise),
    changeCutOffs: cutOffRows(facts.cutOffs),
    // Who is given the pair has no contract to withdraw from.
    notices: money ? [withdrawal(facts), notices.delay, notices.warranty] : [notices.warranty],
    cautions: facts.cautions,
  };
}

const depositMethods: Readonly<Record<string, string>> = shopWords.order.depositMethods;

function confirmedMoney({ deposit, ...money }: MoneyFacts, terms: OrderFacts): ConfirmedMoney {
  return {
    ...money,
    taxNote: taxNote(money.price),
    deposit: deposit && {
      cents: deposit.cents,
      on: deposit.on,
      how: depositMethods[deposit.method] ?? deposit.method,
    },
    cancellation: cancellationRows(terms),
  };
}

function promiseFact({ waitingFor, slotLost, ...promise }: PromiseFacts): PromiseFact {
  return {
    ...promise,
    waitingFor: waitingFor.map((condition) => skierWords.pair.gates[condition]),
    note: slotLost && promiseWords.skier[slotLost],
  };
}

/** Which notice fits hangs on what was made to the customer's own specification. */
function withdrawal({ customerSpecified, notices }: OrderFacts): string {
  if (customerSpecified.length === 0) return notices.chosenFromOptions;
  return fill(notices.madeToSpecification, { items: customerSpecified.join(", ") });
}

/** What closes together stands in one row. */
function cutOffRows(cutOffs: readonly CutOffFacts[]): readonly Row[] {
  const labels = new Map<string, string[]>();
  for (const cutOff of cutOffs) {
    const value = cutOffText(cutOff);
    labels.set(value, [...(labels.get(value) ?? []), w.parts[cutOff.part]]);
  }
  return [...labels].map(([value, parts]) => ({ label: sentence(parts.join(", ")), value }));
}

/** Of all pairs alike, else of each by its serial. */
function cutOffText({ closesAt, pairs }: CutOffFacts): string {
  const each = pairs.map(({ serial, state }) => ({ serial, text: untilText(state, closesAt) }));
  const texts = [...new Set(each.map(({ text }) => text))];
  if (texts.length === 1) return texts[0] ?? "";
  const serials = (of: string) => each.filter(({ text }) => text === of).map(({ serial }) => serial);
  return texts.map((text) => fill(w.cutOffOfPairs, { serials: serials(text).join(", "), cutOff: text })).join("; ");
}

const stationWords: Readonly<Record<string, string>> = sheetWords.date.stations;

function untilText(state: CutOffFacts["pairs"][number]["state"], closesAt: CutOffFacts["closesAt"]): string {
  if (state === "shipped") return w.closedShipped;
  if (closesAt === undefined) return w.untilShipped;
  return fill(state === "closed" ? w.closed : w.until, { station: stationWords[closesAt.station] ?? closesAt.label });
}

function sentence(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

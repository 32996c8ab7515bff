/** Puts the open quotes of a club into words. */
import words from "#content/copy/papers.json";
import sheetWords from "#content/copy/sheet.json";
import type { Price } from "#engine/pricing";
import { fill, type IsoDate } from "#engine/units";
import type { CautionFacts, LocalDateTime, OfferedDates, PrintStamp, Row, ShopFacts } from "#papers/parts/facts";
import { cancellationRows, clockStartTerms, taxNote } from "#papers/parts/terms";
import { type RangeFacts, sharesText } from "#papers/parts/told-shares";
import type { ClubMemberFacts, ClubQuoteFacts } from "./facts";

const w = words.club;

/** Open quotes of a club as one paper: who rides what, one price, one day. */
export interface ClubQuoteData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly number: string;
  readonly name: string;
  readonly url: string;
  readonly urlNote: string;
  readonly madeAt: LocalDateTime;
  /** The first of the quotes' last days. */
  readonly validUntil: IsoDate;
  readonly buyerName: string;
  readonly palette: readonly Row[];
  readonly members: readonly ClubMemberFacts[];
  readonly price: Price;
  readonly taxNote: string;
  readonly dates: OfferedDates;
  readonly howToAccept: readonly string[];
  readonly cancellation: readonly Row[];
  readonly cautions: CautionFacts;
}

export function composeClubQuote(facts: ClubQuoteFacts): ClubQuoteData {
  const { shop, price } = facts;
  return {
    shop,
    stamp: facts.stamp,
    number: facts.number,
    name: facts.name,
    url: facts.url,
    urlNote: w.privateNote,
    madeAt: facts.madeAt,
    validUntil: facts.validUntil,
    buyerName: facts.buyerName,
    palette: paletteRows(facts.palette),
    members: facts.members,
    price,
    taxNote: taxNote(price),
    dates: offeredDates(facts.dates),
    howToAccept: [fill(w.acceptByPhone, { phone: shop.phone, number: facts.number }), w.staysOpen],
    cancellation: cancellationRows(facts),
    cautions: facts.cautions,
  };
}

function paletteRows({ left, right, graphic, destination }: ClubQuoteFacts["palette"]): readonly Row[] {
  return [
    { label: w.bases, value: left === right ? left : fill(w.basesTwo, { left, right }) },
    { label: w.graphic, value: graphic },
    { label: w.delivery, value: sheetWords.price.destinations[destination] },
  ];
}

function offeredDates(dates: RangeFacts): OfferedDates {
  const shares = sharesText(dates);
  const confidence = shares === null ? w.confidence : fill(w.shares, { shares });
  return { from: dates.from, to: dates.to, shares, confidence, startsWhen: clockStartTerms };
}

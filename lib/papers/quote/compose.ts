/** Puts a quote into words. */
import words from "#content/copy/papers.json";
import sheetWords from "#content/copy/sheet.json";
import type { FitReason } from "#engine/fit";
import type { Price } from "#engine/pricing";
import type { PairLook } from "#engine/scene";
import { fill, type IsoDate, type TypedHeight, type TypedMass, textForPeople } from "#engine/units";
import type {
  CautionFacts,
  LocalDateTime,
  OfferedDates,
  PrintStamp,
  Row,
  ShopFacts,
  SkiPictures,
} from "#papers/parts/facts";
import { lookOf, readableSpec } from "#papers/parts/spec-rows";
import { cancellationRows, clockStartTerms, taxNote } from "#papers/parts/terms";
import { type RangeFacts, sharesText } from "#papers/parts/told-shares";
import { heightText, massText } from "#schemas/typed-text";
import type { QuoteFacts } from "./facts";

const w = words.quote;

/** A number that was computed and what it came from. */
export interface ReasonLine {
  readonly label: string;
  readonly amount: string;
}

export interface QuoteData {
  readonly shop: ShopFacts;
  readonly stamp: PrintStamp;
  readonly number: string;
  /** What the code opens. */
  readonly url: string;
  readonly urlNote: string;
  readonly madeAt: LocalDateTime;
  readonly validUntil: IsoDate;
  readonly seller: string;
  readonly skierName: string;
  /** Null when the skier buys for themself. */
  readonly buyerName: string | null;
  /** Fit answers with the unit they were typed in first. */
  readonly answers: readonly Row[];
  readonly recommendation: {
    readonly summary: string;
    readonly reasons: readonly ReasonLine[];
    readonly alternatives: readonly string[];
  };
  readonly flags: readonly { readonly message: string; readonly acknowledgedBy: string | null }[];
  /** From readableSpec(). */
  readonly specification: readonly Row[];
  readonly look: PairLook;
  readonly pictures: SkiPictures | null;
  readonly price: Price;
  readonly taxNote: string;
  readonly dates: OfferedDates;
  readonly customerSpecified: readonly string[];
  readonly howToAccept: readonly string[];
  readonly cancellation: readonly Row[];
  readonly cautions: CautionFacts;
}

/** @throws RangeError when the spec names a model the catalogue does not have */
export function composeQuote(facts: QuoteFacts): QuoteData {
  const { url, price, shop } = facts;
  return {
    shop,
    stamp: facts.stamp,
    number: facts.number,
    url,
    urlNote: w.privateNote,
    madeAt: facts.madeAt,
    validUntil: facts.validUntil,
    seller: facts.seller,
    skierName: facts.skierName,
    buyerName: facts.buyerName,
    answers: answerRows(facts),
    recommendation: recommendationOf(facts),
    flags: facts.fit.flags.map((flag) => ({
      message: flag.message,
      acknowledgedBy: facts.flagAcks.find((ack) => ack.code === flag.code)?.by ?? null,
    })),
    specification: readableSpec(facts.spec, facts.catalog),
    look: lookOf(facts.spec, facts.catalog),
    pictures: facts.pictures,
    price,
    taxNote: taxNote(price),
    dates: offeredDates(facts.dates),
    customerSpecified: facts.customerSpecified,
    howToAccept: [fill(w.acceptByScan, { url }), fill(w.acceptByPhone, { phone: shop.phone, number: facts.number })],
    cancellation: cancellationRows(facts),
    cautions: facts.cautions,
  };
}

/** What was answered, measures as they were said; what was not asked or not answered has no row. */
function answerRows({ answers, typed }: QuoteFacts): readonly Row[] {
  const height: TypedHeight | undefined =
    typed.height ?? (answers.heightCm === undefined ? undefined : { unit: "cm", cm: answers.heightCm });
  const mass: TypedMass | undefined =
    typed.mass ?? (answers.massKg === undefined ? undefined : { unit: "kg", kg: answers.massKg });
  const percent = (value: number | undefined) => (value === undefined ? undefined : fill(w.percent, { value }));
  const { labels } = w;
  const rows: readonly (readonly [string, string | undefined])[] = [
    [labels.height, height && heightText(height)],
    [labels.mass, mass && massText(mass)],
    [labels.ability, answers.ability],
    [labels.temperament, answers.temperament],
    [labels.offPiste, percent(answers.offPistePercent)],
    [labels.touring, percent(answers.touringPercent)],
    [labels.homeSnow, answers.homeSnow],
    [labels.turns, answers.turnSize],
    [labels.bootSole, answers.bootSoleMm === undefined ? undefined : fill(w.soleLength, { value: answers.bootSoleMm })],
  ];
  return rows.flatMap(([label, value]) => (value === undefined ? [] : [{ label, value }]));
}

const factorWords: Readonly<Record<string, string>> = sheetWords.factors;

/** "+3.2 cm", "× 1.06", "costs 0.5" */
function amountText({ effect, amount, unit }: FitReason): string {
  if (effect === "multiplies") return fill(w.multiplies, { amount: textForPeople(amount, 2) });
  if (effect === "costs") return fill(w.costs, { amount: textForPeople(amount, 2) });
  return fill(w.units[unit], { amount: `${amount < 0 ? "−" : "+"}${textForPeople(Math.abs(amount), 1)}` });
}

function recommendationOf({ fit, spec, catalog }: QuoteFacts): QuoteData["recommendation"] {
  const { choices } = fit.recommendation;
  const nameOf = (id: string) => catalog.models.find((model) => model.id === id)?.name ?? id;
  const chosen = choices.find((choice) => choice.model === spec.model) ?? choices[0];
  return {
    summary: fill(w.summary, {
      model: fit.modelName,
      lengthCm: spec.lengthCm,
      flexClass: fit.flexClassLabel,
    }),
    reasons: (chosen?.reasons ?? []).map((reason) => ({
      label: fill(w.reason, { factor: factorWords[reason.factor] ?? reason.factor, about: w.about[reason.about] }),
      amount: amountText(reason),
    })),
    alternatives: choices
      .filter((choice) => choice !== chosen)
      .map((choice) => fill(w.alternative, { model: nameOf(choice.model), lengthCm: choice.lengthCm })),
  };
}

function offeredDates(dates: RangeFacts): OfferedDates {
  const shares = sharesText(dates);
  const confidence = shares === null ? w.confidence : fill(w.shares, { shares });
  return { from: dates.from, to: dates.to, shares, confidence, startsWhen: clockStartTerms };
}

import { config } from "#config";
import sheetWords from "#content/copy/sheet.json";
import { frozen } from "#data/quotes";
import type { PartialAnswers } from "#engine/assessment";
import type { PairSpec } from "#engine/configuration";
import type { FitReason, TypedMeasures } from "#engine/fit";
import type { Price } from "#engine/pricing";
import type { QuoteId } from "#engine/units";
import { accept, type Outcome, type TypedHeight, type TypedMass, textForPeople } from "#engine/units";
import { type Paper, type QuoteData, readableSpec, renderDocument } from "#papers";
import { heightText, massText } from "#schemas/typed-text";
import type { Context } from "#services/context";
import { findQuote } from "#services/quotes/find-quote";
import { quoteView } from "#services/quotes/view";
import type { QuoteView } from "#services/quotes/views";
import { catalogOf, type FrozenCatalog } from "#shop/catalogue/current";
import type { DocumentBytes } from "#shop/names/views";
import { shopClock } from "#shop/time/shop-time";
import { pdf, shopFacts } from "./pair-documents";
import { cancellationRows, cautionsOf, clockStartTerms, taxNote } from "./terms";

/**
 * The quote as PDF, exactly as frozen. Its code opens the quote's private page when the token is given, else the shop's own
 * page: tokens are not kept, so the desk's print sends the skier to the link they were told.
 */
export async function quoteDocument(
  ctx: Context,
  input: { readonly quoteId: QuoteId; readonly paper: Paper; readonly token?: string },
): Promise<Outcome<DocumentBytes>> {
  const found = await findQuote(ctx, ctx.db, "quote.read", input.quoteId);
  if (!found.ok) return found;
  const view = await quoteView(ctx.db, found.value, ctx.now);
  const catalog = await catalogOf(ctx.db, { releaseHash: view.releaseHash, priceBook: view.price.priceBook });
  const { publicOrigin } = config();
  const { token } = input;
  const page =
    token === undefined
      ? { url: `${publicOrigin}/shop/quotes/${view.quoteId}`, isPrivate: false }
      : { url: `${publicOrigin}/quote/${token}`, isPrivate: true };
  const data = quoteData(view, catalog, page);
  return accept(pdf(await renderDocument("quote", data, input.paper), `${view.number.replace(" ", "-")}.pdf`));
}

interface QuotePage {
  readonly url: string;
  readonly isPrivate: boolean;
}

function quoteData(quote: QuoteView, { released, engine }: FrozenCatalog, { url, isPrivate }: QuotePage): QuoteData {
  const { shop } = released;
  const spec = frozen<PairSpec>(quote.spec);
  const price = frozen<Price>(quote.price);
  return {
    shop: shopFacts(shop),
    stamp: {
      printedAt: shopClock(new Date(quote.createdAt), shop.timeZone),
      revision: quote.revision,
      specHash: quote.specHash,
    },
    number: quote.number,
    url,
    urlNote: isPrivate ? "scan to read and accept it" : "the shop's page of this quote",
    madeAt: shopClock(new Date(quote.createdAt), shop.timeZone),
    validUntil: quote.validUntilDay,
    seller: quote.createdBy === "skier" ? shop.name : quote.createdBy,
    skierName: quote.club?.skierName ?? quote.customer.name,
    buyerName: quote.club !== null || quote.answers.buyerIsSkier === false ? quote.customer.name : null,
    answers: answerRows(quote.answers, quote.typed),
    recommendation: recommendationOf(quote, engine.build.models),
    flags: quote.fit.flags.map((flag) => ({
      message: flag.message,
      acknowledgedBy: quote.flagAcks.find((ack) => ack.code === flag.code)?.by ?? null,
    })),
    specification: readableSpec(spec, engine.build),
    price,
    taxNote: taxNote(price),
    dates: {
      from: quote.dateRange.p50,
      to: quote.dateRange.p90,
      confidence: "nine of ten orders like this one are ready by the later date",
      startsWhen: clockStartTerms,
    },
    customerSpecified: quote.customerSpecified,
    howToAccept: [
      isPrivate ? `Scan the code above, or open ${url}` : "Open the private link you were sent with this quote",
      `Or call ${shop.phone} and name ${quote.number}`,
    ],
    cancellation: cancellationRows(shop),
    cautions: cautionsOf(shop),
  };
}

function answerRows(answers: PartialAnswers, typed: TypedMeasures): QuoteData["answers"] {
  const height: TypedHeight | undefined =
    typed.height ?? (answers.heightCm === undefined ? undefined : { unit: "cm", cm: answers.heightCm });
  const mass: TypedMass | undefined =
    typed.mass ?? (answers.massKg === undefined ? undefined : { unit: "kg", kg: answers.massKg });
  const rows: readonly (readonly [string, string | undefined])[] = [
    ["Height", height && heightText(height)],
    ["Mass", mass && massText(mass)],
    ["Ability", answers.ability],
    ["Temperament", answers.temperament],
    ["Off the piste", answers.offPistePercent === undefined ? undefined : `${answers.offPistePercent} %`],
    ["Touring", answers.touringPercent === undefined ? undefined : `${answers.touringPercent} %`],
    ["Snow at home", answers.homeSnow],
    ["Turns", answers.turnSize],
    ["Boot sole", answers.bootSoleMm === undefined ? undefined : `${answers.bootSoleMm} mm`],
  ];
  return rows.flatMap(([label, value]) => (value === undefined ? [] : [{ label, value }]));
}

const factorWords = sheetWords.factors;
const unitWords = { cm: " cm", mm: " mm", ratio: "", score: "" } as const;

/** "+3.2 cm", "× 1.06", "costs 0.5" */
function amountText({ effect, amount, unit }: FitReason): string {
  if (effect === "multiplies") return `× ${textForPeople(amount, 2)}`;
  if (effect === "costs") return `costs ${textForPeople(amount, 2)}`;
  return `${amount < 0 ? "−" : "+"}${textForPeople(Math.abs(amount), 1)}${unitWords[unit]}`;
}

const aboutWords = { length: "length", flexRatio: "flex", waist: "waist", rank: "ranking" } as const;

function recommendationOf(
  quote: QuoteView,
  models: readonly { readonly id: string; readonly name: string }[],
): QuoteData["recommendation"] {
  const { choices } = quote.fit.recommendation;
  const nameOf = (id: string) => models.find((model) => model.id === id)?.name ?? id;
  const chosen = choices.find((choice) => choice.model === quote.spec.model) ?? choices[0];
  return {
    summary: `${quote.fit.modelName}, ${quote.spec.lengthCm} cm, flex class ${quote.fit.flexClassLabel}`,
    reasons: (chosen?.reasons ?? []).map((reason) => ({
      label: `${factorWords[reason.factor as keyof typeof factorWords] ?? reason.factor} (${aboutWords[reason.about]})`,
      amount: amountText(reason),
    })),
    alternatives: choices
      .filter((choice) => choice !== chosen)
      .map((choice) => `${nameOf(choice.model)}, ${choice.lengthCm} cm`),
  };
}

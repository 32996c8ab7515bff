/**
 * Prices one pair: what the spec asks for, by one price book, for one destination. Pure and repeatable: the same three
 * give the same cents for ever. The book's own option codes are named here where they follow from the spec; blends and
 * reinforcements carry theirs in the catalogue.
 */
import { blendById, type PairSpec } from "#engine/configuration";
import { accept, type Outcome, refuse } from "#engine/units";
import { discountLine } from "./discounts";
import { rushFeeCents } from "./rush";
import { line, priceOf, sumCents, type UntaxedLine } from "./totals";
import type { FixedOptionCode, Price, PriceBook, PricedCatalog, PriceLine, PriceRefusal, PriceTerms } from "./types";

/**
 * @returns the price, or why there is none: an item without a price in this book, a discount that the rules refuse
 */
export function priceSpec(
  spec: PairSpec,
  book: PriceBook,
  build: PricedCatalog,
  terms: PriceTerms,
): Outcome<Price, PriceRefusal> {
  const model = build.models.find((each) => each.id === spec.model);
  const modelCents = book.modelCents[spec.model];
  if (model === undefined || modelCents === undefined) return noPrice("model", spec.model, book);
  const stray = strayItem(spec, build);
  if (stray !== null) return noPrice(stray.path, stray.item, book);
  const lines: UntaxedLine[] = [line(model.id, `${model.name}, ${spec.lengthCm} cm`, modelCents)];
  for (const code of optionCodes(spec, book, build)) {
    const option = book.optionCents[code];
    if (option === undefined) return noPrice("option", code, book);
    lines.push(line(code, option.label, option.cents));
  }
  const cloth = terms.isOtherCloth ? book.optionCents[CLOTH_FOR_FLEX] : undefined;
  if (cloth !== undefined) lines.push(line(CLOTH_FOR_FLEX, cloth.label, cloth.cents));
  for (const [index, extra] of (terms.extras ?? []).entries()) {
    const option = book.optionCents[extra.code];
    if (option === undefined) return noPrice(`extras.${index}.code`, extra.code, book);
    lines.push(line(extra.code, option.label, option.cents, { quantity: extra.quantity, taxClass: "service" }));
  }
  const discount = discountLine(terms.discounts ?? [], book, lines);
  if (!discount.ok) return discount;
  if (discount.value !== null) lines.push(discount.value);
  if (terms.rush !== undefined) lines.push(rushLine(terms.rush, book, lines));
  return accept(priceOf(lines, book, terms.destination));
}

/** What a book says of glass other than the model's own; a book of before does not name it, and takes nothing for it. */
const CLOTH_FOR_FLEX = "cloth-for-flex";

/** Codes that a spec's own art is priced under; what a cancellation keeps after the proof is approved. */
const artCodes: readonly FixedOptionCode[] = ["graphic-own", "graphic-own-pair"];

/** The art fee inside a price. */
export function artFeeCents(price: Pick<Price, "lines">) {
  return sumCents(price.lines.filter((each: PriceLine) => artCodes.some((code) => code === each.code)));
}

function noPrice(path: string, item: string, book: PriceBook) {
  return refuse({ code: "no-price", path, item, priceBook: book.id } as const);
}

/** A core, a plate or a reinforcement that the catalogue does not know: it would be built for nothing. */
function strayItem(spec: PairSpec, build: PricedCatalog): { readonly path: string; readonly item: string } | null {
  if (!blendById(build, spec.core).ok) return { path: "core", item: spec.core };
  const known = new Set(build.reinforcements.map((each) => each.id));
  const plates = build.rules.plate.choices ?? [];
  if (spec.plate !== undefined && !plates.some((each) => each.id === spec.plate))
    return { path: "plate", item: spec.plate };
  const stray = [...spec.reinforcements.entries()].find(([, id]) => !known.has(id));
  return stray === undefined ? null : { path: `reinforcements.${stray[0]}`, item: stray[1] };
}

function optionCodes(spec: PairSpec, book: PriceBook, build: PricedCatalog): readonly string[] {
  return [
    ...catalogueCodes(spec, build),
    ...flexCodes(spec, book, build),
    ...graphicCodes(spec),
    ...baseCodes(spec),
    ...(Math.abs(spec.mount.offsetMm) > build.rules.mountOffsetReviewMm ? (["mount-review"] as const) : []),
    ...(spec.tipTailProtectors ? (["tip-tail-protectors"] as const) : []),
  ];
}

function catalogueCodes(spec: PairSpec, build: PricedCatalog): readonly string[] {
  const hasMetal = build.models.some((each) => each.id === spec.model && each.hasMetal);
  const blend = blendById(build, spec.core);
  const reinforcements = build.reinforcements
    .filter((each) => spec.reinforcements.includes(each.id))
    // A model whose own build has metal does not pay for it again.
    .filter((each) => !(hasMetal && each.placement.kind === "metal-pair"));
  return [
    ...(blend.ok && blend.value.priceCode !== undefined ? [blend.value.priceCode] : []),
    ...reinforcements.map((each) => each.priceCode),
    ...plateCodes(spec, build),
    ...(spec.lightening && build.rules.lightening ? [build.rules.lightening.priceCode] : []),
  ];
}

function plateCodes(spec: PairSpec, { rules }: PricedCatalog): readonly string[] {
  return (rules.plate.choices ?? []).filter((each) => each.id === spec.plate).map((each) => each.priceCode);
}

function flexCodes(spec: PairSpec, book: PriceBook, build: PricedCatalog): readonly FixedOptionCode[] {
  const own = build.flexClasses.find((each) => spec.flexRatio >= each.from && spec.flexRatio < each.below);
  return own !== undefined && book.flexClassesIncluded.includes(own.number) ? [] : ["flex-outside-classes"];
}

function graphicCodes(spec: PairSpec): readonly FixedOptionCode[] {
  if (spec.graphic.kind === "house") return [];
  const drawsBothSkis = spec.graphic.layout === "continuing" || spec.graphic.layout === "independent";
  return [drawsBothSkis ? "graphic-own-pair" : "graphic-own"];
}

function baseCodes(spec: PairSpec): readonly FixedOptionCode[] {
  if (spec.base.inlay === "none") return [];
  return [spec.base.inlay === "complex" ? "inlay-complex" : "inlay-counterchange"];
}

function rushLine(rush: NonNullable<PriceTerms["rush"]>, book: PriceBook, lines: readonly UntaxedLine[]): UntaxedLine {
  return { ...line("rush", book.rush.label, rushFeeCents(sumCents(lines), book), { taxClass: "service" }), ...rush };
}

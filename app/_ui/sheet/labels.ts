/** The sheet's answers in one line each, and the engine's reasons in the skier's words. No arithmetic of the trade here. */
import type { Assessment, EngineCatalog, PartialAnswers } from "#engine/assessment";
import { coreLabel, type PairSpec } from "#engine/configuration";
import type { FitChoice, FitReason, TypedMeasures } from "#engine/fit";
import { textForPeople } from "#engine/units";
import { plusMinus } from "../plus-minus";
import type { Reason } from "../reasons";
import { heightText, massText } from "../typed-measures";
import { wordOf } from "../words";
import type { SheetWords } from "./words";

export function youLine(answers: PartialAnswers, typed: TypedMeasures, words: SheetWords): string {
  const parts = [
    typed.height ? heightText(typed.height) : answers.heightCm ? `${textForPeople(answers.heightCm, 1)} cm` : "",
    typed.mass ? massText(typed.mass) : answers.massKg ? `${textForPeople(answers.massKg, 1)} kg` : "",
    answers.ability ? words.you.abilities[answers.ability].label.toLowerCase() : "",
    answers.offPistePercent === undefined ? "" : `${answers.offPistePercent} % off-piste`,
  ].filter(Boolean);
  return parts.length > 0 ? parts.join(", ") : words.you.empty;
}

export function modelName(catalog: EngineCatalog, id: string): string {
  return catalog.build.models.find((model) => model.id === id)?.name ?? id;
}

/** "class 3, near 4", or what to do about a ratio outside all classes. */
export function flexText(ratio: number, catalog: EngineCatalog, near?: number | null): string {
  const own = catalog.build.flexClasses.find((each) => ratio >= each.from && ratio < each.below);
  const name = own
    ? `class ${own.number}, ${own.label.toLowerCase()}`
    : "outside our classes, for the owner to look at";
  return near ? `${name}, near ${near}` : name;
}

export function skiLine(spec: PairSpec | null, catalog: EngineCatalog, words: SheetWords): string {
  if (!spec) return words.ski.empty;
  return `${modelName(catalog, spec.model)}, ${spec.lengthCm} cm, ${flexText(spec.flexRatio, catalog)}`;
}

export function coreLine(spec: PairSpec | null, catalog: EngineCatalog): string {
  if (!spec) return "";
  return coreLabel(spec.core, catalog.build);
}

export function reinforcementNames(ids: readonly string[], catalog: EngineCatalog): readonly string[] {
  return catalog.build.reinforcements.filter((each) => ids.includes(each.id)).map((each) => each.label);
}

export function reinforcementLine(spec: PairSpec | null, catalog: EngineCatalog, words: SheetWords): string {
  if (!spec) return "";
  const names = [...reinforcementNames(spec.reinforcements, catalog)];
  const plate = catalog.build.rules.plate.choices?.find((each) => each.id === spec.plate);
  if (plate) names.push(plate.label);
  const { lightening } = catalog.build.rules;
  if (spec.lightening && lightening) names.push(lightening.label);
  if (spec.tipTailProtectors) names.push(words.reinforcement.protectors);
  return names.length > 0 ? names.join(", ") : words.reinforcement.none;
}

export function graphicLine(spec: PairSpec | null, catalog: EngineCatalog, words: SheetWords): string {
  return spec ? graphicText(spec.graphic, catalog, words) : "";
}

/** What is on top, and how it lies on the pair. */
export function graphicText(graphic: PairSpec["graphic"], catalog: EngineCatalog, words: SheetWords): string {
  const house = catalog.build.houseGraphics.find((each) => each.id === graphic.house);
  const picture = graphic.kind === "own" ? words.graphic.own : (house?.label ?? words.graphic.house);
  const layout = wordOf(
    Object.fromEntries(Object.entries(words.graphic.layouts).map(([key, value]) => [key, value.label])),
    graphic.layout,
  );
  return [
    picture,
    layout.toLowerCase(),
    graphic.text ? `“${graphic.text.text}”` : "",
    graphic.windows.length > 0 ? "window" : "",
  ]
    .filter(Boolean)
    .join(", ");
}

/** What a number begins with: it moves nothing up or down. */
const starts: ReadonlySet<string> = new Set(["reference-length", "body-height", "base"]);

/** Half of the last digit that is shown: what is less would read as 0. */
const leastShown: Readonly<Record<FitReason["unit"], number>> = { cm: 0.05, mm: 0.05, ratio: 0.005, score: 0.005 };

/** The reasons about one number, ready for the list: size in its unit, direction, share of the largest. */
export function reasonsAbout(
  about: FitReason["about"],
  reasons: readonly FitReason[],
  words: SheetWords,
): readonly Reason[] {
  const own = reasons.filter((reason) => reason.about === about);
  const isStart = (reason: FitReason) => starts.has(reason.factor);
  const size = (reason: FitReason) => Math.abs(reason.effect === "multiplies" ? reason.amount - 1 : reason.amount);
  const largest = Math.max(1e-9, ...own.filter((reason) => !isStart(reason)).map(size));
  const told = own.filter((reason) => isStart(reason) || size(reason) >= leastShown[reason.unit]);
  return told.map((reason) => ({
    factor: wordOf(words.factors, reason.factor),
    amount: amountText(reason, isStart(reason)),
    direction: isStart(reason) ? "none" : directionOf(reason),
    share: isStart(reason) ? 0 : size(reason) / largest,
  }));
}

function directionOf(reason: FitReason): Reason["direction"] {
  const signed = reason.effect === "multiplies" ? reason.amount - 1 : reason.amount;
  if (Math.abs(signed) < 1e-9) return "none";
  return signed > 0 ? "up" : "down";
}

function amountText(reason: FitReason, isStart: boolean): string {
  if (reason.effect === "multiplies") return `× ${textForPeople(reason.amount, 2)}`;
  const decimals = reason.unit === "score" ? 2 : 1;
  const unit = reason.unit === "score" ? "" : ` ${reason.unit}`;
  const size = textForPeople(Math.abs(reason.amount), decimals);
  if (isStart) return `${size}${unit}`;
  return `${reason.amount < 0 ? "−" : "+"}${size}${unit}`;
}

/** The choice that the recommendation holds for a model, if the model is among the shown ones. */
export function choiceFor(assessment: Assessment, model: string | undefined): FitChoice | undefined {
  return assessment.recommendation?.choices.find((choice) => choice.model === model);
}

/** Standard gravity on 10 kg, N: the load in "bends … mm under 10 kg". */
const tenKilogramsN = 98.0665;

/** @param spread of the spring as share of it; to first order the bend varies by the same share */
export function bendMm(springCentreNPerMm: number, spread?: number): string {
  const mm = tenKilogramsN / springCentreNPerMm;
  return plusMinus(mm, spread === undefined ? undefined : spread * mm, 1);
}

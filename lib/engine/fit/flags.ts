/**
 * The red flags: reasons to stop and talk to a person. Which of them blocks the sale or the build is
 * catalogue data, like their words and limits; here is only when each holds.
 */
import { textForPeople } from "#engine/units";
import { bodyMassIndex } from "./answers";
import { flag, laterFlag } from "./flag-words";
import { longestUnaskedCm } from "./length-by-body";
import { offeredLengths, outsideOfferedCm } from "./model-lengths";
import { notBuiltCost } from "./score";
import type { FitAnswers, FitChoice, FitCoefficients, FitFlag, FitModel, FitShop } from "./types";
import { hasMixedUnits, massSlip } from "./unit-slip";
import { wantsPark } from "./waist";

/** Flags that hold whatever the model. */
export function flagsForSkier(answers: FitAnswers, shop: FitShop, c: FitCoefficients): readonly FitFlag[] {
  return [...bodyFlags(answers, c), ...personFlags(answers, c), ...equipmentFlags(answers, shop, c)];
}

export interface FittedModel {
  readonly model: FitModel;
  readonly choice: FitChoice;
  /** As chosen; absent: the recommended one. */
  readonly lengthCm?: number;
  readonly addsMetal?: boolean;
}

/** A model with what it would be for this skier. */
export interface RankedModel {
  readonly model: FitModel;
  readonly choice: FitChoice;
  /** Null where the model is built in the wanted length. */
  readonly beyondBuiltCm: number | null;
}

/**
 * What was asked for and is not built: a kind of ski that is not in the line-up, and the model that would come first but for
 * its lengths.
 *
 * @param ranking the asked kind from best to worst, and what came first in the end
 */
export function flagsForRanking(
  answers: FitAnswers,
  ranking: { readonly wished: readonly RankedModel[]; readonly first: RankedModel | undefined },
  shop: FitShop,
  c: FitCoefficients,
): readonly FitFlag[] {
  const hasPark = shop.models.some((model) => model.use === "park" && model.state === "active");
  const { wished, first } = ranking;
  const scoreIfBuilt = (each: RankedModel) => each.choice.score - notBuiltCost(each, c);
  const [best] = wished.toSorted((a, b) => scoreIfBuilt(a) - scoreIfBuilt(b));
  const isLeftAside =
    best !== undefined && first !== undefined && best.model !== first.model && best.beyondBuiltCm !== null;
  return [
    ...(wantsPark(answers) && !hasPark ? laterFlag("use-not-built", c, {}) : []),
    ...(isLeftAside ? laterFlag("not-built-in-length", c, lengthFacts(best)) : []),
  ];
}

/** Whether a flag is about what the ranking left aside, whatever model stands on the sheet. */
export function isAboutRanking({ code }: Pick<FitFlag, "code">): boolean {
  return code === "not-built-in-length" || code === "use-not-built";
}

function lengthFacts({ model, choice }: Pick<FittedModel, "model" | "choice">) {
  const offered = offeredLengths(model);
  return {
    model: model.name,
    wantedCm: textForPeople(choice.wantedLengthCm, 1),
    shortestCm: Math.min(...offered),
    longestCm: Math.max(...offered),
  };
}

/** Flags that hold for one model; each names it. */
export function flagsForModel(
  answers: FitAnswers,
  fitted: FittedModel,
  shop: FitShop,
  c: FitCoefficients,
): readonly FitFlag[] {
  return [...sizeFlags(answers, fitted, shop, c), ...waistFlags(answers, fitted, c), ...metalFlags(answers, fitted, c)];
}

function bodyFlags(answers: FitAnswers, c: FitCoefficients): FitFlag[] {
  const limits = c.flagLimits;
  const flags: FitFlag[] = [];
  const index = bodyMassIndex(answers.heightCm, answers.massKg);
  if (index < limits.bodyMassIndexMin || index > limits.bodyMassIndexMax) {
    const slip = massSlip(answers, limits);
    const facts = {
      bmi: textForPeople(index, 1),
      massKg: textForPeople(answers.massKg, 1),
      heightCm: textForPeople(answers.heightCm, 1),
    };
    flags.push(flag("body-mass-implausible", c, facts, slip === null ? {} : { suggestion: slip }));
  }
  if (hasMixedUnits(answers.typed)) flags.push(flag("mixed-units", c, {}));
  const slope = limits.singleInputSlopeCm;
  const heightOnly = slope * (answers.heightCm - c.heightReferenceCm);
  const massOnly = slope * (answers.massKg - c.massReferenceKg);
  const apartCm = Math.abs(heightOnly - massOnly);
  if (apartCm > limits.heightMassDisagreeCm) {
    flags.push(flag("height-mass-disagree", c, { apartCm: textForPeople(apartCm, 1) }));
  }
  return flags;
}

function personFlags(answers: FitAnswers, c: FitCoefficients): FitFlag[] {
  const { ageYears, daysTotal } = answers;
  const isYoung = ageYears !== undefined && ageYears < c.flagLimits.youngBelowYears;
  const isUnproven = answers.ability === "expert" && daysTotal !== undefined && daysTotal < c.flagLimits.expertMinDays;
  return [
    ...(isYoung || answers.stillGrowing === true ? [flag("young-or-growing", c, {})] : []),
    ...(answers.healthAdviceGiven === true ? [flag("health-mentioned", c, {})] : []),
    ...(isUnproven ? [flag("ability-unproven", c, { days: daysTotal })] : []),
    ...(answers.buyerIsSkier === false ? [flag("buyer-not-skier", c, {})] : []),
    ...(answers.asksReleaseSetting === true ? [flag("release-setting-asked", c, {})] : []),
    ...(answers.unusualUse === undefined ? [] : [flag("unusual-use", c, { use: answers.unusualUse })]),
    ...(answers.wantsEarlierDate === true ? [flag("earlier-date-asked", c, {})] : []),
  ];
}

function equipmentFlags(answers: FitAnswers, shop: FitShop, c: FitCoefficients): FitFlag[] {
  const { bootSoleMm, bindingTrackMm, mountOffsetMm } = answers;
  const { plate, mountOffsetReviewMm, bootSoleRangeMm } = shop.rules;
  const flags: FitFlag[] = [];
  const [shortest, longest] = bootSoleRangeMm;
  if (bootSoleMm !== undefined && (bootSoleMm < shortest || bootSoleMm > longest)) {
    flags.push(flag("boot-sole-out-of-range", c, { soleMm: bootSoleMm, shortestMm: shortest, longestMm: longest }));
  }
  if (bindingTrackMm !== undefined && (plate.lengthMm - bindingTrackMm) / 2 < plate.minMarginMm) {
    const marginMm = textForPeople((plate.lengthMm - bindingTrackMm) / 2, 1);
    const facts = { trackMm: bindingTrackMm, plateMm: plate.lengthMm, marginMm, minMm: plate.minMarginMm };
    flags.push(flag("binding-track-too-long", c, facts));
  }
  if (mountOffsetMm !== undefined && Math.abs(mountOffsetMm) > mountOffsetReviewMm) {
    flags.push(flag("mount-offset-unusual", c, { offsetMm: mountOffsetMm, limitMm: mountOffsetReviewMm }));
  }
  return flags;
}

function sizeFlags(answers: FitAnswers, fitted: FittedModel, shop: FitShop, c: FitCoefficients): FitFlag[] {
  const { model, choice } = fitted;
  const flags: FitFlag[] = [];
  const named = { model: model.id };
  if (outsideOfferedCm(choice.wantedLengthCm, model) > c.flagLimits.lengthOutsideCm) {
    flags.push(flag("length-out-of-range", c, lengthFacts(fitted), named));
  }
  flags.push(...longFlags(answers, fitted, c));
  if (choice.flexClass === null) {
    const facts = {
      model: model.name,
      flexRatio: textForPeople(choice.flexRatio, 3),
      softest: Math.min(...shop.flexClasses.map((each) => each.from)),
      stiffest: Math.max(...shop.flexClasses.map((each) => each.below)),
    };
    flags.push(flag("flex-out-of-range", c, facts, named));
  }
  return flags;
}

function longFlags(answers: FitAnswers, fitted: FittedModel, c: FitCoefficients): readonly FitFlag[] {
  if (c.length.rule !== "by-body") return [];
  const { model, choice, lengthCm = choice.lengthCm } = fitted;
  const unaskedCm = longestUnaskedCm(answers, model, c.length);
  if (lengthCm <= unaskedCm) return [];
  const facts = { model: model.name, lengthCm, beyondCm: textForPeople(lengthCm - answers.heightCm, 0) };
  return laterFlag("long-for-height", c, facts, { model: model.id });
}

function waistFlags(answers: FitAnswers, { model }: FittedModel, c: FitCoefficients): FitFlag[] {
  const limits = c.flagLimits;
  const waistMm = model.shape.waistWidthMm;
  const offPistePercent = answers.offPistePercent;
  const pistePercent = offPistePercent === undefined ? undefined : 100 - offPistePercent;
  const facts = {
    model: model.name,
    waistMm,
    pistePercent: pistePercent ?? "",
    offPistePercent: offPistePercent ?? "",
  };
  const named = { model: model.id };
  const isWide = waistMm > limits.wideWaistMm && (pistePercent ?? 0) >= limits.wideAtPistePercent;
  const isNarrow = waistMm < limits.narrowWaistMm && (offPistePercent ?? 0) >= limits.narrowAtOffPistePercent;
  const isWideForLight = waistMm >= limits.lightSkierWaistMm && answers.massKg < limits.lightSkierKg;
  return [
    ...(isWide ? [flag("wide-for-piste", c, facts, named)] : []),
    ...(isNarrow ? [flag("narrow-for-off-piste", c, facts, named)] : []),
    ...(isWideForLight
      ? [flag("wide-for-light-skier", c, { ...facts, massKg: textForPeople(answers.massKg, 1) }, named)]
      : []),
  ];
}

function metalFlags(answers: FitAnswers, fitted: FittedModel, c: FitCoefficients): FitFlag[] {
  const { model, addsMetal } = fitted;
  const hasMetal = model.hasMetal || addsMetal === true;
  const tours = model.use === "touring" || (answers.touringPercent ?? 0) >= c.touringSharePercent;
  const wantsLight = (answers.priorities ?? []).includes("light");
  if (!(hasMetal && tours && wantsLight)) return [];
  return [flag("metal-for-light-touring", c, { model: model.name }, { model: model.id })];
}

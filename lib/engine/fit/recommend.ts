/**
 * From a skier's answers to ranked models, each with length, flex and every reason, and the flags that make a person stop.
 * A flagged skier is never clamped: the choice still says what the formulas want, and the flag says what it blocks.
 */
import { flagsForModel, flagsForRanking, flagsForSkier, type RankedModel } from "./flags";
import { wantedFlex } from "./flex-ratio";
import { longestLengthCm, nearestLength, wantedLength } from "./length";
import { outsideOfferedCm } from "./model-lengths";
import { scoreModel } from "./score";
import type { FitAnswers, FitCoefficients, FitModel, FitSelection, FitShop, ModelFit, Recommendation } from "./types";
import { type WantedWaist, wantedWaist, wantsPark } from "./waist";

/**
 * Ranks the active models that suit the share of touring and the terrain; the best few are choices, with the flags of
 * each named by `model`. A model that is not built in the wanted length stands behind all that are. What was asked for and
 * is not built is a flag of its own. Flags without a model hold whatever is chosen.
 *
 * @throws RangeError when height or mass is not a positive number
 */
export function recommend(answers: FitAnswers, shop: FitShop, coefficients: FitCoefficients): Recommendation {
  checkBody(answers);
  const waist = wantedWaist(answers, coefficients);
  const { asked, instead } = candidates(answers, shop, coefficients);
  const rank = (models: readonly FitModel[]) =>
    models
      .map((model) => ranked(answers, model, waist, shop, coefficients))
      .toSorted((a, b) => a.choice.score - b.choice.score);
  const wished = rank(asked);
  // Where no model of the asked kind is built in the length, the nearest other kind that is.
  const isAnyBuilt = wished.some((each) => each.beyondBuiltCm === null);
  const all = isAnyBuilt ? wished : rank([...asked, ...instead]);
  const shown = all.slice(0, coefficients.choicesShown);
  return {
    wantedWaistMm: waist.wantedWaistMm,
    choices: shown.map((each) => each.choice),
    flags: [
      ...flagsForSkier(answers, shop, coefficients),
      ...flagsForRanking(answers, { wished, first: all[0] }, shop, coefficients),
      ...shown.flatMap(({ model, choice }) => flagsForModel(answers, { model, choice }, shop, coefficients)),
    ],
  };
}

/**
 * The fit of one model that a person chose, retired or not, with every flag that holds for it: the skier's and the
 * model's. What was chosen beside it (mount, boot, metal) wins over the answers.
 *
 * @throws RangeError when the shop does not know the model, or height or mass is not a positive number
 */
export function fitToModel(
  answers: FitAnswers,
  selection: FitSelection,
  shop: FitShop,
  coefficients: FitCoefficients,
): ModelFit {
  checkBody(answers);
  const model = shop.models.find((each) => each.id === selection.model);
  if (model === undefined) throw new RangeError(`model "${selection.model}" is not one of the shop's models`);
  const waist = wantedWaist(answers, coefficients);
  const { choice } = ranked(answers, model, waist, shop, coefficients);
  const chosen = withSelection(answers, selection);
  const { addsMetal = false, lengthCm = choice.lengthCm } = selection;
  return {
    wantedWaistMm: waist.wantedWaistMm,
    choice,
    flags: [
      ...flagsForSkier(chosen, shop, coefficients),
      ...flagsForModel(chosen, { model, choice, lengthCm, addsMetal }, shop, coefficients),
    ],
  };
}

interface Candidates {
  readonly asked: readonly FitModel[];
  /** Other kinds, for somebody whose kind is not built in the length. */
  readonly instead: readonly FitModel[];
}

function candidates(answers: FitAnswers, shop: FitShop, coefficients: FitCoefficients): Candidates {
  const wantsTouring = (answers.touringPercent ?? 0) >= coefficients.touringSharePercent;
  const fitting = shop.models
    .filter((model) => model.state === "active")
    .filter((model) => model.use !== "park" || wantsPark(answers));
  const isAsked = (model: FitModel) => (model.use === "touring") === wantsTouring;
  return { asked: fitting.filter(isAsked), instead: fitting.filter((model) => !isAsked(model) && wantsTouring) };
}

function ranked(
  answers: FitAnswers,
  model: FitModel,
  waist: WantedWaist,
  shop: FitShop,
  c: FitCoefficients,
): RankedModel {
  const length = wantedLength(answers, model, c);
  const { wantedLengthCm } = length;
  const longestCm = longestLengthCm(answers, model, wantedLengthCm, c);
  const nearest = nearestLength(wantedLengthCm, model, c, longestCm);
  const beyondBuiltCm = beyondBuilt(nearest.lengthCm, wantedLengthCm, longestCm, model, c);
  const flex = wantedFlex(answers, model, shop.flexClasses, c);
  const fitting = { ...length, ...nearest, wantedWaistMm: waist.wantedWaistMm, beyondBuiltCm };
  const rank = scoreModel(answers, model, fitting, c);
  const choice = {
    model: model.id,
    ...nearest,
    wantedLengthCm,
    flexRatio: flex.flexRatio,
    flexClass: flex.flexClass,
    nearClass: flex.nearClass,
    score: rank.score,
    reasons: [...length.reasons, ...flex.reasons, ...waist.reasons, ...rank.reasons],
  };
  return { model, choice, beyondBuiltCm };
}

/** Null where the model is built in the wanted length, within the shop's limit and no longer than is right beside the body. */
function beyondBuilt(
  lengthCm: number,
  wantedCm: number,
  longestCm: number,
  model: FitModel,
  { flagLimits }: FitCoefficients,
): number | null {
  const outsideCm = outsideOfferedCm(wantedCm, model) - flagLimits.lengthOutsideCm;
  const tooLongCm = lengthCm - longestCm;
  return outsideCm <= 0 && tooLongCm <= 0 ? null : Math.max(outsideCm, tooLongCm);
}

function withSelection(answers: FitAnswers, selection: FitSelection): FitAnswers {
  const { mountOffsetMm, bootSoleMm, bindingTrackMm } = selection;
  return {
    ...answers,
    ...(mountOffsetMm === undefined ? {} : { mountOffsetMm }),
    ...(bootSoleMm === undefined ? {} : { bootSoleMm }),
    ...(bindingTrackMm === undefined ? {} : { bindingTrackMm }),
  };
}

function checkBody(answers: FitAnswers): void {
  for (const [name, value] of [
    ["heightCm", answers.heightCm],
    ["massKg", answers.massKg],
  ] as const) {
    if (!(Number.isFinite(value) && value > 0)) throw new RangeError(`${name} ${value} is not a number above 0`);
  }
}

/**
 * From a skier's answers to ranked models, each with length, flex and every reason, and the flags that make a person stop.
 * A flagged skier is never clamped: the choice still says what the formulas want, and the flag says what it blocks.
 */
import { flagsForModel, flagsForSkier } from "./flags";
import { wantedFlex } from "./flex-ratio";
import { nearestLength, wantedLength } from "./length";
import { scoreModel } from "./score";
import type {
  FitAnswers,
  FitChoice,
  FitCoefficients,
  FitModel,
  FitSelection,
  FitShop,
  ModelFit,
  Recommendation,
} from "./types";
import { type WantedWaist, wantedWaist } from "./waist";

/**
 * Ranks the active models that suit the share of touring and the terrain; the best few are choices, with the flags of
 * each named by `model`. Flags without a model hold whatever is chosen.
 *
 * @throws RangeError when height or mass is not a positive number
 */
export function recommend(answers: FitAnswers, shop: FitShop, coefficients: FitCoefficients): Recommendation {
  checkBody(answers);
  const waist = wantedWaist(answers, coefficients);
  const ranked = candidates(answers, shop, coefficients)
    .map((model) => ({ model, choice: choiceOf(answers, model, waist, shop, coefficients) }))
    .toSorted((a, b) => a.choice.score - b.choice.score)
    .slice(0, coefficients.choicesShown);
  return {
    wantedWaistMm: waist.wantedWaistMm,
    choices: ranked.map((each) => each.choice),
    flags: [
      ...flagsForSkier(answers, shop, coefficients),
      ...ranked.flatMap(({ model, choice }) => flagsForModel(answers, { model, choice }, shop, coefficients)),
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
  const choice = choiceOf(answers, model, waist, shop, coefficients);
  const chosen = withSelection(answers, selection);
  const addsMetal = selection.addsMetal ?? false;
  return {
    wantedWaistMm: waist.wantedWaistMm,
    choice,
    flags: [
      ...flagsForSkier(chosen, shop, coefficients),
      ...flagsForModel(chosen, { model, choice, addsMetal }, shop, coefficients),
    ],
  };
}

function candidates(answers: FitAnswers, shop: FitShop, coefficients: FitCoefficients): readonly FitModel[] {
  const wantsTouring = (answers.touringPercent ?? 0) >= coefficients.touringSharePercent;
  const wantsPark = (answers.terrain ?? []).some((terrain) => terrain === "park" || terrain === "switch");
  return shop.models
    .filter((model) => model.state === "active")
    .filter((model) => (model.use === "touring") === wantsTouring)
    .filter((model) => model.use !== "park" || wantsPark);
}

function choiceOf(
  answers: FitAnswers,
  model: FitModel,
  waist: WantedWaist,
  shop: FitShop,
  coefficients: FitCoefficients,
): FitChoice {
  const length = wantedLength(answers, model, coefficients);
  const nearest = nearestLength(length.wantedLengthCm, model, coefficients);
  const flex = wantedFlex(answers, model, shop.flexClasses, coefficients);
  const fitting = { ...length, ...nearest, wantedWaistMm: waist.wantedWaistMm };
  const rank = scoreModel(answers, model, fitting, coefficients);
  return {
    model: model.id,
    ...nearest,
    wantedLengthCm: length.wantedLengthCm,
    flexRatio: flex.flexRatio,
    flexClass: flex.flexClass,
    nearClass: flex.nearClass,
    score: rank.score,
    reasons: [...length.reasons, ...flex.reasons, ...waist.reasons, ...rank.reasons],
  };
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

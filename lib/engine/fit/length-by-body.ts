/**
 * Wanted length by body height:
 *   L* = h + S(o),  o = use + (slope − 1)(h − pivot) + ability + temperament + turns + terrain + age + b(m + pack − i h²)
 * in cm, m in kg, h² in m². S(o) = middle + half · tanh((o − middle)/half) saturates smoothly within the band that the use
 * allows beside the body, or, for somebody who learns, between chin and nose. S has slope 1 in the middle of its band and
 * never more, so that one cm of height moves L* by at most one cm and, since S never falls, a kg never shortens a ski.
 * Coefficients are the shop's own (no source), but for the learner's band, which names its own in the catalogue.
 */
import { abilityThatCounts, sumOf, withoutIdle } from "./answers";
import { longestLikeRightCm } from "./current-ski";
import type { LengthByBody } from "./length-rules";
import { stepCm } from "./model-lengths";
import type { FitAnswers, FitCoefficients, FitModel, FitReason } from "./types";

interface Band {
  readonly fromCm: number;
  readonly toCm: number;
}

/** Reasons that sum to the wanted length, before anything is said of the current ski. */
export function reasonsByBody(
  answers: FitAnswers,
  model: FitModel,
  rule: LengthByBody,
  c: FitCoefficients,
): readonly FitReason[] {
  const { heightCm, massKg, temperament, turnSize } = answers;
  const ordinaryKg = rule.ordinaryMassIndex * (heightCm / 100) ** 2;
  const beside = withoutIdle([
    cm("use", bandOfUse(model, rule).middleCm),
    cm("proportion", (rule.heightSlope - 1) * (heightCm - rule.heightPivotCm)),
    cm("mass", rule.perKgCm * (massKg - ordinaryKg)),
    cm("pack", rule.perKgCm * c.packShare * (answers.packKg ?? 0)),
    cm("ability", rule.abilityCm[abilityThatCounts(answers, c)]),
    cm("temperament", temperament === undefined ? 0 : rule.temperamentCm[temperament]),
    cm("turn-size", turnSize === undefined ? 0 : rule.turnSizeCm[turnSize]),
    cm("also-skis", terrainCm(answers, rule)),
    cm("age", rule.age.perYearCm * Math.max(0, (answers.ageYears ?? 0) - rule.age.fromYears)),
  ]);
  const wishCm = sumOf(beside);
  const kept = saturated(wishCm, bandOf(answers, model, rule, c)) - wishCm;
  return withoutIdle([cm("body-height", heightCm), ...beside, cm("band", kept)]);
}

/** The longest ski beside this skier that nobody need ask about, cm; a pair that is right may reach a little farther. */
export function longestUnaskedCm(answers: FitAnswers, model: FitModel, rule: LengthByBody): number {
  const right = longestLikeRightCm(answers, stepCm(model)) ?? 0;
  return Math.max(
    answers.heightCm + bandOfUse(model, rule).toCm,
    Math.min(right, answers.heightCm + rule.rightPairToCm),
  );
}

function bandOf(answers: FitAnswers, model: FitModel, rule: LengthByBody, c: FitCoefficients): Band {
  if (abilityThatCounts(answers, c) !== "learning") return bandOfUse(model, rule);
  const beside = (share: number) => (share - 1) * answers.heightCm;
  return { fromCm: beside(rule.learning.fromShare), toCm: beside(rule.learning.toShare) };
}

function saturated(value: number, { fromCm, toCm }: Band): number {
  const middle = (fromCm + toCm) / 2;
  const half = (toCm - fromCm) / 2;
  return middle + half * Math.tanh((value - middle) / half);
}

function bandOfUse(model: FitModel, rule: LengthByBody) {
  const use = rule.uses[model.use];
  if (use === undefined) throw new RangeError(`fit.length.uses has no "${model.use}", the use of model ${model.id}`);
  return use;
}

/** The strongest of what is said of terrain. */
function terrainCm(answers: FitAnswers, rule: LengthByBody): number {
  return Math.min(0, ...(answers.terrain ?? []).map((terrain) => rule.terrainCm[terrain]));
}

function cm(factor: string, amount: number): FitReason {
  return { factor, effect: "adds", unit: "cm", amount, about: "length" };
}

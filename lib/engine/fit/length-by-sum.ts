/**
 * Wanted length as releases of the first kind find it, so that what was sold by them is judged by them for ever:
 *   L* = Lref + a(h − h0) + b(m − m0) + ability + temperament − one step for bumps or trees
 * in cm (the shop's own coefficients, no source).
 */
import { abilityThatCounts, withoutIdle } from "./answers";
import type { LengthBySum } from "./length-rules";
import { stepCm } from "./model-lengths";
import type { FitAnswers, FitCoefficients, FitModel, FitReason } from "./types";

/** Reasons that sum to the wanted length, before anything is said of the current ski. */
export function reasonsBySum(
  answers: FitAnswers,
  model: FitModel,
  rule: LengthBySum,
  c: FitCoefficients,
): readonly FitReason[] {
  const { heightCm, massKg, temperament, terrain = [] } = answers;
  const isShorter = terrain.includes("bumps") || terrain.includes("trees");
  return withoutIdle([
    cm("reference-length", model.shape.refLengthCm),
    cm("height", rule.perCm * (heightCm - c.heightReferenceCm)),
    cm("mass", rule.perKg * (massKg - c.massReferenceKg)),
    cm("ability", rule.abilityCm[abilityThatCounts(answers, c)]),
    cm("temperament", temperament === undefined ? 0 : rule.temperamentCm[temperament]),
    cm("terrain", isShorter ? -stepCm(model) : 0),
  ]);
}

function cm(factor: string, amount: number): FitReason {
  return { factor, effect: "adds", unit: "cm", amount, about: "length" };
}

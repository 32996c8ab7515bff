/** What the answers come to before any formula: the ability that counts, the body-mass index, small reasons. */
import type { Ability, FitAnswers, FitCoefficients, FitReason } from "./types";

/** The ability that the fit uses: too few days on skis count as learning, whatever is claimed. */
export function abilityThatCounts(answers: FitAnswers, coefficients: FitCoefficients): Ability {
  const days = answers.daysTotal;
  return days !== undefined && days < coefficients.learningBelowDays ? "learning" : answers.ability;
}

/** Body-mass index, kg/m²: used only to notice a slip of units. */
export function bodyMassIndex(heightCm: number, massKg: number): number {
  return massKg / (heightCm / 100) ** 2;
}

/** Binary noise off a sum of decimal numbers, far below anything a person reads (1e-9 of the unit). */
export function clean(value: number): number {
  return Math.round(value * 1e9) / 1e9;
}

/** Reasons that do nothing are not reasons. */
export function withoutIdle(reasons: readonly FitReason[]): readonly FitReason[] {
  return reasons.filter((reason) => reason.amount !== (reason.effect === "multiplies" ? 1 : 0));
}

export function sumOf(reasons: readonly FitReason[]): number {
  return clean(reasons.reduce((total, reason) => total + reason.amount, 0));
}

/**
 * Wanted waist width: base + slope × off-piste share + snow at home + a little for a heavy or a light skier, mm
 * (the shop's own coefficients, no source).
 */
import { sumOf, withoutIdle } from "./answers";
import type { FitAnswers, FitCoefficients, FitReason } from "./types";

export interface WantedWaist {
  readonly wantedWaistMm: number;
  /** They sum to the wanted waist. */
  readonly reasons: readonly FitReason[];
}

export function wantedWaist(answers: FitAnswers, coefficients: FitCoefficients): WantedWaist {
  const c = coefficients;
  const isAnswered = answers.offPistePercent !== undefined;
  const offPistePercent = answers.offPistePercent ?? c.offPisteUnansweredPercent;
  const reasons = withoutIdle([
    mm("base", c.waistBaseMm),
    mm(isAnswered ? "off-piste" : "off-piste-unanswered", c.waistPerOffPistePercent * offPistePercent),
    mm("home-snow", answers.homeSnow === undefined ? 0 : c.homeSnowWaistMm[answers.homeSnow]),
    mm("mass", massWaistMm(answers.massKg, c)),
  ]);
  return { wantedWaistMm: sumOf(reasons), reasons };
}

function massWaistMm(massKg: number, c: FitCoefficients): number {
  if (massKg > c.heavyKg) return c.heavyWaistMm;
  return massKg < c.lightKg ? c.lightWaistMm : 0;
}

function mm(factor: string, amount: number): FitReason {
  return { factor, effect: "adds", unit: "mm", amount, about: "waist" };
}

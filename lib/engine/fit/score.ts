/**
 * Rank of a model for a skier, lower is better (settled rule, the shop's own, no source):
 *   |waist − wanted|/8 + max(0, |L* − L| − 2)/4 + |R − wanted R|/4 + 0.5 for metal against "light" or "forgiving"
 * Each term is a reason that costs score. The wanted R is the nearest radius of the band of the turn size.
 */
import { shapeAtLength } from "#engine/geometry";
import { clean, sumOf, withoutIdle } from "./answers";
import type { FitAnswers, FitCoefficients, FitModel, FitReason, RadiusBand } from "./types";

export interface Fitting {
  readonly wantedWaistMm: number;
  readonly wantedLengthCm: number;
  readonly lengthCm: number;
}

export interface Score {
  readonly score: number;
  /** They sum to the score. */
  readonly reasons: readonly FitReason[];
}

export function scoreModel(
  answers: FitAnswers,
  model: FitModel,
  fitting: Fitting,
  coefficients: FitCoefficients,
): Score {
  const c = coefficients;
  const waistMm = Math.abs(model.shape.waistWidthMm - fitting.wantedWaistMm);
  const lengthCm = Math.max(0, Math.abs(fitting.wantedLengthCm - fitting.lengthCm) - c.scoreLengthFreeCm);
  const reasons = withoutIdle([
    cost("waist-distance", waistMm / c.scoreWaistMm),
    cost("length-distance", lengthCm / c.scoreLengthCm),
    cost("radius-distance", radiusDistanceM(answers, model, fitting.lengthCm, c) / c.scoreRadiusM),
    cost("metal-against-priority", isMetalUnwanted(answers, model) ? c.scoreMetalAgainstPriority : 0),
  ]);
  return { score: sumOf(reasons), reasons };
}

function cost(factor: string, amount: number): FitReason {
  return { factor, effect: "costs", unit: "score", amount: clean(amount), about: "rank" };
}

function radiusDistanceM(answers: FitAnswers, model: FitModel, lengthCm: number, c: FitCoefficients): number {
  if (answers.turnSize === undefined) return 0;
  const radiusM = shapeAtLength(model.shape, lengthCm).sidecutRadiusMm / 1000;
  return outsideBandM(radiusM, c.turnRadiusM[answers.turnSize]);
}

function outsideBandM(radiusM: number, band: RadiusBand): number {
  const below = band.fromM === undefined ? 0 : band.fromM - radiusM;
  const above = band.toM === undefined ? 0 : radiusM - band.toM;
  return Math.max(0, below, above);
}

function isMetalUnwanted(answers: FitAnswers, model: FitModel): boolean {
  const priorities = answers.priorities ?? [];
  return model.hasMetal && (priorities.includes("light") || priorities.includes("forgiving"));
}

/**
 * Rank of a model for a skier, lower is better (the shop's own rule, no source):
 *   |waist − wanted|/8 + max(0, |L* − L| − 2)/4 + |R − wanted R|/4
 *   + metal under somebody who learns, skis calmly or with the years, or asked for light, forgiving or lively
 *   + no metal for somebody who asked for planted or quiet + tail rocker that the park misses
 *   + far more than all of these together where the model is not built in the wanted length
 * Each term is a reason that costs score. The wanted R is the nearest radius of the band of the turn size; R is that of the
 * wanted length, so that no term jumps from one built length to the next.
 */
import { shapeAtLength } from "#engine/geometry";
import { abilityThatCounts, clean, sumOf, withoutIdle } from "./answers";
import type { FitAnswers, FitCoefficients, FitModel, FitReason, Priority, RadiusBand } from "./types";
import { wantsPark } from "./waist";

export interface Fitting {
  readonly wantedWaistMm: number;
  readonly wantedLengthCm: number;
  readonly lengthCm: number;
  /** How far the wanted length lies beyond what counts as built, cm; null where the model is built in it. */
  readonly beyondBuiltCm: number | null;
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
    cost("radius-distance", radiusDistanceM(answers, model, fitting.wantedLengthCm, c) / c.scoreRadiusM),
    ...(model.hasMetal ? metalCosts(answers, c) : plainCosts(answers, c)),
    cost("park-tail", parkCost(answers, model, c)),
    cost("not-built", notBuiltCost(fitting, c)),
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

function metalCosts(answers: FitAnswers, c: FitCoefficients): readonly FitReason[] {
  const { metalByAbility, metalByTemperament, metalByAge, metalAgainst } = c.rank;
  const years = Math.max(0, (answers.ageYears ?? 0) - metalByAge.fromYears);
  return [
    cost("metal-for-ability", metalByAbility[abilityThatCounts(answers, c)]),
    cost("metal-for-temperament", answers.temperament === undefined ? 0 : metalByTemperament[answers.temperament]),
    cost("metal-for-age", metalByAge.perYear * years),
    cost("metal-against-wish", asksFor(answers, metalAgainst) ? c.scoreMetalAgainstPriority : 0),
  ];
}

function plainCosts(answers: FitAnswers, { rank }: FitCoefficients): readonly FitReason[] {
  return [cost("no-metal-against-wish", asksFor(answers, rank.metalFor) ? rank.noMetalAgainstPriority : 0)];
}

/** Of models that are all not built in the length, the one that misses it least stands first. */
export function notBuiltCost({ beyondBuiltCm }: Pick<Fitting, "beyondBuiltCm">, { rank }: FitCoefficients): number {
  return beyondBuiltCm === null ? 0 : rank.notBuilt * (1 + beyondBuiltCm);
}

/** A tail that ends flat catches when somebody lands or skis backwards. */
function parkCost(answers: FitAnswers, model: FitModel, { rank }: FitCoefficients): number {
  if (!wantsPark(answers)) return 0;
  return rank.park.perPercent * Math.max(0, rank.park.tailRockerPercent - model.shape.tailRockerPercent);
}

function asksFor({ priorities = [] }: FitAnswers, any: readonly Priority[]): boolean {
  return any.some((priority) => priorities.includes(priority));
}

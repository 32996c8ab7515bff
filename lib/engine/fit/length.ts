/**
 * Wanted length L* and the offered length nearest to it.
 *   L* = Lref + a(h − h0) + b(m − m0) + ability + temperament + steps from terrain and from the current ski
 * in cm (the shop's own coefficients, no source). Lref already holds the model's rocker allowance.
 */
import { abilityThatCounts, sumOf, withoutIdle } from "./answers";
import type { FitAnswers, FitCoefficients, FitModel, FitReason } from "./types";

export interface WantedLength {
  readonly wantedLengthCm: number;
  /** They sum to the wanted length. */
  readonly reasons: readonly FitReason[];
}

export function wantedLength(answers: FitAnswers, model: FitModel, coefficients: FitCoefficients): WantedLength {
  const c = coefficients;
  const reference = model.shape.refLengthCm;
  const ability = abilityThatCounts(answers, c);
  const formula = withoutIdle([
    cm("reference-length", reference),
    cm("height", c.lengthPerCm * (answers.heightCm - c.heightReferenceCm)),
    cm("mass", c.lengthPerKg * (answers.massKg - c.massReferenceKg)),
    cm("ability", c.abilityLengthCm[ability]),
    cm("temperament", answers.temperament === undefined ? 0 : c.temperamentLengthCm[answers.temperament]),
    cm("terrain", -stepCm(model) * Number(wantsShorterForTerrain(answers))),
  ]);
  const evidence = withoutIdle([cm("current-ski", stepCm(model) * currentSkiSteps(answers, sumOf(formula)))]);
  const reasons = [...formula, ...evidence];
  return { wantedLengthCm: sumOf(reasons), reasons };
}

export interface NearestLength {
  readonly lengthCm: number;
  /** The other offered length when it is hardly farther from L* (settings, 1.5 cm). */
  readonly neighbourLengthCm?: number;
}

/** The nearest offered length, the shorter when two are equally near. @throws RangeError when the model has no length */
export function nearestLength(wantedCm: number, model: FitModel, coefficients: FitCoefficients): NearestLength {
  const distance = (lengthCm: number) => Math.abs(lengthCm - wantedCm);
  const [first, second] = model.lengths
    .map((each) => each.lengthCm)
    .toSorted((a, b) => distance(a) - distance(b) || a - b);
  if (first === undefined) throw new RangeError(`model ${model.id} has no offered length`);
  const slack = 1e-9;
  const isNeighbourClose =
    second !== undefined && distance(second) - distance(first) <= coefficients.neighbourWithinCm + slack;
  return { lengthCm: first, ...(isNeighbourClose ? { neighbourLengthCm: second } : {}) };
}

/** How far L* lies outside the offered lengths, cm; 0 inside. */
export function outsideOfferedCm(wantedCm: number, model: FitModel): number {
  const offered = model.lengths.map((each) => each.lengthCm);
  return Math.max(0, Math.min(...offered) - wantedCm, wantedCm - Math.max(...offered));
}

function cm(factor: string, amount: number): FitReason {
  return { factor, effect: "adds", unit: "cm", amount, about: "length" };
}

/** The step between offered lengths. */
function stepCm(model: FitModel): number {
  const [first, second] = model.lengths.map((each) => each.lengthCm).toSorted((a, b) => a - b);
  return first === undefined || second === undefined ? 0 : second - first;
}

function wantsShorterForTerrain(answers: FitAnswers): boolean {
  return (answers.terrain ?? []).some((terrain) => terrain === "bumps" || terrain === "trees");
}

/**
 * What is said of the current ski is the strongest evidence and moves one length step, unless the formula already went
 * the wished way from that ski's own length.
 */
function currentSkiSteps(answers: FitAnswers, formulaCm: number): -1 | 0 | 1 {
  const said = answers.currentSki?.length;
  const ownCm = answers.currentSki?.lengthCm;
  if (said === "too short") return ownCm !== undefined && formulaCm > ownCm ? 0 : 1;
  if (said === "too long") return ownCm !== undefined && formulaCm < ownCm ? 0 : -1;
  return 0;
}

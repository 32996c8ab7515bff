/** Wanted length L* by the rule of the release and by what is said of the current ski, and the offered length nearest to it. */
import { sumOf, withoutIdle } from "./answers";
import { lengthEvidenceCm, longestLikeRightCm } from "./current-ski";
import { longestUnaskedCm, reasonsByBody } from "./length-by-body";
import { reasonsBySum } from "./length-by-sum";
import { offeredLengths, stepCm } from "./model-lengths";
import type { FitAnswers, FitCoefficients, FitModel, FitReason } from "./types";

export interface WantedLength {
  readonly wantedLengthCm: number;
  /** They sum to the wanted length. */
  readonly reasons: readonly FitReason[];
}

export function wantedLength(answers: FitAnswers, model: FitModel, c: FitCoefficients): WantedLength {
  const formula =
    c.length.rule === "by-body"
      ? reasonsByBody(answers, model, c.length, c)
      : reasonsBySum(answers, model, c.length, c);
  const saidCm = lengthEvidenceCm(answers, sumOf(formula), stepCm(model), c.length.rule);
  const evidence: FitReason = {
    factor: "current-ski",
    effect: "adds",
    unit: "cm",
    amount: saidCm,
    about: "length",
  };
  const reasons = [...formula, ...withoutIdle([evidence])];
  return { wantedLengthCm: sumOf(reasons), reasons };
}

export interface NearestLength {
  readonly lengthCm: number;
  /** The other offered length when it is hardly farther from L* (settings, 1.5 cm). */
  readonly neighbourLengthCm?: number;
}

/**
 * The nearest offered length, the shorter when two are equally near; beyond `longestCm` only where nothing shorter is offered.
 *
 * @throws RangeError when the model has no length
 */
export function nearestLength(
  wantedCm: number,
  model: FitModel,
  c: FitCoefficients,
  longestCm = Number.POSITIVE_INFINITY,
): NearestLength {
  const offered = offeredLengths(model);
  const distance = (lengthCm: number) => Math.abs(lengthCm - wantedCm);
  const [shortest = 0] = offered;
  const [first = shortest, second] = offered
    .filter((lengthCm) => lengthCm <= longestCm)
    .toSorted((a, b) => distance(a) - distance(b) || a - b);
  const slack = 1e-9;
  const isNeighbourClose = second !== undefined && distance(second) - distance(first) <= c.neighbourWithinCm + slack;
  return { lengthCm: first, ...(isNeighbourClose ? { neighbourLengthCm: second } : {}) };
}

/** Beyond it a person is asked first, cm; a pair that is right today is allowed whatever its length. */
export function longestLengthCm(answers: FitAnswers, model: FitModel, wantedCm: number, c: FitCoefficients): number {
  if (c.length.rule === "by-sum") return Number.POSITIVE_INFINITY;
  const right = longestLikeRightCm(answers, stepCm(model)) ?? 0;
  return Math.max(wantedCm, right, longestUnaskedCm(answers, model, c.length));
}

/**
 * What is said of the pair somebody has now: the strongest evidence there is. A pair that is right for the same skiing is an
 * anchor, and the answer stays within one step of it; one that is wrong moves the answer away from it.
 */
import type { LengthRule } from "./length-rules";
import type { FitAnswers, FitShop } from "./types";

type FlexClass = FitShop["flexClasses"][number];

/** What the current pair adds to the length that the formula gives, cm. */
export function lengthEvidenceCm(
  answers: FitAnswers,
  formulaCm: number,
  stepCm: number,
  rule: LengthRule["rule"],
): number {
  if (isForSomethingElse(answers)) return 0;
  const { length: said, lengthCm: ownCm } = answers.currentSki ?? {};
  if (said === undefined) return 0;
  if (rule === "by-sum" || ownCm === undefined) return stepCm * steps(said, ownCm, formulaCm);
  if (said === "right") return anchored(formulaCm, ownCm, stepCm) - formulaCm;
  // The nearest length to half a step away from one's own is never one's own.
  const half = stepCm / 2;
  if (said === "too long") return Math.min(0, ownCm - half - formulaCm);
  return Math.max(0, ownCm + half + EASY_CM - formulaCm);
}

/** The longest that is still like a pair which is right for the same skiing, cm; null without such a pair. */
export function longestLikeRightCm(answers: FitAnswers, stepCm: number): number | null {
  const { length, lengthCm } = answers.currentSki ?? {};
  if (length !== "right" || lengthCm === undefined || isForSomethingElse(answers)) return null;
  return lengthCm + stepCm / 2;
}

/** Of two lengths equally near the shorter is taken: so much more decides for the longer, cm. */
const EASY_CM = 0.1;

/** The waist that is wanted, drawn to that of a pair that is right, mm. */
export function waistEvidenceMm(answers: FitAnswers, wantedMm: number, withinMm: number): number {
  const { waistMm, length, flex } = answers.currentSki ?? {};
  const isRight = length === "right" || (length === undefined && flex === "right");
  if (waistMm === undefined || !isRight || isForSomethingElse(answers)) return 0;
  return anchored(wantedMm, waistMm, 2 * withinMm) - wantedMm;
}

/** Never farther than half a step from one's own, so that the nearest offered one is at most a step away. */
function anchored(value: number, own: number, step: number): number {
  if (step === 0) return value;
  return own + (step / 2) * Math.tanh((value - own) / step);
}

function steps(said: "too short" | "right" | "too long", ownCm: number | undefined, formulaCm: number): -1 | 0 | 1 {
  if (said === "too short") return ownCm !== undefined && formulaCm > ownCm ? 0 : 1;
  if (said === "too long") return ownCm !== undefined && formulaCm < ownCm ? 0 : -1;
  return 0;
}

/**
 * What the current pair makes of a flex ratio, as a factor. Too soft or too stiff moves one class, to the same place within
 * the next; beyond the last class the step goes on in that class's own proportion, so that the flag for an unbuildable flex
 * can rise. A pair of this shop that is right by its class keeps the answer within one class of its own.
 */
export function flexEvidence(answers: FitAnswers, flexRatio: number, classes: readonly FlexClass[]): number {
  const { flex: said, flexClass } = answers.currentSki ?? {};
  if (said === undefined || isForSomethingElse(answers)) return 1;
  const ordered = classes.toSorted((a, b) => a.from - b.from);
  if (said === "right") return withinOneClass(flexRatio, flexClass, ordered) / flexRatio;
  return aClassOn(flexRatio, said === "too soft" ? 1 : -1, ordered) / flexRatio;
}

/** A ratio just below an edge still lies in the class below it. */
const BELOW_EDGE = 1e-6;

function withinOneClass(flexRatio: number, number: number | undefined, ordered: readonly FlexClass[]): number {
  const own = ordered.findIndex((each) => each.number === number);
  if (own < 0) return flexRatio;
  const softest = ordered[Math.max(0, own - 1)]?.from ?? flexRatio;
  const stiffest = ordered[Math.min(ordered.length - 1, own + 1)]?.below ?? flexRatio;
  return Math.min(Math.max(flexRatio, softest), stiffest - BELOW_EDGE);
}

function aClassOn(flexRatio: number, step: 1 | -1, ordered: readonly FlexClass[]): number {
  const [first, last] = [ordered[0], ordered.at(-1)];
  if (first === undefined || last === undefined) return flexRatio;
  if (flexRatio < first.from) return flexRatio * (first.below / first.from) ** step;
  if (flexRatio >= last.below) return flexRatio * (last.below / last.from) ** step;
  const at = ordered.findIndex((each) => flexRatio < each.below);
  const own = ordered[at] ?? last;
  const next = ordered[at + step];
  const place = (flexRatio - own.from) / (own.below - own.from);
  if (next !== undefined) return next.from + place * (next.below - next.from);
  return flexRatio * (own.below / own.from) ** step;
}

function isForSomethingElse(answers: FitAnswers): boolean {
  return answers.currentSki?.newPairFor === "something else";
}

/**
 * Flex ratio k, the wanted stiffness over the model's class 3 reference, and its class.
 *   k = ((m + pack + gear)/(75 + gear))^p × ability × temperament × terrain × age
 * Equal relative deflection needs stiffness ∝ m (similarity.ts); the demo tempers the exponent 1 to p = 0.8 (the shop's own
 * coefficient, no source). Length is not in k: the core is solved for k·(L/Lref)².
 */
import { abilityThatCounts, withoutIdle } from "./answers";
import { flexEvidence } from "./current-ski";
import { bendingForSameFeel } from "./similarity";
import type { FitAnswers, FitCoefficients, FitModel, FitReason, FitShop } from "./types";

type FlexClasses = FitShop["flexClasses"];
type ClassNumber = FlexClasses[number]["number"];

export interface WantedFlex {
  readonly flexRatio: number;
  readonly flexClass: ClassNumber | null;
  readonly nearClass: ClassNumber | null;
  /** Their product is the ratio. */
  readonly reasons: readonly FitReason[];
}

export function wantedFlex(
  answers: FitAnswers,
  model: FitModel,
  classes: FlexClasses,
  coefficients: FitCoefficients,
): WantedFlex {
  const c = coefficients;
  const rider = (massKg: number) => ({ massKg: massKg + gearKg(model.use, c), lengthMm: 1 });
  const exponents = { mass: c.massExponent, length: 2 };
  const bare = rider(answers.massKg);
  const formula = [
    ratio("mass", bendingForSameFeel(bare, rider(c.massReferenceKg), exponents)),
    ratio("pack", bendingForSameFeel(rider(answers.massKg + packKg(answers, c)), bare, exponents)),
    ratio("ability", c.abilityFlex[abilityThatCounts(answers, c)]),
    ratio("temperament", answers.temperament === undefined ? 1 : c.temperamentFlex[answers.temperament]),
    ratio("also-skis", Math.min(1, ...(answers.terrain ?? []).map((terrain) => c.terrainFlex[terrain]))),
    ratio("age", 1 - c.ageFlex.lessPerYear * Math.max(0, (answers.ageYears ?? 0) - c.ageFlex.fromYears)),
  ];
  const before = productOf(formula);
  const evidence = flexEvidence(answers, before, classes);
  const wanted = before * evidence;
  const clear = clearOfEdges(wanted, classes, c.clearOfClassEdge ?? 0);
  const reasons = withoutIdle([...formula, ratio("current-ski", evidence), ratio("class-edge", clear / wanted)]);
  const flexRatio = productOf(reasons);
  return {
    flexRatio,
    flexClass: classOf(flexRatio, classes),
    nearClass: nearClassOf(flexRatio, classes, c.nearClassWithin),
    reasons,
  };
}

/** Clothes, boots, skis and bindings that a skier on this kind of ski carries, kg. */
export function gearKg(use: string, { gearKg: usual, touringGearKg }: FitCoefficients): number {
  return use === "touring" ? touringGearKg : usual;
}

/** What of the pack counts beside the skier's own mass, kg. */
export function packKg(answers: Pick<FitAnswers, "packKg">, { packShare }: FitCoefficients): number {
  return packShare * (answers.packKg ?? 0);
}

/** The class whose half-open interval [from, below) holds the ratio; null outside all of them. */
export function classOf(flexRatio: number, classes: FlexClasses): ClassNumber | null {
  return classes.find((each) => flexRatio >= each.from && flexRatio < each.below)?.number ?? null;
}

/**
 * The ratio moved away from the edges of its class, within it: what is recommended then reads as its class by the digits that
 * are told. Order is kept; what no class holds stays, since nobody builds it unasked.
 */
function clearOfEdges(flexRatio: number, classes: FlexClasses, clearance: number): number {
  const own = classes.find((each) => flexRatio >= each.from && flexRatio < each.below);
  if (own === undefined) return flexRatio;
  return Math.min(Math.max(flexRatio, own.from + clearance), own.below - clearance);
}

/** Another class whose edge is within `withinRatio`, if any. */
function nearClassOf(flexRatio: number, classes: FlexClasses, withinRatio: number): ClassNumber | null {
  const slack = 1e-9;
  const own = classOf(flexRatio, classes);
  const near = classes.find((each) => {
    const distance = flexRatio < each.from ? each.from - flexRatio : flexRatio - each.below;
    return each.number !== own && distance <= withinRatio + slack;
  });
  return near?.number ?? null;
}

function ratio(factor: string, amount: number): FitReason {
  return { factor, effect: "multiplies", unit: "ratio", amount, about: "flexRatio" };
}

function productOf(reasons: readonly FitReason[]): number {
  return reasons.reduce((product, reason) => product * reason.amount, 1);
}

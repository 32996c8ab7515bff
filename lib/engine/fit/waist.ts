/**
 * Wanted waist width: base + slope × off-piste share + snow at home + a little for weight, at most what the ability can turn,
 * at least what the park needs to land on, drawn to the waist of a pair that is right, mm (the shop's own coefficients, no
 * source).
 */
import { abilityThatCounts, sumOf, withoutIdle } from "./answers";
import { waistEvidenceMm } from "./current-ski";
import { packKg } from "./flex-ratio";
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
  const asked = [
    mm("base", c.waistBaseMm),
    mm(isAnswered ? "off-piste" : "off-piste-unanswered", c.waistPerOffPistePercent * offPistePercent),
    mm("home-snow", answers.homeSnow === undefined ? 0 : c.homeSnowWaistMm[answers.homeSnow]),
    mm("mass", massWaistMm(answers, c)),
  ];
  const askedMm = sumOf(asked);
  const widestMm = c.rank.widestMm[abilityThatCounts(answers, c)];
  const ability = mm("ability", Math.min(0, widestMm - askedMm));
  const parkMm = wantsPark(answers) ? c.rank.park.narrowestMm : 0;
  const park = mm("also-skis", Math.max(0, parkMm - askedMm - ability.amount));
  const formula = [...asked, ability, park];
  const current = mm("current-ski", waistEvidenceMm(answers, sumOf(formula), c.waistNearCurrentMm));
  const reasons = withoutIdle([...formula, current]);
  return { wantedWaistMm: sumOf(reasons), reasons };
}

/** Whether the pair is also for the park: jumps, rails, skiing backwards. */
export function wantsPark({ terrain = [] }: FitAnswers): boolean {
  return terrain.includes("park") || terrain.includes("switch");
}

/** Rises smoothly through 0 at the reference mass, so that no kilogram decides alone. */
function massWaistMm(answers: FitAnswers, c: FitCoefficients): number {
  const { mostMm, scaleKg } = c.waistForMass;
  return mostMm * Math.tanh((answers.massKg + packKg(answers, c) - c.massReferenceKg) / scaleKg);
}

function mm(factor: string, amount: number): FitReason {
  return { factor, effect: "adds", unit: "mm", amount, about: "waist" };
}

/**
 * How far most skiers' skis bend under them, so that one skier can be placed among them whatever the model: everybody's
 * relative deflection over that of the reference skier on the class 3 ski of the same model. By similarity (fit) that is
 *   ((m + gear)/(75 + gear)) / k
 * since spring and span both go with length. Of pairs that were sold, or, while those are few, of a stated population.
 */
import { type Ability, type FitModel, fitToModel, gearKg } from "#engine/fit";
import { orderStatistic } from "#engine/math";
import type { EngineCatalog } from "./types";

/** Eight of ten lie between the two; 1 is the reference skier on the reference ski. */
export interface SkiersBand {
  readonly from: "orders" | "population";
  readonly count: number;
  readonly lowRatio: number;
  readonly highRatio: number;
}

/** Fewer orders than this say too little about anybody, and too much about somebody. */
export const BAND_NEEDS_ORDERS = 10;

/**
 * P10 and P90 (type 1 quantiles, Hyndman & Fan 1996).
 *
 * @returns null without samples
 */
export function bandOf(ratios: readonly number[], from: SkiersBand["from"]): SkiersBand | null {
  if (ratios.length === 0) return null;
  const sorted = ratios.toSorted((a, b) => a - b);
  const [lowRatio, highRatio] = [orderStatistic(sorted, 0.1), orderStatistic(sorted, 0.9)];
  return { from, count: sorted.length, lowRatio, highRatio };
}

/** Relative deflection of a skier in a flex, over the reference skier's in class 3. Mass without gear. */
export function bendRatio(massKg: number, flexRatio: number, use: string, fit: EngineCatalog["fit"]): number {
  const carriedKg = gearKg(use, fit);
  return (massKg + carriedKg) / (fit.massReferenceKg + carriedKg) / flexRatio;
}

/** Masses of the reference population, kg, without gear; each with every ability, once. */
const POPULATION_MASSES_KG = [50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100];

/**
 * Band of skiers of 50 to 100 kg and every ability, each counted once, on this model in the length and flex that the fit
 * gives them. Height decides length alone, which leaves the ratio as it is: the reference height is taken for all.
 */
export function populationBand(model: FitModel, { build, fit }: EngineCatalog): SkiersBand | null {
  const abilities = Object.keys(fit.abilityFlex) as Ability[];
  const ratios = POPULATION_MASSES_KG.flatMap((massKg) =>
    abilities.map((ability) => {
      const answers = { heightCm: fit.heightReferenceCm, massKg, ability };
      const { choice } = fitToModel(answers, { model: model.id }, build, fit);
      return bendRatio(massKg, choice.flexRatio, model.use, fit);
    }),
  );
  return bandOf(ratios, "population");
}

/** How far most skiers' skis bend under them: of pairs that were sold, or, while those are few, of a stated population. */
import { type PairSpec, skiBuildFor } from "../configuration";
import {
  type Ability,
  type FitModel,
  fitToModel,
  gearKg,
  relativeDeflection,
  STANDARD_GRAVITY,
  springForSameFeel,
} from "../fit";
import { springTestOf } from "../flex";
import { orderStatistic } from "../math";
import type { EngineCatalog } from "./types";

/** Eight of ten lie between the two, per cent of the span between the supports. */
export interface SkiersBand {
  readonly from: "orders" | "population";
  readonly count: number;
  readonly lowPercent: number;
  readonly highPercent: number;
}

/** Fewer orders than this say too little about anybody, and too much about somebody. */
export const BAND_NEEDS_ORDERS = 10;

/**
 * P10 and P90 (type 1 quantiles, Hyndman & Fan 1996) of relative deflections.
 *
 * @returns null without samples
 */
export function bandOf(percents: readonly number[], from: SkiersBand["from"]): SkiersBand | null {
  if (percents.length === 0) return null;
  const sorted = percents.toSorted((a, b) => a - b);
  const [lowPercent, highPercent] = [orderStatistic(sorted, 0.1), orderStatistic(sorted, 0.9)];
  return { from, count: sorted.length, lowPercent, highPercent };
}

/** One sold pair: who it is for, what was ordered, the bare ski's centre spring. */
export interface SoldPair {
  readonly massKg: number;
  readonly spec: PairSpec;
  readonly springCentreNPerMm: number;
}

/** Deflection at the load under the skier with gear, % of the span; null for a pair that this catalogue cannot hold. */
export function soldBendPercent(sold: SoldPair, catalog: EngineCatalog): number | null {
  const build = skiBuildFor(sold.spec, catalog.build);
  const model = catalog.build.models.find((each) => each.id === sold.spec.model);
  if (!build.ok || !model) return null;
  const { frontSupportMm, rearSupportMm } = springTestOf(build.value);
  const forceN = (sold.massKg + gearKg(model.use, catalog.fit)) * STANDARD_GRAVITY;
  return 100 * relativeDeflection(forceN, sold.springCentreNPerMm, rearSupportMm - frontSupportMm);
}

/** Masses of the reference population, kg, without gear; each with every ability, once. */
const POPULATION_MASSES_KG = [50, 55, 60, 65, 70, 75, 80, 85, 90, 95, 100];

/** The model's own class 3 ski at its reference length. */
export interface ReferenceSki {
  readonly springCentreNPerMm: number;
  readonly spanMm: number;
}

/**
 * Band of skiers of 50 to 100 kg and every ability, each counted once, on the model in the length and flex that the fit
 * gives them. Springs and spans follow from the reference ski by similarity, so that a skier's height, which decides the
 * length, leaves the relative deflection as it is: the reference height is taken for all.
 */
export function populationBand(
  model: FitModel,
  reference: ReferenceSki,
  { build, fit }: EngineCatalog,
): SkiersBand | null {
  const abilities = Object.keys(fit.abilityFlex) as Ability[];
  const percents = POPULATION_MASSES_KG.flatMap((massKg) =>
    abilities.map((ability) => {
      const answers = { heightCm: fit.heightReferenceCm, massKg, ability };
      const { choice } = fitToModel(answers, { model: model.id }, build, fit);
      const on = (lengthCm: number) => ({ massKg, lengthMm: 10 * lengthCm });
      const byLength = springForSameFeel(on(choice.lengthCm), on(model.shape.refLengthCm));
      const spring = reference.springCentreNPerMm * choice.flexRatio * byLength;
      const spanMm = (reference.spanMm * choice.lengthCm) / model.shape.refLengthCm;
      return 100 * relativeDeflection((massKg + gearKg(model.use, fit)) * STANDARD_GRAVITY, spring, spanMm);
    }),
  );
  return bandOf(percents, "population");
}

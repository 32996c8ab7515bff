/** How a shop's coefficients may find a length; a release of either kind stays readable. */
import type { Ability, Temperament, Terrain, TurnSize } from "./answer-words";

/** Where a kind of ski ends beside the skier who stands next to it; negative is below the top of the head. */
export interface UseLength {
  /** For a confident, steady skier of the pivot height and of ordinary weight. */
  readonly middleCm: number;
  /** Neither end is ever reached: lengths saturate towards them. */
  readonly fromCm: number;
  readonly toCm: number;
}

/** Length by body height within a band that the kind of ski allows. */
export interface LengthByBody {
  readonly rule: "by-body";
  readonly uses: Readonly<Record<string, UseLength>>;
  /** As far above the head a pair may end that is like one which is right today, without a question. */
  readonly rightPairToCm: number;
  /** The band of somebody who learns, as shares of body height. */
  readonly learning: { readonly fromShare: number; readonly toShare: number };
  /** How much a ski grows with its skier, cm for each cm of height beyond the pivot. */
  readonly heightSlope: number;
  readonly heightPivotCm: number;
  /** The weight that is ordinary at a height, kg/m²: only the difference to it counts. */
  readonly ordinaryMassIndex: number;
  readonly perKgCm: number;
  readonly abilityCm: Readonly<Record<Ability, number>>;
  readonly temperamentCm: Readonly<Record<Temperament, number>>;
  readonly turnSizeCm: Readonly<Record<TurnSize, number>>;
  /** Of several only the strongest counts. */
  readonly terrainCm: Readonly<Record<Terrain, number>>;
  readonly age: { readonly fromYears: number; readonly perYearCm: number };
}

/** Length as a sum that begins at the model's own reference length: releases of the first kind. */
export interface LengthBySum {
  readonly rule: "by-sum";
  readonly perCm: number;
  readonly perKg: number;
  readonly abilityCm: Readonly<Record<Ability, number>>;
  readonly temperamentCm: Readonly<Record<Temperament, number>>;
}

export type LengthRule = LengthByBody | LengthBySum;

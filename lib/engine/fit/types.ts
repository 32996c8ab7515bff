/**
 * The fit interview and what follows from it. Coefficients are catalogue data (versioned); this room holds only the rules.
 */
import type { ModelShape } from "#engine/geometry";
import type { TypedHeight, TypedMass } from "#engine/units";
import type { Ability, HomeSnow, Priority, Temperament, Terrain, TurnSize } from "./answer-words";
import type { LengthRule } from "./length-rules";

export type * from "./answer-words";

/** What the skier said, in SI. Required: height, mass, ability. */
export interface FitAnswers {
  readonly heightCm: number;
  readonly massKg: number;
  /** What is usually carried on the back. */
  readonly packKg?: number;
  readonly ability: Ability;
  readonly temperament?: Temperament;
  readonly offPistePercent?: number;
  readonly ageYears?: number;
  readonly daysTotal?: number;
  readonly touringPercent?: number;
  readonly homeSnow?: HomeSnow;
  readonly turnSize?: TurnSize;
  readonly priorities?: readonly Priority[];
  readonly terrain?: readonly Terrain[];
  readonly currentSki?: {
    readonly lengthCm?: number;
    readonly waistMm?: number;
    readonly length?: "too short" | "right" | "too long";
    readonly flex?: "too soft" | "right" | "too stiff";
    /** As its card says, where it is a pair of this shop. */
    readonly flexClass?: 1 | 2 | 3 | 4 | 5;
    /** Whether the new pair is for the same skiing; unanswered counts as the same. */
    readonly newPairFor?: "the same" | "something else";
  };
  readonly bootSoleMm?: number;
  readonly bindingTrackMm?: number;
  readonly mountOffsetMm?: number;
  /** Asked, advice given; nothing medical is kept. */
  readonly healthAdviceGiven?: boolean;
  readonly buyerIsSkier?: boolean;
  readonly asksReleaseSetting?: boolean;
  readonly unusualUse?: "monoski" | "adaptive" | "ski-jump";
  /** Still growing, whatever the age. */
  readonly stillGrowing?: boolean;
  /** Wants the pair before the date that the queue can promise. */
  readonly wantsEarlierDate?: boolean;
  /** As typed, with the units: kept for ever beside the SI values, read only to notice mixed units. */
  readonly typed?: TypedMeasures;
}

/** Typed values with their units, kept beside the SI ones so that a reopened sheet shows what was said. */
export interface TypedMeasures {
  readonly height?: TypedHeight;
  readonly mass?: TypedMass;
}

/** One contribution to a number, in the unit it was added or multiplied in. */
export interface FitReason {
  readonly factor: string;
  /** adds, multiplies, or costs score. */
  readonly effect: "adds" | "multiplies" | "costs";
  readonly unit: "cm" | "ratio" | "mm" | "score";
  readonly amount: number;
  /** What it is about: length, flexRatio, waist or rank. */
  readonly about: "length" | "flexRatio" | "waist" | "rank";
}

export interface FitChoice {
  readonly model: string;
  readonly lengthCm: number;
  /** L* before the nearest offered length was taken. */
  readonly wantedLengthCm: number;
  readonly flexRatio: number;
  readonly flexClass: 1 | 2 | 3 | 4 | 5 | null;
  /** The class it is within 0.02 of, if any. */
  readonly nearClass: 1 | 2 | 3 | 4 | 5 | null;
  readonly score: number;
  readonly reasons: readonly FitReason[];
  /** The other offered length when the two distances differ by 1.5 cm or less. */
  readonly neighbourLengthCm?: number;
}

export type FitFlagCode =
  | "length-out-of-range"
  | "flex-out-of-range"
  | "height-mass-disagree"
  | "body-mass-implausible"
  | "mixed-units"
  | "young-or-growing"
  | "health-mentioned"
  | "ability-unproven"
  | "wide-for-piste"
  | "narrow-for-off-piste"
  | "wide-for-light-skier"
  | "boot-sole-out-of-range"
  | "binding-track-too-long"
  | "mount-offset-unusual"
  | "metal-for-light-touring"
  | "buyer-not-skier"
  | "release-setting-asked"
  | "unusual-use"
  | "earlier-date-asked"
  | RankingFlagCode
  | "long-for-height";

/** What the ranking had to leave aside: it holds for the ranking and for no one model. */
export type RankingFlagCode = "not-built-in-length" | "use-not-built";

/** One tap sets the field `path` of FitAnswers to `value` and what stands as typed to `typed`. */
export interface FlagSuggestion {
  readonly path: string;
  readonly value: unknown;
  readonly label: string;
  readonly typed?: TypedMeasures;
}

export type FlagBlocks = "nothing" | "sale" | "build";

/**
 * A reason to stop and talk to a person. `blocks` says what may not go on until a person decided:
 * nothing, the sale (no price button) or only the build.
 */
export interface FitFlag {
  readonly code: FitFlagCode;
  readonly message: string;
  readonly blocks: FlagBlocks;
  /** What the seller says or asks. */
  readonly script: string;
  /** One-tap correction, where one is likely: `path` is a field of FitAnswers. */
  readonly suggestion?: FlagSuggestion;
  /** The model it is about; absent when it holds whatever the model. */
  readonly model?: string;
}

export interface Recommendation {
  readonly wantedWaistMm: number;
  readonly choices: readonly FitChoice[];
  readonly flags: readonly FitFlag[];
}

/** What the fit needs of a model: a catalogue `Model` is one. */
export interface FitModel {
  readonly id: string;
  readonly name: string;
  readonly use: string;
  readonly state: "active" | "retired";
  readonly shape: ModelShape;
  readonly lengths: readonly { readonly lengthCm: number }[];
  readonly hasMetal: boolean;
}

/** What the fit needs of the shop: a `BuildCatalog` is one. */
export interface FitShop {
  readonly models: readonly FitModel[];
  readonly flexClasses: readonly {
    readonly number: 1 | 2 | 3 | 4 | 5;
    readonly from: number;
    readonly below: number;
  }[];
  readonly rules: {
    readonly plate: { readonly lengthMm: number; readonly minMarginMm: number };
    readonly mountOffsetReviewMm: number;
    readonly bootSoleRangeMm: readonly [number, number];
  };
}

/** What the skier or the seller has chosen, where it differs from the model's own build. */
export interface FitSelection {
  readonly model: string;
  /** Chosen by hand. */
  readonly lengthCm?: number;
  /** A metal laminate is ordered although the model has none. */
  readonly addsMetal?: boolean;
  readonly mountOffsetMm?: number;
  readonly bootSoleMm?: number;
  readonly bindingTrackMm?: number;
}

/** The fit of one model, chosen by a person, with every flag that holds for it. */
export interface ModelFit {
  readonly wantedWaistMm: number;
  readonly choice: FitChoice;
  readonly flags: readonly FitFlag[];
}

/** A wanted turn radius as a band; an absent bound is open. */
export interface RadiusBand {
  readonly fromM?: number;
  readonly toM?: number;
}

/** Limits of the flags, each in the unit of its name. */
export interface FlagLimits {
  readonly lengthOutsideCm: number;
  readonly singleInputSlopeCm: number;
  readonly heightMassDisagreeCm: number;
  readonly bodyMassIndexMin: number;
  readonly bodyMassIndexMax: number;
  readonly youngBelowYears: number;
  readonly expertMinDays: number;
  readonly wideWaistMm: number;
  readonly wideAtPistePercent: number;
  readonly narrowWaistMm: number;
  readonly narrowAtOffPistePercent: number;
  readonly lightSkierWaistMm: number;
  readonly lightSkierKg: number;
}

/** Words of one flag; `{name}` stands for a parameter. */
export interface FlagWords {
  readonly blocks: FlagBlocks;
  readonly message: string;
  readonly script: string;
}

/** What the kind of skier or of skiing costs a model in the ranking, in points of score. */
export interface RankCosts {
  /** Metal under somebody of this ability; whole, whatever the waist. */
  readonly metalByAbility: Readonly<Record<Ability, number>>;
  readonly metalByTemperament: Readonly<Record<Temperament, number>>;
  readonly metalByAge: { readonly fromYears: number; readonly perYear: number };
  readonly metalAgainst: readonly Priority[];
  /** A ski without metal for somebody who asked for one of these. */
  readonly metalFor: readonly Priority[];
  readonly noMetalAgainstPriority: number;
  /** Waists that somebody of this ability is offered at most, however much is skied off the piste. */
  readonly widestMm: Readonly<Record<Ability, number>>;
  /** In the park: the narrowest waist to land on, and points for each per cent of tail rocker that is missing. */
  readonly park: { readonly narrowestMm: number; readonly tailRockerPercent: number; readonly perPercent: number };
  /** Of a model that is not built in the wanted length: above all that the rest can come to. */
  readonly notBuilt: number;
}

/** All numbers of the fit, versioned catalogue data. */
export interface FitCoefficients {
  readonly version: string;
  readonly heightReferenceCm: number;
  readonly massReferenceKg: number;
  readonly length: LengthRule;
  readonly abilityFlex: Readonly<Record<Ability, number>>;
  readonly temperamentFlex: Readonly<Record<Temperament, number>>;
  /** Of several only the softest counts. */
  readonly terrainFlex: Readonly<Record<Terrain, number>>;
  readonly ageFlex: { readonly fromYears: number; readonly lessPerYear: number };
  /** Fewer days on skis than this count as `learning`, whatever is claimed. */
  readonly learningBelowDays: number;
  readonly gearKg: number;
  readonly touringGearKg: number;
  /** How much of the pack counts as mass. */
  readonly packShare: number;
  readonly massExponent: number;
  readonly waistBaseMm: number;
  readonly waistPerOffPistePercent: number;
  /** Taken, and said so, when the share off the piste was not answered. */
  readonly offPisteUnansweredPercent: number;
  readonly homeSnowWaistMm: Readonly<Record<HomeSnow, number>>;
  /** Waist for weight: at most `mostMm` either way, most of it within `scaleKg` of the reference mass. */
  readonly waistForMass: { readonly mostMm: number; readonly scaleKg: number };
  /** A pair that is right draws the wanted waist to within this of its own. */
  readonly waistNearCurrentMm: number;
  readonly turnRadiusM: Readonly<Record<TurnSize, RadiusBand>>;
  readonly touringSharePercent: number;
  readonly scoreWaistMm: number;
  readonly scoreLengthFreeCm: number;
  readonly scoreLengthCm: number;
  readonly scoreRadiusM: number;
  readonly scoreMetalAgainstPriority: number;
  readonly rank: RankCosts;
  readonly neighbourWithinCm: number;
  readonly nearClassWithin: number;
  /** A recommended flex ratio lies at least this far from every edge of a class; absent = anywhere, as in older releases. */
  readonly clearOfClassEdge?: number;
  readonly choicesShown: number;
  readonly flagLimits: FlagLimits;
  /** A release without words for a flag that came after it does not raise that flag. */
  readonly flags: Readonly<Record<Exclude<FitFlagCode, LaterFlagCode>, FlagWords>> &
    Readonly<Partial<Record<LaterFlagCode, FlagWords>>>;
  /** Words in a note that call for the health script before the note is saved. */
  readonly healthWords: readonly string[];
}

/** Flags that releases of the first kind do not know. */
export type LaterFlagCode = RankingFlagCode | "long-for-height";

export type StructureCode = "F" | "M" | "MC" | "C";

/** Bevels, detuning and base structure of one pair; the same shape as a spec's finish. */
export interface Finish {
  readonly baseBevelDeg: number;
  readonly sideAngleDeg: number;
  readonly detuneTipMm: number;
  readonly detuneTailMm: number;
  readonly structure: StructureCode;
}

/** One row of the bevel table: it holds for these uses and abilities; an absent list means any. */
export interface BevelRow {
  readonly id: string;
  readonly label: string;
  readonly uses?: readonly string[];
  readonly abilities?: readonly Ability[];
  readonly baseBevelDeg: number;
  readonly sideAngleDeg: number;
  readonly detuneTipMm: number;
  readonly detuneTailMm: number;
}

/** The shop's finish table, catalogue data. The first row that holds wins; the last holds for all. */
export interface FinishTable {
  readonly bevels: readonly BevelRow[];
  readonly structureBySnow: Readonly<Record<HomeSnow, StructureCode>>;
  /** When the snow at home was not answered. */
  readonly structureUnanswered: StructureCode;
}

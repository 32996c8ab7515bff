/**
 * The fit interview and what follows from it. Coefficients are catalogue data (versioned); this room holds only the rules.
 */
import type { TypedHeight, TypedMass } from "../units";

export type Ability = "learning" | "improving" | "confident" | "expert";
export type Temperament = "calm" | "steady" | "fast";
export type HomeSnow = "icy" | "firm" | "mixed" | "soft" | "deep";
export type TurnSize = "short" | "medium" | "long";
export type Priority = "quiet" | "lively" | "light" | "planted" | "forgiving" | "precise";

/** What the skier said, in SI. Required: height, mass, ability. */
export interface FitAnswers {
  readonly heightCm: number;
  readonly massKg: number;
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
  readonly terrain?: readonly ("bumps" | "trees" | "park" | "switch")[];
  readonly currentSki?: {
    readonly lengthCm?: number;
    readonly waistMm?: number;
    readonly length?: "too short" | "right" | "too long";
    readonly flex?: "too soft" | "right" | "too stiff";
  };
  readonly bootSoleMm?: number;
  readonly bindingTrackMm?: number;
  readonly mountOffsetMm?: number;
  /** Asked, advice given; nothing medical is kept. */
  readonly healthAdviceGiven?: boolean;
  readonly buyerIsSkier?: boolean;
  readonly asksReleaseSetting?: boolean;
  readonly unusualUse?: "monoski" | "adaptive" | "ski-jump";
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

/**
 * A reason to stop and talk to a person. `blocks` says what may not go on until a person decided:
 * nothing, the sale (no price button) or only the build.
 */
export interface FitFlag {
  readonly code: string;
  readonly message: string;
  readonly blocks: "nothing" | "sale" | "build";
  /** What the seller says or asks. */
  readonly script: string;
  /** One-tap correction, where one is likely. */
  readonly suggestion?: { readonly path: string; readonly value: unknown; readonly label: string };
  readonly model?: string;
}

export interface Recommendation {
  readonly wantedWaistMm: number;
  readonly choices: readonly FitChoice[];
  readonly flags: readonly FitFlag[];
}

/** All numbers of the fit, versioned catalogue data (trade.md part 6). */
export interface FitCoefficients {
  readonly version: string;
  readonly heightReferenceCm: number;
  readonly massReferenceKg: number;
  readonly lengthPerCm: number;
  readonly lengthPerKg: number;
  readonly abilityLengthCm: Readonly<Record<Ability, number>>;
  readonly temperamentLengthCm: Readonly<Record<Temperament, number>>;
  readonly abilityFlex: Readonly<Record<Ability, number>>;
  readonly temperamentFlex: Readonly<Record<Temperament, number>>;
  readonly gearKg: number;
  readonly touringGearKg: number;
  readonly massExponent: number;
  readonly waistBaseMm: number;
  readonly waistPerOffPistePercent: number;
  readonly homeSnowWaistMm: Readonly<Record<HomeSnow, number>>;
  readonly heavyKg: number;
  readonly heavyWaistMm: number;
  readonly lightKg: number;
  readonly lightWaistMm: number;
  readonly turnRadiusM: Readonly<Record<TurnSize, number>>;
  readonly touringSharePercent: number;
  readonly scoreWaistMm: number;
  readonly scoreLengthFreeCm: number;
  readonly scoreLengthCm: number;
  readonly scoreRadiusM: number;
  readonly scoreMetalAgainstPriority: number;
  readonly neighbourWithinCm: number;
  readonly nearClassWithin: number;
  readonly flagLimits: Readonly<Record<string, number>>;
}

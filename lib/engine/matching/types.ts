/**
 * Choosing wood: which measured strips make which core, so that the two skis of a pair bend alike and as ordered.
 * This room knows no skis, only strips, positions and limits. MPa, kg/m³, per cent.
 */

export interface StripSize {
  readonly widthMm: number;
  readonly heightMm: number;
  readonly lengthMm: number;
}

/** A measured strip in stock. `modulusMpa` is used as measured on the bench. */
export interface Strip {
  readonly id: string;
  readonly species: string;
  readonly modulusMpa: number;
  readonly densityKgM3: number;
  /** Cosmetic grade, such as W (window) or P (painted). */
  readonly grade: string;
  readonly board: string;
  /** Time in stock; the oldest go first. */
  readonly ageDays?: number;
  /** As it lies in the rack; absent = large enough for any place. */
  readonly size?: StripSize;
}

/** One position of a core, from the centre line out: once, or as a mirrored couple either side of it. */
export interface StripPosition {
  readonly name: string;
  readonly perSki: 1 | 2;
  /** Species that may lie here. */
  readonly species: readonly string[];
  /** Grades that may lie here; absent = any. */
  readonly grades?: readonly string[];
  /** What a strip must measure to leave, planed and milled, what the core has here; absent = any size will do. */
  readonly least?: StripSize;
  /**
   * How much one strip here counts for the ski's stiffness; absent = 1. Strips run straight and are milled away at the
   * waist, so the width that is left of them, weighed along the ski, belongs here.
   */
  readonly weight?: number;
  /** How much one strip here counts for the mass of the wood; absent = as for the stiffness. */
  readonly massWeight?: number;
  /** Distance of the strip's middle from the centre line in strip widths; absent = 0, 1, 2 … in the order of the list. */
  readonly offset?: number;
}

export interface StripNeed {
  readonly pairs: number;
  readonly positions: readonly StripPosition[];
  /** Absent = no target, only alike. */
  readonly targetModulusMpa?: number;
}

/** Greatest differences allowed, per cent; an absent one is not checked. */
export interface StripLimits {
  /** Within the strips of one position of a pair: (max − min)/mean. */
  readonly groupSpreadPercent?: number;
  /** Weighed modulus of left against right: |L − R|/mean. */
  readonly twinPercent?: number;
  /** Within one ski, left half against right half: |Σ w·E·y| over Σ w·E·|y|. */
  readonly imbalancePercent?: number;
  /** Density, weighed by mass, of left against right: |L − R|/mean. */
  readonly densityPercent?: number;
  /** Pair's weighed modulus against the target. */
  readonly targetPercent?: number;
}

export interface StripProblem {
  readonly strips: readonly Strip[];
  readonly need: StripNeed;
  readonly limits: StripLimits;
}

/** One ski's strips by position; the couple of a position is listed left edge first. */
export type SkiStrips = Readonly<Record<string, readonly string[]>>;

export interface MatchedPair {
  readonly left: SkiStrips;
  readonly right: SkiStrips;
  /** Weighed mean modulus of the pair. */
  readonly modulusMpa: number;
  readonly twinDifferencePercent: number;
  readonly densityDifferencePercent: number;
  readonly imbalancePercent: { readonly left: number; readonly right: number };
  readonly targetDifferencePercent: number | null;
  readonly groupSpreadPercent: Readonly<Record<string, number>>;
  /** Couples of left and right strip that come from one board. */
  readonly sameBoardTwins: number;
}

/** Why a pair could not be made, position by position. */
export interface UnmetReason {
  readonly code:
    | "too-few-strips"
    | "strips-too-small"
    | "spread-too-wide"
    | "groups-overlap"
    | "off-target"
    | "twins-differ";
  readonly position?: string;
  /** Strips in stock that may lie there. */
  readonly usable?: number;
  readonly needed?: number;
  readonly limitPercent?: number;
  /** What a strip must measure there. */
  readonly least?: StripSize;
}

export interface MatchedStrips {
  readonly pairs: readonly MatchedPair[];
  readonly unmet: number;
  readonly why: readonly UnmetReason[];
}

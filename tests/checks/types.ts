/** A check: something published or worked out beside the engine, and how the engine works out the same. */

/** Where a check is shown on the Method page. */
export type Topic =
  | "laminate"
  | "section"
  | "soft-layers"
  | "torsion"
  | "core-shear"
  | "beam"
  | "twist"
  | "frequencies"
  | "polar"
  | "camber"
  | "snow"
  | "materials"
  | "strips"
  | "outline"
  | "flex"
  | "length";

/**
 * Where the value to reach is from: printed in a publication (or its plain conversion), worked out beside the engine by a
 * formula the source names, common practice without a source, or resting on something remembered and not read again.
 */
export const marks = ["published", "derived", "practice", "memory"] as const;
export type Mark = (typeof marks)[number];

/** `rel` of the largest expected entry, `abs` in the value's own unit, `range` within [low, high], `most` at most. */
export type Tolerance =
  | { readonly kind: "rel" | "abs"; readonly value: number }
  | { readonly kind: "range" }
  | { readonly kind: "most" };

/** A number, or numbers in rows; for a range [low, high]. */
export type Values = number | readonly number[] | readonly (readonly number[])[];

export interface CheckedValue {
  /** Name with its unit, as the source's case calls it. */
  readonly name: string;
  readonly expected: Values;
  readonly tolerance: Tolerance;
  readonly computed: Values;
}

export interface Check {
  readonly id: string;
  readonly topic: Topic;
  /** What is checked, in a few words. */
  readonly about: string;
  readonly source: string;
  /** Set by hand where the value to reach is written down; of every value of the check. */
  readonly mark: Mark;
  /** Works everything out afresh by the engine. */
  readonly values: () => readonly CheckedValue[];
}

/** One line of the table. */
export interface CheckRow {
  readonly id: string;
  readonly topic: Topic;
  readonly about: string;
  readonly name: string;
  readonly source: string;
  readonly mark: Mark;
  readonly expected: Values;
  readonly computed: Values;
  /** Largest over the entries: relative to the largest expected entry for `rel`, else in the value's own unit. */
  readonly difference: number;
  readonly tolerance: Tolerance;
  readonly passed: boolean;
}

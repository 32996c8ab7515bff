/**
 * What a ski will feel like, in a few words by stated rules: each looks at one number of the pair and says one thing. Limits
 * are common practice, no source; the Method page lists them from here.
 */
import type { PairSpec } from "#engine/configuration";
import type { SkiFlex } from "#engine/flex";
import { measure, type SkiShape } from "#engine/geometry";

export type FeelAbout = "turns" | "snow" | "flex" | "swing";

/** One rule: below the first limit the first word holds, from the last limit on the last. */
export interface FeelRule {
  readonly about: FeelAbout;
  readonly unit: "m" | "mm" | "ratio" | "g/cm";
  readonly limits: readonly [number, number];
  readonly words: readonly [string, string, string];
}

export const feelRules: readonly FeelRule[] = [
  { about: "turns", unit: "m", limits: [14.5, 18.5], words: ["short", "medium", "long"] },
  { about: "snow", unit: "mm", limits: [80, 100], words: ["hard", "mixed", "soft"] },
  { about: "flex", unit: "ratio", limits: [0.93, 1.07], words: ["softer", "yours", "stiffer"] },
  { about: "swing", unit: "g/cm", limits: [8.5, 10.4], words: ["light", "middling", "solid"] },
];

export interface FeelWord {
  readonly about: FeelAbout;
  readonly word: string;
  readonly value: number;
}

/**
 * @param flex of the finished ski: what the hand lifts
 * @param ownFlexRatio what the skier's answers ask for on this model; absent = the ski as the model's class 3 has it
 */
export function feelOf(
  spec: Pick<PairSpec, "flexRatio" | "lengthCm">,
  shape: SkiShape,
  flex: Pick<SkiFlex, "massKg">,
  ownFlexRatio = 1,
): readonly FeelWord[] {
  const values: Readonly<Record<FeelAbout, number>> = {
    turns: measure(shape).sidecutRadiusM,
    snow: shape.waistWidthMm,
    flex: spec.flexRatio / ownFlexRatio,
    swing: (flex.massKg * 1000) / spec.lengthCm,
  };
  return feelRules.map(({ about, limits: [first, second], words }) => {
    const value = values[about];
    return { about, value, word: words[value < first ? 0 : value < second ? 1 : 2] };
  });
}

export type ChoiceWord = "holdsMore" | "holdsLess" | "heavier" | "lighter";

/** What one choice does to the pair, and from how much on a skier would notice. */
export interface ChoiceRule {
  readonly about: "twist" | "mass";
  /** Per cent of the stiffness in twist under the foot, or grams a pair. */
  readonly unit: "%" | "g";
  readonly least: number;
  readonly more: ChoiceWord;
  readonly less: ChoiceWord;
}

export const choiceRules: readonly ChoiceRule[] = [
  { about: "twist", unit: "%", least: 4, more: "holdsMore", less: "holdsLess" },
  { about: "mass", unit: "g", least: 50, more: "heavier", less: "lighter" },
];

/** What of a choice would be noticed; nothing where nobody would. */
export function choiceFeel(effect: Readonly<Record<ChoiceRule["about"], number>>): readonly ChoiceWord[] {
  return choiceRules.flatMap(({ about, least, more, less }): readonly ChoiceWord[] => {
    if (effect[about] >= least) return [more];
    return effect[about] <= -least ? [less] : [];
  });
}

export type DifferenceAbout = "turns" | "snow" | "stiffness" | "mass" | "price";

/** From how much on a difference between compared pairs is told. */
export interface DifferenceRule {
  readonly about: DifferenceAbout;
  /** Radius m, waist mm, flex as share of the softer, grams a ski, currency's hundredths. */
  readonly unit: "m" | "mm" | "share" | "g" | "cents";
  readonly least: number;
}

export const differenceRules: readonly DifferenceRule[] = [
  { about: "turns", unit: "m", least: 0.8 },
  { about: "snow", unit: "mm", least: 4 },
  { about: "stiffness", unit: "share", least: 0.05 },
  { about: "mass", unit: "g", least: 30 },
  { about: "price", unit: "cents", least: 100 },
];

/** Whether the ends of a row of values are far enough apart to be told. */
export function isTold({ unit, least }: DifferenceRule, lowest: number, highest: number): boolean {
  // What the last digit of a sum leaves short of the limit is the limit.
  const apart = unit === "share" ? highest / lowest - 1 : highest - lowest;
  return apart >= least - 1e-9;
}

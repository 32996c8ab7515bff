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

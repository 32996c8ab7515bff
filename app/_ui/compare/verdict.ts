/** What tells the compared pairs apart, in words: one sentence for each thing that a skier would notice, and none for the rest. */
import { type DifferenceAbout, differenceRules, isTold } from "#engine/assessment";
import { measure } from "#engine/geometry";
import { fill, roundForPeople, textForPeople } from "#engine/units";
import { moneyText } from "../money";
import type { ComparedPair } from "./candidates";
import type { CompareWords } from "./words";

interface Measure {
  readonly of: (pair: ComparedPair) => number | null;
  readonly text: (value: number) => string;
}

const measures: Readonly<Record<DifferenceAbout, Measure>> = {
  turns: { of: ({ solved }) => measure(solved.build.shape).sidecutRadiusM, text: (m) => `${textForPeople(m, 1)} m` },
  snow: { of: ({ solved }) => solved.build.shape.waistWidthMm, text: (mm) => `${roundForPeople(mm)} mm` },
  stiffness: { of: ({ spec }) => spec.flexRatio, text: (k) => `${textForPeople(k, 2)} ×` },
  mass: { of: ({ solved }) => solved.flexWithPlate.massKg * 1000, text: (g) => `${roundForPeople(g)} g` },
  price: { of: ({ assessment }) => assessment.price?.totalCents ?? null, text: (cents) => moneyText(cents, "short") },
};

/** @param names of the pairs, in their order @returns nothing for a pair alone */
export function verdictOf(
  pairs: readonly ComparedPair[],
  names: readonly string[],
  { verdict }: CompareWords,
): readonly string[] {
  if (pairs.length < 2) return [];
  const told = differenceRules.flatMap((rule) => {
    const { of, text } = measures[rule.about];
    const values = pairs.map(of).filter((value) => value !== null);
    if (values.length < pairs.length) return [];
    const [low, high] = [Math.min(...values), Math.max(...values)];
    if (!isTold(rule, low, high)) return [];
    const nameOf = (value: number) => names[values.indexOf(value)] ?? "";
    return [
      fill(verdict.about[rule.about], { low: nameOf(low), high: nameOf(high), lowest: text(low), highest: text(high) }),
    ];
  });
  return told.length > 0 ? told : [verdict.alike];
}

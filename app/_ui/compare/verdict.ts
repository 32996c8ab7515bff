/** What tells the compared pairs apart, in words: one sentence for each thing that a skier would notice, and none for the rest. */
import { measure } from "#engine/geometry";
import { fill, roundForPeople, textForPeople } from "#engine/units";
import { moneyText } from "../money";
import type { ComparedPair } from "./candidates";
import type { CompareWords } from "./words";

type About = keyof CompareWords["verdict"]["about"];

interface Measure {
  readonly about: About;
  readonly of: (pair: ComparedPair) => number | null;
  /** Less than this between the ends is not told: common practice, no source. */
  readonly tells: number;
  /** `tells` is a share of the lower value. */
  readonly isShare?: boolean;
  readonly text: (value: number) => string;
}

const measures: readonly Measure[] = [
  {
    about: "turns",
    of: ({ solved }) => measure(solved.build.shape).sidecutRadiusM,
    tells: 0.8,
    text: (m) => `${textForPeople(m, 1)} m`,
  },
  {
    about: "snow",
    of: ({ solved }) => solved.build.shape.waistWidthMm,
    tells: 4,
    text: (mm) => `${roundForPeople(mm)} mm`,
  },
  {
    about: "stiffness",
    of: ({ spec }) => spec.flexRatio,
    tells: 0.05,
    isShare: true,
    text: (k) => `${textForPeople(k, 2)} ×`,
  },
  {
    about: "mass",
    of: ({ solved }) => solved.flexWithPlate.massKg * 1000,
    tells: 30,
    text: (g) => `${roundForPeople(g)} g`,
  },
  {
    about: "price",
    of: ({ assessment }) => assessment.price?.totalCents ?? null,
    tells: 100,
    text: (cents) => moneyText(cents, "short"),
  },
];

/** @param names of the pairs, in their order @returns nothing for a pair alone */
export function verdictOf(
  pairs: readonly ComparedPair[],
  names: readonly string[],
  { verdict }: CompareWords,
): readonly string[] {
  if (pairs.length < 2) return [];
  const told = measures.flatMap(({ about, of, tells, isShare, text }) => {
    const values = pairs.map(of);
    if (values.some((value) => value === null)) return [];
    const known = values as readonly number[];
    const [low, high] = [Math.min(...known), Math.max(...known)];
    if (high - low < (isShare ? tells * low : tells)) return [];
    const lowName = names[known.indexOf(low)] ?? "";
    const highName = names[known.indexOf(high)] ?? "";
    return [fill(verdict.about[about], { low: lowName, high: highName, lowest: text(low), highest: text(high) })];
  });
  return told.length > 0 ? told : [verdict.alike];
}

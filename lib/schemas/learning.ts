/** What is typed about measured pairs: the bench's readings, pairs of the paper book, what counts and what does not. */
import { z } from "zod";
import type { BenchMeasure, BenchValues } from "#engine/calibration";
import { catalogId, numberIn, oneOf, textIn } from "./fields";

/** As the bench reads: gram, mm, N/cm, N·m a degree. `perEngine` turns the engine's unit into the bench's. */
export const benchScales = {
  massKg: { label: "Mass", unit: "g", min: 400, max: 4000, perEngine: 1000 },
  camberMm: { label: "Camber", unit: "mm", min: -5, max: 30, perEngine: 1 },
  springCentreNPerMm: { label: "Centre spring", unit: "N/cm", min: 5, max: 400, perEngine: 10 },
  springForebodyNPerMm: { label: "Forebody spring", unit: "N/cm", min: 1, max: 400, perEngine: 10 },
  springAfterbodyNPerMm: { label: "Afterbody spring", unit: "N/cm", min: 1, max: 400, perEngine: 10 },
  twistNmPerDeg: { label: "Twist", unit: "N·m/°", min: 0.1, max: 20, perEngine: 1 },
} as const satisfies Readonly<Record<BenchMeasure, object>>;

export const benchMeasures = Object.keys(benchScales) as readonly BenchMeasure[];

/** A reading in the bench's unit, kept in the engine's. */
function readingIn(measure: BenchMeasure) {
  const { label, unit, min, max, perEngine } = benchScales[measure];
  return numberIn({ label, unit, min, max }).transform((value) => value / perEngine);
}

/** Readings in the bench's units become the engine's; whatever was not read is absent. */
export const benchReadingsSchema = z.strictObject({
  massKg: readingIn("massKg").exactOptional(),
  camberMm: readingIn("camberMm").exactOptional(),
  springCentreNPerMm: readingIn("springCentreNPerMm").exactOptional(),
  springForebodyNPerMm: readingIn("springForebodyNPerMm").exactOptional(),
  springAfterbodyNPerMm: readingIn("springAfterbodyNPerMm").exactOptional(),
  twistNmPerDeg: readingIn("twistNmPerDeg").exactOptional(),
});

/** The engine's values as the bench shows them; the inverse of {@link benchReadingsSchema}. */
export function asBenchReads(values: BenchValues): Readonly<Partial<Record<BenchMeasure, number>>> {
  return Object.fromEntries(
    benchMeasures.flatMap((measure) => {
      const value = values[measure];
      return value === undefined ? [] : [[measure, value * benchScales[measure].perEngine]];
    }),
  );
}

export const readingReason = textIn("Reason", 1, 200);
export const floorBookReason = textIn("Reason", 1, 400);
export const benchMeasureField = oneOf("Measure", [
  "massKg",
  "camberMm",
  "springCentreNPerMm",
  "springForebodyNPerMm",
  "springAfterbodyNPerMm",
  "twistNmPerDeg",
]);
export const decisionField = oneOf("Decision", ["leave-out", "keep"]);

/** A serial as it stands in the paper book. */
const bookSerial = textIn("Serial", 2, 20)
  .transform((text) => text.toUpperCase())
  .refine((text) => /^[A-Z0-9]+(-[A-Z0-9]+)*$/.test(text), {
    error: (issue) => `Serial "${String(issue.input)}" must be letters and digits, with single hyphens between`,
  });

/** A pair of the paper book: what it is, without its readings. */
export const bookPairSchema = z.strictObject({
  serial: bookSerial,
  model: catalogId("Model"),
  lengthCm: numberIn({ label: "Length", unit: "cm", min: 100, max: 230 }),
  core: catalogId("Core"),
  reinforcements: z.array(catalogId("Reinforcement")).max(6, { error: "Reinforcements: at most 6" }),
  flexRatio: numberIn({ label: "Flex ratio", min: 0.3, max: 3 }),
});

/** What the bench read, and the books of corrections that were made of it. */
import { z } from "zod";
import type {
  BenchMeasure,
  BenchValues,
  Calibration,
  CorrectionFactor,
  MeasuredSki,
  Quality,
} from "#engine/calibration";
import type { Corrections } from "#engine/materials";
import { amount, listOf, words } from "./common";

/** What a book was made of, as it stood when it was approved. */
export interface BookSummary {
  readonly pairs: number;
  readonly skis: number;
  readonly quality: readonly Quality[];
  readonly factors: Calibration["factors"];
  readonly leftOut: readonly { readonly serial: string; readonly measure: BenchMeasure; readonly reason: string }[];
}

export const storedBenchValues = z.object({
  massKg: amount.exactOptional(),
  camberMm: amount.exactOptional(),
  springCentreNPerMm: amount.exactOptional(),
  springForebodyNPerMm: amount.exactOptional(),
  springAfterbodyNPerMm: amount.exactOptional(),
  twistNmPerDeg: amount.exactOptional(),
}) satisfies z.ZodType<BenchValues>;

/** What was measured of a ski, by name. */
export const storedMeasure = z.enum([
  "massKg",
  "camberMm",
  "springCentreNPerMm",
  "springForebodyNPerMm",
  "springAfterbodyNPerMm",
  "twistNmPerDeg",
]) satisfies z.ZodType<BenchMeasure>;

const strip = z.object({ modulusMpa: amount, densityKgM3: amount });

export const storedStrips = z.object({
  C: strip.exactOptional(),
  I: strip.exactOptional(),
  M: strip.exactOptional(),
  O: strip.exactOptional(),
}) satisfies z.ZodType<NonNullable<MeasuredSki["strips"]>>;

export const storedCorrections = z.object({
  version: words,
  moduli: z.record(z.string(), amount).readonly(),
  densities: z.record(z.string(), amount).readonly(),
  coreOffsetMm: amount,
  camberOffsetMm: amount,
  twist: amount.exactOptional(),
  differenceLeft: z.object({ spring: amount, mass: amount }).exactOptional(),
}) satisfies z.ZodType<Corrections>;

const quality = z.object({
  measure: storedMeasure,
  readings: amount,
  biasBefore: amount,
  rmsBefore: amount,
  biasAfter: amount,
  rmsAfter: amount,
}) satisfies z.ZodType<Quality>;

const factor = z.object({
  kind: z.enum(["modulus", "density", "core-offset", "camber-offset", "twist"]),
  material: words.exactOptional(),
  value: amount,
  sd: amount,
  learnt: amount,
}) satisfies z.ZodType<CorrectionFactor>;

export const storedBookSummary = z.object({
  pairs: amount,
  skis: amount,
  quality: listOf(quality),
  factors: listOf(factor),
  leftOut: listOf(z.object({ serial: words, measure: storedMeasure, reason: words })),
}) satisfies z.ZodType<BookSummary>;

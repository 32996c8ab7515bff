import { z } from "zod";
import type { FitCoefficients, FlagLimits, FlagWords, RadiusBand } from "#engine/fit";
import { about, notNegative, positive, sentence } from "./shared";

const cm = z.number().min(-40).max(40);
const mm = z.number().min(-40).max(40);
const factor = z.number().min(0.3).max(3);

const band = z
  .strictObject({ fromM: positive.exactOptional(), toM: positive.exactOptional() })
  .refine((limits) => limits.fromM === undefined || limits.toM === undefined || limits.fromM <= limits.toM, {
    error: "fromM must not be above toM",
  }) satisfies z.ZodType<RadiusBand>;

const flagLimits = z.strictObject({
  lengthOutsideCm: notNegative,
  singleInputSlopeCm: positive,
  heightMassDisagreeCm: positive,
  bodyMassIndexMin: positive,
  bodyMassIndexMax: positive,
  youngBelowYears: positive,
  expertMinDays: notNegative,
  wideWaistMm: positive,
  wideAtPistePercent: notNegative.max(100),
  narrowWaistMm: positive,
  narrowAtOffPistePercent: notNegative.max(100),
  lightSkierWaistMm: positive,
  lightSkierKg: positive,
}) satisfies z.ZodType<FlagLimits>;

const flagWords = z.strictObject({
  blocks: z.enum(["nothing", "sale", "build"]),
  message: sentence,
  script: sentence,
}) satisfies z.ZodType<FlagWords>;

const flags = z.strictObject({
  "length-out-of-range": flagWords,
  "flex-out-of-range": flagWords,
  "height-mass-disagree": flagWords,
  "body-mass-implausible": flagWords,
  "mixed-units": flagWords,
  "young-or-growing": flagWords,
  "health-mentioned": flagWords,
  "ability-unproven": flagWords,
  "wide-for-piste": flagWords,
  "narrow-for-off-piste": flagWords,
  "wide-for-light-skier": flagWords,
  "boot-sole-out-of-range": flagWords,
  "binding-track-too-long": flagWords,
  "mount-offset-unusual": flagWords,
  "metal-for-light-touring": flagWords,
  "buyer-not-skier": flagWords,
  "release-setting-asked": flagWords,
  "unusual-use": flagWords,
  "earlier-date-asked": flagWords,
}) satisfies z.ZodType<FitCoefficients["flags"]>;

export const fitFileSchema = z.strictObject({
  about,
  version: z.string().min(1),
  heightReferenceCm: positive,
  massReferenceKg: positive,
  lengthPerCm: z.number().min(0).max(3),
  lengthPerKg: z.number().min(0).max(3),
  abilityLengthCm: z.strictObject({ learning: cm, improving: cm, confident: cm, expert: cm }),
  temperamentLengthCm: z.strictObject({ calm: cm, steady: cm, fast: cm }),
  abilityFlex: z.strictObject({ learning: factor, improving: factor, confident: factor, expert: factor }),
  temperamentFlex: z.strictObject({ calm: factor, steady: factor, fast: factor }),
  learningBelowDays: notNegative,
  gearKg: notNegative.max(40),
  touringGearKg: notNegative.max(40),
  massExponent: z.number().min(0).max(2),
  waistBaseMm: positive,
  waistPerOffPistePercent: z.number().min(0).max(2),
  offPisteUnansweredPercent: notNegative.max(100),
  homeSnowWaistMm: z.strictObject({ icy: mm, firm: mm, mixed: mm, soft: mm, deep: mm }),
  heavyKg: positive,
  heavyWaistMm: mm,
  lightKg: positive,
  lightWaistMm: mm,
  turnRadiusM: z.strictObject({ short: band, medium: band, long: band }),
  touringSharePercent: notNegative.max(100),
  scoreWaistMm: positive,
  scoreLengthFreeCm: notNegative,
  scoreLengthCm: positive,
  scoreRadiusM: positive,
  scoreMetalAgainstPriority: notNegative,
  neighbourWithinCm: notNegative,
  nearClassWithin: notNegative,
  choicesShown: z.int().min(1).max(10),
  flagLimits,
  flags,
  healthWords: z.array(z.string().min(2)),
}) satisfies z.ZodType<FitCoefficients>;

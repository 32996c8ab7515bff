import { z } from "zod";
import type {
  FitCoefficients,
  FlagLimits,
  FlagWords,
  LengthByBody,
  LengthBySum,
  RadiusBand,
  RankCosts,
} from "#engine/fit";
import earlier from "../earlier-releases.json";
import { about, modelUseSchema, notNegative, positive, sentence } from "./shared";

const cm = z.number().min(-40).max(40);
const mm = z.number().min(-40).max(40);
const factor = z.number().min(0.3).max(3);
const years = z.number().min(0).max(120);

const byAbility = <T extends z.ZodType>(value: T) =>
  z.strictObject({ learning: value, improving: value, confident: value, expert: value });
const byTemperament = <T extends z.ZodType>(value: T) => z.strictObject({ calm: value, steady: value, fast: value });
const byTerrain = <T extends z.ZodType>(value: T) =>
  z.strictObject({ bumps: value, trees: value, park: value, switch: value });

const useLength = z
  .strictObject({ middleCm: cm, fromCm: cm, toCm: cm })
  .refine(({ middleCm, fromCm, toCm }) => fromCm < middleCm && middleCm < toCm, {
    error: "middleCm must lie between fromCm and toCm",
  });

const lengthByBody = z.strictObject({
  rule: z.literal("by-body"),
  uses: z.record(modelUseSchema, useLength),
  rightPairToCm: cm,
  learning: z
    .strictObject({ fromShare: z.number().min(0.5).max(1), toShare: z.number().min(0.5).max(1) })
    .refine(({ fromShare, toShare }) => fromShare < toShare, { error: "fromShare must be below toShare" }),
  // Steeper than 1 would move a ski by more than its skier grows.
  heightSlope: z.number().min(0.5).max(1),
  heightPivotCm: positive,
  ordinaryMassIndex: z.number().min(15).max(40),
  perKgCm: z.number().min(0).max(0.5),
  abilityCm: byAbility(cm),
  temperamentCm: byTemperament(cm),
  turnSizeCm: z.strictObject({ short: cm, medium: cm, long: cm }),
  terrainCm: byTerrain(z.number().min(-40).max(0)),
  age: z.strictObject({ fromYears: years, perYearCm: z.number().min(-1).max(0) }),
}) satisfies z.ZodType<LengthByBody>;

const lengthBySum = z.strictObject({
  rule: z.literal("by-sum"),
  perCm: z.number().min(0).max(3),
  perKg: z.number().min(0).max(3),
  abilityCm: byAbility(cm),
  temperamentCm: byTemperament(cm),
}) satisfies z.ZodType<LengthBySum>;

const priority = z.enum(["quiet", "lively", "light", "planted", "forgiving", "precise"]);
const points = z.number().min(0).max(10);

const rank = z.strictObject({
  metalByAbility: byAbility(points),
  metalByTemperament: byTemperament(points),
  metalByAge: z.strictObject({ fromYears: years, perYear: points }),
  metalAgainst: z.array(priority).readonly(),
  metalFor: z.array(priority).readonly(),
  noMetalAgainstPriority: points,
  widestMm: byAbility(positive),
  park: z.strictObject({ narrowestMm: notNegative, tailRockerPercent: z.number().min(0).max(45), perPercent: points }),
  // A model that cannot be built stands behind all that can, whatever else there is to say.
  notBuilt: z.number().min(0).max(10_000),
}) satisfies z.ZodType<RankCosts>;

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
  "not-built-in-length": flagWords.exactOptional(),
  "use-not-built": flagWords.exactOptional(),
  "long-for-height": flagWords.exactOptional(),
}) satisfies z.ZodType<FitCoefficients["flags"]>;

const fitFile = z.strictObject({
  about,
  version: z.string().min(1),
  heightReferenceCm: positive,
  massReferenceKg: positive,
  length: z.discriminatedUnion("rule", [lengthByBody, lengthBySum]),
  abilityFlex: byAbility(factor),
  temperamentFlex: byTemperament(factor),
  terrainFlex: byTerrain(factor),
  ageFlex: z.strictObject({ fromYears: years, lessPerYear: z.number().min(0).max(0.01) }),
  learningBelowDays: notNegative,
  gearKg: notNegative.max(40),
  touringGearKg: notNegative.max(40),
  packShare: z.number().min(0).max(1),
  massExponent: z.number().min(0).max(2),
  waistBaseMm: positive,
  waistPerOffPistePercent: z.number().min(0).max(2),
  offPisteUnansweredPercent: notNegative.max(100),
  homeSnowWaistMm: z.strictObject({ icy: mm, firm: mm, mixed: mm, soft: mm, deep: mm }),
  waistForMass: z.strictObject({ mostMm: notNegative.max(40), scaleKg: positive }),
  waistNearCurrentMm: notNegative,
  turnRadiusM: z.strictObject({ short: band, medium: band, long: band }),
  touringSharePercent: notNegative.max(100),
  scoreWaistMm: positive,
  scoreLengthFreeCm: notNegative,
  scoreLengthCm: positive,
  scoreRadiusM: positive,
  scoreMetalAgainstPriority: notNegative,
  rank,
  neighbourWithinCm: notNegative,
  nearClassWithin: notNegative,
  clearOfClassEdge: notNegative.max(0.05).exactOptional(),
  choicesShown: z.int().min(1).max(10),
  flagLimits,
  flags,
  healthWords: z.array(z.string().min(2)),
}) satisfies z.ZodType<FitCoefficients>;

type Fields = Readonly<Record<string, unknown>>;

/** A file of the first kind says its length formula in four fields of its own and knows nothing of what came after them. */
function inTodaysFields(raw: unknown): unknown {
  if (typeof raw !== "object" || raw === null || !("lengthPerCm" in raw)) return raw;
  const { lengthPerCm, lengthPerKg, abilityLengthCm, temperamentLengthCm, ...rest }: Fields = { ...raw };
  const { heavyKg: _heavy, heavyWaistMm: _wider, lightKg: _light, lightWaistMm: _narrower, ...kept } = rest;
  const length = {
    rule: "by-sum",
    perCm: lengthPerCm,
    perKg: lengthPerKg,
    abilityCm: abilityLengthCm,
    temperamentCm: temperamentLengthCm,
  };
  return { ...earlier.fit, ...kept, length };
}

export const fitFileSchema = z.preprocess(inTodaysFields, fitFile);

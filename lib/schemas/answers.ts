/**
 * What the skier said, in SI, with what was typed beside it. Limits are those of a possible person, wider than the fit
 * accepts: an unlikely answer is a flag with a script, not a refusal.
 */
import { z } from "zod";
import type { PartialAnswers } from "#engine/assessment";
import type { FitAnswers, TypedMeasures } from "#engine/fit";
import { heightCm, heightLimitsCm, massKg, massLimitsKg, type TypedHeight, type TypedMass } from "#engine/units";
import { numberIn, oneOf, percent, yesOrNo } from "./fields";

const heightField = numberIn({ label: "Height", unit: "cm", ...heightLimitsCm });
const massField = numberIn({ label: "Mass", unit: "kg", ...massLimitsKg });

export const typedHeightSchema = z.discriminatedUnion("unit", [
  z.strictObject({ unit: z.literal("cm"), cm: heightField }),
  z.strictObject({
    unit: z.literal("ft-in"),
    feet: numberIn({ label: "Height, feet", unit: "ft", min: 2, max: 8, whole: true }),
    inches: numberIn({ label: "Height, inches", unit: "in", min: 0, max: 11.99 }),
  }),
]) satisfies z.ZodType<TypedHeight>;

export const typedMassSchema = z.discriminatedUnion("unit", [
  z.strictObject({ unit: z.literal("kg"), kg: massField }),
  z.strictObject({ unit: z.literal("lb"), lb: numberIn({ label: "Mass", unit: "lb", min: 33, max: 662 }) }),
]) satisfies z.ZodType<TypedMass>;

export const typedMeasuresSchema = z.strictObject({
  height: typedHeightSchema.exactOptional(),
  mass: typedMassSchema.exactOptional(),
}) satisfies z.ZodType<TypedMeasures>;

const currentSkiSchema = z.strictObject({
  lengthCm: numberIn({ label: "Length of the current ski", unit: "cm", min: 60, max: 240 }).exactOptional(),
  waistMm: numberIn({ label: "Waist of the current ski", unit: "mm", min: 40, max: 160 })
    .describe("Width in the middle of the current ski: a pair that is right draws the new waist near")
    .exactOptional(),
  length: oneOf("Length of the current ski", ["too short", "right", "too long"]).exactOptional(),
  flex: oneOf("Flex of the current ski", ["too soft", "right", "too stiff"]).exactOptional(),
  flexClass: z
    .literal([1, 2, 3, 4, 5], { error: "Flex class of the current ski: one of 1, 2, 3, 4, 5" })
    .describe("Of a pair of this shop, as its card says: one that is right keeps the answer within one class")
    .exactOptional(),
  newPairFor: oneOf("What the new pair is for", ["the same", "something else"])
    .describe("Whether the new pair is for the skiing of the current one; unanswered counts as the same")
    .exactOptional(),
});

/** Every answer by its key; each is checked alone, so that a sheet saves field by field. */
export const answerFields = {
  heightCm: heightField,
  massKg: massField,
  packKg: numberIn({ label: "Usual pack", unit: "kg", min: 0, max: 40 }).describe(
    "What is usually carried: counts as mass for length, waist and flex",
  ),
  ability: oneOf("Ability", ["learning", "improving", "confident", "expert"]),
  temperament: oneOf("Temperament", ["calm", "steady", "fast"]),
  offPistePercent: percent("Share off the piste"),
  ageYears: numberIn({ label: "Age", unit: "years", min: 3, max: 110 }),
  daysTotal: numberIn({ label: "Days on skis in all", unit: "days", min: 0, max: 20_000 }),
  touringPercent: percent("Share of touring"),
  homeSnow: oneOf("Snow at home", ["icy", "firm", "mixed", "soft", "deep"]),
  turnSize: oneOf("Turn size", ["short", "medium", "long"]),
  priorities: z
    .array(oneOf("Priority", ["quiet", "lively", "light", "planted", "forgiving", "precise"]))
    .max(6, { error: "Priorities: at most 6" })
    .readonly(),
  terrain: z
    .array(oneOf("Terrain", ["bumps", "trees", "park", "switch"]))
    .max(4, { error: "Terrain: at most 4" })
    .readonly(),
  currentSki: currentSkiSchema,
  bootSoleMm: numberIn({ label: "Boot sole length", unit: "mm", min: 180, max: 450 }),
  bindingTrackMm: numberIn({ label: "Binding track", unit: "mm", min: 100, max: 700 }),
  mountOffsetMm: numberIn({ label: "Mount line offset", unit: "mm", min: -150, max: 150 }),
  healthAdviceGiven: yesOrNo("Health advice given"),
  buyerIsSkier: yesOrNo("Buyer is the skier"),
  asksReleaseSetting: yesOrNo("Asks for a release setting"),
  unusualUse: oneOf("Unusual use", ["monoski", "adaptive", "ski-jump"]),
  stillGrowing: yesOrNo("Still growing"),
  wantsEarlierDate: yesOrNo("Wants an earlier date"),
  typed: typedMeasuresSchema,
} as const;

type AnswerFields = typeof answerFields;
type OptionalFields<T extends Record<string, z.ZodType>> = { readonly [K in keyof T]: z.ZodExactOptional<T[K]> };

function allOptional<T extends Record<string, z.ZodType>>(fields: T): OptionalFields<T> {
  const entries = Object.entries(fields).map(([key, field]) => [key, z.exactOptional(field)] as const);
  return Object.fromEntries(entries) as OptionalFields<T>;
}

/** An unfinished sheet. */
export const partialAnswersSchema = z.strictObject(allOptional(answerFields)) satisfies z.ZodType<PartialAnswers>;

type RequiredKey = "heightCm" | "massKg" | "ability";

/** Enough for a recommendation: height, mass and ability are there; what was typed agrees with them. */
export const answersSchema = z
  .strictObject({
    ...allOptional(answerFields),
    heightCm: answerFields.heightCm,
    massKg: answerFields.massKg,
    ability: answerFields.ability,
  } satisfies Record<Exclude<keyof AnswerFields, RequiredKey>, z.ZodType> & Record<RequiredKey, z.ZodType>)
  .superRefine((answers, context) => {
    for (const [path, typed, counted] of typedPairs(answers)) {
      if (Math.abs(typed - counted) <= 0.01) continue;
      context.addIssue({
        code: "custom",
        path: [path],
        message: `${path} ${counted} differs from what was typed, ${typed}`,
      });
    }
  }) satisfies z.ZodType<FitAnswers>;

function typedPairs(answers: FitAnswers): readonly (readonly [string, number, number])[] {
  const { height, mass } = answers.typed ?? {};
  return [
    ...(height === undefined ? [] : [["heightCm", heightCm(height), answers.heightCm] as const]),
    ...(mass === undefined ? [] : [["massKg", massKg(mass), answers.massKg] as const]),
  ];
}

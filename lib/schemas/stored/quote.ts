/** What a quote freezes beside its specification, and what its flags were answered with. */
import { z } from "zod";
import type { FitFlag, FitFlagCode, FitReason, Recommendation } from "#engine/fit";
import { amount, listOf, storedInstant, words } from "./common";
import { storedTypedMeasures } from "./pair-spec";

/** What the engine said when the quote was made: never computed anew. */
export interface FrozenFit {
  readonly recommendation: Recommendation;
  readonly flags: readonly FitFlag[];
  readonly modelName: string;
  readonly flexClassLabel: string;
  /** One ski, as built without plate. */
  readonly massKg: number;
  readonly springCentreNPerMm: number;
  readonly sidecutRadiusM: number;
  /** One standard deviation; quotes of older releases have none. */
  readonly spread?: { readonly springCentre: number; readonly massG: number };
}

/** A reason written by staff against a flag; sale-blocking flags count only when an owner wrote it. */
export interface FlagAck {
  readonly code: string;
  readonly reason: string;
  readonly by: string;
  readonly byOwner: boolean;
  /** An instant as ISO 8601 text in UTC. */
  readonly at: string;
}

const flexClassNumber = z.literal([1, 2, 3, 4, 5]).nullable();

const reason = z.object({
  factor: words,
  effect: z.enum(["adds", "multiplies", "costs"]),
  unit: z.enum(["cm", "ratio", "mm", "score"]),
  amount,
  about: z.enum(["length", "flexRatio", "waist", "rank"]),
}) satisfies z.ZodType<FitReason>;

const choice = z.object({
  model: words,
  lengthCm: amount,
  wantedLengthCm: amount,
  flexRatio: amount,
  flexClass: flexClassNumber,
  nearClass: flexClassNumber,
  score: amount,
  reasons: listOf(reason),
  neighbourLengthCm: amount.exactOptional(),
});

const flagCodes = {
  "length-out-of-range": true,
  "flex-out-of-range": true,
  "height-mass-disagree": true,
  "body-mass-implausible": true,
  "mixed-units": true,
  "young-or-growing": true,
  "health-mentioned": true,
  "ability-unproven": true,
  "wide-for-piste": true,
  "narrow-for-off-piste": true,
  "wide-for-light-skier": true,
  "boot-sole-out-of-range": true,
  "binding-track-too-long": true,
  "mount-offset-unusual": true,
  "metal-for-light-touring": true,
  "buyer-not-skier": true,
  "release-setting-asked": true,
  "unusual-use": true,
  "earlier-date-asked": true,
  "not-built-in-length": true,
  "use-not-built": true,
  "long-for-height": true,
} as const satisfies Readonly<Record<FitFlagCode, true>>;

/** Whether a refusal is one of the fit's flags. */
export const isFlagCode = (text: string): text is FitFlagCode => text in flagCodes;

const flag = z.object({
  code: z.custom<FitFlagCode>((value) => typeof value === "string" && isFlagCode(value), {
    error: "not the code of a flag",
  }),
  message: words,
  blocks: z.enum(["nothing", "sale", "build"]),
  script: words,
  suggestion: z
    .object({ path: words, value: z.unknown(), label: words, typed: storedTypedMeasures.exactOptional() })
    .exactOptional(),
  model: words.exactOptional(),
}) satisfies z.ZodType<FitFlag>;

const recommendation = z.object({
  wantedWaistMm: amount,
  choices: listOf(choice),
  flags: listOf(flag),
}) satisfies z.ZodType<Recommendation>;

export const storedFit = z.object({
  recommendation,
  flags: listOf(flag),
  modelName: words,
  flexClassLabel: words,
  massKg: amount,
  springCentreNPerMm: amount,
  sidecutRadiusM: amount,
  spread: z.object({ springCentre: amount, massG: amount }).exactOptional(),
}) satisfies z.ZodType<FrozenFit>;

export const storedFlagAcks = listOf(
  z.object({ code: words, reason: words, by: words, byOwner: z.boolean(), at: storedInstant }),
) satisfies z.ZodType<readonly FlagAck[]>;

import { z } from "zod";
import type { BevelRow, FinishTable } from "#engine/fit";
import { about, distinctBy, id, label, modelUseSchema, notNegative, sentence } from "./shared";

const ability = z.enum(["learning", "improving", "confident", "expert"]);
const structure = z.enum(["F", "M", "MC", "C"]);

const bevelRowSchema = z.strictObject({
  id,
  label,
  uses: z.array(modelUseSchema).min(1).exactOptional(),
  abilities: z.array(ability).min(1).exactOptional(),
  baseBevelDeg: notNegative.max(3),
  sideAngleDeg: notNegative.max(5),
  detuneTipMm: notNegative.max(400),
  detuneTailMm: notNegative.max(400),
}) satisfies z.ZodType<BevelRow>;

const measure = z.enum([
  "length",
  "widths",
  "sidecut",
  "mass",
  "balance",
  "camber",
  "splay",
  "contact",
  "springCentre",
  "springEnds",
  "torsion",
  "twist",
  "flatness",
  "bevels",
  "visual",
]);

const bandSchema = z.strictObject({ kind: z.enum(["percent", "absolute"]), amount: z.number().positive() });

const qcLimitSchema = z.strictObject({
  measure,
  label,
  method: sentence,
  toTarget: label,
  twins: label,
  band: bandSchema.exactOptional(),
  /** What `twins` says, as numbers; of several the wider counts. Absent in older releases. */
  twinBands: z.array(bandSchema).min(1).exactOptional(),
});

export const finishFileSchema = z.strictObject({
  about,
  bevels: z
    .array(bevelRowSchema)
    .superRefine(distinctBy((row) => row.id))
    .refine((rows) => rows.at(-1)?.uses === undefined && rows.at(-1)?.abilities === undefined, {
      error: "the last row of bevels must hold for every use and ability",
    }),
  structureBySnow: z.strictObject({
    icy: structure,
    firm: structure,
    mixed: structure,
    soft: structure,
    deep: structure,
  }),
  structureUnanswered: structure,
  structures: z.array(
    z.strictObject({
      code: structure,
      label,
      roughnessUm: z.tuple([z.number().positive(), z.number().positive()]),
      pattern: z.enum(["linear", "crossed"]),
      /** How the stone is dressed and how often the ski passes over it; absent in older releases. */
      stone: z
        .strictObject({ dresserMmPerTurn: z.number().positive().max(2), passes: z.int().min(1).max(20) })
        .exactOptional(),
    }),
  ),
  base: z.strictObject({
    minThicknessMm: notNegative,
    maxRemovedMm: notNegative,
    flatnessMm: notNegative,
    concaveUnderfootMm: notNegative,
  }),
  wax: sentence,
  /** Absent in older releases, whose sheets say nothing of the sidewalls' bevel. */
  sidewall: z.strictObject({ bevelDeg: notNegative.max(45), uprightMm: notNegative.max(10) }).exactOptional(),
  /** A ski whose spring lies this near to its target reads as the class it was ordered in; absent: by the class's edges. */
  classWithinPercent: notNegative.max(20).exactOptional(),
  qcLimits: z
    .array(qcLimitSchema)
    .superRefine(distinctBy((limit) => limit.measure))
    .refine((limits) => limits.length === measure.options.length, { error: "every QC measure needs its limit" }),
}) satisfies z.ZodType<FinishTable>;

/** Finish and QC rules of the shop. */
export type FinishRules = Omit<z.output<typeof finishFileSchema>, "about">;

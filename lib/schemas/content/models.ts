import { z } from "zod";
import type { CoreDesign, LayupLayer, Model } from "#engine/configuration";
import type { ModelShape } from "#engine/geometry";
import { about, distinctBy, id, label, modelUseSchema, positive, sentence, source } from "./shared";

const shapeSchema = z.strictObject({
  refLengthCm: z.number().min(80).max(220),
  shoulderWidthMm: z.number().min(60).max(200),
  waistWidthMm: z.number().min(40).max(160),
  heelWidthMm: z.number().min(50).max(190),
  tipLengthMm: z.number().min(20).max(600),
  tailLengthMm: z.number().min(20).max(600),
  tipExponent: z.number().min(1.5).max(6),
  tailExponent: z.number().min(1.5).max(6),
  tipRockerPercent: z.number().min(0).max(45),
  tailRockerPercent: z.number().min(0).max(45),
  tipRiseMm: z.number().min(0).max(150),
  tailRiseMm: z.number().min(0).max(150),
  camberMm: z.number().min(-10).max(25),
  mountBehindCentreMm: z.number().min(-200).max(250),
  edgeWrap: z.enum(["partial", "full"]),
}) satisfies z.ZodType<ModelShape>;

const coreSchema = z.strictObject({
  tipMm: z.number().min(1).max(10),
  midMm: z.number().min(4).max(25),
  tailMm: z.number().min(1).max(10),
  flatMm: z.number().min(0).max(900),
  taperPower: z.number().min(0.5).max(4),
  stripWidthMm: z.number().min(8).max(30),
  blend: id,
}) satisfies z.ZodType<CoreDesign>;

const layerSchema = z.discriminatedUnion("role", [
  z.strictObject({ role: z.literal("base"), material: id, thicknessMm: positive.max(3) }),
  z.strictObject({ role: z.literal("fabric"), material: id }),
  z.strictObject({ role: z.literal("metal"), material: id, thicknessMm: positive.max(2) }),
  z.strictObject({ role: z.literal("rubber"), material: id, thicknessMm: positive.max(2) }),
  z.strictObject({ role: z.literal("topsheet"), material: id, thicknessMm: positive.max(2) }),
  z.strictObject({ role: z.literal("core") }),
]) satisfies z.ZodType<LayupLayer>;

const mouldName = z.string().regex(/^[A-Z0-9]+(-[A-Z0-9]+)*$/, { error: "mould must be capitals, digits and hyphens" });

const modelSchema = z
  .strictObject({
    id,
    name: label,
    revision: z.string().regex(/^[A-Z]$/, { error: "revision must be one capital letter" }),
    use: modelUseSchema,
    state: z.enum(["active", "retired"]),
    summary: sentence,
    shape: shapeSchema,
    core: coreSchema,
    layup: z.array(layerSchema).min(4),
    lengths: z
      .array(z.strictObject({ lengthCm: z.int().min(80).max(220), mould: mouldName, cassettes: z.int().min(1).max(9) }))
      .min(1)
      .superRefine(distinctBy((length) => length.lengthCm)),
    mouldFamily: id,
    houseGraphic: id.exactOptional(),
    hasMetal: z.boolean(),
    source,
  })
  .refine((model) => model.layup.filter((layer) => layer.role === "core").length === 1, {
    path: ["layup"],
    error: "the lay-up needs exactly one core",
  })
  .refine((model) => model.layup.some((layer) => layer.role === "metal") === model.hasMetal, {
    path: ["hasMetal"],
    error: "hasMetal must say whether the lay-up holds metal",
  })
  .refine((model) => model.lengths.some((length) => length.lengthCm === model.shape.refLengthCm), {
    path: ["shape", "refLengthCm"],
    error: "the reference length must be one of the offered lengths",
  }) satisfies z.ZodType<Model>;

export const modelsFileSchema = z.strictObject({
  about,
  models: z
    .array(modelSchema)
    .min(1)
    .superRefine(distinctBy((model) => model.id)),
});

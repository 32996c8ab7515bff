/** Core blends, reinforcements, base colours, house graphics, flex classes. */
import { z } from "zod";
import type {
  BaseColour,
  CoreBlend,
  FlexClass,
  HouseGraphic,
  OwnCoreRules,
  Reinforcement,
  ReinforcementPlacement,
} from "#engine/configuration";
import { stationRef } from "../earlier-releases";
import { about, distinctBy, id, label, modelUseSchema, positive, sentence } from "./shared";

const forUses = z.array(modelUseSchema).min(1);
const hex = z.string().regex(/^#[0-9a-f]{6}$/, { error: "a colour must be # and six lower-case hexadecimal digits" });

const blendSchema = z.strictObject({
  id,
  label,
  summary: sentence,
  strips: z.strictObject({ C: id, I: id, M: id, O: id }),
  isWindowGrade: z.boolean(),
  priceCode: id.exactOptional(),
  forUses,
}) satisfies z.ZodType<CoreBlend>;

const ownCoreSchema = z.strictObject({
  label: z.string().regex(/\{strips\}/, { error: "the label must hold {strips}" }),
  windowLabel: z.string().regex(/\{strips\}/, { error: "the label must hold {strips}" }),
  summary: sentence,
  woods: z.array(id).min(1),
  leastScrewDensityKgM3: positive.max(1500),
  resinousWoods: z.array(id),
  windowWoods: z.array(id),
  priceCode: id,
  windowPriceCode: id,
}) satisfies z.ZodType<OwnCoreRules>;

const faces = z
  .array(z.enum(["bottom", "top"]))
  .min(1)
  .max(2);

const placementSchema = z.discriminatedUnion("kind", [
  z.strictObject({ kind: z.literal("full-ply"), faces, fabric: id }),
  z.strictObject({
    kind: z.literal("stringers"),
    faces,
    fabric: id,
    bandWidthMm: positive.max(60),
    perFace: z.int().min(1).max(4),
  }),
  z.strictObject({
    kind: z.literal("metal-pair"),
    sheet: id,
    thicknessMm: positive.max(1),
    rubberMm: positive.max(1),
  }),
]) satisfies z.ZodType<ReinforcementPlacement>;

const reinforcementSchema = z.strictObject({
  id,
  label,
  effect: sentence,
  placement: placementSchema,
  extraPlies: z.int().min(0).max(4),
  extraMinutes: z.array(z.strictObject({ station: stationRef, minutes: z.int().min(1).max(240) })),
  leadDays: z.int().min(0).max(60),
  priceCode: id,
  forUses,
}) satisfies z.ZodType<Reinforcement>;

const baseColourSchema = z.strictObject({ id, label, hex }) satisfies z.ZodType<BaseColour>;

const houseGraphicSchema = z.strictObject({
  id,
  label,
  pattern: z.enum(["plain", "contours", "larch", "strata", "facets", "relief", "branch", "folds", "shards"]),
  colours: z.array(hex).min(1).max(6),
}) satisfies z.ZodType<HouseGraphic>;

const flexClassSchema = z.strictObject({
  number: z.union([z.literal(1), z.literal(2), z.literal(3), z.literal(4), z.literal(5)]),
  label,
  from: positive,
  below: positive,
}) satisfies z.ZodType<FlexClass>;

export const blendsFileSchema = z.strictObject({
  about,
  blends: z.array(blendSchema).superRefine(distinctBy((blend) => blend.id)),
  /** Releases from before cores of one's own have none. */
  ownCore: ownCoreSchema.exactOptional(),
});

export const reinforcementsFileSchema = z.strictObject({
  about,
  reinforcements: z.array(reinforcementSchema).superRefine(distinctBy((reinforcement) => reinforcement.id)),
});

export const baseColoursFileSchema = z.strictObject({
  about,
  baseColours: z.array(baseColourSchema).superRefine(distinctBy((colour) => colour.id)),
});

export const houseGraphicsFileSchema = z.strictObject({
  about,
  houseGraphics: z.array(houseGraphicSchema).superRefine(distinctBy((graphic) => graphic.id)),
});

/** Classes stand in order, each beginning where the one before ends. */
export const flexClassesFileSchema = z.strictObject({
  about,
  flexClasses: z
    .array(flexClassSchema)
    .min(1)
    .superRefine((classes, context) => {
      for (const [index, each] of classes.entries()) {
        const next = classes[index + 1];
        const isOrdered = each.from < each.below && (next === undefined || next.from === each.below);
        if (!isOrdered) {
          const message = `class ${each.number} must end above its start and where the next begins`;
          context.addIssue({ code: "custom", path: [index, "below"], message });
        }
      }
    }),
});

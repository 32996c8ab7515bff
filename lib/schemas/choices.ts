/** What the skier chose, and the complete specification that follows from it. Which ids exist is the catalogue's business. */
import { z } from "zod";
import type { SheetChoices } from "#engine/assessment";
import {
  type Artwork,
  type ArtworkPlacement,
  type GraphicSpec,
  type PairSpec,
  type PicturePart,
  pictureArrangements,
} from "#engine/configuration";
import type { GivenDiscount } from "#engine/pricing";
import { catalogId, coreId, numberIn, oneOf, textIn, yesOrNo } from "./fields";

const alongMm = (label: string) => numberIn({ label, unit: "mm", min: -300, max: 2500 });

const artworkSchema = z.strictObject({
  id: textIn("Picture", 1, 60),
  widthPx: numberIn({ label: "Picture width", unit: "px", min: 1, max: 100_000, whole: true }),
  heightPx: numberIn({ label: "Picture height", unit: "px", min: 1, max: 100_000, whole: true }),
  sha256: z.string().regex(/^[0-9a-f]{64}$/, { error: "Picture checksum must be 64 hexadecimal digits" }),
}) satisfies z.ZodType<Artwork>;

export const placementSchema = z.strictObject({
  centreXMm: numberIn({ label: "Picture centre along the ski", unit: "mm", min: -3000, max: 5000 }),
  centreYMm: numberIn({ label: "Picture centre across the ski", unit: "mm", min: -2000, max: 2000 }),
  mmPerPixel: numberIn({ label: "Picture scale", unit: "mm a pixel", min: 0.001, max: 100 }),
  angleDeg: numberIn({ label: "Picture angle", unit: "°", min: -360, max: 360 }),
}) satisfies z.ZodType<ArtworkPlacement>;

const share = (label: string) => numberIn({ label, min: 0, max: 1 });

/** Which part of a picture stays as it reads. */
const partSchema = z
  .strictObject({
    x: share("Left side of the part"),
    y: share("Upper side of the part"),
    width: share("Width of the part"),
    height: share("Height of the part"),
  })
  .refine(({ x, y, width, height }) => width > 0 && height > 0 && x + width <= 1.0001 && y + height <= 1.0001, {
    error: "The part that stays unmirrored must lie on the picture and have a size",
  }) satisfies z.ZodType<PicturePart>;

const windowSchema = z
  .strictObject({
    fromXMm: alongMm("Window start"),
    toXMm: alongMm("Window end"),
    halfWidthMm: numberIn({ label: "Window half width", unit: "mm", min: 10, max: 80 }),
  })
  .refine((window) => window.toXMm > window.fromXMm, {
    path: ["toXMm"],
    error: (issue) => `Window end must lie behind its start; got ${JSON.stringify(issue.input)}`,
  });

const graphicSchema = z
  .strictObject({
    kind: oneOf("Graphic", ["house", "own"]),
    house: catalogId("House graphic").exactOptional(),
    artwork: artworkSchema.exactOptional(),
    placement: placementSchema.exactOptional(),
    arrangement: oneOf("Arrangement", pictureArrangements).exactOptional(),
    ground: z
      .string()
      .regex(/^#[0-9a-f]{6}$/, { error: "Ground colour must be # and six hexadecimal digits in lower case" })
      .exactOptional(),
    quarterTurns: numberIn({ label: "Quarter turns of the picture", min: 0, max: 3, whole: true }).exactOptional(),
    sideShift: numberIn({ label: "Picture moved sideways", min: -1, max: 1 }).exactOptional(),
    unmirrored: partSchema.exactOptional(),
    layout: oneOf("Layout", ["same", "mirrored", "continuing", "alternate", "independent"]),
    text: z
      .strictObject({
        text: textIn("Text on the ski", 1, 60),
        xMm: alongMm("Text position"),
        capHeightMm: numberIn({ label: "Cap height", unit: "mm", min: 4, max: 120 }),
      })
      .exactOptional(),
    windows: z.array(windowSchema).max(6, { error: "Windows: at most 6" }).readonly(),
  })
  .refine((graphic) => graphic.kind !== "house" || graphic.house !== undefined, {
    path: ["house"],
    error: "A house graphic must be named",
  }) satisfies z.ZodType<GraphicSpec>;

/** As it is chosen: letters may still be missing, which costs and shows as letters do and holds up the sale (assessment). */
const baseChoiceSchema = z.strictObject({
  left: catalogId("Left base colour"),
  right: catalogId("Right base colour"),
  inlay: oneOf("Inlay", ["none", "counterchange", "complex"]),
  inlayText: textIn("Letters in the base", 1, 24).exactOptional(),
}) satisfies z.ZodType<PairSpec["base"]>;

const baseSchema = baseChoiceSchema
  .refine((base) => base.inlay !== "counterchange" || base.inlayText !== undefined, {
    path: ["inlayText"],
    error: "Letters in the base are missing",
  })
  .refine((base) => base.inlay !== "counterchange" || base.left !== base.right, {
    path: ["right"],
    error: "A counterchange needs two colours: left and right base have the same one",
  }) satisfies z.ZodType<PairSpec["base"]>;

const mountSchema = z.strictObject({
  offsetMm: numberIn({ label: "Mount line offset", unit: "mm", min: -150, max: 150 }),
  bootSoleMm: numberIn({ label: "Boot sole length", unit: "mm", min: 180, max: 450 }).exactOptional(),
  bindingTrackMm: numberIn({ label: "Binding track", unit: "mm", min: 100, max: 700 }).exactOptional(),
}) satisfies z.ZodType<PairSpec["mount"]>;

const finishSchema = z.strictObject({
  baseBevelDeg: numberIn({ label: "Base bevel", unit: "°", min: 0, max: 3 }),
  sideAngleDeg: numberIn({ label: "Side angle", unit: "°", min: 0, max: 5 }),
  detuneTipMm: numberIn({ label: "Detune at the tip", unit: "mm", min: 0, max: 400 }),
  detuneTailMm: numberIn({ label: "Detune at the tail", unit: "mm", min: 0, max: 400 }),
  structure: oneOf("Structure", ["F", "M", "MC", "C"]),
}) satisfies z.ZodType<PairSpec["finish"]>;

const reinforcementsSchema = z
  .array(catalogId("Reinforcement"))
  .max(8, { error: "Reinforcements: at most 8" })
  .refine((ids) => new Set(ids).size === ids.length, { error: "Reinforcements: each at most once" })
  .readonly();

const discountSchema = z.strictObject({
  code: catalogId("Discount"),
  reason: textIn("Reason of the discount", 1, 300),
  approvedBy: textIn("Who approved the discount", 1, 120),
  basisPoints: numberIn({ label: "Discount", unit: "basis points", min: 1, max: 10_000, whole: true }).exactOptional(),
}) satisfies z.ZodType<GivenDiscount>;

/** As it is asked for: who approves it is known by who asks. */
export const discountRequestSchema = discountSchema.omit({ approvedBy: true });

export const destinationSchema = oneOf("Destination", ["home", "domestic", "abroad", "collect"]);

/** Every choice by its key; each is checked alone, so that a sheet saves field by field. */
export const choiceFields = {
  model: catalogId("Model"),
  lengthCm: numberIn({ label: "Length", unit: "cm", min: 80, max: 220 }),
  core: coreId("Core"),
  reinforcements: reinforcementsSchema,
  flexRatio: numberIn({ label: "Flex ratio", min: 0.3, max: 2.5 }),
  graphic: graphicSchema,
  base: baseChoiceSchema,
  mount: mountSchema,
  finish: finishSchema,
  tipTailProtectors: yesOrNo("Tip and tail protectors"),
  plate: catalogId("Plate under the binding"),
  lightening: yesOrNo("Pockets in the core"),
  destination: destinationSchema,
  discounts: z.array(discountSchema).max(4, { error: "Discounts: at most 4 may be tried" }).readonly(),
} as const;

export const sheetChoicesSchema = z.strictObject({
  model: choiceFields.model.exactOptional(),
  lengthCm: choiceFields.lengthCm.exactOptional(),
  core: choiceFields.core.exactOptional(),
  reinforcements: choiceFields.reinforcements.exactOptional(),
  flexRatio: choiceFields.flexRatio.exactOptional(),
  graphic: choiceFields.graphic.exactOptional(),
  base: choiceFields.base.exactOptional(),
  mount: choiceFields.mount.exactOptional(),
  finish: choiceFields.finish.exactOptional(),
  tipTailProtectors: choiceFields.tipTailProtectors.exactOptional(),
  plate: choiceFields.plate.exactOptional(),
  lightening: choiceFields.lightening.exactOptional(),
  destination: choiceFields.destination.exactOptional(),
  discounts: choiceFields.discounts.exactOptional(),
}) satisfies z.ZodType<SheetChoices>;

/** A complete specification: what a quote freezes, and what the command line builds from. */
export const pairSpecSchema = z.strictObject({
  model: choiceFields.model,
  lengthCm: choiceFields.lengthCm,
  core: choiceFields.core,
  reinforcements: choiceFields.reinforcements,
  flexRatio: choiceFields.flexRatio,
  graphic: graphicSchema,
  base: baseSchema,
  mount: mountSchema,
  finish: finishSchema,
  tipTailProtectors: choiceFields.tipTailProtectors,
  plate: choiceFields.plate.exactOptional(),
  lightening: choiceFields.lightening.exactOptional(),
}) satisfies z.ZodType<PairSpec>;

/** Specifications, answers and choices as they were frozen. */
import { z } from "zod";
import type { PartialAnswers, SheetChoices } from "#engine/assessment";
import type { BuildableSpec, GraphicSpec, PairSpec } from "#engine/configuration";
import type { TypedMeasures } from "#engine/fit";
import type { GivenDiscount } from "#engine/pricing";
import type { TypedHeight, TypedMass } from "#engine/units";
import { amount, listOf, words } from "./common";

export const storedTypedHeight = z.discriminatedUnion("unit", [
  z.object({ unit: z.literal("cm"), cm: amount }),
  z.object({ unit: z.literal("ft-in"), feet: amount, inches: amount }),
]) satisfies z.ZodType<TypedHeight>;

export const storedTypedMass = z.discriminatedUnion("unit", [
  z.object({ unit: z.literal("kg"), kg: amount }),
  z.object({ unit: z.literal("lb"), lb: amount }),
]) satisfies z.ZodType<TypedMass>;

export const storedTypedMeasures = z.object({
  height: storedTypedHeight.exactOptional(),
  mass: storedTypedMass.exactOptional(),
}) satisfies z.ZodType<TypedMeasures>;

const windowSchema = z.object({ fromXMm: amount, toXMm: amount, halfWidthMm: amount });

export const storedGraphic = z.object({
  kind: z.enum(["house", "own"]),
  house: words.exactOptional(),
  artwork: z.object({ id: words, widthPx: amount, heightPx: amount, sha256: words }).exactOptional(),
  placement: z.object({ centreXMm: amount, centreYMm: amount, mmPerPixel: amount, angleDeg: amount }).exactOptional(),
  arrangement: z.enum(["fill", "ends", "fade", "tiles", "motif", "split"]).exactOptional(),
  ground: words.exactOptional(),
  quarterTurns: amount.exactOptional(),
  sideShift: amount.exactOptional(),
  unmirrored: z.object({ x: amount, y: amount, width: amount, height: amount }).exactOptional(),
  layout: z.enum(["same", "mirrored", "continuing", "alternate", "independent"]),
  text: z.object({ text: words, xMm: amount, capHeightMm: amount }).exactOptional(),
  windows: listOf(windowSchema),
}) satisfies z.ZodType<GraphicSpec>;

export const storedBase = z.object({
  left: words,
  right: words,
  inlay: z.enum(["none", "counterchange", "complex"]),
  inlayText: words.exactOptional(),
}) satisfies z.ZodType<PairSpec["base"]>;

const mount = z.object({
  offsetMm: amount,
  bootSoleMm: amount.exactOptional(),
  bindingTrackMm: amount.exactOptional(),
}) satisfies z.ZodType<PairSpec["mount"]>;

const finish = z.object({
  baseBevelDeg: amount,
  sideAngleDeg: amount,
  detuneTipMm: amount,
  detuneTailMm: amount,
  structure: z.enum(["F", "M", "MC", "C"]),
}) satisfies z.ZodType<PairSpec["finish"]>;

const flexSpec = {
  model: words,
  lengthCm: amount,
  core: words,
  reinforcements: listOf(words),
  flexRatio: amount,
  lightening: z.boolean().exactOptional(),
} as const;

export const storedPairSpec = z.object({
  ...flexSpec,
  graphic: storedGraphic,
  base: storedBase,
  mount,
  finish,
  tipTailProtectors: z.boolean(),
  plate: words.exactOptional(),
}) satisfies z.ZodType<PairSpec>;

/** What a measured ski was built from. */
export const storedBuildableSpec = z.object({
  ...flexSpec,
  mount: mount.exactOptional(),
  plate: words.exactOptional(),
}) satisfies z.ZodType<BuildableSpec>;

const discount = z.object({
  code: words,
  reason: words,
  approvedBy: words,
  basisPoints: amount.exactOptional(),
}) satisfies z.ZodType<GivenDiscount>;

export const storedDestination = z.enum(["home", "domestic", "abroad", "collect"]);

export const storedChoices = z.object({
  model: words.exactOptional(),
  lengthCm: amount.exactOptional(),
  core: words.exactOptional(),
  reinforcements: listOf(words).exactOptional(),
  flexRatio: amount.exactOptional(),
  graphic: storedGraphic.exactOptional(),
  base: storedBase.exactOptional(),
  mount: mount.exactOptional(),
  finish: finish.exactOptional(),
  tipTailProtectors: z.boolean().exactOptional(),
  plate: words.exactOptional(),
  lightening: z.boolean().exactOptional(),
  destination: storedDestination.exactOptional(),
  discounts: listOf(discount).exactOptional(),
}) satisfies z.ZodType<SheetChoices>;

export const storedAnswers = z.object({
  heightCm: amount.exactOptional(),
  massKg: amount.exactOptional(),
  packKg: amount.exactOptional(),
  ability: z.enum(["learning", "improving", "confident", "expert"]).exactOptional(),
  temperament: z.enum(["calm", "steady", "fast"]).exactOptional(),
  offPistePercent: amount.exactOptional(),
  ageYears: amount.exactOptional(),
  daysTotal: amount.exactOptional(),
  touringPercent: amount.exactOptional(),
  homeSnow: z.enum(["icy", "firm", "mixed", "soft", "deep"]).exactOptional(),
  turnSize: z.enum(["short", "medium", "long"]).exactOptional(),
  priorities: listOf(z.enum(["quiet", "lively", "light", "planted", "forgiving", "precise"])).exactOptional(),
  terrain: listOf(z.enum(["bumps", "trees", "park", "switch"])).exactOptional(),
  currentSki: z
    .object({
      lengthCm: amount.exactOptional(),
      waistMm: amount.exactOptional(),
      length: z.enum(["too short", "right", "too long"]).exactOptional(),
      flex: z.enum(["too soft", "right", "too stiff"]).exactOptional(),
      flexClass: z.literal([1, 2, 3, 4, 5]).exactOptional(),
      newPairFor: z.enum(["the same", "something else"]).exactOptional(),
    })
    .exactOptional(),
  bootSoleMm: amount.exactOptional(),
  bindingTrackMm: amount.exactOptional(),
  mountOffsetMm: amount.exactOptional(),
  healthAdviceGiven: z.boolean().exactOptional(),
  buyerIsSkier: z.boolean().exactOptional(),
  asksReleaseSetting: z.boolean().exactOptional(),
  unusualUse: z.enum(["monoski", "adaptive", "ski-jump"]).exactOptional(),
  stillGrowing: z.boolean().exactOptional(),
  wantsEarlierDate: z.boolean().exactOptional(),
  typed: storedTypedMeasures.exactOptional(),
}) satisfies z.ZodType<PartialAnswers>;

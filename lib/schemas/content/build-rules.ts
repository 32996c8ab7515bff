import { z } from "zod";
import type { BaseLetterRules, BuildRules, PrintRules } from "#engine/configuration";
import type { ScatterSettings } from "#engine/flex";
import { about, id, modelUseSchema, notNegative, positive } from "./shared";

const otherPlateSchema = z.strictObject({ material: id, thicknessMm: positive.max(3) });

const printSchema = z
  .strictObject({
    goodDpi: positive.max(1200),
    leastDpi: positive.max(1200),
    bleedMm: notNegative.max(60),
    pairGapMm: notNegative.max(300),
    safeMm: notNegative.max(60),
    bindingZoneMm: notNegative.max(900),
    leastCapHeightMm: positive.max(60),
    letterAdvance: positive.max(3),
    windowLeastMm: positive.max(200),
    windowFromEdgeMm: notNegative.max(60),
  })
  .refine((print) => print.leastDpi <= print.goodDpi, {
    path: ["leastDpi"],
    error: "leastDpi must not be above goodDpi",
  }) satisfies z.ZodType<PrintRules>;

const baseLettersSchema = z
  .strictObject({
    capHeightMm: positive.max(150),
    leastCapHeightMm: positive.max(150),
    fromEdgeMm: notNegative.max(60),
    advance: positive.max(3),
    fromShoulderMm: notNegative.max(600),
    islands: z.record(z.string().min(1).max(4), z.int().min(0).max(4)),
  })
  .refine((letters) => letters.leastCapHeightMm <= letters.capHeightMm, {
    path: ["leastCapHeightMm"],
    error: "leastCapHeightMm must not be above capHeightMm",
  }) satisfies z.ZodType<BaseLetterRules>;

const share = z.number().min(0).max(1);
/** Above that, first-order propagation would no longer hold. */
const smallShare = z.number().min(0).max(0.3);

const scatterSchema = z.strictObject({
  stripModulus: smallShare,
  stripDensity: smallShare,
  coreThicknessMm: notNegative.max(0.5),
  fibreVolume: z.number().min(0).max(0.1),
  fibreVolumeNominal: z.number().min(0.2).max(0.7),
  resinDensityKgM3: positive.max(3000),
  fabricModulus: smallShare,
  sheetThickness: smallShare,
  modelSpring: smallShare,
  modelMass: smallShare,
  sharedByTwins: z.strictObject({
    strips: share,
    stripDensity: share,
    coreThickness: share,
    fibreVolume: share,
    fabricModulus: share,
    sheetThickness: share,
  }),
}) satisfies z.ZodType<ScatterSettings>;

export const buildRulesFileSchema = z.strictObject({
  about,
  axialOverBendingModulus: z.number().min(1).max(1.5),
  sidewall: z.strictObject({ material: id, widthMm: positive.max(20) }),
  edge: z.strictObject({
    material: id,
    widthMm: positive.max(5),
    heightMm: positive.max(5),
    anchorMassFactor: z.number().min(1).max(3),
    beyondSidecutMm: notNegative.max(300),
  }),
  edgeRubber: z.strictObject({ material: id, thicknessMm: positive.max(1), widthMm: positive.max(60) }),
  spacers: z.strictObject({ material: id, tipMm: positive.max(400), tailMm: positive.max(400), scarfMm: notNegative }),
  plate: z.strictObject({
    material: id,
    thicknessMm: positive.max(3),
    rubber: id,
    rubberMm: notNegative.max(1),
    lengthMm: positive.max(900),
    widthInsetMm: notNegative.max(60),
    pocketClearanceMm: notNegative.max(1),
    pocketPlanMm: notNegative.max(3),
    minMarginMm: notNegative.max(200),
    byUse: z.partialRecord(modelUseSchema, otherPlateSchema).exactOptional(),
  }),
  mat: z.strictObject({ fabric: id, lengthMm: positive.max(1500), widthExtraMm: notNegative.max(100) }),
  resinAtFacesGM2: notNegative.max(1000),
  coreGlueGM2: notNegative.max(1000),
  core: z
    .strictObject({ minMm: positive, maxMm: positive.max(40), maxSlope: positive.max(1), stepMm: positive.max(1) })
    .refine((core) => core.minMm < core.maxMm, { path: ["maxMm"], error: "maxMm must be above minMm" }),
  springTest: z.strictObject({
    supports: z.union([
      z.literal("shoulder-heel"),
      z.strictObject({ frontFromTipMm: notNegative.max(900), rearFromTailMm: notNegative.max(900) }),
    ]),
    load: z.enum(["mount", "middle"]),
  }),
  scatter: scatterSchema.exactOptional(),
  springBackMm: z.number().min(-5).max(10),
  maxExtraPlies: z.int().min(0).max(8),
  mountOffsetReviewMm: notNegative.max(200),
  print: printSchema,
  baseLetters: baseLettersSchema.exactOptional(),
  bootSoleRangeMm: z
    .tuple([positive, positive])
    .refine(([shortest, longest]) => shortest < longest, { error: "the longer boot sole must stand second" }),
}) satisfies z.ZodType<BuildRules>;

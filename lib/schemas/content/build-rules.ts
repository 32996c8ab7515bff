import { z } from "zod";
import type {
  BaseLetterRules,
  BenchRules,
  BuildRules,
  ClothRules,
  LighteningRules,
  PrintRules,
} from "#engine/configuration";
import type { ScatterSettings } from "#engine/flex";
import { about, distinctBy, id, label, modelUseSchema, notNegative, positive, sentence } from "./shared";

const otherPlateSchema = z.strictObject({ material: id, thicknessMm: positive.max(3) });

const lighteningSchema = z.strictObject({
  label,
  withoutLabel: label,
  effect: sentence,
  widthMm: positive.max(200),
  depthMm: positive.max(10),
  leastUnderMm: positive.max(10),
  clearOfMatMm: notNegative.max(300),
  lengthShare: positive.max(0.8),
  bridge: z.strictObject({ fabric: id, overlapMm: notNegative.max(100), besideMm: notNegative.max(60) }),
  priceCode: id,
  forUses: z.array(modelUseSchema).min(1),
}) satisfies z.ZodType<LighteningRules>;

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

const reason = sentence;

const benchSchema = z.strictObject({
  bootZoneMm: positive.max(600),
  bootCore: z.strictObject({ leastMm: positive.max(20), reason }),
  woodUnderPocket: z.strictObject({ leastMm: positive.max(20), reason }),
  noRise: z.strictObject({ reason }),
  endSheets: z.strictObject({
    sheetsMm: z
      .array(positive.max(10))
      .min(1)
      .refine((sheets) => sheets.every((sheet, i) => i === 0 || sheet > (sheets[i - 1] ?? 0)), {
        error: "the sheets must stand from thin to thick",
      }),
    reason,
  }),
  relief: z.strictObject({ share: z.number().min(0).max(0.3), reason }),
  flexTolerance: z.strictObject({ share: z.number().min(0.005).max(0.1), reason }),
}) satisfies z.ZodType<BenchRules>;

const clothSchema = z
  .strictObject({
    prefer: z.enum(["mass", "price"]),
    faces: z.array(z.array(id).min(1).max(3)).min(1).max(12),
    costCentsM2: z.record(id, z.int().positive().max(100_000)),
  })
  .superRefine(({ faces, costCentsM2 }, context) => {
    for (const [index, plies] of faces.entries()) {
      for (const [place, cloth] of plies.entries()) {
        if (costCentsM2[cloth] !== undefined) continue;
        context.addIssue({ code: "custom", path: ["faces", index, place], message: `"${cloth}" has no cost` });
      }
    }
  }) satisfies z.ZodType<ClothRules>;

export const buildRulesFileSchema = z.strictObject({
  about,
  axialOverBendingModulus: z.number().min(1).max(1.5),
  /** Releases before 30 November 2026 say nothing of these two and reckon thin skins, which feel nothing across the grain. */
  acrossOverAxialModulus: z.number().min(0.001).max(1).default(1),
  sections: z.enum(["thin-skins", "layered"]).default("thin-skins"),
  sidewall: z.strictObject({ material: id, widthMm: positive.max(20) }),
  edge: z.strictObject({
    material: id,
    widthMm: positive.max(5),
    heightMm: positive.max(5),
    anchorMassFactor: z.number().min(1).max(3),
    beyondSidecutMm: notNegative.max(300),
    pastContactMm: notNegative.max(100).exactOptional(),
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
    /** Releases from before plates could be chosen have none. */
    choices: z
      .array(
        otherPlateSchema.extend({
          id,
          label,
          effect: sentence,
          priceCode: id,
          forUses: z.array(modelUseSchema).min(1),
        }),
      )
      .superRefine(distinctBy((each) => each.id))
      .exactOptional(),
  }),
  mat: z.strictObject({ fabric: id, lengthMm: positive.max(1500), widthExtraMm: notNegative.max(100) }),
  lightening: lighteningSchema.exactOptional(),
  resinAtFacesGM2: notNegative.max(1000),
  coreGlueGM2: notNegative.max(1000),
  core: z
    .strictObject({ minMm: positive, maxMm: positive.max(40), maxSlope: positive.max(1), stepMm: positive.max(1) })
    .refine((core) => core.minMm < core.maxMm, { path: ["maxMm"], error: "maxMm must be above minMm" }),
  bench: benchSchema.exactOptional(),
  cloth: clothSchema.exactOptional(),
  springTest: z.strictObject({
    supports: z.union([
      z.literal("shoulder-heel"),
      z.strictObject({ frontFromTipMm: notNegative.max(900), rearFromTailMm: notNegative.max(900) }),
    ]),
    load: z.enum(["mount", "middle"]),
  }),
  twistTest: z
    .strictObject({
      span: z.union([
        z.literal("mount-shoulder"),
        z
          .strictObject({
            clampFromMountMm: z.number().min(-900).max(900),
            armFromMountMm: z.number().min(-900).max(900),
          })
          .refine((span) => Math.abs(span.clampFromMountMm - span.armFromMountMm) >= 100, {
            path: ["armFromMountMm"],
            error: "clamp and arm must lie at least 100 mm apart",
          }),
      ]),
      torqueNm: positive.max(60),
      armMm: positive.max(1500),
    })
    .exactOptional(),
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

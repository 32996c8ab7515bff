/** content/catalog/parts.json: the shop's parts list, its allowances and its consumption. */
import { z } from "zod";
import type { PartCode, PartRule, PartsRules, WetFaces } from "#engine/parts";
import { about, distinctBy, label, notNegative, positive, sentence, wholeCents } from "./content/shared";
import { formerly, stationRef } from "./earlier-releases";
import { oneOf, textIn } from "./fields";

/** The shop's line numbers. Complete by type: a code that is missing or unknown here does not compile. */
const lineOfCode = {
  "strip-c": 1,
  "strip-i": 2,
  "strip-m": 3,
  "strip-o": 4,
  "core-glue": 5,
  sidewall: 6,
  "tip-spacer": 7,
  "tail-spacer": 8,
  "spacer-adhesive": 9,
  plate: 10,
  "plate-rubber": 11,
  "binding-mat": 12,
  "base-left": 13,
  "base-right": 14,
  "inlay-left-to-right": 15,
  "inlay-right-to-left": 16,
  "inlay-backing": 17,
  "edge-left": 18,
  "edge-right": 19,
  "edge-joint": 20,
  "edge-adhesive": 21,
  "edge-rubber": 22,
  "end-rubber": 23,
  "bottom-fabric": 24,
  "top-fabric": 25,
  "extra-biax": 26,
  stringers: 27,
  "extra-ply": 28,
  "metal-lower": 29,
  "metal-upper": 30,
  "end-patch": 31,
  topsheet: 32,
  "transfer-print": 33,
  "sublimation-ink": 34,
  tissue: 35,
  "topsheet-film": 36,
  "base-film": 37,
  resin: 38,
  hardener: 39,
  filler: 40,
  "release-film": 41,
  "flash-tape": 42,
  "lay-up-sundries": 43,
  "serial-tag": 44,
  protectors: 45,
  "edge-sealer": 46,
  abrasives: 47,
  wax: 48,
  straps: 49,
  "end-caps": 50,
  carton: 51,
  papers: 52,
  "shipping-label": 53,
  "metal-rubber-lower": 54,
  "metal-rubber-upper": 55,
  "pocket-bridge": 56,
} as const satisfies Record<PartCode, number>;

/** Parts that were laid before without a line of their own: older lists stay readable without them. */
const laterCodes: ReadonlySet<PartCode> = new Set(["metal-rubber-lower", "metal-rubber-upper", "pocket-bridge"]);

const partCodes = Object.keys(lineOfCode) as PartCode[];
const [firstCode, ...otherCodes] = partCodes;
if (firstCode === undefined) throw new RangeError("partCodes: none");

const costSchema = z
  .strictObject({ low: wholeCents, high: wholeCents })
  .refine((cost) => cost.low <= cost.high, { path: ["high"], error: "high must not be below low" });

const partRuleSchema = formerly(
  { stationNumber: "station" },
  z.strictObject({
    line: z.int().min(1).max(99),
    code: oneOf("code", [firstCode, ...otherCodes]),
    label,
    material: label,
    unit: z.enum(["piece", "mm", "g", "ml", "set"]),
    scrapFactor: z.number().min(1).max(3),
    station: stationRef,
    mandatoryScan: z.boolean(),
    unitCostCents: costSchema.exactOptional(),
    costPer: z.enum(["piece", "m", "m2", "kg", "g", "ml", "set", "board-foot"]).exactOptional(),
  }),
)
  .refine((row) => row.line === lineOfCode[row.code], {
    path: ["line"],
    error: (issue) => `this line number is not that of "${(issue.input as PartRule).code}"`,
  })
  .refine((row) => (row.unitCostCents === undefined) === (row.costPer === undefined), {
    path: ["costPer"],
    error: "unitCostCents and costPer stand together or not at all",
  }) satisfies z.ZodType<PartRule>;

const mm = notNegative.max(1000);
const film = positive.max(1000);
const hardenerPer100 = positive.max(200);

const wetFacesSchema = z.strictObject({
  woodGM2: film,
  plasticGM2: film,
  metalGM2: film,
  rubberGM2: film,
  patchGM2: film,
  marginPercent: notNegative.max(200),
}) satisfies z.ZodType<WetFaces>;

export const partsRulesFileSchema = z.strictObject({
  about,
  version: textIn("version", 1, 60),
  lines: z
    .array(partRuleSchema)
    .superRefine(distinctBy((row) => row.code))
    .superRefine(distinctBy((row) => row.line))
    .superRefine((rows, context) => {
      for (const code of partCodes) {
        if (!laterCodes.has(code) && !rows.some((row) => row.code === code)) {
          context.addIssue({ code: "custom", message: `there is no line for "${code}"` });
        }
      }
    }),
  cut: z.strictObject({
    stripRoughLengthMm: mm,
    stripRoughWidthMm: mm,
    stripRoughHeightMm: mm,
    flashMm: mm,
    sidewallExtraLengthMm: mm,
    plateRubberExtraMm: mm,
    baseExtraLengthMm: mm,
    baseExtraWidthMm: mm,
    // Rules that came later have the value that was built by before, so that older releases can still be read.
    baseRollWidthMm: mm.default(300),
    baseNestMarginMm: mm.default(10),
    fabricExtraLengthMm: mm,
    fabricExtraWidthMm: mm,
    metalInsetMm: mm,
    endPatchLengthMm: mm,
    topsheetExtraLengthMm: mm,
    topsheetExtraWidthMm: mm,
    printExtraMm: mm,
    tissueExtraMm: mm,
    inlayBackingExtraMm: mm,
    endRubberLengthMm: mm,
    releaseFilmExtraLengthMm: mm,
    releaseFilmWidthMm: mm,
    cartonExtraLengthMm: mm,
    cartonWidthMm: mm,
    cartonHeightMm: mm,
    inlayCapHeightMm: positive.max(400),
  }),
  use: z.strictObject({
    spacerAdhesiveG: notNegative,
    edgeAdhesiveG: notNegative,
    inkMlM2: notNegative,
    fillerPercentOfResin: notNegative.max(100),
    waxGM2: notNegative,
    edgeSealerG: notNegative,
  }),
  resin: z.union([
    z.strictObject({ system: sentence, hardenerPer100, faces: wetFacesSchema }),
    z.strictObject({
      system: sentence,
      hardenerPer100,
      perDryFabric: positive.max(3),
      wettedFaces: z.int().min(0).max(6),
      lossFactor: z.number().min(1).max(3),
    }),
  ]),
  layUp: z.enum(["sizes", "words"]).default("words"),
  stripsTakenBy: z.enum(["size", "length"]).default("length"),
}) satisfies z.ZodType<PartsRules>;

/** Limits of the catalogue's files, at the bound and one step beyond, on the demo shop's own content; shop rules, no source. */
import { readFileSync } from "node:fs";
import path from "node:path";
import { describe, expect, it } from "vitest";
import type { z } from "zod";
import {
  buildRulesFileSchema,
  calibrationFileSchema,
  correctionsFileSchema,
  finishFileSchema,
  fitFileSchema,
  flexClassesFileSchema,
  materialsFileSchema,
  modelsFileSchema,
  priceBooksFileSchema,
  recipeFileSchema,
  reinforcementsFileSchema,
  remediesFileSchema,
  safetyFileSchema,
  shopFileSchema,
  snowFileSchema,
} from "#schemas";
import { floorLearningFileSchema } from "#schemas/content/floor-learning";
import { floorFileSchema } from "#schemas/floor";
import { partsRulesFileSchema } from "#schemas/parts-rules";
import { tryBounds } from "./bounds";

const content = (file: string): unknown =>
  JSON.parse(readFileSync(path.resolve("content/catalog", `${file}.json`), "utf8"));

interface File {
  readonly name: string;
  readonly schema: z.ZodType;
  readonly lines: readonly string[];
  readonly sample?: unknown;
}

const stringers = (content("reinforcements") as { reinforcements: { placement: { kind: string } }[] }).reinforcements
  .map(({ placement }) => placement.kind)
  .indexOf("stringers");
const metal = (content("reinforcements") as { reinforcements: { placement: { kind: string } }[] }).reinforcements
  .map(({ placement }) => placement.kind)
  .indexOf("metal-pair");

const files: readonly File[] = [
  {
    name: "models",
    schema: modelsFileSchema,
    lines: [
      "models.0.shape.shoulderWidthMm            [60, 200]",
      "models.0.shape.waistWidthMm               [40, 160]",
      "models.0.shape.heelWidthMm                [50, 190]",
      "models.0.shape.tipLengthMm                [20, 600]",
      "models.0.shape.tailLengthMm               [20, 600]",
      "models.0.shape.tipExponent                [1.5, 6]",
      "models.0.shape.tailExponent               [1.5, 6]",
      "models.0.shape.tipRockerPercent           [0, 45]",
      "models.0.shape.tailRockerPercent          [0, 45]",
      "models.0.shape.tipRiseMm                  [0, 150]",
      "models.0.shape.tailRiseMm                 [0, 150]",
      "models.0.shape.camberMm                   [-10, 25]",
      "models.0.shape.mountBehindCentreMm        [-200, 250]",
      "models.0.core.tipMm                       [1, 10]",
      "models.0.core.midMm                       [4, 25]",
      "models.0.core.tailMm                      [1, 10]",
      "models.0.core.flatMm                      [0, 900]",
      "models.0.core.taperPower                  [0.5, 4]",
      "models.0.core.stripWidthMm                [8, 30]",
      "models.0.lengths.0.lengthCm         whole [80, 220]",
      "models.0.lengths.0.cassettes        whole [1, 9]",
      "models.0.name                        text [1, 120]",
      "models.0.summary                     text [1, 600]",
      "models.0.source                      text [3, 500]",
    ],
  },
  {
    name: "materials",
    schema: materialsFileSchema,
    lines: [
      "woods.0.bendingModulusMpa      [1000, 30000]",
      "woods.0.densityKgM3            [80, 1300]",
      "woods.0.modulusToShearRatio    [5, 40]",
      "woods.0.modulusVariation       [0, 0.5]",
      "fabrics.0.arealWeightGM2       [20, 3000]",
      "fabrics.0.thicknessMm          (0, 5]",
      "fabrics.0.exMpa                [100, 400000]",
      "fabrics.0.eyMpa                [100, 400000]",
      "fabrics.0.gxyMpa               [50, 150000]",
      "fabrics.0.nuXy                 [0, 1]",
      "fabrics.0.densityKgM3          [50, 20000]",
      "sheets.0.modulusMpa            (0, ]",
      "sheets.0.shearModulusMpa       (0, ]",
      "sheets.0.densityKgM3           [50, 20000]",
    ],
  },
  {
    name: "reinforcements",
    schema: reinforcementsFileSchema,
    lines: [
      `reinforcements.${stringers}.placement.bandWidthMm       (0, 60]`,
      `reinforcements.${stringers}.placement.perFace     whole [1, 4]`,
      `reinforcements.${metal}.placement.thicknessMm           (0, 1]`,
      `reinforcements.${metal}.placement.rubberMm              (0, 1]`,
      "reinforcements.0.extraPlies                       whole [0, 4]",
      "reinforcements.0.leadDays                         whole [0, 60]",
    ],
  },
  {
    name: "build-rules",
    schema: buildRulesFileSchema,
    lines: [
      "axialOverBendingModulus     [1, 1.5]",
      "sidewall.widthMm            (0, 20]",
      "edge.widthMm                (0, 5]",
      "edge.heightMm               (0, 5]",
      "edge.anchorMassFactor       [1, 3]",
      "edge.beyondSidecutMm        [0, 300]",
      "edgeRubber.thicknessMm      (0, 1]",
      "edgeRubber.widthMm          (0, 60]",
      "spacers.tipMm               (0, 400]",
      "spacers.tailMm              (0, 400]",
      "spacers.scarfMm             [0, ]",
      "plate.thicknessMm           (0, 3]",
      "plate.rubberMm              [0, 1]",
      "plate.lengthMm              (0, 900]",
      "plate.widthInsetMm          [0, 60]",
      "plate.pocketClearanceMm     [0, 1]",
      "plate.pocketPlanMm          [0, 3]",
      "plate.minMarginMm           [0, 200]",
      "mat.lengthMm                (0, 1500]",
      "mat.widthExtraMm            [0, 100]",
      "resinAtFacesGM2             [0, 1000]",
      "coreGlueGM2                 [0, 1000]",
      "core.maxMm                  [, 40]",
      "core.minMm                  (0, ]",
      "core.maxSlope               (0, 1]",
      "core.stepMm                 (0, 1]",
      "springBackMm                [-5, 10]",
      "maxExtraPlies         whole [0, 8]",
      "mountOffsetReviewMm         [0, 200]",
      "print.goodDpi               [, 1200]",
      "print.bleedMm               [0, 60]",
      "print.pairGapMm             [0, 300]",
      "print.safeMm                [0, 60]",
      "print.bindingZoneMm         [0, 900]",
      "print.leastCapHeightMm      (0, 60]",
      "print.letterAdvance         (0, 3]",
      "print.windowLeastMm         (0, 200]",
      "print.windowFromEdgeMm      [0, 60]",
      "baseLetters.capHeightMm           (0, 150]",
      "baseLetters.fromEdgeMm            [0, 60]",
      "baseLetters.advance               (0, 3]",
      "baseLetters.fromShoulderMm        [0, 600]",
      "baseLetters.islands.A       whole [0, 4]",
      "scatter.stripModulus        [0, 0.3]",
      "scatter.coreThicknessMm     [0, 0.5]",
      "scatter.fibreVolume         [0, 0.1]",
      "scatter.fibreVolumeNominal  [0.2, 0.7]",
      "scatter.resinDensityKgM3    (0, 3000]",
      "scatter.sharedByTwins.strips [0, 1]",
      "acrossOverAxialModulus      [0.001, 1]",
      "edge.pastContactMm          [0, 100]",
      "plate.choices.0.thicknessMm         (0, 3]",
      "plate.byUse.touring.thicknessMm     (0, 3]",
      "lightening.widthMm                  (0, 200]",
      "lightening.depthMm                  (0, 10]",
      "lightening.leastUnderMm             (0, 10]",
      "lightening.clearOfMatMm             [0, 300]",
      "lightening.lengthShare              (0, 0.8]",
      "lightening.bridge.overlapMm         [0, 100]",
      "lightening.bridge.besideMm          [0, 60]",
      "bench.bootZoneMm                    (0, 600]",
      "bench.bootCore.leastMm              (0, 20]",
      "bench.woodUnderPocket.leastMm       (0, 20]",
      "bench.endSheets.sheetsMm.6          [, 10]",
      "bench.relief.share                  [0, 0.3]",
      "bench.flexTolerance.share           [0.005, 0.1]",
      "cloth.costCentsM2.biax-300    whole (0, 100000]",
      "twistTest.torqueNm                  (0, 60]",
      "twistTest.armMm                     (0, 1500]",
      "scatter.stripDensity                [0, 0.3]",
      "scatter.fabricModulus               [0, 0.3]",
      "scatter.sheetThickness              [0, 0.3]",
      "scatter.modelSpring                 [0, 0.3]",
      "scatter.modelMass                   [0, 0.3]",
      "scatter.sharedByTwins.stripDensity  [0, 1]",
      "scatter.sharedByTwins.coreThickness [0, 1]",
      "scatter.sharedByTwins.fibreVolume   [0, 1]",
      "scatter.sharedByTwins.fabricModulus [0, 1]",
      "scatter.sharedByTwins.sheetThickness [0, 1]",
      "print.leastDpi                      (0, ]",
      "baseLetters.leastCapHeightMm        (0, ]",
    ],
  },
  {
    name: "calibration",
    schema: calibrationFileSchema,
    lines: [
      "leastPairs       whole [1, ]",
      "priorSd.modulus        (0, 0.5]",
      "priorSd.density        (0, 0.5]",
      "priorSd.coreOffsetMm   (0, 2]",
      "priorSd.camberOffsetMm (0, 10]",
      "readingSd.mass         (0, 0.5]",
      "readingSd.spring       (0, 0.5]",
      "readingSd.camberMm     (0, 10]",
      "priorSd.sheet          (0, 0.5]",
      "priorSd.twist          (0, 0.5]",
      "readingSd.twist        (0, 0.5]",
      "suspiciousAt           [2, 10]",
    ],
  },
  {
    name: "corrections",
    schema: correctionsFileSchema,
    sample: {
      version: "c-1",
      moduli: { ash: 1 },
      densities: { ash: 1 },
      coreOffsetMm: 0,
      camberOffsetMm: 0,
      differenceLeft: { spring: 0.5, mass: 0.5 },
    },
    lines: [
      "moduli.ash            [0.5, 2]",
      "densities.ash         [0.5, 2]",
      "coreOffsetMm          [-2, 2]",
      "camberOffsetMm        [-20, 20]",
      "differenceLeft.spring [0, 1]",
      "differenceLeft.mass   [0, 1]",
    ],
  },
  {
    name: "finish",
    schema: finishFileSchema,
    lines: [
      "bevels.0.baseBevelDeg  [0, 3]",
      "bevels.0.sideAngleDeg  [0, 5]",
      "bevels.0.detuneTipMm   [0, 400]",
      "bevels.0.detuneTailMm  [0, 400]",
      "base.minThicknessMm    [0, ]",
      "base.flatnessMm        [0, ]",
      "sidewall.bevelDeg      [0, 45]",
      "sidewall.uprightMm     [0, 10]",
      "classWithinPercent     [0, 20]",
      "structures.0.stone.dresserMmPerTurn  (0, 2]",
      "structures.0.stone.passes      whole [1, 20]",
    ],
  },
  {
    name: "fit",
    schema: fitFileSchema,
    lines: [
      "heightReferenceCm                     (0, ]",
      "length.heightSlope                    [0.5, 1]",
      "length.ordinaryMassIndex              [15, 40]",
      "length.perKgCm                        [0, 0.5]",
      "length.abilityCm.expert               [-40, 40]",
      "length.temperamentCm.calm             [-40, 40]",
      "length.terrainCm.bumps                [-40, 0]",
      "length.age.perYearCm                  [-1, 0]",
      "ageFlex.lessPerYear                   [0, 0.01]",
      "packShare                             [0, 1]",
      "waistForMass.mostMm                   [0, 40]",
      "rank.metalByAbility.learning          [0, 10]",
      "rank.park.tailRockerPercent           [0, 45]",
      "abilityFlex.learning                  [0.3, 3]",
      "temperamentFlex.fast                  [0.3, 3]",
      "learningBelowDays                     [0, ]",
      "gearKg                                [0, 40]",
      "touringGearKg                         [0, 40]",
      "massExponent                          [0, 2]",
      "waistPerOffPistePercent               [0, 2]",
      "offPisteUnansweredPercent             [0, 100]",
      "homeSnowWaistMm.icy                   [-40, 40]",
      "touringSharePercent                   [0, 100]",
      "choicesShown                    whole [1, 10]",
      "flagLimits.wideAtPistePercent         [0, 100]",
      "flagLimits.narrowAtOffPistePercent    [0, 100]",
      "flagLimits.lightSkierKg               (0, ]",
      "massReferenceKg                       (0, ]",
      "length.uses.carving.fromCm            [-40, ]",
      "length.uses.carving.toCm              [, 40]",
      "length.rightPairToCm                  [-40, 40]",
      "length.learning.fromShare             [0.5, ]",
      "length.learning.toShare               [, 1]",
      "length.heightPivotCm                  (0, ]",
      "length.turnSizeCm.short               [-40, 40]",
      "length.age.fromYears                  [0, 120]",
      "terrainFlex.bumps                     [0.3, 3]",
      "ageFlex.fromYears                     [0, 120]",
      "waistBaseMm                           (0, ]",
      "waistForMass.scaleKg                  (0, ]",
      "waistNearCurrentMm                    [0, ]",
      "scoreWaistMm                          (0, ]",
      "scoreLengthFreeCm                     [0, ]",
      "scoreLengthCm                         (0, ]",
      "scoreRadiusM                          (0, ]",
      "scoreMetalAgainstPriority             [0, ]",
      "rank.metalByTemperament.calm          [0, 10]",
      "rank.metalByAge.fromYears             [0, 120]",
      "rank.metalByAge.perYear               [0, 10]",
      "rank.noMetalAgainstPriority           [0, 10]",
      "rank.widestMm.learning                (0, ]",
      "rank.park.narrowestMm                 [0, ]",
      "rank.park.perPercent                  [0, 10]",
      "rank.notBuilt                         [0, 10000]",
      "neighbourWithinCm                     [0, ]",
      "nearClassWithin                       [0, ]",
      "flagLimits.lengthOutsideCm            [0, ]",
      "flagLimits.heightMassDisagreeCm       (0, ]",
      "flagLimits.bodyMassIndexMin           (0, ]",
      "flagLimits.bodyMassIndexMax           (0, ]",
      "flagLimits.youngBelowYears            (0, ]",
      "flagLimits.expertMinDays              [0, ]",
      "flagLimits.wideWaistMm                (0, ]",
      "flagLimits.narrowWaistMm              (0, ]",
      "flagLimits.lightSkierWaistMm          (0, ]",
    ],
  },
  {
    name: "price-books",
    schema: priceBooksFileSchema,
    lines: [
      "priceBooks.0.modelCents.midlow-95        whole [0, ]",
      "priceBooks.0.discounts.0.basisPoints     whole [0, 10000]",
      "priceBooks.0.shippingCents.home          whole [0, ]",
      "priceBooks.0.taxBasisPoints.home         whole [0, 10000]",
      "priceBooks.0.depositBasisPoints          whole [0, 10000]",
      "priceBooks.0.rush.basisPoints            whole [0, 10000]",
      "priceBooks.0.rush.minimumCents           whole [0, ]",
      "priceBooks.0.quoteValidDays              whole [1, 365]",
      "priceBooks.0.printOnly.perSheetCents     whole [0, ]",
    ],
  },
  {
    name: "shop",
    schema: shopFileSchema,
    lines: [
      "stripReorderLevel              whole (0, ]",
      "deposit.holdWorkingDays        whole [1, 60]",
      "deposit.text                    text [10, 1200]",
      "cancellation.0.keepBasisPoints whole [0, 10000]",
      "cancellation.0.keepCents       whole [0, ]",
      "warranty                        text [10, 1200]",
      "phone                           text [5, 40]",
    ],
  },
  {
    name: "recipe",
    schema: recipeFileSchema,
    lines: [
      "press.pressureBar       (0, 10]",
      "press.dwellC            [15, 160]",
      "press.demouldBelowC     [20, 90]",
      "press.restHours         [0, ]",
      "press.heating.startC                 [5, 40]",
      "press.heating.plateMinutes           [0, 240]",
      "press.heating.withinC                (0, 20]",
      "press.heating.woodMoisturePercent    [0, 25]",
      "press.heating.cloth.conductivityWMK  (0, 500]",
      "press.heating.cloth.heatCapacityJKgK (0, 5000]",
      "press.cassette.endMm                 [0, 300]",
      "press.cassette.sideMm                [0, 200]",
      "press.cassette.betweenMm             [0, 200]",
      "wood.moistureToPercent               [0, 100]",
      "wood.restDays                        [0, ]",
      "resin.tolerancePercent  (0, 20]",
      "resin.workingMinutes    (0, ]",
      "resin.maxBatchG         (0, ]",
    ],
  },
  {
    name: "remedies",
    schema: remediesFileSchema,
    lines: [
      "overtime.centsPerPersonHour        whole [0, 10000000]",
      "overtime.evenings                  whole [1, 60]",
      "overtime.minutesAnEvening          whole [15, 360]",
      "overnightCure.procedure            text [3, 120]",
      "overnightCure.people               whole [1, 10]",
      "hire.centsPerWeek                  whole [0, 10000000]",
      "secondPress.centsPerWeek           whole [0, 10000000]",
      "secondPress.weeks                  whole [1, 26]",
      "swap.slackToLendWorkingDays        whole [0, 60]",
    ],
  },
  {
    name: "snow",
    schema: snowFileSchema,
    lines: ["snow.0.hardnessNPerMm3  [0.0005, 10]", "snow.0.label            text [1, 120]"],
  },
  { name: "safety", schema: safetyFileSchema, lines: ["hazards.0.line                              text [5, 100]"] },
  {
    name: "floor",
    schema: floorFileSchema,
    lines: [
      "hours.workingWeekdays.0               whole [1, 7]",
      "stations.1.capacity                   whole [1, ]",
      "pressProgramme.dwellMinutes           whole [0, ]",
      "pressDayLostProbability                     [0, 0.9]",
      "rework.0.probability                        [0, 1]",
      "rework.0.minutesShare                       (0, 1]",
      "sharedShock.probability                     [0, 1]",
      "sharedShock.windowWorkingDays               (0, ]",
      "planning.frozenWorkingDays                  [0, ]",
      "planning.softHoldWorkingDays                [0, ]",
      "moulds.0.cassettes                    whole [1, ]",
      "stations.0.number                     whole [1, 99]",
      "stations.1.crewNeeded                 whole [1, ]",
      "pressProgramme.unloadMinutes          whole [0, ]",
      "pressProgramme.heatUpMinutes          whole [0, ]",
      "pressProgramme.coolMinutes            whole [0, ]",
      "pressProgramme.closeWithinMinutes     whole [0, ]",
      "changeoverMinutes.sameMould           whole [0, ]",
      "changeoverMinutes.sameFamily          whole [0, ]",
      "changeoverMinutes.otherFamily         whole [0, ]",
      "changeoverMinutes.hotExtra            whole [0, ]",
      "planning.mouldGroupingWorkingDays           [0, ]",
      "moulds.0.lengthCm                           (0, ]",
    ],
  },
  {
    name: "floor-learning",
    schema: floorLearningFileSchema,
    lines: [
      "leastPairs              whole [1, ]",
      "lookBackWorkingDays     whole [20, 1000]",
      "prior.visits                  (0, 10000]",
      "prior.passes                  (0, 10000]",
      "prior.days                    (0, 10000]",
      "prior.windows                 (0, 10000]",
      "prior.shocks                  (0, 10000]",
      "prior.weeks                   (0, 10000]",
      "tooShortShareOfLow            [0, 1]",
      "forgottenTimesHigh            [1, 20]",
      "overnightTimesHigh            [1, 20]",
      "still.leastDays         whole [1, 20]",
      "still.leastPairs        whole [1, 50]",
      "plannedAheadWorkingDays whole [0, 60]",
    ],
  },
  {
    name: "parts",
    schema: partsRulesFileSchema,
    lines: [
      "lines.0.scrapFactor                 [1, 3]",
      "cut.flashMm                         [0, 1000]",
      "cut.baseRollWidthMm                 [0, 1000]",
      "cut.inlayCapHeightMm                (0, 400]",
      "use.fillerPercentOfResin            [0, 100]",
      "use.spacerAdhesiveG                 [0, ]",
      "resin.faces.woodGM2                 (0, 1000]",
      "resin.faces.marginPercent           [0, 200]",
      "resin.hardenerPer100                (0, 200]",
      "cut.stripRoughLengthMm              [0, 1000]",
      "cut.stripRoughWidthMm               [0, 1000]",
      "cut.stripRoughHeightMm              [0, 1000]",
      "cut.sidewallExtraLengthMm           [0, 1000]",
      "cut.plateRubberExtraMm              [0, 1000]",
      "cut.baseExtraLengthMm               [0, 1000]",
      "cut.baseExtraWidthMm                [0, 1000]",
      "cut.baseNestMarginMm                [0, 1000]",
      "cut.fabricExtraLengthMm             [0, 1000]",
      "cut.fabricExtraWidthMm              [0, 1000]",
      "cut.metalInsetMm                    [0, 1000]",
      "cut.endPatchLengthMm                [0, 1000]",
      "cut.topsheetExtraLengthMm           [0, 1000]",
      "cut.topsheetExtraWidthMm            [0, 1000]",
      "cut.printExtraMm                    [0, 1000]",
      "cut.tissueExtraMm                   [0, 1000]",
      "cut.inlayBackingExtraMm             [0, 1000]",
      "cut.endRubberLengthMm               [0, 1000]",
      "cut.releaseFilmExtraLengthMm        [0, 1000]",
      "cut.releaseFilmWidthMm              [0, 1000]",
      "cut.cartonExtraLengthMm             [0, 1000]",
      "cut.cartonWidthMm                   [0, 1000]",
      "cut.cartonHeightMm                  [0, 1000]",
      "use.edgeAdhesiveG                   [0, ]",
      "use.inkMlM2                         [0, ]",
      "use.waxGM2                          [0, ]",
      "use.edgeSealerG                     [0, ]",
      "resin.faces.plasticGM2              (0, 1000]",
      "resin.faces.metalGM2                (0, 1000]",
      "resin.faces.rubberGM2               (0, 1000]",
      "resin.faces.patchGM2                (0, 1000]",
    ],
  },
  {
    name: "parts, resin by cloth alone",
    schema: partsRulesFileSchema,
    sample: {
      ...(content("parts") as object),
      resin: { system: "epoxy", perDryFabric: 0.62, wettedFaces: 2, lossFactor: 1.3, hardenerPer100: 27 },
    },
    lines: [
      "resin.perDryFabric                  (0, 3]",
      "resin.lossFactor                    [1, 3]",
      "resin.hardenerPer100                (0, 200]",
    ],
  },
];

describe.each(files)("$name.json", ({ name, schema, lines, sample }) => {
  tryBounds({ schema, sample: sample ?? content(name), lines });
});

interface Clash {
  readonly file: string;
  readonly schema: z.ZodType;
  readonly at: string;
  /** Which field, and what it must be. */
  readonly says: string;
  readonly change: (file: never) => void;
}

/** What no single number says: fields that must agree. */
const clashes: readonly Clash[] = [
  {
    file: "build-rules",
    schema: buildRulesFileSchema,
    at: "bench.endSheets.sheetsMm",
    says: "the sheets must stand from thin to thick",
    change: (file: { bench: { endSheets: { sheetsMm: number[] } } }) => {
      file.bench.endSheets.sheetsMm = [2, 2];
    },
  },
  {
    file: "build-rules",
    schema: buildRulesFileSchema,
    at: "cloth.faces.0.0",
    says: '"velvet" has no cost',
    change: (file: { cloth: { faces: string[][] } }) => {
      file.cloth.faces[0] = ["velvet"];
    },
  },
  {
    file: "build-rules",
    schema: buildRulesFileSchema,
    at: "baseLetters.leastCapHeightMm",
    says: "leastCapHeightMm must not be above capHeightMm",
    change: (file: { baseLetters: { leastCapHeightMm: number; capHeightMm: number } }) => {
      file.baseLetters.leastCapHeightMm = file.baseLetters.capHeightMm + 1;
    },
  },
  {
    file: "build-rules",
    schema: buildRulesFileSchema,
    at: "core.maxMm",
    says: "maxMm must be above minMm",
    change: (file: { core: { minMm: number; maxMm: number } }) => {
      file.core.maxMm = file.core.minMm;
    },
  },
  {
    file: "build-rules",
    schema: buildRulesFileSchema,
    at: "print.leastDpi",
    says: "leastDpi must not be above goodDpi",
    change: (file: { print: { leastDpi: number; goodDpi: number } }) => {
      file.print.leastDpi = file.print.goodDpi + 1;
    },
  },
  {
    file: "build-rules",
    schema: buildRulesFileSchema,
    at: "bootSoleRangeMm",
    says: "the longer boot sole must stand second",
    change: (file: { bootSoleRangeMm: number[] }) => {
      file.bootSoleRangeMm = [300, 300];
    },
  },
  {
    file: "flex-classes",
    schema: flexClassesFileSchema,
    at: "flexClasses.1.below",
    says: "class 2 must end above its start and where the next begins",
    change: (file: { flexClasses: { from: number; below: number }[] }) => {
      for (const each of file.flexClasses.slice(1, 2)) each.below += 0.001;
    },
  },
  {
    file: "models",
    schema: modelsFileSchema,
    at: "models.0.shape.refLengthCm",
    says: "the reference length must be one of the offered lengths",
    change: (file: { models: { shape: { refLengthCm: number } }[] }) => {
      for (const each of file.models.slice(0, 1)) each.shape.refLengthCm += 1;
    },
  },
  {
    file: "models",
    schema: modelsFileSchema,
    at: "models.0.hasMetal",
    says: "hasMetal must say whether the lay-up holds metal",
    change: (file: { models: { hasMetal: boolean }[] }) => {
      for (const each of file.models.slice(0, 1)) each.hasMetal = !each.hasMetal;
    },
  },
  {
    file: "fit",
    schema: fitFileSchema,
    at: "turnRadiusM.medium",
    says: "fromM must not be above toM",
    change: (file: { turnRadiusM: { medium: { fromM: number } } }) => {
      file.turnRadiusM.medium.fromM = 18.1;
    },
  },
  {
    file: "shop",
    schema: shopFileSchema,
    at: "cancellation",
    says: "the ladder needs the steps before-lock, locked, proof-approved, core-milled, sheets-cut, pressed, shipped, in this order",
    change: (file: { cancellation: unknown[] }) => {
      file.cancellation.reverse();
    },
  },
  {
    file: "shop",
    schema: shopFileSchema,
    at: "timeZone",
    says: '"America/Denvr" is not a time zone',
    change: (file: { timeZone: string }) => {
      file.timeZone = "America/Denvr";
    },
  },
  {
    file: "price-books",
    schema: priceBooksFileSchema,
    at: "priceBooks.1",
    says: '"2026-03-02" stands twice',
    change: (file: { priceBooks: { effectiveFrom: string }[] }) => {
      const [first, second] = file.priceBooks;
      if (first && second) second.effectiveFrom = first.effectiveFrom;
    },
  },
  {
    file: "floor",
    schema: floorFileSchema,
    at: "hours.windows",
    says: "windows must follow each other without overlap",
    change: (file: { hours: { windows: { fromMinute: number; toMinute: number }[] } }) => {
      const [morning, afternoon] = file.hours.windows;
      if (morning && afternoon) afternoon.fromMinute = morning.toMinute - 1;
    },
  },
  {
    file: "floor",
    schema: floorFileSchema,
    at: "stations.0.minutes",
    says: "low ≤ typ ≤ high does not hold",
    change: (file: { stations: { minutes: { low: number; typ: number; high: number } }[] }) => {
      for (const each of file.stations.slice(0, 1)) each.minutes.low = each.minutes.typ + 1;
    },
  },
];

describe("fields that must agree", () => {
  it.each(clashes)("$file.json: $at", ({ file, schema, at, says, change }) => {
    const changed = content(file) as never;
    change(changed);
    const issues = schema.safeParse(changed).error?.issues ?? [];
    expect(issues.map(({ path: place, message }) => [place.join("."), message])).toEqual([[at, says]]);
  });
});

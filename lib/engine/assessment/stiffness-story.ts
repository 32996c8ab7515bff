/**
 * "Why this stiff?" in the skier's own numbers. The ski is held at its two supports (shoulder and heel, unless the shop set
 * others) and loaded at the mount line with the skier's whole weight and gear, F = m·9.80665; it bends F over the bare ski's
 * centre spring constant. Small-deflection beam theory goes straight on; on snow the ski is carried along its length and
 * never bends that far, so the numbers compare skiers and skis and foretell no run.
 */
import {
  designedProfile,
  type Model,
  modelById,
  type PairSpec,
  referenceBuildFor,
  solveSpec,
} from "#engine/configuration";
import { type FitAnswers, relativeDeflection, STANDARD_GRAVITY, torsionForSameTwist } from "#engine/fit";
import { evaluateFlex, type SkiBuild, type SkiFlex, springTestOf, twistPerNmm } from "#engine/flex";
import { completeAnswers } from "./fitting";
import { populationBand, type SkiersBand } from "./skiers-band";
import type { EngineCatalog, PartialAnswers } from "./types";
import { carriedKg, rowNow, spanMm, type WhatIf, weightN, whatIfs } from "./what-ifs";

export interface StiffnessStory {
  /** The skier with all that is carried. */
  readonly riderKg: number;
  readonly gearKg: number;
  readonly spanMm: number;
  readonly now: WhatIf;
  readonly bendUnderTenKgMm: number;
  /** Most skiers, each on this model in their own flex, % of the span. */
  readonly band: StoryBand | null;
  /** Null without a band. */
  readonly place: "less" | "like" | "more" | null;
  readonly twist: TwistStory;
  readonly whatIfs: readonly WhatIf[];
  readonly modelName: string;
  readonly massExponent: number;
  readonly fitVersion: string;
}

export interface StoryBand {
  readonly from: SkiersBand["from"];
  readonly count: number;
  readonly lowPercent: number;
  readonly highPercent: number;
}

/** Twist of the front half under the edge moment F·b/2, beside the reference skier's on the model's reference ski. */
export interface TwistStory {
  readonly edgeMomentNm: number;
  readonly degrees: number;
  readonly referenceDegrees: number;
  readonly referenceKg: number;
  /** GJ over the reference ski's that the same twist would need (∝ m·b·L), and that this ski has. */
  readonly wantedTorsion: number;
  readonly builtTorsion: number;
}

/**
 * @param band of the shop's own orders; absent = that of the stated population on this model
 * @returns null until height, mass and ability are known, or when the catalogue cannot build the spec
 */
export function stiffnessStory(
  given: PartialAnswers,
  spec: PairSpec,
  catalog: EngineCatalog,
  band?: SkiersBand | null,
): StiffnessStory | null {
  const answers = completeAnswers(given);
  const model = modelById(catalog.build, spec.model);
  const solved = solveSpec(spec, catalog.build);
  if (!answers || !model.ok || !solved.ok) return null;
  const standing = { answers, spec, model: model.value, solved: solved.value };
  const now = rowNow(standing, catalog);
  const reference = referenceSki(model.value, catalog);
  const shown = bandOn(reference, model.value, band ?? populationBand(model.value, catalog), catalog);
  const gear = carriedKg(answers, model.value, catalog.fit);
  return {
    riderKg: answers.massKg + gear,
    gearKg: gear,
    spanMm: spanMm(solved.value),
    now,
    bendUnderTenKgMm: (10 * STANDARD_GRAVITY) / now.springCentreNPerMm,
    band: shown,
    place: shown && placeIn(shown, now.bendPercent),
    twist: twistStory(answers, model.value, solved.value, reference, catalog),
    whatIfs: whatIfs(standing, catalog),
    modelName: model.value.name,
    massExponent: catalog.fit.massExponent,
    fitVersion: catalog.fit.version,
  };
}

interface Ski {
  readonly build: SkiBuild;
  readonly flex: SkiFlex;
}

/** The model's own class 3 ski at its reference length, as designed; worked out once, like the solver's own target. */
function referenceSki(model: Model, { build: shop }: EngineCatalog): Ski {
  const known = referenceSkis.get(model);
  if (known) return known;
  const build = referenceBuildFor(model, shop);
  const ski = { build, flex: evaluateFlex(build, designedProfile(model, build.shape, shop.rules)) };
  referenceSkis.set(model, ski);
  return ski;
}

const referenceSkis = new WeakMap<Model, Ski>();

/** The band in per cent of the span on this model, whose reference ski bends so far under the reference skier. */
function bandOn(ski: Ski, model: Model, band: SkiersBand | null, catalog: EngineCatalog): StoryBand | null {
  if (!band) return null;
  const forceN = weightN({ massKg: catalog.fit.massReferenceKg }, model, catalog);
  const percent = 100 * relativeDeflection(forceN, ski.flex.springCentreNPerMm, spanMm(ski));
  const { from, count, lowRatio, highRatio } = band;
  return { from, count, lowPercent: lowRatio * percent, highPercent: highRatio * percent };
}

function placeIn({ lowPercent, highPercent }: StoryBand, percent: number): "less" | "like" | "more" {
  if (percent < lowPercent) return "less";
  return percent > highPercent ? "more" : "like";
}

/** Front half of a bare ski: how it twists. */
function frontHalf({ build, flex }: Ski) {
  const { frontSupportMm, loadMm } = springTestOf(build);
  const lengthMm = loadMm - frontSupportMm;
  const radPerNmm = twistPerNmm(flex.stations, frontSupportMm, loadMm);
  return { lengthMm, radPerNmm, widthMm: build.shape.waistWidthMm, torsionNmm2: lengthMm / radPerNmm };
}

function twistStory(
  answers: FitAnswers,
  model: Model,
  solved: Ski,
  reference: Ski,
  catalog: EngineCatalog,
): TwistStory {
  const [own, other] = [frontHalf(solved), frontHalf(reference)];
  const { packKg: _pack, ...bare } = answers;
  const referenceAnswers = { ...bare, massKg: catalog.fit.massReferenceKg };
  const momentNmm = (who: FitAnswers, widthMm: number) => (weightN(who, model, catalog) * widthMm) / 2;
  const degrees = (radians: number) => (radians * 180) / Math.PI;
  const on = (who: FitAnswers, half: typeof own) => ({
    ...half,
    massKg: who.massKg + carriedKg(who, model, catalog.fit),
  });
  return {
    edgeMomentNm: momentNmm(answers, own.widthMm) / 1000,
    degrees: degrees(momentNmm(answers, own.widthMm) * own.radPerNmm),
    referenceDegrees: degrees(momentNmm(referenceAnswers, other.widthMm) * other.radPerNmm),
    referenceKg: referenceAnswers.massKg,
    wantedTorsion: torsionForSameTwist(on(answers, own), on(referenceAnswers, other)),
    builtTorsion: own.torsionNmm2 / other.torsionNmm2,
  };
}

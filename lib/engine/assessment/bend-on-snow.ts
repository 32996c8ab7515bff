/**
 * The ski on the sheet under its skier on snow (engine/snow), beside what most skiers have under them: the fit's reference skier
 * on the class 3 ski of the same model, length and build. Since the fit makes stiffness follow weight, a ski that suits its skier
 * bends much as that one does.
 *
 * Rules from numbers to words, none of them measured on people (common practice, no source):
 *   feel  share of the load outside the middle half of the sidecut, over the other ski's: from 1 + FEEL_SHARE "holds", from
 *         1 − FEEL_SHARE down "gives", between "like". Half a flex class moves it by about that much.
 *   turn  below 5° flat; radius of the pressed edge under the first of TURN_RADII_M short, from the second long.
 *   peak  under the boot, or so far ahead of or behind its middle.
 */
import { modelById, nearestBuild, type PairSpec, type SolvedSpec } from "#engine/configuration";
import type { SkiShape } from "#engine/geometry";
import { type SkiOnSnow, skiOnSnow } from "#engine/snow";
import { radians } from "#engine/units";
import type { EngineCatalog, PartialAnswers, SnowKind } from "./types";
import { weightN } from "./what-ifs";

export type Feel = "holds" | "like" | "gives";
export type Turn = "flat" | "short" | "middle" | "long";
export type Peak = "under" | "ahead" | "behind";

export const FEEL_SHARE = 0.07;
export const TURN_RADII_M: readonly [number, number] = [9, 14];
const FLAT_BELOW_DEG = 5;

export interface BendInput {
  readonly answers: PartialAnswers;
  readonly spec: PairSpec;
  /** Without gear. */
  readonly massKg: number;
  readonly flexRatio: number;
  readonly edgeDeg: number;
  /** Of the catalogue. */
  readonly snow: string;
}

export interface BendOnSnow {
  readonly own: SkiOnSnow;
  readonly most: SkiOnSnow;
  /** Weight of the other skier without gear. */
  readonly mostKg: number;
  readonly feel: Feel;
  readonly turn: Turn;
  readonly peak: Peak;
  /** The shop builds this flex; otherwise the nearest that it builds is shown. */
  readonly isBuilt: boolean;
  /** As built. */
  readonly flexRatio: number;
  readonly shape: SkiShape;
  readonly mountMm: number;
  readonly bootSoleMm: number;
  /** Of the finished ski, from base to top. */
  readonly thickness: readonly { readonly xMm: number; readonly thicknessMm: number }[];
}

/** One step of flex to try: a class by its middle, or the flex on the sheet in its own class. */
export interface FlexStep {
  readonly number: number;
  readonly label: string;
  readonly flexRatio: number;
}

export function flexSteps(flexRatio: number, { build }: EngineCatalog): readonly FlexStep[] {
  return build.flexClasses.map(({ number, label, from, below }) => ({
    number,
    label,
    flexRatio: flexRatio >= from && flexRatio < below ? flexRatio : (from + below) / 2,
  }));
}

/** The snow that a skier is shown first; none where the catalogue has none. */
export function snowFirst({ homeSnow }: PartialAnswers, { snow = [] }: EngineCatalog): SnowKind | undefined {
  const own = homeSnow && snow.find((each) => each.homeSnows?.includes(homeSnow));
  return own || (snow.find((each) => each.usual) ?? snow[0]);
}

/** @returns null where the catalogue names no such snow, model or part */
export function bendOnSnow(input: BendInput, catalog: EngineCatalog): BendOnSnow | null {
  const { answers, spec, massKg, flexRatio, edgeDeg } = input;
  const bed = catalog.snow?.find((each) => each.id === input.snow);
  const model = modelById(catalog.build, spec.model);
  const built = nearestBuild({ ...spec, flexRatio }, catalog.build);
  const middle = nearestBuild({ ...spec, flexRatio: 1 }, catalog.build);
  if (!bed || !model.ok || !built.ok || !middle.ok) return null;
  const { solved, isReached } = built.value;
  const { shape, mountFromTipMm: mountMm } = solved.build;
  const bootSoleMm = spec.mount.bootSoleMm ?? usualSoleMm(catalog);
  const under = (ski: SolvedSpec, newtons: number) =>
    skiOnSnow({
      shape,
      stations: ski.flexWithPlate.stations,
      mountMm,
      bootSoleMm,
      weightN: newtons,
      bed,
      edgeAngle: radians(edgeDeg),
    });
  const own = under(solved, weightN({ ...packOf(answers), massKg }, model.value, catalog));
  const mostKg = catalog.fit.massReferenceKg;
  const most = under(middle.value.solved, weightN({ massKg: mostKg }, model.value, catalog));
  return {
    own,
    most,
    mostKg,
    feel: feelOf(own, most),
    turn: turnOf(own, edgeDeg),
    peak: peakOf(own, mountMm, bootSoleMm),
    isBuilt: isReached,
    flexRatio: solved.core.achievedRatio,
    shape,
    mountMm,
    bootSoleMm,
    thickness: solved.flexWithPlate.stations.map(({ xMm, thicknessMm }) => ({ xMm, thicknessMm })),
  };
}

const packOf = ({ packKg }: PartialAnswers) => (packKg === undefined ? {} : { packKg });

/** Middle of the soles that the shop takes without asking. */
function usualSoleMm({ build }: EngineCatalog): number {
  const [shortest, longest] = build.rules.bootSoleRangeMm;
  return (shortest + longest) / 2;
}

function feelOf(own: SkiOnSnow, most: SkiOnSnow): Feel {
  const ratio = own.endsShare / most.endsShare;
  if (ratio >= 1 + FEEL_SHARE) return "holds";
  return ratio <= 1 - FEEL_SHARE ? "gives" : "like";
}

function turnOf({ turnRadiusM }: SkiOnSnow, edgeDeg: number): Turn {
  if (edgeDeg < FLAT_BELOW_DEG) return "flat";
  const [short, long] = TURN_RADII_M;
  if (turnRadiusM < short) return "short";
  return turnRadiusM < long ? "middle" : "long";
}

function peakOf({ peakAtMm }: SkiOnSnow, mountMm: number, bootSoleMm: number): Peak {
  if (Math.abs(peakAtMm - mountMm) <= bootSoleMm / 2) return "under";
  return peakAtMm < mountMm ? "ahead" : "behind";
}

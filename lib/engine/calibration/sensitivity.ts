/**
 * How far each predicted reading moves with each unknown: central differences about handbook values. A material's modulus
 * moves springs alone and its density mass alone, so both are tried in one go. Slopes hold for factors within about ±15 %
 * and are shared by skis of one spec: their strips change them a little, and the fit only steers by them.
 */
import type { BuildCatalog } from "../configuration";
import type { ThicknessProfile } from "../flex";
import type { Corrections } from "../materials";
import { correctionsOf, type Unknown } from "./factors";
import { measuredBuild, predictBuilt } from "./predict-ski";
import { BENCH_MEASURES } from "./readings";
import type { BenchMeasure, MeasuredSki, PredictedValues } from "./types";

/** Slope of one reading, kg, mm or N/mm, over each unknown. */
export type Slopes = Readonly<Record<BenchMeasure, readonly number[]>>;

const LOG_STEP = 0.03;
const CORE_STEP_MM = 0.05;

/**
 * @param nominal a catalogue without corrections
 * @throws RangeError when the spec is not of this catalogue
 */
export function slopesOf(
  ski: Pick<MeasuredSki, "spec" | "strips">,
  profile: ThicknessProfile,
  nominal: BuildCatalog,
  unknowns: readonly Unknown[],
): Slopes {
  const plain = JSON.stringify(measuredBuild(ski, nominal));
  const tried = new Map<string, Difference>();
  const differenceOf = (unknown: Unknown): Difference => {
    const key = unknown.material ?? unknown.kind;
    const known = tried.get(key) ?? difference(ski, profile, nominal, unknown, plain);
    tried.set(key, known);
    return known;
  };
  const slope = (measure: BenchMeasure, unknown: Unknown): number => {
    if (unknown.kind === "camber-offset") return measure === "camberMm" ? 1 : 0;
    if (measure === "camberMm") return 0;
    if (unknown.kind === "modulus" && measure === "massKg") return 0;
    if (unknown.kind === "density" && measure !== "massKg") return 0;
    return differenceOf(unknown)[measure];
  };
  const rows = BENCH_MEASURES.map((measure) => [measure, unknowns.map((unknown) => slope(measure, unknown))]);
  return Object.fromEntries(rows) as Record<BenchMeasure, number[]>;
}

type Difference = PredictedValues;
const NOTHING: Difference = {
  massKg: 0,
  camberMm: 0,
  springCentreNPerMm: 0,
  springForebodyNPerMm: 0,
  springAfterbodyNPerMm: 0,
};

function difference(
  ski: Pick<MeasuredSki, "spec" | "strips">,
  profile: ThicknessProfile,
  nominal: BuildCatalog,
  { kind, material }: Unknown,
  plain: string,
): Difference {
  const step = material === undefined ? CORE_STEP_MM : LOG_STEP;
  const with_ = (value: number): BuildCatalog => ({ ...nominal, corrections: trial(kind, material, value) });
  // A material that changes nothing of the build is not in it.
  if (material !== undefined && JSON.stringify(measuredBuild(ski, with_(step))) === plain) return NOTHING;
  const more = predictBuilt(ski, profile, with_(step));
  const less = predictBuilt(ski, profile, with_(-step));
  if (!more.ok || !less.ok) throw new RangeError(`spec: ${JSON.stringify(ski.spec)} is not of this catalogue`);
  const slope = (measure: BenchMeasure) => (more.value[measure] - less.value[measure]) / (2 * step);
  return {
    massKg: slope("massKg"),
    camberMm: 0,
    springCentreNPerMm: slope("springCentreNPerMm"),
    springForebodyNPerMm: slope("springForebodyNPerMm"),
    springAfterbodyNPerMm: slope("springAfterbodyNPerMm"),
  };
}

function trial(kind: Unknown["kind"], material: string | undefined, value: number): Corrections {
  if (material === undefined) return correctionsOf([{ kind, priorSd: 1 }], [value], "trial");
  const both: Unknown[] = [
    { kind: "modulus", material, priorSd: 1 },
    { kind: "density", material, priorSd: 1 },
  ];
  return correctionsOf(both, [value, value], "trial");
}

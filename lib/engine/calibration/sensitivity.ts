/**
 * How far each predicted reading of one ski, with its own strips, moves with each unknown: one-sided differences about
 * handbook values, small enough to be within 1 % of the slope there. A material's modulus moves springs alone and its density
 * mass alone, so both are tried in one go. The fit computes every ski anew at each step and only steers by slopes.
 */
import type { BuildCatalog } from "#engine/configuration";
import type { ThicknessProfile } from "#engine/flex";
import type { Corrections } from "#engine/materials";
import { correctionsOf, type Unknown } from "./factors";
import { asBuilt, type Programme, predictBuilt } from "./predict-ski";
import { materialsIn } from "./present-materials";
import { BENCH_MEASURES } from "./readings";
import type { BenchMeasure, MeasuredSki, PredictedValues } from "./types";

/** Slope of one reading, kg, mm or N/mm, over each unknown. */
export type Slopes = Readonly<Record<BenchMeasure, readonly number[]>>;

const LOG_STEP = 0.005;
const CORE_STEP_MM = 0.01;
/** Of the programme's knots every so many will do for slopes, which then are off by about 1 % of themselves. */
const KNOTS_KEPT_EVERY = 5;
const GRID_PIECES = 16;

type BuiltSki = Pick<MeasuredSki, "spec" | "strips" | "builtBy" | "measured">;

/**
 * @param nominal a catalogue without corrections
 * @throws RangeError when the spec is not of this catalogue
 */
export function slopesOf(
  ski: BuiltSki,
  { profile, layup }: Programme,
  nominal: BuildCatalog,
  unknowns: readonly Unknown[],
): Slopes {
  const coarse = { profile: everyFewKnots(profile), layup };
  const present = materialsIn(ski.spec, asBuilt(nominal, ski.builtBy), layup);
  if (!present.ok) throw new RangeError(`spec: ${JSON.stringify(present.refusal)}`);
  const base = coarsely(ski, coarse, nominal);
  const tried = new Map<string, PredictedValues>();
  const movedBy = ({ kind, material }: Unknown): PredictedValues => {
    const key = material ?? kind;
    const known = tried.get(key) ?? difference(base, ski, coarse, nominal, material);
    tried.set(key, known);
    return known;
  };
  const slope = (measure: BenchMeasure, unknown: Unknown): number => {
    const isIn = unknown.material === undefined || present.value.has(unknown.material);
    if (!isIn || !moves(unknown.kind, measure)) return 0;
    if (measure === "twistNmPerDeg") return twistSlope(unknown);
    return unknown.kind === "camber-offset" ? 1 : movedBy(unknown)[measure];
  };
  // Sections are not solved anew for every unknown: twist moves by the share that its thin strip moves by.
  const twist = ski.measured.twistNmPerDeg === undefined ? 0 : solvedTwist(ski, coarse, nominal);
  const twistSlope = (unknown: Unknown): number => {
    if (twist === 0) return 0;
    // Twist is multiplied as a whole, so that its slope over the logarithm is the twist itself.
    if (unknown.kind === "twist") return twist;
    return (twist * movedBy(unknown).twistNmPerDeg) / base.twistNmPerDeg;
  };
  return byMeasure((measure) => unknowns.map((unknown) => slope(measure, unknown)));
}

function moves(kind: Unknown["kind"], measure: BenchMeasure): boolean {
  if (measure === "camberMm") return kind === "camber-offset";
  if (kind === "twist") return measure === "twistNmPerDeg";
  if (measure === "massKg") return kind === "density" || kind === "core-offset";
  return kind === "modulus" || kind === "core-offset";
}

/** Slopes over both logarithms of one material, or over the core's offset in mm. */
function difference(
  base: PredictedValues,
  ski: BuiltSki,
  programme: Programme,
  nominal: BuildCatalog,
  material: string | undefined,
): PredictedValues {
  const step = material === undefined ? CORE_STEP_MM : LOG_STEP;
  const moved = coarsely(ski, programme, { ...nominal, corrections: trialBook(material, step) });
  const isRead = (measure: BenchMeasure) => measure !== "twistNmPerDeg" || ski.measured.twistNmPerDeg !== undefined;
  return byMeasure((measure) => (isRead(measure) ? (moved[measure] - base[measure]) / step : 0));
}

function coarsely(ski: BuiltSki, programme: Programme, catalog: BuildCatalog): PredictedValues {
  return predictedOrThrow(predictBuilt(ski, programme, catalog, GRID_PIECES, "thin-strip"));
}

function solvedTwist(ski: BuiltSki, programme: Programme, nominal: BuildCatalog): number {
  return predictedOrThrow(predictBuilt(ski, programme, nominal, GRID_PIECES)).twistNmPerDeg;
}

function predictedOrThrow(predicted: ReturnType<typeof predictBuilt>): PredictedValues {
  if (!predicted.ok) throw new RangeError(`spec: ${JSON.stringify(predicted.refusal)}`);
  return predicted.value;
}

function trialBook(material: string | undefined, value: number): Corrections {
  if (material === undefined) return correctionsOf([{ kind: "core-offset", priorSd: 1 }], [value], "trial");
  const both: Unknown[] = [
    { kind: "modulus", material, priorSd: 1 },
    { kind: "density", material, priorSd: 1 },
  ];
  return correctionsOf(both, [value, value], "trial");
}

function everyFewKnots({ stations }: ThicknessProfile): ThicknessProfile {
  return { stations: stations.filter((_, i) => i % KNOTS_KEPT_EVERY === 0 || i === stations.length - 1) };
}

/** One value for each measure. */
export function byMeasure<T>(of: (measure: BenchMeasure) => T): Record<BenchMeasure, T> {
  return Object.fromEntries(BENCH_MEASURES.map((measure) => [measure, of(measure)])) as Record<BenchMeasure, T>;
}

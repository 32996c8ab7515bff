/**
 * Learning from measured pairs: factors on materials and process that bring what is computed to what the bench read.
 *
 * Minimises Σ((measured − predicted(θ))/σ)² + Σ(θ/σ0)² by Gauss–Newton steps (A. Tarantola, Inverse Problem Theory, 2005,
 * ch. 3, from memory): plain least squares of every reading that is not left out, so that nothing is passed over in silence.
 * Suspicion comes from a second fit of the same readings with Huber's weights, which moves no factor of the book.
 *
 * Holds for factors within about ±15 %. Readings are taken to be independent once the factors are known. The two skis of a
 * pair, and the measures of one ski, in truth share a mill's run and a press, so that standard deviations come out too small
 * where such common causes outweigh the bench's own scatter. Materials that always come together in one proportion cannot be
 * told apart: the prior shares the difference between them, and `learnt` stays low.
 */
import type { BuildCatalog } from "../configuration";
import type { ThicknessProfile } from "../flex";
import { correctionsOf, factorOf, type Unknown, unknownsOf } from "./factors";
import { nominalCatalog, predictBuilt, programmedCore } from "./predict-ski";
import { qualityOf } from "./quality";
import { BENCH_MEASURES, type Reading, readingSd, readingsOf } from "./readings";
import { fitLinear, fitRobust, type LinearFit, type Row, studentised } from "./regularised-fit";
import { type Slopes, slopesOf } from "./sensitivity";
import type { Calibration, CalibrationSettings, LeftOut, MeasuredSki, PredictedValues, Residual } from "./types";

const STEPS = 3;
/** An unknown that moves no reading by this share of its standard deviation when it is off by its own is left out. */
const LEAST_EFFECT = 0.1;

/** A ski with what does not change during the fit. */
interface PreparedSki {
  readonly ski: MeasuredSki;
  readonly profile: ThicknessProfile;
  readonly before: PredictedValues;
  readonly slopes: Slopes;
}

/**
 * Fits a book of corrections to what was measured. With fewer pairs than the settings ask for the fit is still shown, but
 * `enoughPairs` is false.
 *
 * @param version name of the book that would be made of this fit
 * @throws RangeError for a ski whose spec is not of this catalogue, or a reading that is not a number
 */
export function calibrate(
  skis: readonly MeasuredSki[],
  catalog: BuildCatalog,
  settings: CalibrationSettings,
  leftOut: readonly LeftOut[],
  version: string,
): Calibration {
  const nominal = nominalCatalog(catalog);
  const { unknowns, prepared } = prepare(skis, nominal, settings);
  const readings = readingsOf(skis, leftOut);
  const priorSd = unknowns.map((unknown) => unknown.priorSd);
  let fit: LinearFit = fitLinear([], priorSd);
  for (let step = 0; step < STEPS; step++) {
    const predicted = predictAll(prepared, nominal, unknowns, fit.values);
    fit = fitLinear(rowsOf(readings, prepared, predicted, settings), priorSd, fit.values);
  }
  const after = predictAll(prepared, nominal, unknowns, fit.values);
  const rows = rowsOf(readings, prepared, after, settings);
  const residuals = residualsOf(readings, rows, prepared, after, priorSd, fit);
  const pairs = new Set(readings.filter((reading) => !reading.leftOut).map((reading) => reading.ski.pair)).size;
  return {
    pairs,
    enoughPairs: pairs >= settings.leastPairs,
    factors: unknowns.map((unknown, i) =>
      factorOf(unknown, fit.values[i] ?? 0, Math.sqrt(fit.covariance[i]?.[i] ?? 0)),
    ),
    residuals,
    suspects: residuals
      .filter((residual) => !residual.leftOut && Math.abs(residual.studentised) > settings.suspiciousAt)
      .toSorted((a, b) => Math.abs(b.studentised) - Math.abs(a.studentised)),
    quality: qualityOf(residuals),
    corrections: correctionsOf(unknowns, fit.values, version),
  };
}

type Prepared = ReadonlyMap<MeasuredSki, PreparedSki>;

/** Cores, handbook predictions and slopes of all skis, and the unknowns that matter for any of them. */
function prepare(
  skis: readonly MeasuredSki[],
  nominal: BuildCatalog,
  settings: CalibrationSettings,
): { readonly unknowns: readonly Unknown[]; readonly prepared: Prepared } {
  const all = unknownsOf(nominal.materials, settings);
  const bySpec = new Map<string, { readonly profile: ThicknessProfile; readonly slopes: Slopes }>();
  const rows = skis.map((ski): PreparedSki => {
    const key = JSON.stringify([ski.spec, ski.builtWith?.version]);
    const shared = bySpec.get(key) ?? sharedOf(ski, nominal, all);
    bySpec.set(key, shared);
    return { ski, ...shared, before: predicted(ski, shared.profile, nominal) };
  });
  const matters = all.map((unknown, i) => rows.some((row) => effectOf(row, i, unknown, settings) >= LEAST_EFFECT));
  const kept = <T>(values: readonly T[]): readonly T[] => values.filter((_, i) => matters[i]);
  const prepared = rows.map((row): readonly [MeasuredSki, PreparedSki] => {
    const slopes = BENCH_MEASURES.map((measure) => [measure, kept(row.slopes[measure])]);
    return [row.ski, { ...row, slopes: Object.fromEntries(slopes) as Slopes }];
  });
  return { unknowns: kept(all), prepared: new Map(prepared) };
}

function sharedOf(ski: MeasuredSki, nominal: BuildCatalog, unknowns: readonly Unknown[]) {
  const core = programmedCore(ski, nominal);
  if (!core.ok) throw new RangeError(`${ski.id}: ${JSON.stringify(core.refusal)}`);
  return { profile: core.value, slopes: slopesOf(ski, core.value, nominal, unknowns) };
}

function predicted(ski: MeasuredSki, profile: ThicknessProfile, catalog: BuildCatalog): PredictedValues {
  const values = predictBuilt(ski, profile, catalog);
  if (!values.ok) throw new RangeError(`${ski.id}: ${JSON.stringify(values.refusal)}`);
  return values.value;
}

/** Largest move of a reading of this ski, in its standard deviations, when the unknown is off by its own. */
function effectOf(row: PreparedSki, i: number, { priorSd }: Unknown, settings: CalibrationSettings): number {
  const effects = BENCH_MEASURES.map(
    (measure) => (Math.abs(row.slopes[measure][i] ?? 0) * priorSd) / readingSd(measure, row.before, settings),
  );
  return Math.max(...effects);
}

type Predictions = ReadonlyMap<MeasuredSki, PredictedValues>;

function predictAll(
  prepared: Prepared,
  nominal: BuildCatalog,
  unknowns: readonly Unknown[],
  values: readonly number[],
): Predictions {
  const catalog: BuildCatalog = { ...nominal, corrections: correctionsOf(unknowns, values, "trial") };
  return new Map([...prepared.values()].map(({ ski, profile }) => [ski, predicted(ski, profile, catalog)]));
}

function rowsOf(
  readings: readonly Reading[],
  prepared: Prepared,
  predictions: Predictions,
  settings: CalibrationSettings,
): readonly Row[] {
  return readings.map(({ ski, measure, measured, leftOut }) => {
    const { before, slopes } = known(prepared, ski);
    return {
      residual: measured - known(predictions, ski)[measure],
      slopes: slopes[measure],
      sd: readingSd(measure, before, settings),
      weight: leftOut ? 0 : 1,
    };
  });
}

function residualsOf(
  readings: readonly Reading[],
  rows: readonly Row[],
  prepared: Prepared,
  after: Predictions,
  priorSd: readonly number[],
  { values }: LinearFit,
): readonly Residual[] {
  const robust = fitRobust(rows, priorSd, values);
  return readings.flatMap(({ ski, measure, measured, leftOut }, i): Residual[] => {
    const row = robust.rows[i];
    if (!row) return [];
    return [
      {
        skiId: ski.id,
        pair: ski.pair,
        measure,
        measured,
        predictedBefore: known(prepared, ski).before[measure],
        predictedAfter: known(after, ski)[measure],
        studentised: studentised(row, robust.fit, values),
        leftOut,
      },
    ];
  });
}

function known<T>(map: ReadonlyMap<MeasuredSki, T>, ski: MeasuredSki): T {
  const value = map.get(ski);
  if (value === undefined) throw new RangeError(`${ski.id}: not among the skis`);
  return value;
}

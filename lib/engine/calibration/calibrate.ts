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
import type { BuildCatalog } from "#engine/configuration";
import type { Corrections } from "#engine/materials";
import { correctionsOf, factorOf, type Unknown } from "./factors";
import { nominalCatalog } from "./predict-ski";
import { type Prepared, predicted, prepare } from "./prepare";
import { qualityOf } from "./quality";
import { type Reading, readingSd, readingsOf } from "./readings";
import { fitLinear, fitRobust, type LinearFit, type Row, studentised } from "./regularised-fit";
import type {
  Calibration,
  CalibrationSettings,
  LeftOut,
  MeasuredSki,
  PredictedValues,
  Quality,
  Residual,
} from "./types";

const STEPS = 3;

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
  let after: Predictions = new Map([...prepared.values()].map(({ ski, before }) => [ski, before]));
  for (let step = 0; step < STEPS; step++) {
    fit = fitLinear(rowsOf(readings, prepared, after, settings), priorSd, fit.values);
    after = predictAll(prepared, nominal, unknowns, fit.values);
  }
  const rows = rowsOf(readings, prepared, after, settings);
  const residuals = residualsOf(readings, rows, prepared, after, priorSd, fit);
  const quality = qualityOf(residuals);
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
    quality,
    corrections: { ...correctionsOf(unknowns, fit.values, version), ...differenceLeft(quality) },
  };
}

/** What the fit left unexplained, for the spread of what is computed with its book; nothing without readings of both. */
function differenceLeft(quality: readonly Quality[]): Pick<Corrections, "differenceLeft"> {
  const spring = quality.find(({ measure }) => measure === "springCentreNPerMm");
  const mass = quality.find(({ measure }) => measure === "massKg");
  if (!spring || !mass) return {};
  return { differenceLeft: { spring: spring.rmsAfter / 100, mass: mass.rmsAfter / 100 } };
}

type Predictions = ReadonlyMap<MeasuredSki, PredictedValues>;

function predictAll(
  prepared: Prepared,
  nominal: BuildCatalog,
  unknowns: readonly Unknown[],
  values: readonly number[],
): Predictions {
  const catalog: BuildCatalog = { ...nominal, corrections: correctionsOf(unknowns, values, "trial") };
  const byKey = new Map<string, PredictedValues>();
  return new Map(
    [...prepared.values()].map(({ ski, key, programme }) => {
      const values = byKey.get(key) ?? predicted(ski, programme, catalog);
      byKey.set(key, values);
      return [ski, values];
    }),
  );
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

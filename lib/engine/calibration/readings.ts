/** The single readings of measured skis, and what the bench can be trusted with. */
import type { BenchMeasure, CalibrationSettings, LeftOut, MeasuredSki, PredictedValues } from "./types";

export const BENCH_MEASURES = [
  "massKg",
  "camberMm",
  "springCentreNPerMm",
  "springForebodyNPerMm",
  "springAfterbodyNPerMm",
  "twistNmPerDeg",
] as const satisfies readonly BenchMeasure[];

export interface Reading {
  readonly ski: MeasuredSki;
  readonly measure: BenchMeasure;
  readonly measured: number;
  readonly leftOut: boolean;
}

/** Every reading there is, ski by ski. @throws RangeError for one that is not a finite number */
export function readingsOf(skis: readonly MeasuredSki[], leftOut: readonly LeftOut[]): readonly Reading[] {
  const without = new Set(leftOut.map(({ skiId, measure }) => `${skiId} ${measure}`));
  return skis.flatMap((ski) =>
    BENCH_MEASURES.flatMap((measure): Reading[] => {
      const measured = ski.measured[measure];
      if (measured === undefined) return [];
      if (!Number.isFinite(measured)) throw new RangeError(`${ski.id}.${measure}: ${measured} is not a number`);
      return [{ ski, measure, measured, leftOut: without.has(`${ski.id} ${measure}`) }];
    }),
  );
}

/** Standard deviation of one reading in its own unit, from what was computed for it by the handbook. */
export function readingSd(
  measure: BenchMeasure,
  before: PredictedValues,
  { readingSd: sd }: CalibrationSettings,
): number {
  if (measure === "camberMm") return sd.camberMm;
  if (measure === "twistNmPerDeg") return sd.twist * before[measure];
  return (measure === "massKg" ? sd.mass : sd.spring) * before[measure];
}

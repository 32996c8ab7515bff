/** How well computed and measured agree, measure by measure. */
import { BENCH_MEASURES } from "./readings";
import type { Quality, Residual } from "./types";

/** Mean and root mean square of the differences of all readings that were not left out; measures nobody read are absent. */
export function qualityOf(residuals: readonly Residual[]): readonly Quality[] {
  return BENCH_MEASURES.flatMap((measure): Quality[] => {
    const counted = residuals.filter((residual) => residual.measure === measure && !residual.leftOut);
    if (counted.length === 0) return [];
    const before = counted.map(({ measured, predictedBefore }) => offBy(measure, measured, predictedBefore));
    const after = counted.map(({ measured, predictedAfter }) => offBy(measure, measured, predictedAfter));
    return [
      {
        measure,
        readings: counted.length,
        biasBefore: mean(before),
        rmsBefore: rms(before),
        biasAfter: mean(after),
        rmsAfter: rms(after),
      },
    ];
  });
}

/** Percent of the computed value; camber in mm. */
function offBy(measure: Residual["measure"], measured: number, computed: number): number {
  return measure === "camberMm" ? measured - computed : (100 * (measured - computed)) / computed;
}

function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}

function rms(values: readonly number[]): number {
  return Math.sqrt(mean(values.map((value) => value ** 2)));
}

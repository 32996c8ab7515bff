/** Readings as the bench shows them: rounded for people, with their units. */

import type { BenchMeasure } from "#engine/calibration";
import { textForPeople } from "#engine/units";
import { benchScales } from "#schemas";

function decimalsOf(measure: BenchMeasure): number {
  if (measure === "massKg") return 0;
  return measure === "twistNmPerDeg" ? 2 : 1;
}

export function benchNumber(measure: BenchMeasure, value: number): string {
  return textForPeople(value * benchScales[measure].perEngine, decimalsOf(measure));
}

export function benchText(measure: BenchMeasure, value: number): string {
  return `${benchNumber(measure, value)} ${benchScales[measure].unit}`;
}

/** "+1.2 %", or mm for camber. */
export function differenceText(measure: BenchMeasure, value: number): string {
  const text = textForPeople(value, measure === "camberMm" ? 2 : 1);
  return `${value > 0 ? "+" : ""}${text} ${measure === "camberMm" ? "mm" : "%"}`;
}

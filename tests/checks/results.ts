/** Runs checks and says how far the engine is from what was expected. */
import type { Check, CheckedValue, CheckRow } from "./types";

/** One row per value of every check, in their order. */
export function rowsOf(checks: readonly Check[]): readonly CheckRow[] {
  return checks.flatMap((check) =>
    check.values().map((value): CheckRow => {
      const { values: _, ...about } = check;
      const { name, expected, computed, tolerance } = value;
      const difference = differenceOf(value);
      const passed = difference <= ("value" in tolerance ? tolerance.value : 0);
      return { ...about, name, expected, computed, difference, tolerance, passed };
    }),
  );
}

/** How far the computed value is from the expected; from a range or a bound, how far outside. */
function differenceOf({ name, expected, computed, tolerance }: CheckedValue): number {
  const wanted = [expected].flat(2).map(Number);
  const found = [computed].flat(2).map(Number);
  if (tolerance.kind === "range" || tolerance.kind === "most") {
    const [low = 0, high = low] = tolerance.kind === "range" ? wanted : [Number.NEGATIVE_INFINITY, ...wanted];
    return Math.max(...found.map((value) => Math.max(0, low - value, value - high)));
  }
  if (found.length !== wanted.length) throw new Error(`${name}: ${found.length} values for ${wanted.length}`);
  const largest = Math.max(...found.map((value, i) => Math.abs(value - (wanted[i] ?? Number.NaN))));
  return tolerance.kind === "rel" ? largest / Math.max(...wanted.map(Math.abs)) : largest;
}

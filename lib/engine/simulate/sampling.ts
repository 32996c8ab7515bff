/** What a run asks for when durations are drawn and things go wrong, and durations given by three points. */
import { lognormalTable } from "#engine/math";

/** Where durations and misfortunes come from. One object for all replications. */
export interface DispatchSampler {
  minutes(operation: number, visit: number): number;
  unattended(operation: number, visit: number): number;
  /** When the redo after a failed pass may begin; −1 when the pass is good. */
  redoFrom(operation: number, visit: number, end: number): number;
  /** Times when nothing may start on a resource, [from, to, from, to …] ascending; null: none. */
  outages(resource: number): Int32Array | null;
}

/** Least, usual and longest duration. */
export interface ThreePoints {
  readonly low: number;
  readonly typ: number;
  readonly high: number;
}

/** One table for each distinct three-point duration; a shop's settings have a few dozen. */
const tables = new Map<string, Float64Array>();
const mostTables = 500;

/** Sampling table of a lognormal with PERT mean (low + 4 typ + high)/6 and standard deviation (high − low)/6. */
export function threePointTable({ low, typ, high }: ThreePoints): Float64Array {
  const key = `${low}|${typ}|${high}`;
  let table = tables.get(key);
  if (table === undefined) {
    table = lognormalTable((low + 4 * typ + high) / 6, (high - low) / 6);
    if (tables.size >= mostTables) tables.clear();
    tables.set(key, table);
  }
  return table;
}

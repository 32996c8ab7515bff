/**
 * The stations of a pair and what must be done before each (trade.md part 2): release, then four branches side by side
 * (core, base and edge, print, composites) that join at the lay-up.
 */
export const stationNumbers: readonly number[] = [1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 13, 14];

const before: Readonly<Record<number, readonly number[]>> = {
  1: [],
  2: [1],
  3: [2],
  4: [3],
  5: [4],
  6: [1],
  7: [6],
  8: [1],
  9: [1],
  10: [5, 7, 8, 9],
  11: [10],
  12: [11],
  13: [12],
  14: [13],
};

/** @throws RangeError for a number that is no station */
export function stationsBefore(station: number): readonly number[] {
  const found = before[station];
  if (found === undefined) throw new RangeError(`stationsBefore: ${station} is not a station (1–14)`);
  return found;
}

/** The station whose start uses up the strips. */
export const coreStation = 3;
/** The last station of a pair. */
export const lastStation = 14;

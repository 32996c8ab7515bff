/** Stations of the demo floor by name, so that no test leans on a number that is only a label. */
import floor from "#content/catalog/floor.json";

/** In the order of the floor. */
export const stationNames: readonly string[] = floor.stations.map(({ id }) => id);

/** @throws RangeError for a name that no station of the floor has */
export function stationCalled(name: string): number {
  const found = floor.stations.find(({ id }) => id === name);
  if (found === undefined) throw new RangeError(`no station "${name}" on the floor: ${stationNames.join(", ")}`);
  return found.number;
}

export function stationsCalled(...names: readonly string[]): readonly number[] {
  return names.map(stationCalled);
}

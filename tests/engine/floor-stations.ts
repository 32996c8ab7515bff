/** Stations of the demo floor by their ids. */
import { demoFloor } from "../support/demo-floor";

const floor = demoFloor();

/** In the order of the floor. */
export const stationNames: readonly string[] = floor.stations.map(({ id }) => id);

/** @throws RangeError for a name that no station of the floor has */
export function stationCalled(name: string): string {
  const found = floor.stations.find(({ id }) => id === name);
  if (found === undefined) throw new RangeError(`no station "${name}" on the floor: ${stationNames.join(", ")}`);
  return found.id;
}

export function stationsCalled(...names: readonly string[]): readonly string[] {
  return names.map(stationCalled);
}

/** The floor's own settings: stations, as the queue counts with them. */
import type { FloorCatalog } from "#engine/routing";
import { currentCatalog } from "#shop/catalogue/current";

/** The floor as it is today. @throws CatalogError when content does not hold together */
export function floorCatalog(): FloorCatalog {
  return currentCatalog().floor;
}

export interface StationRecipe {
  readonly number: number;
  readonly name: string;
  readonly typicalMinutes: number;
  readonly capacity: number;
  /** Shortest clamp, cure or rest after the work, by the clock. */
  readonly restMinutes: number;
}

/** @throws RangeError for a number that is no station */
export function stationRecipe(number: number, floor: FloorCatalog = floorCatalog()): StationRecipe {
  const station = floor.stations.find((candidate) => candidate.number === number);
  if (station === undefined) throw new RangeError(`stationRecipe: ${number} is not a station (1–14)`);
  return {
    number,
    name: station.label,
    typicalMinutes: station.minutes.typ,
    capacity: station.capacity,
    restMinutes: station.waitMinutes?.low ?? 0,
  };
}

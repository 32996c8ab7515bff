/** The floor's own settings: stations, as the queue counts with them. */
import { type StationId, stationOf } from "#engine/floor";
import type { FloorCatalog } from "#engine/routing";
import { currentCatalog } from "#shop/catalogue/current";

/** The floor as it is today. @throws CatalogError when content does not hold together */
export function floorCatalog(): FloorCatalog {
  return currentCatalog().floor;
}

export interface StationRecipe {
  readonly station: StationId;
  readonly number: number;
  readonly name: string;
  readonly typicalMinutes: number;
  readonly capacity: number;
  /** Shortest clamp, cure or rest after the work, by the clock. */
  readonly restMinutes: number;
}

/** @throws RangeError for an id that is no station of the floor */
export function stationRecipe(id: StationId, floor: FloorCatalog = floorCatalog()): StationRecipe {
  const station = stationOf(floor, id);
  return {
    station: id,
    number: station.number,
    name: station.label,
    typicalMinutes: station.minutes.typ,
    capacity: station.capacity,
    restMinutes: station.waitMinutes?.low ?? 0,
  };
}

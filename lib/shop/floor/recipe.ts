/** The floor's own settings: stations, as the queue counts with them. */
import { type StationId, stationOf } from "#engine/floor";
import { type FloorBook, floorWithBook } from "#engine/floor-learning";
import type { FloorCatalog } from "#engine/routing";
import { floorBookInForce } from "#shop/catalogue/book-in-force";
import { currentCatalog } from "#shop/catalogue/current";

/** One floor for each pair of settings and book: routes are remembered by it. */
const learnt = new WeakMap<FloorBook, { readonly settings: FloorCatalog; readonly floor: FloorCatalog }>();

/** The floor as it is today, with what its book in force has learnt. @throws CatalogError when content does not hold together */
export function floorCatalog(): FloorCatalog {
  const settings = currentCatalog().floor;
  const book = floorBookInForce();
  if (book === null) return settings;
  const known = learnt.get(book);
  if (known?.settings === settings) return known.floor;
  const floor = floorWithBook(settings, book);
  learnt.set(book, { settings, floor });
  return floor;
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

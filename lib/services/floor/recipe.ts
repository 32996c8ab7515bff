/** The floor's own settings: stations, press and resin, as the queue counts with them and the build sheet quotes them. */
import type { Catalog, ReleasedCatalog } from "#catalog";
import type { FloorCatalog } from "#engine/routing";
import type { FloorFacts, QcMeasure, SafetyIcon, StationFact } from "#lib/documents/index";
import { currentCatalog } from "#services/catalogue/current";

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

/** What a build sheet needs to know of the floor; cautions and limits from the catalogue. */
export function floorFacts(catalog: ReleasedCatalog, safety: Catalog["safety"]): FloorFacts {
  const { resin } = catalog.parts;
  const { recipe, floor } = catalog;
  const { heatUpMinutes, dwellMinutes, coolMinutes } = floor.pressProgramme;
  return {
    stations: floor.stations.map(({ number }) => stationFact(number, catalog, safety)),
    press: { ...recipe.press, heatUpMinutes, dwellMinutes, coolMinutes },
    resin: {
      ...recipe.resin,
      system: resin.system,
      hardenerPer100: resin.hardenerPer100,
      resinLot: null,
      hardenerLot: null,
    },
    qcLimits: Object.fromEntries(
      catalog.finish.qcLimits.map(({ measure, toTarget, twins, band }) => [
        measure,
        { toTarget, twins, ...(band === undefined ? {} : { band }) },
      ]),
    ) as Record<QcMeasure, FloorFacts["qcLimits"][QcMeasure]>,
    surfacePreparation: recipe.surfacePreparation,
    wax: catalog.finish.wax,
    printScaleFactor: null,
    printFace: recipe.printFace,
  };
}

function stationFact(
  number: number,
  { floor, recipe }: Pick<ReleasedCatalog, "floor" | "recipe">,
  safety: Catalog["safety"],
): StationFact {
  const { name, typicalMinutes } = stationRecipe(number, floor);
  const cautions = safety.stations.find((candidate) => candidate.station === number)?.cautions ?? [];
  const own = recipe.stations.find((candidate) => candidate.number === number);
  return {
    number,
    name,
    typicalMinutes,
    needsSecondSignOff: own?.needsSecondSignOff ?? false,
    safety: cautions.map(({ icon, line }) => ({ icon: icon as SafetyIcon, text: line })),
    ...(own?.wait === undefined ? {} : { wait: own.wait }),
  };
}

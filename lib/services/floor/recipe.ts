/** Stations, press and resin as the build sheet quotes them: the shop's own settings. */
import recipe from "../../../content/catalog/recipe.json";
import type { Catalog, ReleasedCatalog } from "../../catalog";
import type { FloorFacts, QcMeasure, SafetyIcon, StationFact } from "../../documents";

export interface StationRecipe {
  readonly number: number;
  readonly name: string;
  readonly typicalMinutes: number;
  /** Clamp, cure or rest after the work, by the clock. */
  readonly restMinutes: number;
}

const stations: ReadonlyMap<number, StationRecipe> = new Map(
  recipe.stations.map((station) => [station.number, station]),
);

/** @throws RangeError for a number that is no station */
export function stationRecipe(number: number): StationRecipe {
  const found = stations.get(number);
  if (found === undefined) throw new RangeError(`stationRecipe: ${number} is not a station (1–14)`);
  return found;
}

/** What a build sheet needs to know of the floor; cautions and limits from the catalogue. */
export function floorFacts(catalog: ReleasedCatalog, safety: Catalog["safety"]): FloorFacts {
  const { resin } = catalog.parts;
  return {
    stations: recipe.stations.map((station) => stationFact(station, safety)),
    press: recipe.press,
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
    printFace: recipe.printFace === "top" ? "top" : "under",
  };
}

function stationFact(station: (typeof recipe.stations)[number], safety: Catalog["safety"]): StationFact {
  const cautions = safety.stations.find((candidate) => candidate.station === station.number)?.cautions ?? [];
  return {
    number: station.number,
    name: station.name,
    typicalMinutes: station.typicalMinutes,
    needsSecondSignOff: station.needsSecondSignOff,
    safety: cautions.map(({ icon, line }) => ({ icon: icon as SafetyIcon, text: line })),
    ...(station.wait === undefined ? {} : { wait: station.wait }),
  };
}

/** What papers print of the floor: stations with their cautions, press, resin and limits, from the catalogue. */

import type { Catalog, ReleasedCatalog } from "#catalog";
import { cautionsOfStation, type StationId, stationOf } from "#engine/floor";
import type { FloorFacts, QcMeasure, StationFact } from "#papers";
import { stationRecipe } from "#shop/floor/recipe";

/** What a build sheet needs to know of the floor; cautions and limits from the catalogue. */
export function floorFacts(catalog: ReleasedCatalog, safety: Catalog["safety"]): FloorFacts {
  const { resin } = catalog.parts;
  const { recipe, floor } = catalog;
  const { heatUpMinutes, dwellMinutes, coolMinutes } = floor.pressProgramme;
  return {
    stations: floor.stations.map(({ id }) => stationFact(id, catalog, safety)),
    press: { ...recipe.press, heatUpMinutes, dwellMinutes, coolMinutes, ...partedAt(catalog) },
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
    ...(recipe.wood ? { wood: recipe.wood } : {}),
    ...finishFacts(catalog.finish),
    printScaleFactor: null,
    printFace: recipe.printFace,
  };
}

/** The station that parts the skis, where a pair is pressed as one panel. */
function partedAt({ recipe, floor }: ReleasedCatalog): Pick<FloorFacts["press"], "panelPartedAt"> {
  const station = floor.stations.find(({ id }) => id === recipe.press.panel?.partedAt);
  return station ? { panelPartedAt: stationRecipe(station.id, floor).number } : {};
}

function finishFacts({
  sidewall,
  structures,
  classWithinPercent,
}: ReleasedCatalog["finish"]): Pick<FloorFacts, "sidewall" | "stone" | "classWithinPercent"> {
  const stones = structures.flatMap(({ code, pattern, roughnessUm, stone }) =>
    stone === undefined ? [] : [[code, { pattern, roughnessUm, ...stone }] as const],
  );
  return {
    ...(sidewall ? { sidewall } : {}),
    ...(stones.length > 0 ? { stone: Object.fromEntries(stones) } : {}),
    ...(classWithinPercent === undefined ? {} : { classWithinPercent }),
  };
}

function stationFact(
  id: StationId,
  { floor, recipe }: Pick<ReleasedCatalog, "floor" | "recipe">,
  safety: Catalog["safety"],
): StationFact {
  const { number, name, typicalMinutes } = stationRecipe(id, floor);
  const own = recipe.stations.find((candidate) => candidate.station === id);
  return {
    role: stationOf(floor, id).role,
    number,
    name,
    typicalMinutes,
    needsSecondSignOff: own?.needsSecondSignOff ?? false,
    safety: cautionsOfStation(safety.hazards, floor, id),
    ...(own?.wait === undefined ? {} : { wait: own.wait }),
  };
}

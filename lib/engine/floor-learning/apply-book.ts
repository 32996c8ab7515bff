import type { FloorCatalog } from "#engine/routing";
import type { FloorBook } from "./types";

/** The floor with what a book has learnt in the place of its settings. What the book does not name keeps its setting. */
export function floorWithBook(floor: FloorCatalog, book: FloorBook): FloorCatalog {
  const minutesOf = new Map(book.stations.map(({ station, minutes }) => [station, minutes] as const));
  const chanceOf = new Map(book.rework.map(({ loop, probability }) => [loop, probability] as const));
  return {
    ...floor,
    stations: floor.stations.map((station) => ({ ...station, minutes: minutesOf.get(station.id) ?? station.minutes })),
    rework: floor.rework.map((loop) => ({ ...loop, probability: chanceOf.get(loop.id) ?? loop.probability })),
    pressDayLostProbability: book.pressDayLostProbability,
    personDayLostProbability: book.personDayLostProbability,
    sharedShock: { ...floor.sharedShock, ...book.sharedShock },
    weekPaceLogSd: book.weekPaceLogSd,
  };
}

/** Stations of today's floor, found by what they are for. */
import {
  findStation,
  lastStation,
  placeOf,
  type StationId,
  type StationRole,
  type StationStock,
  stationFor,
  stationsBefore,
  stationTaking,
} from "#engine/floor";
import { floorCatalog } from "./recipe";

/** The station that does the work of a role. */
export function stationIdFor(role: StationRole): StationId {
  return stationFor(floorCatalog(), role).id;
}

/** The station whose start uses up what is in stock. */
export function stationIdTaking(stock: StationStock): StationId {
  return stationTaking(floorCatalog(), stock).id;
}

export function isLastStation(station: StationId): boolean {
  return lastStation(floorCatalog()).id === station;
}

/** What must be done directly before a station. */
export function mustPrecede(station: StationId): readonly StationId[] {
  return stationsBefore(floorCatalog(), station);
}

/** The number by which people know a station; its id where today's floor has no such station any more. */
export function stationNumber(station: StationId): number | string {
  return findStation(floorCatalog(), station)?.number ?? station;
}

/** "8 Print and sublimate topsheet" */
export function stationTitle(station: StationId): string {
  const found = findStation(floorCatalog(), station);
  return found === null ? station : `${found.number} ${found.label}`;
}

/** Places of stations in the way of a pair, from 1: what an operation's row is listed by. */
export function positionOf(station: StationId): number {
  return placeOf(floorCatalog(), station) + 1;
}

/** Every station of a pair with its place in the way. */
export function pairWay(): readonly { readonly station: StationId; readonly position: number }[] {
  return floorCatalog().stations.map(({ id }, index) => ({ station: id, position: index + 1 }));
}

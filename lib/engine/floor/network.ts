/** What comes before what on a floor, from its data; and whether that data makes a way that a pair can go. */
import { closingParts } from "./specification";
import {
  allStationRoles,
  type RoleCount,
  type Station,
  type StationId,
  stationOf,
  stationRoles,
  stationStocks,
  type WithStations,
} from "./stations";

/** The stations directly before one. @throws RangeError for an id that is no station of the floor */
export function stationsBefore(floor: WithStations, station: StationId): readonly StationId[] {
  return stationOf(floor, station).after;
}

/** True for the station itself and for every one that waits for it, directly or through others. */
export function isAtOrAfter(floor: WithStations, station: StationId, earlier: StationId): boolean {
  return station === earlier || stationsBefore(floor, station).some((before) => isAtOrAfter(floor, before, earlier));
}

/** Place of a station in the floor's own order, from 0. @throws RangeError for an id that is no station of the floor */
export function placeOf(floor: WithStations, station: StationId): number {
  return floor.stations.indexOf(stationOf(floor, station));
}

/** Where the way of a pair begins. */
export function firstStation({ stations }: WithStations): Station {
  return only(stations.filter(({ after }) => after.length === 0));
}

/** Where the way of a pair ends. */
export function lastStation({ stations }: WithStations): Station {
  return only(stations.filter(({ id }) => !stations.some(({ after }) => after.includes(id))));
}

function only(stations: readonly Station[]): Station {
  const [station] = stations;
  if (station === undefined) throw new RangeError("a floor needs stations");
  return station;
}

export interface FloorProblemFound {
  /** Where in the list of stations; empty for the list as a whole. */
  readonly path: readonly (string | number)[];
  readonly message: string;
}

/** What keeps a list of stations from being a floor, in sentences; empty when it is one. */
export function stationProblems(stations: readonly Station[]): readonly FloorProblemFound[] {
  return [
    ...twice(stations, "id"),
    ...twice(stations, "number"),
    ...wayProblems(stations),
    ...roleProblems(stations),
    ...toolProblems(stations),
    ...stockProblems(stations),
    ...closingProblems(stations),
  ];
}

const whole = (message: string): FloorProblemFound => ({ path: [], message });

function twice(stations: readonly Station[], key: "id" | "number"): readonly FloorProblemFound[] {
  return stations.flatMap((station, index) =>
    stations.findIndex((other) => other[key] === station[key]) === index
      ? []
      : [{ path: [index, key], message: `two stations have the ${key} "${station[key]}"` }],
  );
}

function wayProblems(stations: readonly Station[]): readonly FloorProblemFound[] {
  const ids = stations.map(({ id }) => id);
  const order = stations.flatMap(({ id, after }, index) =>
    after.flatMap((earlier): readonly FloorProblemFound[] => {
      const path = [index, "after"];
      if (!ids.includes(earlier)) return [{ path, message: `"${id}" comes after "${earlier}", which is no station` }];
      // A list in an order of the way cannot hold a circle.
      if (ids.indexOf(earlier) < index) return [];
      return [{ path, message: `"${id}" comes after "${earlier}", which stands later in the list or waits for it` }];
    }),
  );
  const starts = stations.filter(({ after }) => after.length === 0);
  const ends = stations.filter(({ id }) => !stations.some(({ after }) => after.includes(id)));
  return [
    ...order,
    ...(starts.length === 1 && starts[0]?.role === "release"
      ? []
      : [whole(`the way must begin at one station, the release; it begins at ${namesOf(starts)}`)]),
    ...(ends.length === 1 && ends[0]?.role === "check"
      ? []
      : [whole(`every station must lead to one end, the check; the way ends at ${namesOf(ends)}`)]),
  ];
}

function namesOf(stations: readonly Station[]): string {
  return stations.length === 0 ? "none" : stations.map(({ id }) => `"${id}"`).join(", ");
}

const allowed: Readonly<Record<RoleCount, (count: number) => boolean>> = {
  one: (count) => count === 1,
  "at-most-one": (count) => count <= 1,
  any: () => true,
};

const countWords: Readonly<Record<RoleCount, string>> = {
  one: "one station",
  "at-most-one": "at most one station",
  any: "any number of stations",
};

function roleProblems(stations: readonly Station[]): readonly FloorProblemFound[] {
  return allStationRoles.flatMap((role) => {
    const found = stations.filter((station) => station.role === role);
    const rule: RoleCount = stationRoles[role];
    return allowed[rule](found.length)
      ? []
      : [whole(`a floor has ${countWords[rule]} with the role "${role}"; this one has ${found.length}`)];
  });
}

function toolProblems(stations: readonly Station[]): readonly FloorProblemFound[] {
  return stations.flatMap(({ id, role, uses, after }, index): readonly FloorProblemFound[] => {
    const path = [index, "uses"];
    const isPress = role === "press";
    const layUp = stations.find((station) => station.role === "lay-up");
    return [
      ...(uses.includes("press") === isPress
        ? []
        : [{ path, message: `"${id}": the station with the role "press", and no other, uses a press` }]),
      ...(uses.includes("mould") === (isPress || role === "lay-up")
        ? []
        : [{ path, message: `"${id}": lay-up and press, and no other station, use a mould` }]),
      ...(!isPress || layUp === undefined || (after.length === 1 && after[0] === layUp.id)
        ? []
        : [
            {
              path: [index, "after"],
              message: `"${id}": the press comes directly after the lay-up, wet resin cannot wait`,
            },
          ]),
    ];
  });
}

function stockProblems(stations: readonly Station[]): readonly FloorProblemFound[] {
  return stationStocks.flatMap((stock) => {
    const takers = stations.filter(({ consumes }) => consumes.includes(stock));
    return takers.length === 1
      ? []
      : [whole(`${stock} are taken from stock at one station; here at ${namesOf(takers)}`)];
  });
}

function closingProblems(stations: readonly Station[]): readonly FloorProblemFound[] {
  return closingParts.flatMap((part) => {
    const closing = stations.filter(({ closes }) => closes.includes(part));
    return closing.length === 1
      ? []
      : [whole(`changes of "${part}" must close at one station; here at ${namesOf(closing)}`)];
  });
}

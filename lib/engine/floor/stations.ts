/**
 * The stations of a shop as data. What the rules need to know of a station is its role; which stations there are, in which
 * order, and how they are called and numbered is the shop's own (content/catalog/floor.json).
 */
import type { ClosingPart } from "./specification";

/** A station's id on its floor; its number is only a label for people. */
export type StationId = string;

/** How many stations of a role a floor has. */
export type RoleCount = "one" | "at-most-one" | "any";

/** What a station is for, and how many of it a floor may have. */
export const stationRoles = {
  /** The way begins: build sheet, kit list. */
  release: "one",
  /** Strips are milled, measured, binned. */
  strips: "any",
  /** Strips become a core. */
  core: "one",
  /** The core gets its thickness and pockets, with the sidewalls on it where a floor bonds them before. */
  profile: "one",
  sidewalls: "any",
  /** Base sheets are cut. */
  base: "one",
  edges: "any",
  print: "at-most-one",
  /** Cloths are cut, everything that goes into the mould is put together. */
  kit: "at-most-one",
  /** Everything comes together in one piece. */
  "lay-up": "one",
  press: "one",
  trim: "any",
  finish: "any",
  /** The way ends: measured, matched, packed. */
  check: "one",
} as const satisfies Readonly<Record<string, RoleCount>>;
export type StationRole = keyof typeof stationRoles;
export const allStationRoles = Object.keys(stationRoles) as readonly StationRole[];

/** Who does the work on a floor that has no station of its own for it. Ends at a role that every floor has. */
const standIns: { readonly [R in StationRole]?: StationRole } = {
  strips: "core",
  sidewalls: "profile",
  edges: "base",
  print: "kit",
  kit: "lay-up",
  trim: "check",
  finish: "check",
};

/** Machines and tools besides the station itself that work there occupies. */
export const stationTools = ["press", "mould"] as const;
export type StationTool = (typeof stationTools)[number];

/** What is taken from stock for a pair, each at one station. `parts` are what is bought in for a build. */
export const stationStocks = ["strips", "base-sheets", "parts"] as const;
export type StationStock = (typeof stationStocks)[number];

/** Low, typical and high value of one duration, in minutes; the pessimistic end is a real one, not a disaster. */
export interface ThreePointMinutes {
  readonly low: number;
  readonly typ: number;
  readonly high: number;
}

export interface Station {
  readonly id: StationId;
  /** As on the shop's route card. */
  readonly number: number;
  readonly label: string;
  readonly role: StationRole;
  /** What must be done before: stations that stand earlier in the list. */
  readonly after: readonly StationId[];
  readonly uses: readonly StationTool[];
  readonly consumes: readonly StationStock[];
  /** Parts of the specification that can no longer change once work here has begun. */
  readonly closes: readonly ClosingPart[];
  /** Share of the minutes that a print-only job needs here; absent: it does not come here. */
  readonly printOnlyShare?: number;
  /** Its wait is a rest beside the machine, which is free meanwhile. */
  readonly restsBeside: boolean;
  /** Benches or machines that work side by side. */
  readonly capacity: number;
  /** People needed at the same time for one pair. */
  readonly crewNeeded: number;
  /** Touch minutes of one pair, all people together. */
  readonly minutes: ThreePointMinutes;
  /** Clamp, cure, dry or rest after the work: wall-clock minutes, nights and weekends count, no hands, station free. */
  readonly waitMinutes?: ThreePointMinutes;
  /** Pairs that the shop likes to do together; shown on the board, not enforced. */
  readonly usualBatch?: string;
  /** Cannot be left half done over a break (wet resin, a loaded press). */
  readonly isUninterrupted: boolean;
  readonly skillLevel: 1 | 2 | 3;
}

/** Whatever has stations: a floor, or what is known of one. */
export interface WithStations {
  readonly stations: readonly Station[];
}

const stationsById = new WeakMap<readonly Station[], ReadonlyMap<StationId, Station>>();

/** @returns null when the floor has no such station */
export function findStation({ stations }: WithStations, id: StationId): Station | null {
  let known = stationsById.get(stations);
  if (known === undefined) {
    known = new Map(stations.map((each) => [each.id, each] as const));
    stationsById.set(stations, known);
  }
  return known.get(id) ?? null;
}

/** @throws RangeError when the floor has no such station */
export function stationOf(floor: WithStations, id: StationId): Station {
  const station = findStation(floor, id);
  if (station === null) throw new RangeError(`stationOf: the floor has no station "${id}"`);
  return station;
}

/** Every station of a role, in the floor's order; none where the floor has no such station. */
export function stationsOfRole({ stations }: WithStations, role: StationRole): readonly Station[] {
  return stations.filter((station) => station.role === role);
}

/**
 * The station that does the work of a role: the first of the role, or the one that stands in for it.
 *
 * @throws RangeError on a floor that lacks a role every floor has
 */
export function stationFor({ stations }: WithStations, role: StationRole): Station {
  const [station] = stationsFor(stations, role);
  if (station === undefined) throw new RangeError(`stationFor: no station of the floor does the work of "${role}"`);
  return station;
}

/** Of what is known of stations: all that do the work of a role, those of the role or what stands in for it. */
export function stationsFor<S extends Pick<Station, "role">>(stations: readonly S[], role: StationRole): readonly S[] {
  const own = stations.filter((station) => station.role === role);
  const other = standIns[role];
  return own.length > 0 || other === undefined ? own : stationsFor(stations, other);
}

/** @throws RangeError when nothing of it is taken anywhere */
export function stationTaking({ stations }: WithStations, stock: StationStock): Station {
  const station = stations.find(({ consumes }) => consumes.includes(stock));
  if (station === undefined) throw new RangeError(`stationTaking: no station takes "${stock}"`);
  return station;
}

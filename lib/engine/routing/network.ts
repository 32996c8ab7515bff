/**
 * The way of a pair over the floor (common practice, no source): station 1 first; then four branches side by side, core 2–5, base and
 * edge 6–7, print 8, composites 9; they join at the lay-up 10, then press 11, rest, 12, 13, 14. A print-only job takes 1, 8
 * and a share of 14.
 */
import type { FloorCatalog, Station, ThreePointMinutes } from "./floor";
import type { RouteFacts } from "./types";

export interface RouteStep {
  readonly station: number;
  /** `work` occupies the station; `rest` only lets time pass (a pressed pair rests beside the press). */
  readonly kind: "work" | "rest";
  /** Touch minutes of the pair, all people together, before what options add. */
  readonly minutes: ThreePointMinutes;
  readonly extraMinutes: number;
  /** Share of the minutes that this job needs. */
  readonly share: number;
  readonly crewNeeded: number;
  /** Wall-clock wait after the work. */
  readonly waitMinutes: ThreePointMinutes | null;
  /** Positions in the route that come before. */
  readonly after: readonly number[];
}

/** What must be done before each station of a pair. */
const before: Readonly<Record<number, readonly number[]>> = {
  1: [],
  2: [1],
  3: [2],
  4: [3],
  5: [4],
  6: [1],
  7: [6],
  8: [1],
  9: [1],
  10: [5, 7, 8, 9],
  11: [10],
  12: [11],
  13: [12],
  14: [13],
};

/** The stations of a pair, in their order. */
export const pairStations: readonly number[] = Object.keys(before).map(Number);

/** The stations directly before one. @throws RangeError for a number that is no station of a pair */
export function stationsBefore(station: number): readonly number[] {
  const found = before[station];
  if (found === undefined) throw new RangeError(`stationsBefore: ${station} is not a station (1–14)`);
  return found;
}

const layUpStation = 10;
export const pressStation = 11;
const printStation = 8;
const printOnlyBefore: Readonly<Record<number, readonly number[]>> = { 1: [], 8: [1], 14: [8] };
/** Packing sheets instead of checking skis; common practice, no source. */
const printOnlyPackShare = 0.3;
const sheetsOfPair = 2;

/** The steps of a job in an order that respects what comes before what. */
export function routeFor(facts: RouteFacts, floor: FloorCatalog): readonly RouteStep[] {
  const plain = plainRoute(facts.kind, floor);
  if (facts.kind === "pair" && facts.extraMinutes.length === 0) return plain;
  return plain.map((step) =>
    step.kind === "rest"
      ? step
      : { ...step, extraMinutes: extraAt(facts, step.station), share: shareOf(facts, step.station) },
  );
}

function extraAt({ extraMinutes }: RouteFacts, station: number): number {
  return extraMinutes.reduce((sum, extra) => sum + (extra.station === station ? extra.minutes : 0), 0);
}

/** Routes of a floor without what a job brings; a long queue asks for the same one again and again. */
const plainRoutes = new WeakMap<FloorCatalog, Map<RouteFacts["kind"], readonly RouteStep[]>>();

function plainRoute(kind: RouteFacts["kind"], floor: FloorCatalog): readonly RouteStep[] {
  const known = plainRoutes.get(floor) ?? new Map<RouteFacts["kind"], readonly RouteStep[]>();
  plainRoutes.set(floor, known);
  const route = known.get(kind) ?? stepsOf(kind, floor);
  known.set(kind, route);
  return route;
}

function stepsOf(kind: RouteFacts["kind"], floor: FloorCatalog): readonly RouteStep[] {
  const network = kind === "pair" ? before : printOnlyBefore;
  const steps: RouteStep[] = [];
  const lastOf = new Map<number, number>();
  for (const number of Object.keys(network).map(Number)) {
    const station = stationOf(floor, number);
    const after = (network[number] ?? []).map((earlier) => lastOf.get(earlier) ?? 0);
    const restsApart = number === pressStation && station.waitMinutes !== undefined;
    lastOf.set(number, steps.length);
    steps.push({
      station: number,
      kind: "work",
      minutes: station.minutes,
      extraMinutes: 0,
      share: 1,
      crewNeeded: station.crewNeeded,
      waitMinutes: restsApart ? null : (station.waitMinutes ?? null),
      after,
    });
    if (!restsApart || station.waitMinutes === undefined) continue;
    // The press is free while the pair rests, so the rest is a step of its own.
    steps.push(restStep(number, station.waitMinutes, steps.length - 1));
    lastOf.set(number, steps.length - 1);
  }
  return steps;
}

function restStep(station: number, waitMinutes: ThreePointMinutes, after: number): RouteStep {
  const none = { low: 0, typ: 0, high: 0 };
  return {
    station,
    kind: "rest",
    minutes: none,
    extraMinutes: 0,
    share: 1,
    crewNeeded: 0,
    waitMinutes,
    after: [after],
  };
}

function shareOf(facts: RouteFacts, station: number): number {
  if (facts.kind === "pair") return 1;
  if (station === printStation) return (facts.printSheets ?? sheetsOfPair) / sheetsOfPair;
  return station === 14 ? printOnlyPackShare : 1;
}

const stationsByNumber = new WeakMap<FloorCatalog, ReadonlyMap<number, Station>>();

/** @throws RangeError when the floor has no such station */
export function stationOf(floor: FloorCatalog, number: number): Station {
  let known = stationsByNumber.get(floor);
  if (known === undefined) {
    known = new Map(floor.stations.map((each) => [each.number, each] as const));
    stationsByNumber.set(floor, known);
  }
  const station = known.get(number);
  if (station === undefined) throw new RangeError(`stationOf: station ${number} is not on the floor "${floor.id}"`);
  return station;
}

/** True where the pair is in its mould: from the lay-up to the end of the press cycle. */
export function usesCassette(station: number): boolean {
  return station === layUpStation || station === pressStation;
}

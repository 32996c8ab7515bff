/**
 * The steps of a job over the floor, from the floor's own data: a pair takes every station, the branches between release and
 * lay-up side by side; a print-only job takes the stations that have a share for it, one after another.
 */
import {
  placeOf,
  type Station,
  type StationId,
  type StationTool,
  stationOf,
  type ThreePointMinutes,
} from "#engine/floor";
import type { FloorCatalog } from "./floor";
import type { RouteFacts } from "./types";

export interface RouteStep {
  readonly station: StationId;
  /** Place of the station on its floor, from 1: what its random numbers are drawn by. */
  readonly place: number;
  /** `work` occupies the station; `rest` only lets time pass (a pressed pair rests beside the press). */
  readonly kind: "work" | "rest";
  /** What the work occupies besides the station and people. */
  readonly uses: readonly StationTool[];
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

/** Sheets that a pair needs: what the minutes of a print are meant for. */
const sheetsOfPair = 2;

/** The steps of a job in an order that respects what comes before what. */
export function routeFor(facts: RouteFacts, floor: FloorCatalog): readonly RouteStep[] {
  const plain = plainRoute(facts.kind, floor);
  if (facts.kind === "pair" && facts.extraMinutes.length === 0) return plain;
  return plain.map((step) =>
    step.kind === "rest"
      ? step
      : { ...step, extraMinutes: extraAt(facts, step.station), share: shareOf(facts, stationOf(floor, step.station)) },
  );
}

function extraAt({ extraMinutes }: RouteFacts, station: StationId): number {
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
  const stations = kind === "pair" ? floor.stations : floor.stations.filter(isForPrints);
  const steps: RouteStep[] = [];
  const lastOf = new Map<StationId, number>();
  for (const station of stations) {
    const { id, waitMinutes } = station;
    const before = kind === "pair" ? station.after : [...lastOf.keys()].slice(-1);
    const restsApart = station.restsBeside && waitMinutes !== undefined;
    const step: RouteStep = {
      station: id,
      place: placeOf(floor, id) + 1,
      kind: "work",
      uses: station.uses,
      minutes: station.minutes,
      extraMinutes: 0,
      share: 1,
      crewNeeded: station.crewNeeded,
      waitMinutes: restsApart ? null : (waitMinutes ?? null),
      after: before.map((earlier) => lastOf.get(earlier) ?? 0),
    };
    lastOf.set(id, steps.length);
    steps.push(step);
    if (!restsApart) continue;
    // The machine is free while the pair rests, so the rest is a step of its own.
    steps.push(restStep(step, waitMinutes, steps.length - 1));
    lastOf.set(id, steps.length - 1);
  }
  return steps;
}

function isForPrints({ printOnlyShare }: Station): boolean {
  return printOnlyShare !== undefined;
}

function restStep(work: RouteStep, waitMinutes: ThreePointMinutes, after: number): RouteStep {
  const none = { low: 0, typ: 0, high: 0 };
  return { ...work, kind: "rest", uses: [], minutes: none, crewNeeded: 0, waitMinutes, after: [after] };
}

function shareOf(facts: RouteFacts, { role, printOnlyShare }: Station): number {
  if (facts.kind === "pair") return 1;
  const sheets = role === "print" ? (facts.printSheets ?? sheetsOfPair) / sheetsOfPair : 1;
  return sheets * (printOnlyShare ?? 1);
}

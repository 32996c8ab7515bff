/** One ski built again: which stations do their work a second time, and which must wait for it. */

import { isAtOrAfter, placeOf, stationsBefore } from "./network";
import { standingOperationStates } from "./state-sets";
import type { OperationState } from "./states";
import { type StationId, type StationRole, stationFor, type WithStations } from "./stations";

/** What is wrong, and the work that makes it good at the earliest. Common practice, no source. */
export const reworkFaults = [
  { id: "void-after-press", from: "strips" },
  { id: "core-wrong", from: "strips" },
  { id: "outside-limits", from: "strips" },
  { id: "base-damaged", from: "base" },
  { id: "edge-wrong", from: "edges" },
  { id: "topsheet-nicked", from: "print" },
] as const satisfies readonly { readonly id: string; readonly from: StationRole }[];
export type ReworkFault = (typeof reworkFaults)[number]["id"];

/** The stations from which the faults are made good at the earliest. @throws RangeError where the floor lacks one's role */
export function reworkStarts(floor: WithStations): Readonly<Record<ReworkFault, StationId>> {
  const starts = reworkFaults.map(({ id, from }) => [id, stationFor(floor, from).id] as const);
  return Object.fromEntries(starts) as Record<ReworkFault, StationId>;
}

export interface StationVisit {
  readonly station: StationId;
  readonly visit: number;
  readonly state: OperationState;
}

/** The latest visit of each station, in the order in which the stations stand in the list. */
export function latestVisits<V extends Pick<StationVisit, "station" | "visit">>(
  operations: readonly V[],
): readonly V[] {
  const latest = new Map<StationId, V>();
  for (const operation of operations) {
    const known = latest.get(operation.station);
    if (known === undefined || operation.visit >= known.visit) latest.set(operation.station, operation);
  }
  return [...latest.values()];
}

/** A row that the redo adds. */
export interface RedoVisit {
  readonly station: StationId;
  readonly visit: number;
  readonly state: Extract<OperationState, "blocked" | "ready">;
  /** False where the work on both skis was under way: the other ski is not finished there either. */
  readonly isOneSki: boolean;
}

export interface RedoPlan {
  readonly visits: readonly RedoVisit[];
  /** Stations whose running work is broken off. */
  readonly brokenOff: readonly StationId[];
  /** Stations that were ready and wait again. */
  readonly blocked: readonly StationId[];
}

/** @returns what is done again; no visits when the pair has not come as far as `fromStation` */
export function redoPlan(operations: readonly StationVisit[], fromStation: StationId, floor: WithStations): RedoPlan {
  const latest = latestVisits(operations);
  const isBegun = ({ state }: StationVisit) => standingOperationStates.includes(state);
  // From the lay-up on everything is in one piece: what is built again then is built again in every branch.
  const layUp = stationFor(floor, "lay-up").id;
  const isPressed = latest.some((each) => isAtOrAfter(floor, each.station, layUp) && isBegun(each));
  const from = placeOf(floor, fromStation);
  const isTouched = (station: StationId) =>
    isPressed ? placeOf(floor, station) >= from : isAtOrAfter(floor, station, fromStation);
  const again = latest.filter((each) => isTouched(each.station) && isBegun(each));
  if (!again.some(({ station }) => station === fromStation)) return { visits: [], brokenOff: [], blocked: [] };
  const stations = new Set(again.map(({ station }) => station));
  const isOpen = (station: StationId) =>
    stations.has(station) || latest.some((each) => each.station === station && each.state !== "done");
  const waits = (station: StationId) => stationsBefore(floor, station).some(isOpen);
  return {
    visits: again.map(({ station, visit, state }) => ({
      station,
      visit: visit + 1,
      state: waits(station) ? "blocked" : "ready",
      isOneSki: state === "done",
    })),
    brokenOff: again.filter(({ state }) => state === "running").map(({ station }) => station),
    blocked: latest
      .filter(({ station, state }) => state === "ready" && !stations.has(station) && waits(station))
      .map(({ station }) => station),
  };
}

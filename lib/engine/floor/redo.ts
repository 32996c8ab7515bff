/** One ski built again: which stations do their work a second time, and which must wait for it. */

import type { OperationState } from "./states";
import { canTransition } from "./transitions";

/** What is wrong, and the station that makes it good at the earliest. Common practice, no source. */
export const reworkFaults = [
  { id: "void-after-press", fromStation: 2 },
  { id: "core-wrong", fromStation: 2 },
  { id: "outside-limits", fromStation: 2 },
  { id: "base-damaged", fromStation: 6 },
  { id: "edge-wrong", fromStation: 7 },
  { id: "topsheet-nicked", fromStation: 8 },
] as const;
export type ReworkFault = (typeof reworkFaults)[number]["id"];

/** From the lay-up on everything is in one piece: what is built again then is built again in every branch. */
const layUpStation = 10;

export interface StationVisit {
  readonly station: number;
  readonly visit: number;
  readonly state: OperationState;
}

/** The latest visit of each station, in the order of the stations. */
export function latestVisits<V extends Pick<StationVisit, "station" | "visit">>(
  operations: readonly V[],
): readonly V[] {
  const latest = new Map<number, V>();
  for (const operation of operations) {
    const known = latest.get(operation.station);
    if (known === undefined || operation.visit >= known.visit) latest.set(operation.station, operation);
  }
  return [...latest.values()].sort((a, b) => a.station - b.station);
}

/** A row that the redo adds. */
export interface RedoVisit {
  readonly station: number;
  readonly visit: number;
  readonly state: "blocked" | "ready";
  /** False where the work on both skis was under way: the other ski is not finished there either. */
  readonly isOneSki: boolean;
}

export interface RedoPlan {
  readonly visits: readonly RedoVisit[];
  /** Stations whose running work is broken off. */
  readonly brokenOff: readonly number[];
  /** Stations that were ready and wait again. */
  readonly blocked: readonly number[];
}

/**
 * @param before the stations directly before one
 * @returns what is done again; no visits when the pair has not come as far as `fromStation`
 */
export function redoPlan(
  operations: readonly StationVisit[],
  fromStation: number,
  before: (station: number) => readonly number[],
): RedoPlan {
  const latest = latestVisits(operations);
  const isBegun = ({ state }: StationVisit) => canTransition("operation", state, "redo");
  const isPressed = latest.some((each) => each.station >= layUpStation && isBegun(each));
  const comesAfter = (station: number): boolean =>
    station === fromStation || before(station).some((earlier) => comesAfter(earlier));
  const isTouched = (station: number) => (isPressed ? station >= fromStation : comesAfter(station));
  const again = latest.filter((each) => isTouched(each.station) && isBegun(each));
  if (!again.some(({ station }) => station === fromStation)) return { visits: [], brokenOff: [], blocked: [] };
  const stations = new Set(again.map(({ station }) => station));
  const isOpen = (station: number) =>
    stations.has(station) || latest.some((each) => each.station === station && each.state !== "done");
  const waits = (station: number) => before(station).some(isOpen);
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

import type { PairRecord } from "#data/pairs";
import type { StationId } from "#engine/floor";
import { isOneOf, latestVisits, standingOperationStates } from "#engine/floor";

/** Work on the pair at a station is running or done. */
export function hasBegun(pair: PairRecord, station: StationId): boolean {
  return latestVisits(pair.operations).some(
    (each) => each.station === station && isOneOf(standingOperationStates, each.state),
  );
}

import type { StationId } from "#engine/floor";
import { isOneOf, latestVisits, standingOperationStates } from "#engine/floor";
import type { PairInQueue } from "#shop/queue/queued-pairs";

/** Work on the pair at a station is running or done. */
export function hasBegun(pair: PairInQueue, station: StationId): boolean {
  return latestVisits(pair.operations).some(
    (each) => each.station === station && isOneOf(standingOperationStates, each.state),
  );
}

import { latestVisits } from "#engine/lifecycle";
import type { PairInQueue } from "#shop/queue/queued-pairs";

/** Work on the pair at a station is running or done. */
export function hasBegun(pair: PairInQueue, station: number): boolean {
  return latestVisits(pair.operations).some(
    (each) => each.station === station && ["running", "done"].includes(each.state),
  );
}

/** Which pairs keep their place in the queue. */

import { isOneOf, latestVisits, standingOperationStates } from "#engine/floor";
import { stationIdFor } from "#shop/floor/stations";
import type { PairInQueue } from "#shop/queue/queued-pairs";
import type { QueuePlace } from "./views";

/** What is laid up cannot wait, and a press slot near enough is not moved. */
export function fixedBecause(pair: PairInQueue, now: Date): QueuePlace["fixedBecause"] {
  const state = latestVisits(pair.operations).find(({ station }) => station === stationIdFor("lay-up"))?.state;
  if (state !== undefined && isOneOf(standingOperationStates, state)) return "in-lay-up";
  return pair.pressSlotAt !== null && pair.pressSlotAt > now ? "frozen" : null;
}

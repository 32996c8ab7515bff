/** Which pairs keep their place in the queue. */
import { latestVisits } from "#engine/lifecycle";
import type { PairInQueue } from "#shop/queue/queued-pairs";
import type { QueuePlace } from "./views";

const layUpStation = 10;

/** What is laid up cannot wait, and a press slot near enough is not moved. */
export function fixedBecause(pair: PairInQueue, now: Date): QueuePlace["fixedBecause"] {
  const state = latestVisits(pair.operations).find(({ station }) => station === layUpStation)?.state;
  if (state === "running" || state === "done") return "in-lay-up";
  return pair.pressSlotAt !== null && pair.pressSlotAt > now ? "frozen" : null;
}

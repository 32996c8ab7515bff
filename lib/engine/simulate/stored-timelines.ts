/** What a finished dispatch run has occupied, packed for keeping: one more job is later placed into what it leaves free. */
import type { CompiledProblem, Timelines } from "#engine/schedule";
import { type BusyRecord, busyWidth } from "./dispatch";

/**
 * Packs a run's record, with the outages that this run met. `working` must have room for all of it; it is overwritten.
 *
 * @param outages times when nothing may start on a resource, [from, to …]; null: none
 */
export function storeTimelines(
  problem: CompiledProblem,
  busy: BusyRecord,
  working: Timelines,
  outages: (resource: number) => Int32Array | null = () => null,
): Timelines {
  working.clear();
  for (let at = 0; at < busy.length; at += busyWidth) {
    const [resource, start, end, family] = [
      busy.data[at] as number,
      busy.data[at + 1] as number,
      busy.data[at + 2] as number,
      busy.data[at + 4] as number,
    ];
    working.occupy(resource, start, end, 1, family);
  }
  working.occupyUnavailable();
  for (let resource = 0; resource < problem.resourceCount; resource++) {
    working.occupyAllFree(resource, outages(resource));
  }
  return working.packed();
}

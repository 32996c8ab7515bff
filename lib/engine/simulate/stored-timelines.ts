/**
 * Timelines of a finished dispatch run, packed for keeping: one more job is later placed into what they leave free. Touching
 * intervals of a machine without changeovers are merged, so a busy station costs few entries.
 */
import type { CompiledProblem } from "#engine/schedule";
import {
  canLieOver,
  clearTimelines,
  emptyTimelines,
  occupy,
  occupyFree,
  occupyUnavailable,
  type PackedTimelines,
  type Timelines,
} from "#engine/schedule";
import { type BusyRecord, busyWidth } from "./dispatch";

/** With no room to spare. */
export type StoredTimelines = PackedTimelines;

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
): StoredTimelines {
  clearTimelines(problem, working);
  for (let at = 0; at < busy.length; at += busyWidth) {
    occupy(
      problem,
      working,
      busy.data[at] as number,
      busy.data[at + 1] as number,
      busy.data[at + 2] as number,
      1,
      busy.data[at + 4] as number,
    );
  }
  occupyUnavailable(problem, working);
  for (let resource = 0; resource < problem.resourceCount; resource++) {
    const lost = outages(resource);
    for (let i = 0; lost !== null && i < lost.length; i += 2) {
      occupyFree(problem, working, resource, lost[i] as number, lost[i + 1] as number);
    }
  }
  for (let resource = 0; resource < problem.resourceCount; resource++) mergeTouching(problem, working, resource);
  const from = new Int32Array(problem.resourceCount + 1);
  for (let resource = 0; resource < problem.resourceCount; resource++) {
    from[resource + 1] = (from[resource] as number) + (working.count[resource] as number);
  }
  const size = from[problem.resourceCount] as number;
  const stored: StoredTimelines = {
    from,
    count: working.count.slice(),
    starts: new Int32Array(size),
    ends: new Int32Array(size),
    families: new Int32Array(size),
  };
  for (let resource = 0; resource < problem.resourceCount; resource++) copyStretch(working, stored, resource);
  return stored;
}

/**
 * Lays working timelines over the stored ones of some resources. Copied are only pools and machines with changeovers, for
 * which `working` must have room.
 */
export function layOver(
  problem: CompiledProblem,
  resources: Int32Array,
  stored: StoredTimelines,
  working: Timelines,
): void {
  working.below = stored;
  for (let i = 0; i < resources.length; i++) {
    const resource = resources[i] as number;
    if (canLieOver(problem, resource)) working.count[resource] = 0;
    else copyStretch(stored, working, resource);
  }
}

/** The resources that a problem's operations can take. */
export function resourcesUsed(problem: CompiledProblem): Int32Array {
  return Int32Array.from(
    new Set(problem.usesOf.flatMap((uses) => uses.flatMap(({ members }) => Array.from(members)))),
  ).sort();
}

/** From here on the engine's own copy is quicker than a loop. */
const longCopy = 24;

function copyStretch(source: PackedTimelines, target: PackedTimelines, resource: number): void {
  const from = source.from[resource] as number;
  const to = target.from[resource] as number;
  const count = source.count[resource] as number;
  target.count[resource] = count;
  if (count > longCopy) {
    target.starts.set(source.starts.subarray(from, from + count), to);
    target.ends.set(source.ends.subarray(from, from + count), to);
    target.families.set(source.families.subarray(from, from + count), to);
    return;
  }
  for (let i = 0; i < count; i++) {
    target.starts[to + i] = source.starts[from + i] as number;
    target.ends[to + i] = source.ends[from + i] as number;
    target.families[to + i] = source.families[from + i] as number;
  }
}

function mergeTouching(problem: CompiledProblem, timelines: Timelines, resource: number): void {
  if ((problem.capacity[resource] as number) > 1 || problem.changeover[resource] !== null) return;
  const base = timelines.from[resource] as number;
  const { starts, ends } = timelines;
  const count = timelines.count[resource] as number;
  let write = 0;
  for (let read = 0; read < count; read++) {
    if (write > 0 && (starts[base + read] as number) <= (ends[base + write - 1] as number)) {
      ends[base + write - 1] = Math.max(ends[base + write - 1] as number, ends[base + read] as number);
    } else {
      starts[base + write] = starts[base + read] as number;
      ends[base + write] = ends[base + read] as number;
      write += 1;
    }
  }
  timelines.count[resource] = write;
}

/**
 * Working timelines to be laid over any of the stored ones ({@link layOver}), with room for what is copied and `extra` entries
 * more on each resource.
 */
export function workingTimelines(
  problem: CompiledProblem,
  resources: Int32Array,
  stored: readonly StoredTimelines[],
  extra: number,
): Timelines {
  const copied = resources.filter((resource) => !canLieOver(problem, resource));
  let most = 0;
  for (let run = 0; run < stored.length; run++) {
    const { count } = stored[run] as StoredTimelines;
    for (let i = 0; i < copied.length; i++) most = Math.max(most, count[copied[i] as number] as number);
  }
  return emptyTimelines(problem, most + extra);
}

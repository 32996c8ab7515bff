/**
 * One more pair in one replication: placed step by step into what the others leave free (on the press with both changeovers),
 * moving nobody. Redo loops strike it as they strike the others; lost press days stand in the stored timelines.
 */
import type { StationId } from "#engine/floor";
import {
  type CompiledProblem,
  type CompiledUse,
  earliestByPrecedence,
  type Placement,
  placeCluster,
  type SerialPlan,
  type WorkCalendar,
  workMinutesBefore,
} from "#engine/schedule";
import type { CauseTallies } from "./drivers";
import type { FloorOperation } from "./floor-problem";
import { isPressWork } from "./floor-problem";
import type { Replication } from "./replications";
import type { FloorSampler, PairRedoRule } from "./sampling";
import type { WaitingOn } from "./types";

/** What is the same for all replications of one candidate. */
export interface Insertion {
  readonly problem: CompiledProblem;
  readonly plan: SerialPlan;
  readonly placement: Placement;
  readonly operations: readonly FloorOperation[];
  readonly sampler: FloorSampler;
  /** The redo rule that an operation's result is put to; null: none. */
  readonly ruleOf: readonly (PairRedoRule | null)[];
  /** How often each operation has been done in the run at hand. */
  readonly visits: Int32Array;
  readonly waitingOn: readonly WaitingOn[];
  readonly calendar: WorkCalendar;
  readonly nowMinute: number;
  /** What the pair can take: only these timelines are looked at. */
  readonly resources: Int32Array;
}

/** Places the pair and returns the problem minute at which it is finished; adds the causes of this run. */
export function insertPair(
  insertion: Insertion,
  replication: Replication,
  index: number,
  causes: CauseTallies,
): number {
  const { problem, plan, placement, sampler } = insertion;
  sampler.replication = index;
  placement.timelines.layOver(replication.timelines, insertion.resources);
  placement.lowest.set(problem.release);
  const visits = insertion.visits.fill(0);
  const pressWaits = new Map<number, string>();
  let pending: ArrayLike<number> = problem.topological;
  for (let at = 0; at < pending.length; at++) {
    const operation = pending[at] as number;
    const cluster = plan.clusterOf[operation];
    if (cluster == null) continue;
    for (const member of cluster) sampleInto(insertion, member, visits[member] as number);
    if (cluster.some((member) => isPress(insertion, member))) pressWaits.set(operation, pressCause(insertion, cluster));
    placeCluster(placement, cluster);
    for (const member of cluster) {
      const again = redoneAfter(insertion, member, visits);
      if (again === null) continue;
      pending = [...again, ...Array.from(pending).slice(at + 1)];
      at = -1;
    }
  }
  return traceCauses(insertion, pressWaits, causes);
}

function sampleInto({ placement, sampler }: Insertion, operation: number, visit: number): void {
  placement.minutes[operation] = sampler.minutes(operation, visit);
  placement.unattended[operation] = sampler.unattended(operation, visit);
}

function isPress({ operations }: Insertion, operation: number): boolean {
  const meta = operations[operation];
  return meta !== undefined && isPressWork(meta.step);
}

/** The steps that a failed pass puts back to be placed, before whatever comes after them; null when it passed. */
function redoneAfter(insertion: Insertion, operation: number, visits: Int32Array): readonly number[] | null {
  const rule = insertion.ruleOf[operation] ?? null;
  if (rule === null) return null;
  const { placement, problem, sampler } = insertion;
  const from = sampler.redoFrom(operation, visits[operation] as number, placement.end[operation] as number);
  if (from < 0) return null;
  for (const redone of rule.redo) {
    visits[redone] = (visits[redone] as number) + 1;
    placement.lowest[redone] = from;
  }
  return Array.from(problem.topological).filter((candidate) => rule.redo.includes(candidate));
}

/** Which of the things that lay-up and press need is free last. */
function pressCause(insertion: Insertion, cluster: readonly number[]): string {
  const { problem, placement } = insertion;
  const head = cluster[0] as number;
  const ready = earliestByPrecedence(placement, head);
  let latest = ready;
  const { station } = (insertion.operations[head] as FloorOperation).step;
  let cause = `crew:${station}`;
  for (const operation of cluster) {
    const minutes = placement.minutes[operation] as number;
    for (const use of problem.usesOf[operation] ?? []) {
      const end = use.holds ? minutes + (placement.unattended[operation] as number) : minutes;
      const free = firstFit(insertion, use, ready, end, problem.family[operation] as number);
      if (free <= latest) continue;
      latest = free;
      cause = causeOf(problem.problem.resources[use.members[0] as number]?.id ?? "", station);
    }
  }
  return cause;
}

function causeOf(resource: string, station: StationId): string {
  if (resource.startsWith("press:")) return "press-queue";
  if (resource.startsWith("mould:") || resource.startsWith("cassette:")) return `mould:${resource.split(":")[1]}`;
  return resource.startsWith("crew:") ? `crew:${station}` : `station-queue:${station}`;
}

function firstFit({ placement }: Insertion, use: CompiledUse, from: number, minutes: number, family: number): number {
  let start = from;
  for (;;) {
    const later = placement.timelines.fits(use, start, start + minutes, family, minutes);
    if (later === start) return start;
    start = later;
  }
}

/** What a step that is not released yet waits for. */
function holdUpOf({ waitingOn }: Insertion, station: StationId): string {
  const reason = waitingOn.find((wait) => wait.holdsUpStation === station && wait.expectedDate !== undefined)?.reason;
  return reason === "proof" || reason === "deposit" || reason === "material" ? reason : "other-wait";
}

/** Walks back from the finish along what each step waited for, and books every working minute to a cause. */
function traceCauses(insertion: Insertion, pressWaits: ReadonlyMap<number, string>, causes: CauseTallies): number {
  const { problem, placement, operations, calendar, nowMinute, plan } = insertion;
  const between = (from: number, to: number) =>
    to <= from ? 0 : workMinutesBefore(calendar, to) - workMinutesBefore(calendar, from);
  let at = lastOf(placement);
  const finish = placement.end[at] as number;
  for (;;) {
    const meta = operations[at] as FloorOperation;
    const start = placement.start[at] as number;
    const done = placement.workEnd[at] as number;
    const end = placement.end[at] as number;
    causes.book("work", between(start, done));
    causes.book(meta.isProofGate ? "proof" : "rest-and-cure", between(done, end), end);
    const before = latestPredecessor(problem, placement, at);
    const ready = before < 0 ? nowMinute : (placement.end[before] as number);
    const held = Math.max(ready, Math.min(start, placement.lowest[at] as number));
    const isRedone = (placement.lowest[at] as number) > (problem.release[at] as number);
    causes.book(isRedone ? "rework-and-shocks" : holdUpOf(insertion, meta.step.station), between(ready, held), held);
    const head = plan.clusterOf[at] === null ? -1 : at;
    causes.book(pressWaits.get(head) ?? `station-queue:${meta.step.station}`, between(held, start), start);
    if (before < 0 || (isRedone && held > ready)) {
      causes.book("rework-and-shocks", before < 0 ? 0 : between(nowMinute, ready));
      return finish;
    }
    at = before;
  }
}

function lastOf({ end }: Placement): number {
  let last = 0;
  for (let operation = 1; operation < end.length; operation++) {
    if ((end[operation] as number) >= (end[last] as number)) last = operation;
  }
  return last;
}

function latestPredecessor(problem: CompiledProblem, { end }: Placement, operation: number): number {
  let latest = -1;
  const last = problem.predecessorsFrom[operation + 1] as number;
  for (let i = problem.predecessorsFrom[operation] as number; i < last; i++) {
    const predecessor = problem.predecessors[i] as number;
    if (latest < 0 || (end[predecessor] as number) > (end[latest] as number)) latest = predecessor;
  }
  return latest;
}

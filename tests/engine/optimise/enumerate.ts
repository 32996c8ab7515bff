/**
 * The least cost of a small problem by trying every order of its operations that respects precedence: each is placed minute by
 * minute at the earliest time that the independent rules allow. Knows resources of any capacity, calendars, cures that hold
 * what the work holds, changeovers and releases; shares no code with the scheduler.
 */
import type { OperationSpec, ScheduleProblem } from "#engine/schedule";
import { isOpen } from "../../support/feasible";

interface Stay {
  readonly from: number;
  readonly to: number;
  readonly family: string | undefined;
  readonly units: number;
}

interface Step {
  readonly job: number;
  readonly operation: OperationSpec;
  readonly before: readonly number[];
  readonly release: number;
}

const horizon = 8 * 1440;

/** @throws Error when an operation needs more than one resource: that is more than this can try */
export function leastCost(problem: ScheduleProblem): number {
  const steps = stepsOf(problem);
  const opens = new Map(problem.resources.map(({ id, calendar }) => [id, openMinutes(problem, calendar)] as const));
  const stays = new Map<string, Stay[]>(problem.resources.map(({ id }) => [id, []]));
  const ends: (number | undefined)[] = steps.map(() => undefined);
  let least = Number.POSITIVE_INFINITY;
  // Two orders that leave the same stays lead on to the same: one of them is enough.
  const seen = new Set<string>();

  const go = (left: number): void => {
    if (left === 0) {
      least = Math.min(least, cost(problem, steps, ends, stays));
      return;
    }
    // Ends, beginnings and, with changeovers, nothing else decide what can follow.
    const state = [...stays.values()].map((list) =>
      list.map(({ from, to, family }) => `${from}-${to}${family}`).join(),
    );
    const key = `${ends.map((end) => end ?? "").join()}|${state.join("|")}`;
    if (seen.has(key)) return;
    seen.add(key);
    if (tardinessSoFar(problem, steps, ends) >= least) return;
    steps.forEach((step, at) => {
      if (ends[at] !== undefined || step.before.some((other) => ends[other] === undefined)) return;
      const resource = step.operation.uses?.[0];
      const id = resource !== undefined && "resource" in resource ? resource.resource : (step.operation.resource ?? "");
      const list = stays.get(id) as Stay[];
      const ready = Math.max(step.release, ...step.before.map((other) => ends[other] as number));
      const found = earliest(problem, id, list, opens.get(id) as Uint8Array, step.operation, ready);
      const at0 = list.findIndex(({ from }) => from > found.from);
      list.splice(at0 < 0 ? list.length : at0, 0, found);
      ends[at] = found.end;
      go(left - 1);
      ends[at] = undefined;
      list.splice(list.indexOf(found), 1);
    });
  };
  go(steps.length);
  return least;
}

function stepsOf(problem: ScheduleProblem): readonly Step[] {
  let first = 0;
  return problem.jobs.flatMap((job, j) => {
    const base = first;
    first += job.operations.length;
    return job.operations.map((operation, at): Step => {
      if ((operation.uses?.length ?? 1) !== 1) throw new Error(`${job.id}/${operation.id} needs several resources`);
      const ids = operation.after ?? (at === 0 ? [] : [job.operations[at - 1]?.id ?? ""]);
      return {
        job: j,
        operation,
        before: ids.map((id) => base + job.operations.findIndex((other) => other.id === id)),
        release: Math.max(job.releaseMinute ?? 0, operation.releaseMinute ?? 0),
      };
    });
  });
}

function openMinutes(problem: ScheduleProblem, name: string | undefined): Uint8Array {
  const calendar = name === undefined ? undefined : problem.calendars?.[name];
  return Uint8Array.from({ length: calendar === undefined ? 2000 : horizon }, (_, minute) =>
    calendar === undefined || isOpen(calendar, minute) ? 1 : 0,
  );
}

/** The first stay from `ready` on that fits between those that are there. */
function earliest(
  problem: ScheduleProblem,
  id: string,
  list: readonly Stay[],
  open: Uint8Array,
  operation: OperationSpec,
  ready: number,
): Stay & { readonly end: number } {
  const resource = problem.resources.find((candidate) => candidate.id === id);
  const use = operation.uses?.[0];
  const units = use !== undefined && "resource" in use ? (use.units ?? 1) : 1;
  for (let from = ready; from < open.length; from++) {
    const blocking = resource?.capacity === 1 ? list.find((other) => other.from <= from && from < other.to) : undefined;
    if (blocking !== undefined) from = blocking.to;
    const worked = workEnd(open, from, operation);
    if (worked === null) continue;
    const end = worked + (operation.unattendedMinutes ?? 0);
    const to = operation.holdsDuring?.includes(id) ? end : worked;
    const stay = { from, to, family: operation.family, units, end };
    if (resource === undefined || !hasRoom(list, stay, resource.capacity)) continue;
    if (resource.changeoverMinutes === undefined || leavesTime(resource, list, stay, open)) return stay;
  }
  throw new Error(`no room for ${operation.id} on ${id}`);
}

function workEnd(open: Uint8Array, from: number, { minutes, uninterrupted }: OperationSpec): number | null {
  if (open[from] !== 1) return null;
  let minute = from;
  for (let left = minutes; left > 0; minute++) {
    if (open[minute] === 1) left -= 1;
    else if (uninterrupted || open[minute] === undefined) return null;
  }
  return minute;
}

function hasRoom(list: readonly Stay[], stay: Stay, capacity: number): boolean {
  const during = list.filter((other) => other.from < stay.to && other.to > stay.from);
  return [stay.from, ...during.map(({ from }) => Math.max(from, stay.from))].every(
    (minute) =>
      during.reduce((sum, other) => sum + (other.from <= minute && minute < other.to ? other.units : 0), stay.units) <=
      capacity,
  );
}

/** Whether the changeovers on both sides of a stay fit into open minutes. */
function leavesTime(
  { changeoverMinutes, initialFamily }: ScheduleProblem["resources"][number],
  list: readonly Stay[],
  stay: Stay,
  open: Uint8Array,
): boolean {
  const isEnough = (from: number, to: number, before: string | undefined, behind: string | undefined) => {
    const needed = changeoverMinutes?.[before ?? ""]?.[behind ?? ""] ?? 0;
    let there = 0;
    for (let minute = from; minute < to; minute++) there += open[minute] ?? 0;
    return there >= needed;
  };
  const before = list.filter(({ from }) => from < stay.from).at(-1);
  const behind = list.find(({ from }) => from >= stay.from);
  return (
    isEnough(before?.to ?? 0, stay.from, before?.family ?? initialFamily, stay.family) &&
    (behind === undefined || isEnough(stay.to, behind.from, stay.family, behind.family))
  );
}

function weightsOf({ objective }: ScheduleProblem) {
  if (objective === "makespan") return { makespan: 1, weightedTardiness: 0, changeover: 0 };
  return { makespan: 0, weightedTardiness: 0, changeover: 0, ...objective };
}

/** What is certain to be paid for the ends so far. */
function tardinessSoFar(
  problem: ScheduleProblem,
  steps: readonly Step[],
  ends: readonly (number | undefined)[],
): number {
  const { makespan, weightedTardiness } = weightsOf(problem);
  const late = problem.jobs.map(({ dueMinute, weight }, j) => {
    const end = Math.max(0, ...ends.filter((value, at) => steps[at]?.job === j && value !== undefined).map(Number));
    return (weight ?? 1) * Math.max(0, end - (dueMinute ?? Number.POSITIVE_INFINITY));
  });
  const last = Math.max(0, ...ends.map((end) => end ?? 0));
  return makespan * last + weightedTardiness * late.reduce((sum, value) => sum + value, 0);
}

function cost(
  problem: ScheduleProblem,
  steps: readonly Step[],
  ends: readonly (number | undefined)[],
  stays: ReadonlyMap<string, readonly Stay[]>,
): number {
  const changeovers = problem.resources.map(({ id, changeoverMinutes, initialFamily }) => {
    let family = initialFamily;
    let sum = 0;
    for (const stay of stays.get(id) ?? []) {
      sum += changeoverMinutes?.[family ?? ""]?.[stay.family ?? ""] ?? 0;
      family = stay.family;
    }
    return sum;
  });
  const changeover = changeovers.reduce((sum, value) => sum + value, 0);
  return tardinessSoFar(problem, steps, ends) + weightsOf(problem).changeover * changeover;
}

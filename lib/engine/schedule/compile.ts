/**
 * A validated problem as flat typed arrays: what the inner loops read. Operations, jobs and resources become numbers in the
 * order of the problem; lists of lists become one array with offsets (`predecessorsFrom[i] … predecessorsFrom[i + 1]`).
 */
import { type WorkCalendar, workCalendar } from "./calendar";
import type { CalendarSpec, JobSpec, OperationSpec, ResourceSpec, ResourceUse, ScheduleProblem } from "./types";

/** One use of an operation: one resource, or any `units` of several. */
export interface CompiledUse {
  readonly members: Int32Array;
  readonly units: number;
  readonly holds: boolean;
  /** A single resource with room for several at once. */
  readonly isPool: boolean;
}

export interface CompiledProblem {
  readonly problem: ScheduleProblem;
  readonly operationCount: number;
  readonly jobCount: number;
  readonly resourceCount: number;
  readonly operations: readonly OperationSpec[];
  readonly jobOf: Int32Array;
  readonly firstOfJob: Int32Array;
  readonly minutes: Int32Array;
  readonly unattended: Int32Array;
  /** −1: no limit. */
  readonly maxGap: Int32Array;
  readonly release: Int32Array;
  /** −1: free. */
  readonly fixedStart: Int32Array;
  readonly family: Int32Array;
  readonly isUninterrupted: Uint8Array;
  readonly calendarOf: readonly (WorkCalendar | null)[];
  readonly usesOf: readonly (readonly CompiledUse[])[];
  readonly predecessorsFrom: Int32Array;
  readonly predecessors: Int32Array;
  readonly successorsFrom: Int32Array;
  readonly successors: Int32Array;
  /** Operations in an order that respects precedence. */
  readonly topological: Int32Array;
  readonly capacity: Int32Array;
  readonly resourceCalendar: readonly (WorkCalendar | null)[];
  /** When a resource is not there: [from, to, from, to …] ascending; null: always there. */
  readonly unavailable: readonly (Int32Array | null)[];
  readonly changeover: readonly (Int32Array | null)[];
  readonly familyCount: number;
  readonly initialFamily: Int32Array;
  readonly due: Float64Array;
  readonly deadline: Float64Array;
  readonly weight: Float64Array;
}

/** Compiles a problem that has passed {@link validateProblem}. */
export function compileProblem(problem: ScheduleProblem): CompiledProblem {
  const resourceIndex = new Map(problem.resources.map((resource, index) => [resource.id, index] as const));
  const operations = problem.jobs.flatMap((job) => job.operations);
  const families = new Map<string, number>();
  for (const name of familyNames(problem)) if (!families.has(name)) families.set(name, families.size);
  const calendars = calendarCache(problem.calendars ?? {});
  const usesOf = operations.map((operation) => usesOfOperation(operation, problem.resources, resourceIndex));
  const calendarOf = usesOf.map((uses) =>
    calendars(uses.map((use) => problem.resources[use.members[0] as number]?.calendar)),
  );
  const precedence = compilePrecedence(problem.jobs);
  return {
    problem,
    operationCount: operations.length,
    jobCount: problem.jobs.length,
    resourceCount: problem.resources.length,
    operations,
    jobOf: Int32Array.from(problem.jobs.flatMap((job, index) => job.operations.map(() => index))),
    firstOfJob: offsetsOf(problem.jobs.map((job) => job.operations.length)),
    minutes: Int32Array.from(operations, (operation) => operation.minutes),
    unattended: Int32Array.from(operations, (operation) => operation.unattendedMinutes ?? 0),
    maxGap: Int32Array.from(operations, (operation) => operation.maxGapMinutes ?? -1),
    release: Int32Array.from(
      problem.jobs.flatMap((job) =>
        job.operations.map((operation) => Math.max(job.releaseMinute ?? 0, operation.releaseMinute ?? 0)),
      ),
    ),
    fixedStart: Int32Array.from(operations, (operation) => operation.fixed?.startMinute ?? -1),
    family: Int32Array.from(operations, ({ family }) => (family === undefined ? -1 : (families.get(family) ?? -1))),
    isUninterrupted: Uint8Array.from(operations, (operation) => (operation.uninterrupted ? 1 : 0)),
    calendarOf,
    usesOf,
    ...precedence,
    capacity: Int32Array.from(problem.resources, (resource) => resource.capacity),
    resourceCalendar: problem.resources.map((resource) => calendars([resource.calendar])),
    unavailable: problem.resources.map(({ unavailable }) =>
      unavailable === undefined || unavailable.length === 0 ? null : Int32Array.from(unavailable.flat()),
    ),
    changeover: problem.resources.map((resource) => changeoverTable(resource, families)),
    familyCount: families.size,
    initialFamily: Int32Array.from(problem.resources, ({ initialFamily }) =>
      initialFamily === undefined ? -1 : (families.get(initialFamily) ?? -1),
    ),
    due: Float64Array.from(problem.jobs, (job) => job.dueMinute ?? Number.POSITIVE_INFINITY),
    deadline: Float64Array.from(problem.jobs, (job) => job.deadlineMinute ?? Number.POSITIVE_INFINITY),
    weight: Float64Array.from(problem.jobs, (job) => job.weight ?? 1),
  };
}

/** The uses of an operation, whichever way they were written. */
export function usesWritten(operation: OperationSpec): readonly ResourceUse[] {
  if (operation.uses !== undefined) return operation.uses;
  return operation.resource === undefined ? [] : [{ resource: operation.resource }];
}

/** Predecessor ids of an operation within its job: `after`, or the one listed before. */
export function predecessorsWritten(job: JobSpec, position: number): readonly string[] {
  const operation = job.operations[position];
  if (operation?.after !== undefined) return operation.after;
  const before = job.operations[position - 1];
  return before === undefined ? [] : [before.id];
}

function usesOfOperation(
  operation: OperationSpec,
  resources: readonly ResourceSpec[],
  resourceIndex: ReadonlyMap<string, number>,
): readonly CompiledUse[] {
  const held = new Set(operation.holdsDuring ?? []);
  return usesWritten(operation).map((use) => {
    const ids = "anyOf" in use ? use.anyOf : [use.resource];
    const members = Int32Array.from(ids, (id) => resourceIndex.get(id) ?? -1);
    const isPool = !("anyOf" in use) && (resources[members[0] as number]?.capacity ?? 1) > 1;
    return { members, units: use.units ?? 1, holds: ids.some((id) => held.has(id)), isPool };
  });
}

function familyNames(problem: ScheduleProblem): readonly string[] {
  return [
    ...problem.resources.flatMap((resource) => [
      ...(resource.initialFamily === undefined ? [] : [resource.initialFamily]),
      ...Object.entries(resource.changeoverMinutes ?? {}).flatMap(([from, row]) => [from, ...Object.keys(row)]),
    ]),
    ...problem.jobs.flatMap((job) =>
      job.operations.flatMap((operation) => (operation.family === undefined ? [] : [operation.family])),
    ),
  ];
}

function changeoverTable(resource: ResourceSpec, families: ReadonlyMap<string, number>): Int32Array | null {
  if (resource.changeoverMinutes === undefined) return null;
  const table = new Int32Array(families.size * families.size);
  for (const [from, row] of Object.entries(resource.changeoverMinutes)) {
    for (const [to, minutes] of Object.entries(row)) {
      table[(families.get(from) ?? 0) * families.size + (families.get(to) ?? 0)] = minutes;
    }
  }
  return table;
}

/** Calendars built for one set of specifications: a queue and the pair asked about beside it share them. */
const builtCalendars = new WeakMap<Readonly<Record<string, CalendarSpec>>, Map<string, WorkCalendar>>();

/** Combined calendars, each built once; null when always open. */
function calendarCache(
  specs: Readonly<Record<string, CalendarSpec>>,
): (names: readonly (string | undefined)[]) => WorkCalendar | null {
  const built = builtCalendars.get(specs) ?? new Map<string, WorkCalendar>();
  builtCalendars.set(specs, built);
  return (names) => {
    const wanted = [...new Set(names.filter((name) => name !== undefined))].sort();
    if (wanted.length === 0) return null;
    const key = JSON.stringify(wanted);
    let calendar = built.get(key);
    if (calendar === undefined) {
      calendar = workCalendar(wanted.flatMap((name) => specs[name] ?? []));
      built.set(key, calendar);
    }
    return calendar;
  };
}

function offsetsOf(lengths: readonly number[]): Int32Array {
  const offsets = new Int32Array(lengths.length + 1);
  lengths.forEach((length, index) => {
    offsets[index + 1] = (offsets[index] as number) + length;
  });
  return offsets;
}

function compilePrecedence(
  jobs: readonly JobSpec[],
): Pick<CompiledProblem, "predecessorsFrom" | "predecessors" | "successorsFrom" | "successors" | "topological"> {
  const before: number[][] = [];
  const behind: number[][] = [];
  let first = 0;
  for (const job of jobs) {
    const index = new Map(job.operations.map((operation, position) => [operation.id, first + position] as const));
    job.operations.forEach((_, position) => {
      before.push(predecessorsWritten(job, position).map((id) => index.get(id) ?? -1));
      behind.push([]);
    });
    first += job.operations.length;
  }
  before.forEach((list, operation) => {
    for (const predecessor of list) behind[predecessor]?.push(operation);
  });
  return {
    predecessorsFrom: offsetsOf(before.map((list) => list.length)),
    predecessors: Int32Array.from(before.flat()),
    successorsFrom: offsetsOf(behind.map((list) => list.length)),
    successors: Int32Array.from(behind.flat()),
    topological: topologicalOrder(before, behind),
  };
}

function topologicalOrder(before: readonly (readonly number[])[], behind: readonly (readonly number[])[]): Int32Array {
  const waiting = before.map((list) => list.length);
  const order = waiting.flatMap((count, operation) => (count === 0 ? [operation] : []));
  for (let head = 0; head < order.length; head++) {
    for (const successor of behind[order[head] as number] ?? []) {
      waiting[successor] = (waiting[successor] as number) - 1;
      if (waiting[successor] === 0) order.push(successor);
    }
  }
  return Int32Array.from(order);
}

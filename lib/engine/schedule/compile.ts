/**
 * A validated problem as flat typed arrays: what the inner loops read. Operations, jobs and resources become numbers in the
 * order of the problem; lists of lists become one array with offsets (`predecessorsFrom[i] … predecessorsFrom[i + 1]`).
 */
import { type WorkCalendar, workCalendar } from "./calendar";
import type { CalendarSpec, JobSpec, OperationSpec, ResourceSpec, ResourceUse, ScheduleProblem } from "./types";

/** One use of an operation: one resource, or any `units` of several. Equal uses are one object. */
export interface CompiledUse {
  /** Numbers the different uses of a problem. */
  readonly number: number;
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
  const operations = problem.jobs.flatMap((job) => job.operations);
  const families = new Map<string, number>();
  for (const name of familyNames(problem)) if (!families.has(name)) families.set(name, families.size);
  const calendars = calendarCache(problem.calendars ?? {});
  const uses = new UseTable(problem.resources);
  const usesOf = operations.map((operation) => uses.of(operation));
  const calendarOfUses = new Map<readonly CompiledUse[], WorkCalendar | null>();
  for (const used of usesOf) {
    if (calendarOfUses.has(used)) continue;
    calendarOfUses.set(used, calendars(used.map((use) => problem.resources[use.members[0] as number]?.calendar)));
  }
  const precedence = compilePrecedence(problem.jobs);
  const jobOf = problem.jobs.flatMap((job, index) => job.operations.map(() => index));
  return {
    problem,
    operationCount: operations.length,
    jobCount: problem.jobs.length,
    resourceCount: problem.resources.length,
    operations,
    jobOf: Int32Array.from(jobOf),
    firstOfJob: offsetsOf(problem.jobs.map((job) => job.operations.length)),
    minutes: int32Of(operations, (operation) => operation.minutes),
    unattended: int32Of(operations, (operation) => operation.unattendedMinutes ?? 0),
    maxGap: int32Of(operations, (operation) => operation.maxGapMinutes ?? -1),
    release: int32Of(operations, (operation, index) =>
      Math.max(problem.jobs[jobOf[index] as number]?.releaseMinute ?? 0, operation.releaseMinute ?? 0),
    ),
    fixedStart: int32Of(operations, (operation) => operation.fixed?.startMinute ?? -1),
    family: int32Of(operations, ({ family }) => (family === undefined ? -1 : (families.get(family) ?? -1))),
    isUninterrupted: Uint8Array.from(operations, (operation) => (operation.uninterrupted ? 1 : 0)),
    calendarOf: usesOf.map((used) => calendarOfUses.get(used) ?? null),
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

/** Compiles uses, each different one once. */
class UseTable {
  private readonly indexOf: ReadonlyMap<string, number>;
  private readonly known = new Map<string, CompiledUse>();
  /** Problems made by a program hand over the same lists again and again. */
  private readonly knownLists = new WeakMap<
    readonly ResourceUse[],
    { readonly held: OperationSpec["holdsDuring"]; readonly uses: readonly CompiledUse[] }
  >();

  constructor(private readonly resources: readonly ResourceSpec[]) {
    this.indexOf = new Map(resources.map((resource, index) => [resource.id, index] as const));
  }

  of(operation: OperationSpec): readonly CompiledUse[] {
    const written = usesWritten(operation);
    const known = this.knownLists.get(written);
    if (known !== undefined && known.held === operation.holdsDuring) return known.uses;
    const uses = this.compileAll(written, operation.holdsDuring ?? []);
    this.knownLists.set(written, { held: operation.holdsDuring, uses });
    return uses;
  }

  private compileAll(written: readonly ResourceUse[], held: readonly string[]): readonly CompiledUse[] {
    return written.map((use) => {
      const holds = held.length > 0 && ("anyOf" in use ? use.anyOf : [use.resource]).some((id) => held.includes(id));
      const units = use.units ?? 1;
      const key = `${"anyOf" in use ? JSON.stringify(use.anyOf) : JSON.stringify(use.resource)} ${units} ${holds}`;
      const known = this.known.get(key);
      if (known !== undefined) return known;
      const compiled = this.compile(use, units, holds);
      this.known.set(key, compiled);
      return compiled;
    });
  }

  private compile(use: ResourceUse, units: number, holds: boolean): CompiledUse {
    const members = Int32Array.from("anyOf" in use ? use.anyOf : [use.resource], (id) => this.indexOf.get(id) ?? -1);
    const isPool = !("anyOf" in use) && (this.resources[members[0] as number]?.capacity ?? 1) > 1;
    return { number: this.known.size, members, units, holds, isPool };
  }
}

function familyNames(problem: ScheduleProblem): readonly string[] {
  return [
    ...problem.resources.flatMap((resource) => [
      ...(resource.initialFamily === undefined ? [] : [resource.initialFamily]),
      ...matrixNames(resource.changeoverMinutes),
    ]),
    ...problem.jobs.flatMap((job) =>
      job.operations.flatMap((operation) => (operation.family === undefined ? [] : [operation.family])),
    ),
  ];
}

type Matrix = NonNullable<ResourceSpec["changeoverMinutes"]>;

/** A queue and the pair asked about beside it share their matrix: names are read and tables made once. */
const knownNames = new WeakMap<Matrix, readonly string[]>();
const knownTables = new WeakMap<Matrix, { readonly families: string; readonly table: Int32Array }>();

function matrixNames(matrix: Matrix | undefined): readonly string[] {
  if (matrix === undefined) return [];
  let names = knownNames.get(matrix);
  if (names === undefined) {
    names = [...new Set(Object.entries(matrix).flatMap(([from, row]) => [from, ...Object.keys(row)]))];
    knownNames.set(matrix, names);
  }
  return names;
}

function changeoverTable(
  { changeoverMinutes }: ResourceSpec,
  families: ReadonlyMap<string, number>,
): Int32Array | null {
  if (changeoverMinutes === undefined) return null;
  const order = [...families.keys()].join("\n");
  const known = knownTables.get(changeoverMinutes);
  if (known?.families === order) return known.table;
  const table = tableOf(changeoverMinutes, families);
  knownTables.set(changeoverMinutes, { families: order, table });
  return table;
}

function tableOf(matrix: Matrix, families: ReadonlyMap<string, number>): Int32Array {
  const table = new Int32Array(families.size * families.size);
  for (const [from, row] of Object.entries(matrix)) {
    for (const [to, minutes] of Object.entries(row)) {
      table[(families.get(from) ?? 0) * families.size + (families.get(to) ?? 0)] = minutes;
    }
  }
  return table;
}

/** Calendars built for one set of specifications: a queue and the pair asked about beside it share them. */
const builtCalendars = new WeakMap<Readonly<Record<string, CalendarSpec>>, Map<string, WorkCalendar>>();

/** A problem's calendar as its operations have it, built once. @throws RangeError when the problem has none of this name */
export function calendarNamed({ calendars = {} }: ScheduleProblem, name: string): WorkCalendar {
  const calendar = calendarCache(calendars)([name]);
  if (calendar === null) throw new RangeError(`calendarNamed: the problem has no calendar "${name}"`);
  return calendar;
}

/** Combined calendars, each built once, equal ones together; null when always open. */
function calendarCache(
  specs: Readonly<Record<string, CalendarSpec>>,
): (names: readonly (string | undefined)[]) => WorkCalendar | null {
  const built = builtCalendars.get(specs) ?? new Map<string, WorkCalendar>();
  builtCalendars.set(specs, built);
  const byNames = new Map<string, WorkCalendar | null>();
  return (names) => {
    const asked = names.join("\n");
    let calendar = byNames.get(asked);
    if (calendar === undefined) {
      calendar = combined(names);
      byNames.set(asked, calendar);
    }
    return calendar;
  };

  function combined(names: readonly (string | undefined)[]): WorkCalendar | null {
    const wanted = new Map(
      names.flatMap((name) => {
        const spec = name === undefined ? undefined : specs[name];
        return spec === undefined ? [] : [[JSON.stringify(spec), spec] as const];
      }),
    );
    if (wanted.size === 0) return null;
    const key = [...wanted.keys()].sort().join("\n");
    let calendar = built.get(key);
    if (calendar === undefined) {
      calendar = workCalendar([...wanted.values()]);
      built.set(key, calendar);
    }
    return calendar;
  }
}

/** As `Int32Array.from`, without its iterator: a long queue has fifteen thousand operations and seven such lists. */
function int32Of<T>(list: readonly T[], numberOf: (entry: T, index: number) => number): Int32Array {
  const numbers = new Int32Array(list.length);
  for (let i = 0; i < list.length; i++) numbers[i] = numberOf(list[i] as T, i);
  return numbers;
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
  const before: number[] = [];
  const counts: number[] = [];
  let first = 0;
  for (const job of jobs) {
    const index = new Map(job.operations.map((operation, position) => [operation.id, first + position] as const));
    for (let position = 0; position < job.operations.length; position++) {
      const ids = predecessorsWritten(job, position);
      counts.push(ids.length);
      for (const id of ids) before.push(index.get(id) ?? -1);
    }
    first += job.operations.length;
  }
  const predecessorsFrom = offsetsOf(counts);
  const predecessors = Int32Array.from(before);
  const following = successorsOf(predecessorsFrom, predecessors);
  return { predecessorsFrom, predecessors, ...following, topological: topologicalOrder(counts, following) };
}

function successorsOf(
  predecessorsFrom: Int32Array,
  predecessors: Int32Array,
): Pick<CompiledProblem, "successorsFrom" | "successors"> {
  const count = predecessorsFrom.length - 1;
  const successorsFrom = new Int32Array(count + 1);
  for (const predecessor of predecessors) {
    successorsFrom[predecessor + 1] = (successorsFrom[predecessor + 1] as number) + 1;
  }
  for (let operation = 0; operation < count; operation++) {
    successorsFrom[operation + 1] = (successorsFrom[operation + 1] as number) + (successorsFrom[operation] as number);
  }
  const next = successorsFrom.slice();
  const successors = new Int32Array(predecessors.length);
  for (let operation = 0; operation < count; operation++) {
    const last = predecessorsFrom[operation + 1] as number;
    for (let i = predecessorsFrom[operation] as number; i < last; i++) {
      const predecessor = predecessors[i] as number;
      successors[next[predecessor] as number] = operation;
      next[predecessor] = (next[predecessor] as number) + 1;
    }
  }
  return { successorsFrom, successors };
}

function topologicalOrder(
  predecessorCounts: readonly number[],
  { successorsFrom, successors }: Pick<CompiledProblem, "successorsFrom" | "successors">,
): Int32Array {
  const waiting = predecessorCounts.slice();
  const order: number[] = [];
  for (let operation = 0; operation < waiting.length; operation++) if (waiting[operation] === 0) order.push(operation);
  for (let head = 0; head < order.length; head++) {
    const last = successorsFrom[(order[head] as number) + 1] as number;
    for (let i = successorsFrom[order[head] as number] as number; i < last; i++) {
      const successor = successors[i] as number;
      waiting[successor] = (waiting[successor] as number) - 1;
      if (waiting[successor] === 0) order.push(successor);
    }
  }
  return Int32Array.from(order);
}

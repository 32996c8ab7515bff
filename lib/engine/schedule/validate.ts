/** The door of the room: every argument of a problem is checked here once; inside, the types are trusted. */
import { accept, type Outcome, type Refusal, refuse } from "#engine/units";
import { longestOpenRun, workCalendar } from "./calendar";
import { predecessorsWritten, usesWritten } from "./compile";
import type { CalendarSpec, JobSpec, OperationSpec, ResourceSpec, ScheduleProblem } from "./types";

export interface ProblemRefusal extends Refusal {
  readonly code:
    | "not-whole"
    | "out-of-range"
    | "duplicate-id"
    | "unknown-id"
    | "cycle"
    | "calendar-never-open"
    | "window-too-short"
    | "capacity-too-small"
    | "changeover-needs-capacity-one"
    | "family-missing"
    | "mixed-calendars"
    | "gap-without-predecessor"
    | "used-twice"
    | "hold-not-used"
    | "too-many"
    | "empty";
  readonly path: string;
}

/** 2³⁰ minutes are 2,000 years: sums of any two times still fit 32-bit integers. */
const maxMinutes = 2 ** 30;

/** More than ten thousand pairs with all their stations: beyond that an answer would be long in coming. */
const maxOperations = 200_000;

class Refused extends Error {
  constructor(readonly refusal: ProblemRefusal) {
    super(refusal.code);
  }
}

function reject(refusal: ProblemRefusal): never {
  throw new Refused(refusal);
}

/** The problem itself when it is sound, or the first thing that is wrong with it and where. */
export function validateProblem(problem: ScheduleProblem): Outcome<ScheduleProblem, ProblemRefusal> {
  try {
    checkProblem(problem);
    return accept(problem);
  } catch (error) {
    if (error instanceof Refused) return refuse(error.refusal);
    throw error;
  }
}

function checkProblem(problem: ScheduleProblem): void {
  if (
    problem.resources.length === 0 &&
    problem.jobs.some((job) => job.operations.some((o) => usesWritten(o).length > 0))
  )
    reject({ code: "empty", path: "resources" });
  if (problem.jobs.length === 0) reject({ code: "empty", path: "jobs" });
  const count = problem.jobs.reduce((sum, { operations }) => sum + operations.length, 0);
  if (count > maxOperations) reject({ code: "too-many", path: "jobs", value: count, high: maxOperations });
  for (const [name, calendar] of Object.entries(problem.calendars ?? {})) checkCalendar(calendar, `calendars.${name}`);
  const resources = new Map<string, ResourceSpec>();
  problem.resources.forEach((resource, index) => {
    checkResource(resource, problem, `resources.${index}`);
    if (resources.has(resource.id)) reject({ code: "duplicate-id", path: `resources.${index}.id`, value: resource.id });
    resources.set(resource.id, resource);
  });
  const jobIds = new Set<string>();
  problem.jobs.forEach((job, index) => {
    if (jobIds.has(job.id)) reject({ code: "duplicate-id", path: `jobs.${index}.id`, value: job.id });
    jobIds.add(job.id);
    checkJob(job, problem, resources, `jobs.${index}`);
  });
  if (problem.objective !== "makespan") {
    for (const [name, weight] of Object.entries(problem.objective)) checkNumber(weight, 0, `objective.${name}`);
  }
}

function checkWhole(value: number | null | undefined, low: number, path: string): void {
  if (value === undefined || value === null) return;
  if (!Number.isInteger(value)) reject({ code: "not-whole", path, value });
  if (value < low || value > maxMinutes) reject({ code: "out-of-range", path, value, low, high: maxMinutes });
}

function checkNumber(value: number, low: number, path: string): void {
  if (!(value >= low && value <= maxMinutes)) reject({ code: "out-of-range", path, value, low, high: maxMinutes });
}

function checkCalendar(calendar: CalendarSpec, path: string): void {
  let end = 0;
  calendar.windows.forEach(([from, to], index) => {
    const at = `${path}.windows.${index}`;
    checkWhole(from, end, at);
    checkWhole(to, from + 1, at);
    if (to > 1440) reject({ code: "out-of-range", path: at, value: to, low: from + 1, high: 1440 });
    end = to;
  });
  for (const key of ["closures", "extraWindows"] as const) {
    (calendar[key] ?? []).forEach(([from, to], index) => {
      checkWhole(from, -maxMinutes, `${path}.${key}.${index}`);
      checkWhole(to, from, `${path}.${key}.${index}`);
    });
  }
  for (const weekday of [...(calendar.weekdays ?? []), calendar.firstWeekday ?? 1]) {
    checkWhole(weekday, 1, `${path}.weekdays`);
    if (weekday > 7) reject({ code: "out-of-range", path: `${path}.weekdays`, value: weekday, low: 1, high: 7 });
  }
  for (const day of calendar.closedDays ?? []) checkWhole(day, -maxMinutes, `${path}.closedDays`);
  if (longestOpenRun(workCalendar([calendar])) === 0) reject({ code: "calendar-never-open", path });
}

function checkResource(resource: ResourceSpec, problem: ScheduleProblem, path: string): void {
  checkWhole(resource.capacity, 1, `${path}.capacity`);
  if (resource.calendar !== undefined && problem.calendars?.[resource.calendar] === undefined) {
    reject({ code: "unknown-id", path: `${path}.calendar`, value: resource.calendar });
  }
  let end = 0;
  (resource.unavailable ?? []).forEach(([from, to], index) => {
    const at = `${path}.unavailable.${index}`;
    checkWhole(from, end, at);
    checkWhole(to, from + 1, at);
    end = to;
  });
  if (resource.changeoverMinutes === undefined) return;
  if (resource.capacity !== 1) reject({ code: "changeover-needs-capacity-one", path: `${path}.capacity` });
  for (const [from, row] of Object.entries(resource.changeoverMinutes)) {
    for (const [to, minutes] of Object.entries(row)) checkWhole(minutes, 0, `${path}.changeoverMinutes.${from}.${to}`);
  }
}

function checkJob(
  job: JobSpec,
  problem: ScheduleProblem,
  resources: ReadonlyMap<string, ResourceSpec>,
  path: string,
): void {
  checkWhole(job.releaseMinute, 0, `${path}.releaseMinute`);
  checkWhole(job.dueMinute, -maxMinutes, `${path}.dueMinute`);
  checkWhole(job.deadlineMinute, 0, `${path}.deadlineMinute`);
  if (job.weight !== undefined) checkNumber(job.weight, 0, `${path}.weight`);
  const ids = new Set<string>();
  job.operations.forEach((operation, position) => {
    const at = `${path}.operations.${position}`;
    if (ids.has(operation.id)) reject({ code: "duplicate-id", path: `${at}.id`, value: operation.id });
    ids.add(operation.id);
    checkOperation(operation, problem, resources, at);
    if (operation.maxGapMinutes !== undefined && predecessorsWritten(job, position).length === 0) {
      reject({ code: "gap-without-predecessor", path: `${at}.maxGapMinutes` });
    }
  });
  job.operations.forEach((operation, position) => {
    for (const id of operation.after ?? []) {
      if (!ids.has(id)) reject({ code: "unknown-id", path: `${path}.operations.${position}.after`, value: id });
    }
  });
  checkAcyclic(job, path);
}

function checkOperation(
  operation: OperationSpec,
  problem: ScheduleProblem,
  resources: ReadonlyMap<string, ResourceSpec>,
  path: string,
): void {
  checkWhole(operation.minutes, 0, `${path}.minutes`);
  checkWhole(operation.unattendedMinutes, 0, `${path}.unattendedMinutes`);
  checkWhole(operation.maxGapMinutes, 0, `${path}.maxGapMinutes`);
  checkWhole(operation.releaseMinute, 0, `${path}.releaseMinute`);
  checkWhole(operation.fixed?.startMinute, 0, `${path}.fixed.startMinute`);
  const used = new Set<string>();
  const calendars = new Set<string>();
  usesWritten(operation).forEach((use, index) => {
    const at = operation.uses === undefined ? `${path}.resource` : `${path}.uses.${index}`;
    const ids = "anyOf" in use ? use.anyOf : [use.resource];
    const units = use.units ?? 1;
    checkWhole(units, 1, `${at}.units`);
    const members = ids.map((id) => resources.get(id) ?? reject({ code: "unknown-id", path: at, value: id }));
    for (const { id } of members) {
      if (used.has(id)) reject({ code: "used-twice", path: at, value: id });
      used.add(id);
    }
    const room = "anyOf" in use ? members.length : (members[0]?.capacity ?? 0);
    if (units > room) reject({ code: "capacity-too-small", path: at, value: units, high: room });
    if ("anyOf" in use && members.some(({ capacity }) => capacity !== 1)) {
      reject({ code: "changeover-needs-capacity-one", path: at });
    }
    if (new Set(members.map(({ calendar }) => calendar)).size > 1) reject({ code: "mixed-calendars", path: at });
    if (operation.family === undefined && members.some(({ changeoverMinutes }) => changeoverMinutes !== undefined)) {
      reject({ code: "family-missing", path: `${path}.family` });
    }
    const calendar = members[0]?.calendar;
    if (calendar !== undefined) calendars.add(calendar);
  });
  for (const id of operation.holdsDuring ?? []) {
    if (!used.has(id)) reject({ code: "hold-not-used", path: `${path}.holdsDuring`, value: id });
  }
  checkOpenTime(operation, problem, [...calendars].sort(), path);
}

const longestRuns = new WeakMap<object, Map<string, number>>();

function checkOpenTime(
  operation: OperationSpec,
  problem: ScheduleProblem,
  names: readonly string[],
  path: string,
): void {
  if (names.length === 0) return;
  const known = longestRuns.get(problem) ?? new Map<string, number>();
  longestRuns.set(problem, known);
  const key = JSON.stringify(names);
  const longest =
    known.get(key) ?? longestOpenRun(workCalendar(names.flatMap((name) => problem.calendars?.[name] ?? [])));
  known.set(key, longest);
  if (longest === 0) reject({ code: "calendar-never-open", path, calendars: names });
  if (operation.uninterrupted && operation.minutes > longest) {
    reject({ code: "window-too-short", path: `${path}.minutes`, value: operation.minutes, high: longest });
  }
}

function checkAcyclic(job: JobSpec, path: string): void {
  const done = new Set<string>();
  let left = job.operations.map((operation, position) => ({
    id: operation.id,
    after: predecessorsWritten(job, position),
  }));
  while (left.length > 0) {
    const ready = left.filter(({ after }) => after.every((id) => done.has(id)));
    if (ready.length === 0) reject({ code: "cycle", path: `${path}.operations`, operations: left.map(({ id }) => id) });
    for (const { id } of ready) done.add(id);
    left = left.filter(({ id }) => !done.has(id));
  }
}

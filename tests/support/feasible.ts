/**
 * An independent judge of schedules: it reads the problem and the answer, shares no code with the scheduler, and knows every
 * rule of the problem form: capacity, calendars, precedence, releases, changeovers, gaps, holds, fixed starts.
 */
import type { CalendarSpec, OperationSpec, Schedule, ScheduleProblem } from "#engine/schedule";

interface Stay {
  readonly from: number;
  readonly to: number;
  readonly family: string | undefined;
  readonly isFixed: boolean;
  readonly name: string;
}

const dayMinutes = 1440;

export function isOpen(calendar: CalendarSpec, minute: number): boolean {
  const within = (windows: readonly (readonly [number, number])[] | undefined, at: number) =>
    (windows ?? []).some(([from, to]) => from <= at && at < to);
  if (within(calendar.closures, minute)) return false;
  if (within(calendar.extraWindows, minute)) return true;
  const day = Math.floor(minute / dayMinutes);
  if ((calendar.closedDays ?? []).includes(day)) return false;
  const weekday = (((calendar.firstWeekday ?? 1) - 1 + day) % 7) + 1;
  if (calendar.weekdays !== undefined && !calendar.weekdays.includes(weekday)) return false;
  return within(calendar.windows, minute - day * dayMinutes);
}

/** Everything that is wrong with a schedule, in words; empty when it can be carried out. */
export function faultsOf(problem: ScheduleProblem, schedule: Pick<Schedule, "operations">): readonly string[] {
  const faults: string[] = [];
  const at: ReadonlyMap<string, (typeof schedule.operations)[number]> = new Map(
    schedule.operations.map((entry) => [`${entry.job}/${entry.operation}`, entry] as const),
  );
  const stays = new Map<string, Stay[]>(problem.resources.map(({ id }) => [id, []]));
  const units = new Map<string, number[]>(problem.resources.map(({ id }) => [id, []]));
  for (const job of problem.jobs) {
    job.operations.forEach((operation, position) => {
      const name: string = `${job.id}/${operation.id}`;
      const entry = at.get(name);
      if (entry === undefined) {
        faults.push(`${name} is not scheduled`);
        return;
      }
      const { startMinute: start, workEndMinute: workEnd, endMinute: end } = entry;
      const uses = operation.uses ?? (operation.resource === undefined ? [] : [{ resource: operation.resource }]);
      const isFixed = operation.fixed !== undefined;
      if (end - workEnd !== (operation.unattendedMinutes ?? 0)) faults.push(`${name} has the wrong unattended time`);
      if (isFixed && start !== operation.fixed?.startMinute) faults.push(`${name} left its fixed start`);
      if (!isFixed && start < Math.max(job.releaseMinute ?? 0, operation.releaseMinute ?? 0)) {
        faults.push(`${name} starts before its release`);
      }
      const before = operation.after ?? (position === 0 ? [] : [job.operations[position - 1]?.id ?? ""]);
      const ready = Math.max(...before.map((id) => at.get(`${job.id}/${id}`)?.endMinute ?? Number.NaN), -Infinity);
      if (start < ready) faults.push(`${name} starts at ${start}, before its predecessor is over at ${ready}`);
      if (operation.maxGapMinutes !== undefined && start - ready > operation.maxGapMinutes) {
        faults.push(`${name} starts ${start - ready} min after its predecessor, more than ${operation.maxGapMinutes}`);
      }
      const remaining = [...entry.resources];
      for (const use of uses) {
        const group = "anyOf" in use ? use.anyOf : [use.resource];
        const wanted = "anyOf" in use ? (use.units ?? 1) : 1;
        const taken = remaining.filter((id) => group.includes(id));
        if (taken.length !== wanted) faults.push(`${name} takes ${taken.length} of ${group.join("|")}, not ${wanted}`);
        const isHeld = group.some((id) => operation.holdsDuring?.includes(id));
        for (const id of taken) {
          remaining.splice(remaining.indexOf(id), 1);
          const to = isHeld ? end : workEnd;
          if (to === start) continue;
          stays.get(id)?.push({ from: start, to, family: operation.family, isFixed, name });
          units.get(id)?.push("anyOf" in use ? 1 : (use.units ?? 1));
        }
      }
      faults.push(...workFaults(problem, operation, entry.resources, start, workEnd, name, isFixed));
    });
  }
  for (const resource of problem.resources) {
    const list = stays.get(resource.id) ?? [];
    for (const [from, to] of resource.unavailable ?? []) {
      const inside = list.find((stay) => !stay.isFixed && stay.from < to && stay.to > from);
      if (inside !== undefined)
        faults.push(`${resource.id} is away from ${from} to ${to}, but ${inside.name} is on it`);
    }
    const load = units.get(resource.id) ?? [];
    for (const moment of list) {
      const used = list.reduce(
        (sum, stay, i) => sum + (stay.from <= moment.from && moment.from < stay.to ? (load[i] ?? 0) : 0),
        0,
      );
      if (used > resource.capacity)
        faults.push(`${resource.id} carries ${used} of ${resource.capacity} at ${moment.from}`);
    }
    if (resource.changeoverMinutes === undefined) continue;
    const calendar = resource.calendar === undefined ? undefined : problem.calendars?.[resource.calendar];
    let free = 0;
    let family = resource.initialFamily;
    for (const stay of [...list].sort((a, b) => a.from - b.from)) {
      const needed = family === undefined ? 0 : (resource.changeoverMinutes[family]?.[stay.family ?? ""] ?? 0);
      let open = 0;
      for (let minute = free; minute < stay.from; minute++)
        if ((calendar === undefined || isOpen(calendar, minute)) && !isAway(resource, minute)) open++;
      if (!stay.isFixed && open < needed)
        faults.push(`${resource.id}: ${open} min for a changeover of ${needed} before ${stay.name}`);
      free = stay.to;
      family = stay.family;
    }
  }
  return faults;
}

function isAway({ unavailable }: ScheduleProblem["resources"][number], minute: number): boolean {
  return (unavailable ?? []).some(([from, to]) => from <= minute && minute < to);
}

function workFaults(
  problem: ScheduleProblem,
  operation: OperationSpec,
  resources: readonly string[],
  start: number,
  workEnd: number,
  name: string,
  isFixed: boolean,
): readonly string[] {
  const calendars = resources.flatMap((id) => {
    const calendar = problem.resources.find((resource) => resource.id === id)?.calendar;
    return calendar === undefined ? [] : [problem.calendars?.[calendar] as CalendarSpec];
  });
  let worked = 0;
  for (let minute = start; minute < workEnd; minute++)
    if (calendars.every((calendar) => isOpen(calendar, minute))) worked++;
  const faults: string[] = [];
  if (worked !== operation.minutes) faults.push(`${name} works ${worked} open minutes, not ${operation.minutes}`);
  if (operation.minutes > 0 && !isFixed && !calendars.every((calendar) => isOpen(calendar, start))) {
    faults.push(`${name} starts at ${start}, when it is closed`);
  }
  if (operation.uninterrupted && workEnd - start !== operation.minutes) faults.push(`${name} is interrupted`);
  return faults;
}

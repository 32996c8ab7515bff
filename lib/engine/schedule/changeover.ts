/** Changing a resource over from one family to another, on its own calendar. */
import { workEnd, workMinutesBefore } from "./calendar";
import type { CompiledProblem } from "./compile";

/** Minutes from one family to the next on a resource; 0 where none are mounted, needed or listed. */
export function changeoverMinutes(
  { changeover, familyCount }: CompiledProblem,
  resource: number,
  before: number,
  next: number,
): number {
  const table = changeover[resource] ?? null;
  return table === null || before < 0 || next < 0 ? 0 : (table[before * familyCount + next] ?? 0);
}

/** When a changeover of `minutes` begun at `minute` is done; while the resource is not there nobody changes it over. */
export function afterChangeover(problem: CompiledProblem, resource: number, minute: number, minutes: number): number {
  if (minutes === 0) return minute;
  const calendar = problem.resourceCalendar[resource] ?? null;
  const worked = (from: number, to: number) =>
    calendar === null ? to - from : workMinutesBefore(calendar, to) - workMinutesBefore(calendar, from);
  const away = problem.unavailable[resource] ?? null;
  let at = Math.max(0, minute);
  let left = minutes;
  for (let i = 0; away !== null && i < away.length; i += 2) {
    const from = away[i] as number;
    const to = away[i + 1] as number;
    if (to <= at) continue;
    const before = from <= at ? 0 : worked(at, from);
    if (before >= left) break;
    left -= before;
    at = to;
  }
  return calendar === null ? at + left : workEnd(calendar, at, left);
}

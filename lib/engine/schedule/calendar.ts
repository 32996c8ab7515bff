/**
 * Working calendars compiled to minute tables, so that the end of an operation is two look-ups. Tables grow on demand up to
 * some years; behind them the last of their weeks repeats for ever. A calendar of several specifications is open when all of
 * them are.
 */
import type { CalendarSpec } from "./types";

const minutesPerDay = 1440;
const minutesPerWeek = 7 * minutesPerDay;
const firstHorizonDays = 28;
/** Tables grow fast up to here, then by halves of what they cost: a minute takes 12 bytes. */
const longHorizonMinutes = 366 * minutesPerDay;
/** No table is longer, unless something out of the ordinary is known for later. */
const usualLastHorizonMinutes = 4 * 366 * minutesPerDay;
/** What is out of the ordinary after this is not planned with: there is no horizon behind such a calendar's tables. */
const lastHorizonMinutes = 12 * 366 * minutesPerDay;

export interface WorkCalendar {
  readonly specs: readonly CalendarSpec[];
  /** From here on every week is like the one before. */
  readonly regularFromMinute: number;
  horizonMinutes: number;
  /** clock → work: open minutes before this clock minute. */
  workAt: Int32Array;
  /** work → clock: clock minute of the n-th open minute. */
  clockAt: Int32Array;
  /** Clock → end of the open window that this minute lies in (only meaningful for open minutes). */
  closesAt: Int32Array;
}

/** A calendar that is open when all `specs` are. */
export function workCalendar(specs: readonly CalendarSpec[]): WorkCalendar {
  const empty = new Int32Array(0);
  const calendar: WorkCalendar = {
    specs,
    regularFromMinute: lastSpecialMinute(specs),
    horizonMinutes: 0,
    workAt: empty,
    clockAt: empty,
    closesAt: empty,
  };
  buildTables(calendar, firstHorizonDays * minutesPerDay);
  return calendar;
}

function buildTables(calendar: WorkCalendar, horizonMinutes: number): void {
  const [first, ...others] = calendar.specs;
  const open = first === undefined ? new Uint8Array(horizonMinutes).fill(1) : openMinutes(first, horizonMinutes);
  for (const spec of others) {
    const flags = openMinutes(spec, horizonMinutes);
    for (let minute = 0; minute < horizonMinutes; minute++) if (flags[minute] === 0) open[minute] = 0;
  }
  const workAt = new Int32Array(horizonMinutes + 1);
  const closesAt = new Int32Array(horizonMinutes + 1);
  let work = 0;
  for (let minute = 0; minute < horizonMinutes; minute++) {
    workAt[minute] = work;
    work += open[minute] ?? 0;
  }
  workAt[horizonMinutes] = work;
  const clockAt = new Int32Array(work);
  let closes = horizonMinutes;
  for (let minute = horizonMinutes - 1; minute >= 0; minute--) {
    if (open[minute] === 1) {
      clockAt[workAt[minute] as number] = minute;
      closesAt[minute] = closes;
    } else closes = minute;
  }
  calendar.horizonMinutes = horizonMinutes;
  calendar.workAt = workAt;
  calendar.clockAt = clockAt;
  calendar.closesAt = closesAt;
}

function openMinutes(spec: CalendarSpec, horizonMinutes: number): Uint8Array {
  const open = new Uint8Array(horizonMinutes);
  const weekdays = new Set(spec.weekdays ?? [1, 2, 3, 4, 5, 6, 7]);
  const closed = new Set(spec.closedDays ?? []);
  const firstWeekday = spec.firstWeekday ?? 1;
  for (let day = 0; day * minutesPerDay < horizonMinutes; day++) {
    if (closed.has(day) || !weekdays.has(((firstWeekday - 1 + day) % 7) + 1)) continue;
    for (const [from, to] of spec.windows) open.fill(1, day * minutesPerDay + from, day * minutesPerDay + to);
  }
  // fill() reads a negative index from the end, so a window that began before minute 0 is cut first.
  for (const [from, to] of spec.extraWindows ?? []) open.fill(1, Math.max(0, from), Math.max(0, to));
  for (const [from, to] of spec.closures ?? []) open.fill(0, Math.max(0, from), Math.max(0, to));
  return open;
}

/** The end of everything out of the ordinary. */
function lastSpecialMinute(specs: readonly CalendarSpec[]): number {
  let last = 0;
  for (const { closedDays = [], closures = [], extraWindows = [] } of specs) {
    for (const day of closedDays) last = Math.max(last, (day + 1) * minutesPerDay);
    for (const [, to] of closures) last = Math.max(last, to);
    for (const [, to] of extraWindows) last = Math.max(last, to);
  }
  return last;
}

/** Makes the tables longer; false when they are as long as they get and their last two weeks are regular. */
function grow(calendar: WorkCalendar): boolean {
  const { horizonMinutes, regularFromMinute } = calendar;
  const longest = Math.max(usualLastHorizonMinutes, regularFromMinute + 3 * minutesPerWeek);
  if (horizonMinutes >= longest) return false;
  if (horizonMinutes >= lastHorizonMinutes) throw neverOpenAgain();
  const factor = horizonMinutes < longHorizonMinutes ? 4 : 2;
  buildTables(calendar, Math.min(lastHorizonMinutes, longest, horizonMinutes * factor));
  return true;
}

function neverOpenAgain(): RangeError {
  return new RangeError(`calendar: no open minute is left before minute ${lastHorizonMinutes}, the planning horizon`);
}

function workPerWeek({ workAt, horizonMinutes }: WorkCalendar): number {
  return (workAt[horizonMinutes] as number) - (workAt[horizonMinutes - minutesPerWeek] as number);
}

/** Weeks from a minute behind the tables back into their last week. */
function weeksBehind({ horizonMinutes }: WorkCalendar, minute: number): number {
  return Math.ceil((minute - horizonMinutes) / minutesPerWeek);
}

/** Open minutes before a clock minute. */
export function workMinutesBefore(calendar: WorkCalendar, minute: number): number {
  while (minute > calendar.horizonMinutes) {
    if (grow(calendar)) continue;
    const weeks = weeksBehind(calendar, minute);
    return (calendar.workAt[minute - weeks * minutesPerWeek] as number) + weeks * workPerWeek(calendar);
  }
  return calendar.workAt[minute] as number;
}

/** Clock minute at which the n-th open minute (0-based) begins. */
export function clockMinuteOf(calendar: WorkCalendar, work: number): number {
  while (work >= calendar.clockAt.length) {
    if (grow(calendar)) continue;
    const perWeek = workPerWeek(calendar);
    if (perWeek === 0) throw neverOpenAgain();
    const weeks = Math.ceil((work + 1 - calendar.clockAt.length) / perWeek);
    return (calendar.clockAt[work - weeks * perWeek] as number) + weeks * minutesPerWeek;
  }
  return calendar.clockAt[work] as number;
}

/** First open minute at or after `minute`. */
export function nextOpen(calendar: WorkCalendar, minute: number): number {
  return clockMinuteOf(calendar, workMinutesBefore(calendar, minute));
}

/** Clock minute at which `minutes` of work begun at `minute` are done; `minute` itself when there is no work. */
export function workEnd(calendar: WorkCalendar, minute: number, minutes: number): number {
  if (minutes === 0) return minute;
  return clockMinuteOf(calendar, workMinutesBefore(calendar, minute) + minutes - 1) + 1;
}

/** Latest start for which `minutes` of work end no later than the first moment at or after `end`. */
export function startForEnd(calendar: WorkCalendar, end: number, minutes: number): number {
  return clockMinuteOf(calendar, Math.max(0, workMinutesBefore(calendar, end) - minutes));
}

/** First minute at or after `minute` from which `minutes` of work fit into one open window. */
export function nextOpenRun(calendar: WorkCalendar, minute: number, minutes: number): number {
  let start = nextOpen(calendar, minute);
  for (;;) {
    const closes = closesAfter(calendar, start);
    if (closes - start >= minutes) return start;
    start = nextOpen(calendar, closes);
  }
}

/** End of the open window that an open minute lies in; infinite when it never closes again. */
function closesAfter(calendar: WorkCalendar, minute: number): number {
  // A window that touches the end of the tables may go on: look again with longer tables, then a week before their end.
  do {
    if (minute >= calendar.horizonMinutes) continue;
    const closes = calendar.closesAt[minute] as number;
    if (closes < calendar.horizonMinutes) return closes;
  } while (grow(calendar));
  const weeks = Math.max(0, weeksBehind(calendar, minute + 1));
  const near = calendar.closesAt[minute - weeks * minutesPerWeek] as number;
  const before = near === calendar.horizonMinutes ? weeks + 1 : weeks;
  const closes = calendar.closesAt[minute - before * minutesPerWeek] as number;
  return closes === calendar.horizonMinutes ? Number.POSITIVE_INFINITY : closes + before * minutesPerWeek;
}

/** Longest run of open minutes in the first weeks after everything out of the ordinary; 0 when it never opens. */
export function longestOpenRun(calendar: WorkCalendar): number {
  const lastSpecial = calendar.regularFromMinute;
  const until = Math.min(lastHorizonMinutes, lastSpecial + 15 * minutesPerDay);
  while (calendar.horizonMinutes < until) grow(calendar);
  let longest = 0;
  let run = 0;
  for (let minute = Math.min(lastSpecial, until); minute < until; minute++) {
    const isOpen = (calendar.workAt[minute + 1] as number) > (calendar.workAt[minute] as number);
    run = isOpen ? run + 1 : 0;
    if (run > longest) longest = run;
  }
  return longest;
}

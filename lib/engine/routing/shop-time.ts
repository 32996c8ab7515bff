/**
 * Shop time: days are integers (0 = 1970-01-01), minutes are shop-local minutes since that day's midnight. Every shop day has
 * 1,440 of them; on the two days a year when clocks change, an unattended phase that spans the change is an hour off, which
 * no cure notices. Pure integer arithmetic, no zone tables: the caller reads the shop's wall clock.
 */
import { type IsoDate, isoDate } from "#engine/units";
import type { ShopMinute } from "./types";

export const minutesPerDay = 1440;

/** Day number of a civil date (proleptic Gregorian; days-from-civil algorithm, eras of 400 years = 146,097 days). */
export function dayIndex(date: IsoDate): number {
  const month = Number(date.slice(5, 7));
  const year = Number(date.slice(0, 4)) - (month <= 2 ? 1 : 0);
  const era = Math.floor(year / 400);
  const yearOfEra = year - era * 400;
  const dayOfYear = Math.floor((153 * (month + (month > 2 ? -3 : 9)) + 2) / 5) + Number(date.slice(8, 10)) - 1;
  const dayOfEra = yearOfEra * 365 + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100) + dayOfYear;
  return era * 146_097 + dayOfEra - 719_468;
}

const dates = new Map<number, IsoDate>();
const mostDates = 10_000;

/** Civil date of a day number; a plan names the same few hundred days again and again. @throws RangeError outside the years 0000–9999. */
export function dateOfDay(day: number): IsoDate {
  let date = dates.get(day);
  if (date === undefined) {
    date = civilDate(day);
    if (dates.size >= mostDates) dates.clear();
    dates.set(day, date);
  }
  return date;
}

function civilDate(day: number): IsoDate {
  const shifted = day + 719_468;
  const era = Math.floor(shifted / 146_097);
  const dayOfEra = shifted - era * 146_097;
  const yearOfEra = Math.floor(
    (dayOfEra - Math.floor(dayOfEra / 1460) + Math.floor(dayOfEra / 36_524) - Math.floor(dayOfEra / 146_096)) / 365,
  );
  const dayOfYear = dayOfEra - (365 * yearOfEra + Math.floor(yearOfEra / 4) - Math.floor(yearOfEra / 100));
  const shiftedMonth = Math.floor((5 * dayOfYear + 2) / 153);
  const dayOfMonth = dayOfYear - Math.floor((153 * shiftedMonth + 2) / 5) + 1;
  const month = shiftedMonth + (shiftedMonth < 10 ? 3 : -9);
  const year = yearOfEra + era * 400 + (month <= 2 ? 1 : 0);
  const two = (value: number) => String(value).padStart(2, "0");
  return isoDate(`${String(year).padStart(4, "0")}-${two(month)}-${two(dayOfMonth)}`);
}

/** 1 = Monday … 7 = Sunday; day 0 was a Thursday. */
export function weekdayOf(day: number): number {
  return ((((day + 3) % 7) + 7) % 7) + 1;
}

/** Shop minute of a civil date and a minute of that day. */
export function shopMinute(date: IsoDate, minuteOfDay: number): ShopMinute {
  return dayIndex(date) * minutesPerDay + minuteOfDay;
}

/** The civil date that a shop minute falls on. */
export function dateOfShopMinute(minute: ShopMinute): IsoDate {
  return dateOfDay(Math.floor(minute / minutesPerDay));
}

/**
 * The weekdays (1 = Monday) that some days keep to, when they show a habit: each of at most two weekdays at least twice.
 * Empty when they do not.
 */
export function onlyWeekdays(days: readonly IsoDate[]): readonly number[] {
  const counts = new Map<number, number>();
  for (const day of days) {
    const weekday = weekdayOf(dayIndex(day));
    counts.set(weekday, (counts.get(weekday) ?? 0) + 1);
  }
  const isHabit = counts.size <= 2 && [...counts.values()].every((count) => count >= 2);
  return isHabit ? [...counts.keys()].sort((a, b) => a - b) : [];
}

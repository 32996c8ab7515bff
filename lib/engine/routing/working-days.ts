/** Days on which the shop works, counted on the civil calendar with its holidays. */
import type { IsoDate } from "#engine/units";
import type { ShopHours } from "./floor";
import { dateOfDay, dayIndex, weekdayOf } from "./shop-time";

export function isWorkingDay(hours: ShopHours, date: IsoDate): boolean {
  return (
    hours.workingWeekdays.includes(weekdayOf(dayIndex(date))) &&
    !hours.closedDays.some((closed) => closed.date === date)
  );
}

/** The working day that lies `count` working days after a date; with 0 the first working day from it on. */
export function addWorkingDays(hours: ShopHours, date: IsoDate, count: number): IsoDate {
  let day = dayIndex(date);
  let left = count;
  for (;;) {
    const today = dateOfDay(day);
    if (isWorkingDay(hours, today)) {
      if (left === 0) return today;
      left -= today === date ? 0 : 1;
      if (left === 0) return today;
    }
    day += 1;
  }
}

/** Working days after `from` up to and with `to`; negative when `to` lies before `from`. */
export function workingDaysBetween(hours: ShopHours, from: IsoDate, to: IsoDate): number {
  const [low, high] = from <= to ? [from, to] : [to, from];
  let count = 0;
  for (let day = dayIndex(low) + 1; day <= dayIndex(high); day++) if (isWorkingDay(hours, dateOfDay(day))) count += 1;
  return from <= to ? count : -count;
}

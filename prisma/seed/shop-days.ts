/** Working days of the demo, counted back from the moment the demo is made. */
import { dateOfDay, dayIndex, shopMinute, weekdayOf } from "#engine/routing";
import type { IsoDate } from "#engine/units";
import { floorCatalog } from "#shop/floor/recipe";
import { instantOfShopMinute, shopDay, shopMinuteOf } from "#shop/time/shop-time";

export interface DemoCalendar {
  /** The latest moment of work that is not after now. */
  readonly present: Date;
  /** A time of day on the working day so many before the present one; 0 is today's (or the last) working day. */
  readonly back: (workingDays: number, hour: number, minute?: number) => Date;
}

export function demoCalendar(now: Date): DemoCalendar {
  const { hours } = floorCatalog();
  const zone = hours.timeZone;
  const isOpen = (date: IsoDate) =>
    hours.workingWeekdays.includes(weekdayOf(dayIndex(date))) &&
    !hours.closedDays.some((closed) => closed.date === date);
  const opens = Math.min(...hours.windows.map((window) => window.fromMinute));
  const closes = Math.max(...hours.windows.map((window) => window.toMinute));
  let day = dayIndex(shopDay(now, zone));
  const minuteOfDay = shopMinuteOf(now, zone) - shopMinute(dateOfDay(day), 0);
  const isToday = isOpen(dateOfDay(day)) && minuteOfDay >= opens + 60;
  if (!isToday) {
    do day -= 1;
    while (!isOpen(dateOfDay(day)));
  }
  const today = day;
  const presentMinute = shopMinute(dateOfDay(today), isToday ? Math.min(minuteOfDay, closes - 5) : closes - 5);
  return {
    present: instantOfShopMinute(presentMinute, zone),
    back(workingDays, hour, minute = 0) {
      let at = today;
      for (let left = workingDays; left > 0; ) {
        at -= 1;
        if (isOpen(dateOfDay(at))) left -= 1;
      }
      return instantOfShopMinute(shopMinute(dateOfDay(at), hour * 60 + minute), zone);
    },
  };
}

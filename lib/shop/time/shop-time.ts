/**
 * The shop's own clock: instants on one side, days and minutes of the shop's zone on the other. The engine counts shop
 * minutes and knows no zone; only here does one become the other.
 */
import { dateOfDay, dateOfShopMinute, dayIndex, minutesPerDay, type ShopMinute, shopMinute } from "#engine/routing";
import type { IsoDate } from "#engine/units";
import { instantShowing, wallMinutesAt } from "./zone";

/** The calendar day it is in the shop. */
export function shopDay(instant: Date, timeZone: string): IsoDate {
  return dateOfShopMinute(shopMinuteOf(instant, timeZone));
}

/** As far ahead as a day may be promised or waited for. A day beyond it is a slip of the hand, and would have to be planned to. */
export const farthestDays = 366;

export function isTooFar(on: IsoDate, today: IsoDate): boolean {
  return dayIndex(on) - dayIndex(today) > farthestDays;
}

/** The shop's clock as documents print it: `YYYY-MM-DDTHH:mm`. */
export function shopClock(instant: Date, timeZone: string): string {
  const minute = shopMinuteOf(instant, timeZone);
  const minuteOfDay = minute - dayIndex(dateOfShopMinute(minute)) * minutesPerDay;
  const two = (value: number) => String(value).padStart(2, "0");
  return `${dateOfShopMinute(minute)}T${two(Math.floor(minuteOfDay / 60))}:${two(minuteOfDay % 60)}`;
}

export function shopMinuteOf(instant: Date, timeZone: string): ShopMinute {
  return wallMinutesAt(instant, timeZone);
}

/**
 * The instant at which the shop's clock shows this minute. Where the clock is set back the first of the two; a minute
 * that is skipped when it is set forward gives the instant an hour on.
 */
export function instantOfShopMinute(minute: ShopMinute, timeZone: string): Date {
  return instantShowing(minute, timeZone);
}

/** The instant at which the shop's day begins. */
export function startOfShopDay(day: IsoDate, timeZone: string): Date {
  return instantOfShopMinute(shopMinute(day, 0), timeZone);
}

export function addDays(day: IsoDate, days: number): IsoDate {
  return dateOfDay(dayIndex(day) + days);
}

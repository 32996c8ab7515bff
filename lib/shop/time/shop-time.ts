/**
 * The shop's own clock: instants on one side, days and minutes of the shop's zone on the other. The engine counts shop
 * minutes and knows no zone; only here does one become the other.
 */
import { dateOfDay, dayIndex, minutesPerDay, type ShopMinute, shopMinute } from "#engine/routing";
import { type IsoDate, isoDate } from "#engine/units";

interface WallClock {
  readonly date: IsoDate;
  readonly minuteOfDay: number;
}

const formats = new Map<string, Intl.DateTimeFormat>();

function formatOf(timeZone: string): Intl.DateTimeFormat {
  const known = formats.get(timeZone);
  if (known !== undefined) return known;
  const made = new Intl.DateTimeFormat("en-CA-u-ca-gregory-nu-latn", {
    timeZone,
    hourCycle: "h23",
    year: "numeric",
    month: "2-digit",
    day: "2-digit",
    hour: "2-digit",
    minute: "2-digit",
  });
  formats.set(timeZone, made);
  return made;
}

function wallClock(instant: Date, timeZone: string): WallClock {
  const parts = new Map(
    formatOf(timeZone)
      .formatToParts(instant)
      .map((part) => [part.type, part.value]),
  );
  const part = (name: Intl.DateTimeFormatPartTypes) => parts.get(name) ?? "";
  return {
    date: isoDate(`${part("year")}-${part("month")}-${part("day")}`),
    minuteOfDay: Number(part("hour")) * 60 + Number(part("minute")),
  };
}

/** The calendar day it is in the shop. */
export function shopDay(instant: Date, timeZone: string): IsoDate {
  return wallClock(instant, timeZone).date;
}

/** As far ahead as a day may be promised or waited for. A day beyond it is a slip of the hand, and would have to be planned to. */
export const farthestDays = 366;

export function isTooFar(on: IsoDate, today: IsoDate): boolean {
  return dayIndex(on) - dayIndex(today) > farthestDays;
}

/** The shop's clock as documents print it: `YYYY-MM-DDTHH:mm`. */
export function shopClock(instant: Date, timeZone: string): string {
  const { date, minuteOfDay } = wallClock(instant, timeZone);
  const two = (value: number) => String(value).padStart(2, "0");
  return `${date}T${two(Math.floor(minuteOfDay / 60))}:${two(minuteOfDay % 60)}`;
}

export function shopMinuteOf(instant: Date, timeZone: string): ShopMinute {
  const { date, minuteOfDay } = wallClock(instant, timeZone);
  return shopMinute(date, minuteOfDay);
}

/**
 * The instant at which the shop's clock shows this minute. Where the clock is set back the first of the two; a minute
 * that is skipped when it is set forward gives the instant an hour on.
 */
export function instantOfShopMinute(minute: ShopMinute, timeZone: string): Date {
  const asUtc = minute * 60_000;
  // No zone is a day from UTC: the two offsets are those before and after any change near this minute.
  for (const days of [-1, 1]) {
    const offset = offsetMs(new Date(asUtc + days * 86_400_000), timeZone);
    const candidate = new Date(asUtc - offset);
    if (shopMinuteOf(candidate, timeZone) === minute) return candidate;
  }
  return new Date(asUtc - offsetMs(new Date(asUtc - 86_400_000), timeZone));
}

/** The instant at which the shop's day begins. */
export function startOfShopDay(day: IsoDate, timeZone: string): Date {
  return instantOfShopMinute(shopMinute(day, 0), timeZone);
}

export function addDays(day: IsoDate, days: number): IsoDate {
  return dateOfDay(dayIndex(day) + days);
}

function offsetMs(instant: Date, timeZone: string): number {
  const { date, minuteOfDay } = wallClock(instant, timeZone);
  const wholeMinute = Math.floor(instant.getTime() / 60_000) * 60_000;
  return (dayIndex(date) * minutesPerDay + minuteOfDay) * 60_000 - wholeMinute;
}

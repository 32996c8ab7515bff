/** How documents write numbers, money and days: one way everywhere, half up, the unit beside the number. */
import words from "#content/copy/papers.json";

import type { Price } from "#engine/pricing";
import type { IsoDate } from "#engine/units";
import { textForPeople } from "#engine/units";
import type { LocalDateTime } from "./facts";

const { weekdays, months } = words.parts;

/** A number with exactly `decimals` digits and thousands apart: 1460.95 → "1 461" (narrow no-break space). */
export function numberText(value: number, decimals = 0): string {
  const [whole = "0", fraction] = textForPeople(value, decimals).split(".");
  const grouped = whole.replace(/\B(?=(\d{3})+$)/g, "\u00a0");
  return fraction === undefined ? grouped : `${grouped}.${fraction}`;
}

export function mm(value: number, decimals = 0): string {
  return `${numberText(value, decimals)}\u00a0mm`;
}

export function grams(value: number): string {
  return `${numberText(value)}\u00a0g`;
}

/** Shorter form for drawings: no thousands space, no trailing ".0". */
export function plainNumber(value: number, decimals = 0): string {
  return textForPeople(value, decimals).replace(/\.0+$/, "");
}

/** Integer cents as "$1 925.00"; credits with a true minus sign. */
export function money(cents: number, currency: Price["currency"] = "USD"): string {
  const sign = cents < 0 ? "\u2212" : "";
  const symbol = currency === "USD" ? "$" : "";
  const whole = Math.trunc(Math.abs(cents) / 100);
  const rest = String(Math.abs(cents) % 100).padStart(2, "0");
  return `${sign}${symbol}${String(whole).replace(/\B(?=(\d{3})+$)/g, ",")}.${rest}`;
}

/** "Mon 12 Jan 2026". Civil-calendar arithmetic only, no time zone takes part. */
export function dayText(day: IsoDate): string {
  const [year = 0, month = 1, date = 1] = day.split("-").map(Number);
  return `${weekdays[weekday(year, month, date)]}\u00a0${date}\u00a0${months[month - 1]}\u00a0${year}`;
}

/** "25 Nov 2026, 09:32" of a shop-clock reading. */
export function clockText(reading: LocalDateTime): string {
  const [day = "", time = ""] = reading.split("T");
  const [year = 0, month = 1, date = 1] = day.split("-").map(Number);
  return `${date}\u00a0${months[month - 1]}\u00a0${year}, ${time.slice(0, 5)}`;
}

/** Day of the week, 0 = Sunday. Sakamoto's congruence for the Gregorian calendar (from memory; checked against ISO days). */
function weekday(year: number, month: number, date: number): number {
  const shift = [0, 3, 2, 5, 0, 3, 5, 1, 4, 6, 2, 4][month - 1] ?? 0;
  const y = month < 3 ? year - 1 : year;
  return (y + Math.floor(y / 4) - Math.floor(y / 100) + Math.floor(y / 400) + shift + date) % 7;
}

/** First digits of a hash, grouped for reading over a phone. */
export function shortHash(hash: string): string {
  return hash.slice(0, 12).replace(/(.{4})(?=.)/g, "$1 ");
}

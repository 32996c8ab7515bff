/** The shop's seasons: from one day of the year to the day before it. */
import type { IsoDate } from "#engine/units";

/** The year in which the season of a day began. @param startsOn its first day, `MM-DD` */
export function seasonOf(day: IsoDate, startsOn: string): number {
  const year = Number(day.slice(0, 4));
  return day.slice(5) >= startsOn ? year : year - 1;
}

/** "2026/27"; a season that begins on New Year is a year: "2026". */
export function seasonLabel(season: number, startsOn: string): string {
  return startsOn === "01-01" ? String(season) : `${season}/${String((season + 1) % 100).padStart(2, "0")}`;
}

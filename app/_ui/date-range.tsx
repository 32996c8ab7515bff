/**
 * Dates for people. A shop day is an IsoDate (YYYY-MM-DD in the shop's zone) and is written without ever passing
 * through the reader's time zone; an instant is written in the zone named.
 */
import words from "#content/copy/dates.json";
import { toldShare } from "#engine/units";
import type { DateRange as ToldRange } from "#services/views";
import { fill } from "./words";

/** The share of futures that are ready by the close of each of the two days. */
export type DayShares = NonNullable<ToldRange["shares"]>;

const monthNames = [
  "January",
  "February",
  "March",
  "April",
  "May",
  "June",
  "July",
  "August",
  "September",
  "October",
  "November",
  "December",
] as const;

interface Day {
  readonly year: number;
  readonly month: string;
  readonly day: number;
}

function parts(iso: string): Day {
  const [year = 0, month = 1, day = 1] = iso.slice(0, 10).split("-").map(Number);
  return { year, month: monthNames[month - 1] ?? "", day };
}

/** "12 January 2027" */
export function dayText(iso: string, withYear = true): string {
  const { year, month, day } = parts(iso);
  return withYear ? `${day} ${month} ${year}` : `${day} ${month}`;
}

/** "Tuesday 8 December", a day that somebody plans by. */
export function weekdayText(iso: string): string {
  // The middle of a day of no zone: its weekday is the same for every reader.
  const weekday = new Intl.DateTimeFormat("en-GB", { weekday: "long", timeZone: "UTC" });
  return `${weekday.format(Date.parse(`${iso.slice(0, 10)}T12:00:00Z`))} ${dayText(iso, false)}`;
}

/** "12–23 January", "28 January – 4 February", with years only where they differ or `withYear`. */
export function dateRangeText(from: string, to: string, withYear = false): string {
  const a = parts(from);
  const b = parts(to);
  const year = withYear ? ` ${b.year}` : "";
  if (a.year !== b.year) return `${dayText(from)} – ${dayText(to)}`;
  if (a.month !== b.month) return `${a.day} ${a.month} – ${b.day} ${b.month}${year}`;
  return a.day === b.day ? `${a.day} ${a.month}${year}` : `${a.day}–${b.day} ${b.month}${year}`;
}

/** An instant as "25 Nov 2026, 14:05" in the shop's zone. */
export function instantText(iso: string, timeZone: string): string {
  return new Intl.DateTimeFormat("en-GB", {
    day: "numeric",
    month: "short",
    year: "numeric",
    hour: "2-digit",
    minute: "2-digit",
    timeZone,
  }).format(Date.parse(iso));
}

/** How sure two days are: the share of futures that are ready by the close of each. Told before shares were: as it was then. */
export function shareText(from: string, to: string, shares: DayShares | undefined): string {
  const which = from === to ? "one" : "two";
  if (shares === undefined) return words.untold[which];
  const [first, last] = [toldShare(shares.p50, words.shares), toldShare(shares.p90, words.shares)];
  return fill(words.range[which], { first, last });
}

/** The range every page shows: the middle day to the day that nine in ten orders keep, each with its own share. */
export function DateRange({
  from,
  to,
  shares,
  verb = "ready",
  withYear,
}: {
  readonly from: string;
  readonly to: string;
  /** Absent where the days were told without. */
  readonly shares?: DayShares | undefined;
  readonly verb?: string;
  readonly withYear?: boolean;
}) {
  return (
    <span>
      {verb} <strong className="font-semibold sm:whitespace-nowrap">{dateRangeText(from, to, withYear)}</strong>,{" "}
      {shareText(from, to, shares)}
    </span>
  );
}

/**
 * Dates for people. A shop day is an IsoDate (YYYY-MM-DD in the shop's zone) and is written without ever passing
 * through the reader's time zone; an instant is written in the zone named.
 */
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

/** The range every page shows: middle date to the date that nine in ten orders keep. */
export function DateRange({
  from,
  to,
  verb = "ready",
  withYear,
}: {
  readonly from: string;
  readonly to: string;
  readonly verb?: string;
  readonly withYear?: boolean;
}) {
  return (
    <span>
      {verb} <strong className="font-semibold sm:whitespace-nowrap">{dateRangeText(from, to, withYear)}</strong>,{" "}
      {from === to ? "nine times out of ten by then" : "nine times out of ten by the later date"}
    </span>
  );
}

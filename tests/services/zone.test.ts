/**
 * Clocks of zones, against the changes the tz database names (in words in each row) and against the clock of Intl, which
 * shares no code with the library that is asked. A shop's days must be right wherever it stands.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { instantShowing, wallMinutesAt } from "#shop/time/zone";

/** "2026-03-08 02:30" as minutes of a clock without a zone. */
const minutesOf = (clock: string) => Date.parse(`${clock.replace(" ", "T")}:00Z`) / 60_000;
const clockOf = (minutes: number) => new Date(minutes * 60_000).toISOString().slice(0, 16).replace("T", " ");

const denver = "America/Denver";
const lordHowe = "Australia/Lord_Howe";
const apia = "Pacific/Apia";
const kathmandu = "Asia/Kathmandu";

describe("the clock of a zone", () => {
  it.each([
    // 8 March 2026, 02:00 MST = 09:00 UTC: the clock goes to 03:00 MDT.
    ["a minute before the clock goes forward", denver, "2026-03-08T08:59:00Z", "2026-03-08 01:59"],
    ["the minute it goes forward", denver, "2026-03-08T09:00:00Z", "2026-03-08 03:00"],
    // 1 November 2026, 02:00 MDT = 08:00 UTC: the clock goes back to 01:00 MST.
    ["the first half past one", denver, "2026-11-01T07:30:00Z", "2026-11-01 01:30"],
    ["the last minute before it goes back", denver, "2026-11-01T07:59:59Z", "2026-11-01 01:59"],
    ["the minute it goes back", denver, "2026-11-01T08:00:00Z", "2026-11-01 01:00"],
    ["the second half past one", denver, "2026-11-01T08:30:00Z", "2026-11-01 01:30"],
    // Half an hour: 5 April 2026, 02:00 at +11:00 becomes 01:30 at +10:30; 4 October, 02:00 becomes 02:30.
    ["before half an hour back", lordHowe, "2026-04-04T14:59:00Z", "2026-04-05 01:59"],
    ["after half an hour back", lordHowe, "2026-04-04T15:00:00Z", "2026-04-05 01:30"],
    ["before half an hour forward", lordHowe, "2026-10-03T15:29:00Z", "2026-10-04 01:59"],
    ["after half an hour forward", lordHowe, "2026-10-03T15:30:00Z", "2026-10-04 02:30"],
    // Samoa crossed the date line: after 29 December 2011, 24:00 at -10:00, came 31 December 00:00 at +14:00.
    ["the last minute before a day that never was", apia, "2011-12-30T09:59:00Z", "2011-12-29 23:59"],
    ["the first minute after it", apia, "2011-12-30T10:00:00Z", "2011-12-31 00:00"],
    // A quarter past: +05:45 all year since 1986, when it was +05:30.
    ["a zone of quarters", kathmandu, "2026-11-30T18:15:00Z", "2026-12-01 00:00"],
    ["before it was one", kathmandu, "1985-12-31T18:29:00Z", "1985-12-31 23:59"],
    ["as it became one", kathmandu, "1985-12-31T18:30:00Z", "1986-01-01 00:15"],
    ["no zone at all", "UTC", "2026-11-30T18:15:59.999Z", "2026-11-30 18:15"],
    ["before 1970", "UTC", "1969-12-31T23:59:30Z", "1969-12-31 23:59"],
  ])("shows %s", (_what, zone, instant, clock) => {
    expect(clockOf(wallMinutesAt(new Date(instant), zone))).toBe(clock);
  });

  it.each([
    ["shown twice: the first", denver, "2026-11-01 01:30", "2026-11-01T07:30:00Z"],
    ["shown twice, by half an hour", lordHowe, "2026-04-05 01:45", "2026-04-04T14:45:00Z"],
    ["never shown: an hour on", denver, "2026-03-08 02:30", "2026-03-08T09:30:00Z"],
    ["never shown: half an hour on", lordHowe, "2026-10-04 02:15", "2026-10-03T15:45:00Z"],
    ["on a day that never was: the same time of the next", apia, "2011-12-30 12:00", "2011-12-30T22:00:00Z"],
    ["at the midnight of that day", apia, "2011-12-30 00:00", "2011-12-30T10:00:00Z"],
    ["the day after it", apia, "2011-12-31 08:00", "2011-12-30T18:00:00Z"],
    ["the day before it", apia, "2011-12-29 08:00", "2011-12-29T18:00:00Z"],
    ["a quarter past", kathmandu, "2026-12-01 00:00", "2026-11-30T18:15:00Z"],
    ["the first day of summer time", denver, "2026-03-08 07:30", "2026-03-08T13:30:00Z"],
    ["the first day of winter time", denver, "2026-11-01 07:30", "2026-11-01T14:30:00Z"],
  ])("finds the instant of a minute %s", (_what, zone, clock, instant) => {
    expect(instantShowing(minutesOf(clock), zone)).toEqual(new Date(instant));
  });

  it.each([denver, lordHowe, apia, kathmandu, "Europe/Dublin", "America/Sao_Paulo", "Africa/Casablanca"])(
    "is the clock that Intl shows in %s, asked in any order",
    (zone) => {
      const format = new Intl.DateTimeFormat("sv-SE", { timeZone: zone, dateStyle: "short", timeStyle: "short" });
      const years = { min: Date.parse("1980-01-01") / 1000, max: Date.parse("2037-01-01") / 1000 };
      fc.assert(
        fc.property(fc.integer(years), (seconds) => {
          const instant = new Date(seconds * 1000);
          const minutes = wallMinutesAt(instant, zone);
          expect(clockOf(minutes)).toBe(format.format(instant));
          // Whatever instant is found again, its clock shows the same; no clock change is wider than a day.
          const again = instantShowing(minutes, zone);
          expect(wallMinutesAt(again, zone)).toBe(minutes);
          expect(Math.abs(again.getTime() - Math.floor(seconds / 60) * 60_000)).toBeLessThan(86_400_000);
        }),
        { numRuns: 400 },
      );
    },
  );

  it("knows no zone by a name that is none", () => {
    expect(() => wallMinutesAt(new Date(0), "America/Fennick")).toThrow(RangeError);
    expect(() => instantShowing(0, "America/Fennick")).toThrow(RangeError);
  });
});

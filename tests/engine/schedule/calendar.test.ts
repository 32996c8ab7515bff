import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  type CalendarSpec,
  nextOpen,
  nextOpenRun,
  startForEnd,
  workCalendar,
  workEnd,
  workMinutesBefore,
} from "#engine/schedule";
import truth from "../../fixtures/truth/queue.json";
import { isOpen } from "../../support/feasible";

/** A check of fixtures/truth/queue.json; its source stands beside it there. */
function check(id: string) {
  const found = truth.find((candidate) => candidate.id === id);
  if (found === undefined) throw new Error(`no check "${id}"`);
  return found as unknown as { inputs: Record<string, never>; expected: Record<string, never> };
}

describe("workEnd", () => {
  it.for(["calendar-1", "calendar-2-holiday"])("ends work at the hand-worked minute of %s", (id) => {
    const { inputs, expected } = check(id);
    const { windows_hours, holidays_day_index, cases } = inputs as unknown as {
      windows_hours: [number, number][];
      holidays_day_index: number[];
      cases: [number, number][];
    };
    const calendar = workCalendar([
      {
        windows: windows_hours.map(([from, to]) => [from * 60, to * 60] as const),
        weekdays: [1, 2, 3, 4, 5],
        closedDays: holidays_day_index,
      },
    ]);
    expect(cases.map(([start, hours]) => workEnd(calendar, start * 60, hours * 60) / 60)).toEqual(expected.end_hour);
  });
});

describe("calendars behind their tables", () => {
  const dayMinutes = 1440;
  const spec: CalendarSpec = {
    windows: [
      [480, 720],
      [750, 990],
    ],
    weekdays: [1, 2, 3, 4, 5],
    firstWeekday: 4,
    closedDays: [9, 300],
    closures: [[1000 * dayMinutes, 1003 * dayMinutes]],
    extraWindows: [[12 * dayMinutes + 600, 12 * dayMinutes + 700]],
  };
  const calendar = workCalendar([spec]);

  const late = fc.integer({ min: 1500 * dayMinutes, max: 40 * 366 * dayMinutes });

  it("are open and closed as the weekly hours say, decades ahead", () => {
    fc.assert(
      fc.property(late, (minute) => {
        const open = workMinutesBefore(calendar, minute + 1) - workMinutesBefore(calendar, minute);
        expect(open).toBe(isOpen(spec, minute) ? 1 : 0);
      }),
    );
  });

  it("count eight hours on five days of every week", () => {
    fc.assert(
      fc.property(late, fc.integer({ min: 1, max: 500 }), (minute, weeks) => {
        const later = minute + weeks * 7 * dayMinutes;
        expect(workMinutesBefore(calendar, later) - workMinutesBefore(calendar, minute)).toBe(weeks * 5 * 480);
        expect(nextOpen(calendar, later)).toBe(nextOpen(calendar, minute) + weeks * 7 * dayMinutes);
        expect(workEnd(calendar, minute, weeks * 5 * 480 + 1)).toBe(
          workEnd(calendar, minute, 1) + weeks * 7 * dayMinutes,
        );
      }),
    );
  });

  it("find the first window that is long enough, and the latest start for an end", () => {
    fc.assert(
      fc.property(late, fc.integer({ min: 1, max: 240 }), (minute, minutes) => {
        const start = nextOpenRun(calendar, minute, minutes);
        const fits = (from: number) =>
          Array.from({ length: minutes }, (_, k) => isOpen(spec, from + k)).every((each) => each);
        expect(fits(start)).toBe(true);
        for (let earlier = minute; earlier < start; earlier += 7) expect(fits(earlier)).toBe(false);
        const end = workEnd(calendar, start, minutes);
        expect(startForEnd(calendar, end, minutes)).toBe(start);
      }),
    );
  });

  it("find a window that opens on the minute the tables end, whatever that is", () => {
    // Every day from midnight, so that a window begins wherever a table of whole days ends; none is longer than four leap years.
    for (const days of [28, 112, 4 * 366]) {
      const early = workCalendar([{ windows: [[0, 480]] }]);
      expect(nextOpenRun(early, days * dayMinutes, 480)).toBe(days * dayMinutes);
      expect(nextOpenRun(early, days * dayMinutes + 1, 480)).toBe((days + 1) * dayMinutes);
    }
  });

  it("take a shop that never closes as one window without an end", () => {
    const always = workCalendar([{ windows: [[0, dayMinutes]] }]);
    expect(nextOpenRun(always, 20 * 366 * dayMinutes, 3 * 366 * dayMinutes)).toBe(20 * 366 * dayMinutes);
    expect(workEnd(always, 20 * 366 * dayMinutes, 5)).toBe(20 * 366 * dayMinutes + 5);
  });
});

/** A fixed instant for tests: Tuesday 6 January 2026, 10:00 in Denver. */
export const testNow = new Date("2026-01-06T17:00:00.000Z");

/** An instant so many minutes after another. */
export function minutesAfter(start: Date, minutes: number): Date {
  return new Date(start.getTime() + minutes * 60_000);
}

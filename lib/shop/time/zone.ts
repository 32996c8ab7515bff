/**
 * Clocks of time zones: an instant as a zone's clock shows it, and the instant at which it does. The only place that
 * asks the zone tables, through Temporal; everything above counts days and minutes of the shop's own clock.
 */
import { Temporal } from "temporal-polyfill";

/** What a clock on the wall of a zone shows, as minutes since its own 1970-01-01 00:00, seconds left out. */
export type WallMinutes = number;

/** A time in which a zone's clock is not changed: half-open, in ms since the epoch. */
interface Stretch {
  readonly fromMs: number;
  readonly untilMs: number;
  readonly offsetMs: number;
}

/** What the zone's clock shows at an instant. @throws RangeError for an instant or a zone that does not exist */
export function wallMinutesAt(instant: Date, timeZone: string): WallMinutes {
  const ms = instant.getTime();
  return Math.floor((ms + stretchAt(ms, timeZone).offsetMs) / 60_000);
}

/**
 * The instant at which the zone's clock shows this. Where the clock is set back the first of the two; what is skipped
 * when it is set forward gives the instant that would have had it, on the clock as it was before.
 */
export function instantShowing(minutes: WallMinutes, timeZone: string): Date {
  const shown = new Date(minutes * 60_000);
  const clock = new Temporal.PlainDateTime(
    shown.getUTCFullYear(),
    shown.getUTCMonth() + 1,
    shown.getUTCDate(),
    shown.getUTCHours(),
    shown.getUTCMinutes(),
  );
  return new Date(clock.toZonedDateTime(timeZone, { disambiguation: "compatible" }).epochMilliseconds);
}

// A plan reads some thousand instants of the same season: the tables are asked once for each stretch.
const stretches = new Map<string, Stretch[]>();

function stretchAt(ms: number, timeZone: string): Stretch {
  const known = stretches.get(timeZone) ?? [];
  const found = known.find(({ fromMs, untilMs }) => fromMs <= ms && ms < untilMs);
  if (found !== undefined) return found;
  const at = Temporal.Instant.fromEpochMilliseconds(ms).toZonedDateTimeISO(timeZone);
  const next = at.getTimeZoneTransition("next");
  // The transition before the end of this stretch: asked from `at`, one at this very instant would be left out.
  const last = (next ?? at.add({ milliseconds: 1 })).getTimeZoneTransition("previous");
  const stretch = {
    fromMs: last?.epochMilliseconds ?? Number.NEGATIVE_INFINITY,
    untilMs: next?.epochMilliseconds ?? Number.POSITIVE_INFINITY,
    offsetMs: at.offsetNanoseconds / 1_000_000,
  };
  stretches.set(timeZone, [stretch, ...known]);
  return stretch;
}

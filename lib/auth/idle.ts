/** When a sign-in ends by itself: by the clock, and when its person has done nothing for too long. */
import type { StaffRole } from "#data/access";
import type { SessionTimes } from "#data/sessions";

/** The absolute end, hours: a working day with its overtime; staff sign in once a morning. Shop practice, no source. */
export const sessionHours = 14;

/** Who does nothing for so long has gone away, minutes. Half an hour at a desk; a shift with its breaks at the bench. */
export const idleMinutes = { desk: 30, shift: 10 * 60 } as const;

/** A maker whose hands are full of resin keeps a whole shift, on a device that knows them; everybody else half an hour. */
export function idleMinutesFor(role: StaffRole, isKnownDevice: boolean): number {
  return role === "maker" && isKnownDevice ? idleMinutes.shift : idleMinutes.desk;
}

/** True from the very instant on. */
export function isOver({ lastSeenAt, expiresAt, idleMinutes: idle }: SessionTimes, now: Date): boolean {
  return now >= expiresAt || now.getTime() - lastSeenAt.getTime() >= idle * 60_000;
}

/** When it will end by itself if nobody does anything any more. */
export function endsAt({ lastSeenAt, expiresAt, idleMinutes: idle }: SessionTimes): Date {
  return new Date(Math.min(expiresAt.getTime(), lastSeenAt.getTime() + idle * 60_000));
}

/** A proxy in front that the settings do not name: then visitors cannot be told apart by address, and the owner should know. */

import { systemActor } from "#auth";
import history from "#content/copy/history.json";
import { eventTimes, recordEvents } from "#data/events";
import type { Context } from "#services/context";
import { eventOf } from "#services/record";

const subject = { kind: "door", id: "proxy" } as const;
/** Told once a day, and shown as long as it was seen lately. */
const toldEveryMs = 86_400_000;
const shownForMs = 7 * 86_400_000;

let toldAt = 0;

/** Keeps in the record that forwarded headers came and were not believed. */
export async function noteUnnamedProxy(ctx: Context): Promise<void> {
  const now = ctx.now.getTime();
  if (now - toldAt < toldEveryMs) return;
  toldAt = now;
  const since = new Date(now - toldEveryMs);
  if ((await eventTimes(ctx.db, "unnamed-proxy-seen", since)).length > 0) return;
  const own: Context = { ...ctx, actor: systemActor(history.doors.task) };
  await recordEvents(ctx.db, [eventOf(own, "unnamed-proxy-seen", subject, {})]);
}

/** When one was seen last, of late; null when none was. */
export async function unnamedProxySeen(ctx: Pick<Context, "db" | "now">): Promise<string | null> {
  const times = await eventTimes(ctx.db, "unnamed-proxy-seen", new Date(ctx.now.getTime() - shownForMs));
  return times.at(-1)?.toISOString() ?? null;
}

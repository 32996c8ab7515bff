/** A refusal in words, and the days and instants of the shop's own clock. */

import { instantText } from "#app/_ui/date-range.tsx";
import refusalWords from "#content/copy/refusals.json";
import type { Refusal } from "#engine/units";
import { wordsFor } from "#schemas";
import { settings } from "#services";

/** What is behind "not yet": a blocked sale names each thing that blocks it. */
export function say(refusal: Refusal): string {
  const reasons = Array.isArray(refusal.by) ? (refusal.by as readonly Refusal[]).map(say) : [];
  return [wordsFor(refusal, refusalWords), ...reasons].join(" ");
}

export const clock = (instant: string) => instantText(instant, settings().shop.timeZone);

/** "14:05" on the shop's clock. */
export function timeOfDay(instant: string): string {
  return new Intl.DateTimeFormat("en-GB", {
    hour: "2-digit",
    minute: "2-digit",
    timeZone: settings().shop.timeZone,
  }).format(Date.parse(instant));
}

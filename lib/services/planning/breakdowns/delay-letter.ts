/** The delay notice: old and new date, reason, what the customer can do, and until when (content/README.md). */
import words from "#content/copy/breakdowns.json";
import { fill, type IsoDate } from "#engine/units";
import { currentCatalog } from "#shop/catalogue/current";
import type { PromiseEffect } from "#shop/queue/views";
import { addDays, shopDay } from "#shop/time/shop-time";

/** A week to think about it; the demo shop's own rule, no source. */
const daysToReply = 7;

/** The day by which the customer is asked to answer. */
export function replyBy(now: Date): IsoDate {
  return addDays(shopDay(now, currentCatalog().shop.timeZone), daysToReply);
}

export function delayLetter(now: Date, kind: string, effect: PromiseEffect) {
  const by = replyBy(now);
  const data = {
    oldDate: effect.promisedOn,
    newDates: effect.after,
    reason: kind,
    options: ["accept", "cancel-and-refund"],
    replyBy: by,
  };
  const w = words.letter;
  const reasons: Readonly<Record<string, string>> = w.reasons;
  const body = [
    fill(w.greeting, { name: effect.skierFirstName }),
    fill(w.dates, {
      ski: effect.ski,
      old: effect.promisedOn === null ? "" : longDay(effect.promisedOn),
      from: longDay(effect.after.p50),
      to: longDay(effect.after.p90),
    }),
    reasons[kind] ?? w.reasons.other,
    fill(w.options, { replyBy: longDay(by) }),
    w.close,
  ].join("\n\n");
  return { body, data };
}

const longDates = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });

export function longDay(day: string): string {
  return longDates.format(Date.parse(day));
}

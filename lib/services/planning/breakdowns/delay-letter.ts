/** The delay notice: old and new date, reason, what the customer can do, and until when (content/README.md). */
import words from "#content/copy/breakdowns.json";
import dateWords from "#content/copy/dates.json";
import { fill, type IsoDate, toldShare } from "#engine/units";
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
    newDays(effect),
    reasons[kind] ?? w.reasons.other,
    fill(w.options, { replyBy: longDay(by) }),
    w.close,
  ].join("\n\n");
  return { body, data };
}

function newDays({ ski, promisedOn, after }: PromiseEffect): string {
  return rangeLine(words.letter, after, { ski, old: promisedOn === null ? "" : longDay(promisedOn) });
}

/** A line with two days and how sure they are. */
export function rangeLine(
  w: { readonly dates: string; readonly datesShares: string },
  { p50, p90, shares }: PromiseEffect["after"],
  about: Readonly<Record<string, string>>,
): string {
  const days = { ...about, from: longDay(p50), to: longDay(p90) };
  if (shares === undefined) return fill(w.dates, days);
  const [first, last] = [toldShare(shares.p50, dateWords.shares), toldShare(shares.p90, dateWords.shares)];
  return fill(w.datesShares, { ...days, shares: fill(dateWords.range[p50 === p90 ? "one" : "two"], { first, last }) });
}

const longDates = new Intl.DateTimeFormat("en-GB", { day: "numeric", month: "long", year: "numeric", timeZone: "UTC" });

export function longDay(day: string): string {
  return longDates.format(Date.parse(day));
}

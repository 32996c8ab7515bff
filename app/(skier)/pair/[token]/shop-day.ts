import { settings } from "#services";

/** The shop's own day of an instant. */
export function dayIn(instant: string): string {
  return new Intl.DateTimeFormat("en-GB", {
    day: "numeric",
    month: "long",
    year: "numeric",
    timeZone: settings().shop.timeZone,
  }).format(Date.parse(instant));
}

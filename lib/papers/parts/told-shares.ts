/** How sure the days of a range are, in words. */
import words from "#content/copy/dates.json";
import { fill, type IsoDate, toldShare } from "#engine/units";

/** Two days, and the share of futures ready by the close of each; days told before shares were have none. */
export interface RangeFacts {
  readonly from: IsoDate;
  readonly to: IsoDate;
  readonly shares?: { readonly p50: number; readonly p90: number } | undefined;
}

/** "three of four by the first day, nine of ten by the last"; null for days that were told without shares. */
export function sharesText({ from, to, shares }: RangeFacts): string | null {
  if (shares === undefined) return null;
  const first = toldShare(shares.p50, words.shares);
  return fill(words.range[from === to ? "one" : "two"], { first, last: toldShare(shares.p90, words.shares) });
}

/** What somebody had before their eyes when they asked for a quote, beside what it would be made of. */
import { canonicalJson } from "#catalog";
import type { Refusal } from "#engine/units";
import { seenDifferences } from "#schemas";
import type { QuoteSeen, SeenDifference } from "./views";

type Now = Omit<QuoteSeen, "version">;

/**
 * What differs, by path: choices.KEY of the pair, price (cents), date (two days). What was not shown is not compared.
 * Empty when the quote is what was seen.
 */
export function differencesFrom(seen: QuoteSeen, now: Now): readonly SeenDifference[] {
  const before: Readonly<Record<string, unknown>> = { ...seen.spec };
  const after: Readonly<Record<string, unknown>> = { ...now.spec };
  const keys = seen.spec === null ? [] : [...new Set([...Object.keys(before), ...Object.keys(after)])];
  const isOther = (a: unknown, b: unknown) => canonicalJson(rounded(a)) !== canonicalJson(rounded(b));
  const difference = (path: string, was: unknown, is: unknown): readonly SeenDifference[] =>
    isOther(was, is) ? [{ path, seen: was ?? null, now: is ?? null }] : [];
  return [
    ...keys.flatMap((key) => difference(`choices.${key}`, before[key], after[key])),
    ...(seen.totalCents === null ? [] : difference("price", seen.totalCents, now.totalCents)),
    ...(seen.dates === null ? [] : difference("date", seen.dates, now.dates)),
  ];
}

/** Two machines may differ in the last digits of a power; nobody sees those. */
function rounded(value: unknown): unknown {
  if (typeof value === "number") return Number(value.toPrecision(9));
  if (Array.isArray(value)) return value.map(rounded);
  if (value === null || typeof value !== "object") return value ?? null;
  return Object.fromEntries(Object.entries(value).map(([key, each]) => [key, rounded(each)]));
}

/** The differences that a refusal `sheet-changed` carries; none for any other. */
export function differencesOf(refusal: Refusal): readonly SeenDifference[] {
  return refusal.code === "sheet-changed" ? seenDifferences.catch([]).parse(refusal.differences) : [];
}

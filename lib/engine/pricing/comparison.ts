/** Two prices of the same thing, line by line: what a re-priced quote shows before anyone accepts it. */
import { cents } from "#engine/units";
import type { Price, PriceComparison, PriceDifference, PriceLine } from "./types";

/** Lines in the order of `after`, then what fell away. Lines are matched by code. */
export function comparePrices(before: Price, after: Price): PriceComparison {
  const kept = after.lines.map((line) => difference(find(before, line.code), line));
  const removed = before.lines.filter((line) => find(after, line.code) === undefined);
  return {
    lines: [...kept, ...removed.map((line) => difference(line, undefined))],
    exTaxBeforeCents: before.exTaxCents,
    exTaxAfterCents: after.exTaxCents,
    exTaxDifferenceCents: cents(after.exTaxCents - before.exTaxCents),
    totalDifferenceCents: cents(after.totalCents - before.totalCents),
  };
}

function find(price: Price, code: string): PriceLine | undefined {
  return price.lines.find((line) => line.code === code);
}

function difference(before: PriceLine | undefined, after: PriceLine | undefined): PriceDifference {
  const beforeCents = before?.lineCents ?? cents(0);
  const afterCents = after?.lineCents ?? cents(0);
  return {
    code: after?.code ?? before?.code ?? "",
    label: after?.label ?? before?.label ?? "",
    change: changeOf(before, after),
    beforeCents,
    afterCents,
    differenceCents: cents(afterCents - beforeCents),
  };
}

function changeOf(before: PriceLine | undefined, after: PriceLine | undefined): PriceDifference["change"] {
  if (before === undefined) return "added";
  if (after === undefined) return "removed";
  return before.lineCents === after.lineCents ? "same" : "changed";
}

/** Money for people: integer cents in, the currency's own writing out. No arithmetic here. */
import type { Price } from "#engine/pricing";

/** The one currency that prices are in; another does not compile before it has a writing here. */
const currency: Price["currency"] = "USD";

export function moneyText(cents: number, style: "exact" | "short" = "exact"): string {
  const whole = style === "short" && cents % 100 === 0;
  return new Intl.NumberFormat("en-US", {
    style: "currency",
    currency,
    minimumFractionDigits: whole ? 0 : 2,
  }).format(cents / 100);
}

/** A difference with its sign: "+$60", "−$40", "same price". */
export function moneyChangeText(cents: number): string {
  if (cents === 0) return "same price";
  return `${cents > 0 ? "+" : "−"}${moneyText(Math.abs(cents), "short")}`;
}

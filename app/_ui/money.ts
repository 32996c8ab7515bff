/** Money for people: integer cents in, the currency's own writing out. No arithmetic here. */
export function moneyText(cents: number, style: "exact" | "short" = "exact"): string {
  const whole = style === "short" && cents % 100 === 0;
  return new Intl.NumberFormat("en-US", {
    style: "currency",
    currency: "USD",
    minimumFractionDigits: whole ? 0 : 2,
  }).format(cents / 100);
}

/** A difference with its sign: "+$60", "−$40", "same price". */
export function moneyChangeText(cents: number): string {
  if (cents === 0) return "same price";
  return `${cents > 0 ? "+" : "−"}${moneyText(Math.abs(cents), "short")}`;
}

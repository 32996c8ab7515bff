/** Numbers as people say them. */
export function quoteNumber(quote: { readonly number: number; readonly revision: number }): string {
  return quote.revision === 1 ? `Q-${quote.number}` : `Q-${quote.number} r${quote.revision}`;
}

export function orderNumber(order: { readonly number: number }): string {
  return `O-${order.number}`;
}

export function clubNumber(club: { readonly number: number }): string {
  return `C-${club.number}`;
}

/** "Q-212", "q212 r2" or "212" as a number of the sequence; null when it is none. */
export function numberIn(text: string, prefix: "Q" | "O"): number | undefined {
  const match = new RegExp(`^\\s*(?:${prefix}\\s*-?\\s*)?(\\d{1,9})\\b`, "i").exec(text);
  return match?.[1] === undefined ? undefined : Number(match[1]);
}

import { type Cents, cents } from "#engine/units";
import type { Price, PriceLine } from "./types";

/**
 * One price for several pairs bought together: equal lines are one line with their number, everything else is the sum. A
 * single price stays as it is.
 *
 * @throws RangeError without a price, or when currency or destination differ
 */
export function joinPrices(prices: readonly Price[]): Price {
  const [first, ...others] = prices;
  if (first === undefined) throw new RangeError("joinPrices: 0 prices; at least 1 is needed");
  if (others.length === 0) return first;
  const strange = others.find((price) => price.currency !== first.currency || price.destination !== first.destination);
  if (strange !== undefined) {
    throw new RangeError(`joinPrices: ${strange.destination} does not go with ${first.destination}`);
  }
  const sum = (of: (price: Price) => Cents) => cents(prices.reduce((total, price) => total + of(price), 0));
  return {
    priceBook: [...new Set(prices.map(({ priceBook }) => priceBook))].join(", "),
    currency: first.currency,
    destination: first.destination,
    lines: joinLines(prices.flatMap(({ lines }) => lines)),
    exTaxCents: sum(({ exTaxCents }) => exTaxCents),
    shippingCents: sum(({ shippingCents }) => shippingCents),
    taxCents: sum(({ taxCents }) => taxCents),
    totalCents: sum(({ totalCents }) => totalCents),
    depositCents: sum(({ depositCents }) => depositCents),
    balanceCents: sum(({ balanceCents }) => balanceCents),
  };
}

function joinLines(lines: readonly PriceLine[]): readonly PriceLine[] {
  const joined = new Map<string, PriceLine>();
  for (const line of lines) {
    const key = JSON.stringify([line.code, line.label, line.unitCents, line.reason, line.approvedBy]);
    const known = joined.get(key);
    joined.set(
      key,
      known === undefined
        ? line
        : {
            ...known,
            quantity: known.quantity + line.quantity,
            lineCents: cents(known.lineCents + line.lineCents),
            taxCents: cents(known.taxCents + line.taxCents),
          },
    );
  }
  return [...joined.values()];
}

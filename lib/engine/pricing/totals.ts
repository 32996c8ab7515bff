/** From lines to a price: shipping, tax, deposit, balance. The one place where totals are made. */
import { type Cents, cents } from "#engine/units";
import { shareHalfUpCents, splitByLargestRemainder } from "./rounding";
import type { Destination, Price, PriceBook, PriceLine } from "./types";

/** A line before its share of the tax is known. */
export type UntaxedLine = Omit<PriceLine, "taxCents">;

/** @throws RangeError when the quantity is not a whole number from 1 */
export function line(
  code: string,
  label: string,
  unitCents: number,
  more: { readonly quantity?: number; readonly taxClass?: PriceLine["taxClass"] } = {},
): UntaxedLine {
  const quantity = more.quantity ?? 1;
  if (!Number.isSafeInteger(quantity) || quantity < 1) {
    throw new RangeError(`quantity ${quantity} of ${code} is not a whole number from 1`);
  }
  return {
    code,
    label,
    quantity,
    unitCents: cents(unitCents),
    lineCents: cents(unitCents * quantity),
    taxClass: more.taxClass ?? "goods",
  };
}

export function sumCents(lines: readonly { readonly lineCents: number }[]): Cents {
  return cents(lines.reduce((total, each) => total + each.lineCents, 0));
}

/**
 * Adds it up. Tax is taken once, half up, on the ex-tax total (shipping bears none in the demo book) and then shared
 * among the lines by largest remainder; the deposit is a share of the ex-tax total; the balance is what is left.
 */
export function priceOf(lines: readonly UntaxedLine[], book: PriceBook, destination: Destination): Price {
  const exTaxCents = sumCents(lines);
  const taxCents = shareHalfUpCents(exTaxCents, book.taxBasisPoints[destination]);
  const shares = splitByLargestRemainder(
    taxCents,
    lines.map((each) => each.lineCents),
  );
  const shippingCents = cents(book.shippingCents[destination]);
  const totalCents = cents(exTaxCents + shippingCents + taxCents);
  const depositCents = shareHalfUpCents(exTaxCents, book.depositBasisPoints);
  return {
    priceBook: book.id,
    currency: book.currency,
    destination,
    lines: lines.map((each, index) => ({ ...each, taxCents: shares[index] ?? cents(0) })),
    exTaxCents,
    shippingCents,
    taxCents,
    totalCents,
    depositCents,
    balanceCents: cents(totalCents - depositCents),
  };
}

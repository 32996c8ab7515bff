/** The fee of a hard date for which others give way: a share of the price before tax, at least a minimum. */
import { type Cents, cents } from "#engine/units";
import { shareHalfUpCents } from "./rounding";
import type { Price, PriceBook } from "./types";

/** Before tax, in cents, half up. */
export function rushFeeCents(exTaxCents: number, { rush }: Pick<PriceBook, "rush">): Cents {
  return cents(Math.max(shareHalfUpCents(exTaxCents, rush.basisPoints), rush.minimumCents));
}

/**
 * The fee beside a price that was accepted before it, with the tax that it adds: tax is taken on the ex-tax total, so the
 * cent is the same as if the fee had stood in the price.
 */
export function rushBeside(
  price: Pick<Price, "exTaxCents" | "destination">,
  book: Pick<PriceBook, "rush" | "taxBasisPoints">,
): { readonly feeCents: Cents; readonly taxCents: Cents; readonly totalCents: Cents } {
  const feeCents = rushFeeCents(price.exTaxCents, book);
  const taxOn = (exTaxCents: number) => shareHalfUpCents(exTaxCents, book.taxBasisPoints[price.destination]);
  const taxCents = cents(taxOn(price.exTaxCents + feeCents) - taxOn(price.exTaxCents));
  return { feeCents, taxCents, totalCents: cents(feeCents + taxCents) };
}

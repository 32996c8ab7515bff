/** The two roundings that money knows here, each named. Integers in, integers out: no float ever holds money. */
import { type Cents, cents } from "#engine/units";

const BASIS = 10_000;

/**
 * A share of an amount, half a cent away from zero: 15 % of 1 925.00 is 288.75, 50 % of 0.01 is 0.01.
 *
 * @param amountCents whole cents, of either sign
 * @param basisPoints whole basis points, 0 or more (1 % = 100)
 */
export function shareHalfUpCents(amountCents: number, basisPoints: number): Cents {
  if (!Number.isSafeInteger(amountCents))
    throw new RangeError(`amountCents ${amountCents} is not a whole number of cents`);
  if (!Number.isSafeInteger(basisPoints) || basisPoints < 0) {
    throw new RangeError(`basisPoints ${basisPoints} is not a whole number from 0`);
  }
  const magnitude = Math.floor((Math.abs(amountCents) * basisPoints + BASIS / 2) / BASIS);
  return cents(amountCents < 0 ? -magnitude : magnitude);
}

/**
 * Splits an amount in proportion to weights by largest remainder: the shares sum to the amount, to the cent. A cent left
 * over goes to the greatest remainder, the earlier part first when two are equal. Weights may be negative (a discount
 * line takes a negative share); their sum may not.
 *
 * @throws RangeError when the amount or a weight is not whole, or the weights sum to 0 or less while the amount is not 0
 */
export function splitByLargestRemainder(amountCents: number, weights: readonly number[]): readonly Cents[] {
  if (amountCents === 0) return weights.map(() => cents(0));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  if (!Number.isSafeInteger(sum) || sum <= 0)
    throw new RangeError(`weights sum to ${sum}; a whole number above 0 is needed`);
  const whole = BigInt(sum);
  const parts = weights.map((weight, index) => {
    const exact = BigInt(amountCents) * BigInt(weight);
    const floor = exact / whole - (exact % whole < 0n ? 1n : 0n);
    return { index, floor, remainder: exact - floor * whole };
  });
  const left = BigInt(amountCents) - parts.reduce((total, part) => total + part.floor, 0n);
  const first = parts.toSorted((a, b) =>
    a.remainder === b.remainder ? a.index - b.index : a.remainder > b.remainder ? -1 : 1,
  );
  const lucky = new Set(first.slice(0, Number(left)).map((part) => part.index));
  return parts.map((part) => cents(Number(part.floor) + (lucky.has(part.index) ? 1 : 0)));
}

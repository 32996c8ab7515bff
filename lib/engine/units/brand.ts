/**
 * Brands mark the few quantities whose mix-up hurts. Arithmetic drops a brand; re-brand once, on return.
 * Everything else carries its unit in its name (…Mm, …Kg, …Minutes, …Cents).
 */
declare const centsBrand: unique symbol;
declare const isoDateBrand: unique symbol;
declare const radiansBrand: unique symbol;

/** Integer minor units of the shop's one currency. */
export type Cents = number & { readonly [centsBrand]: true };
/** A calendar day in the shop's zone, `YYYY-MM-DD`. */
export type IsoDate = string & { readonly [isoDateBrand]: true };
/** An angle in radians. */
export type Radians = number & { readonly [radiansBrand]: true };

/** Brands an integer number of cents. @throws RangeError when not a safe integer. */
export function cents(value: number): Cents {
  if (!Number.isSafeInteger(value)) throw new RangeError(`cents: ${value} is not a whole number of cents`);
  return value as Cents;
}

const isoDatePattern = /^\d{4}-\d{2}-\d{2}$/;

/** Brands a `YYYY-MM-DD` string. @throws RangeError when it is not a real day. */
export function isoDate(text: string): IsoDate {
  const instant = Date.parse(`${text}T00:00:00Z`);
  if (!isoDatePattern.test(text) || Number.isNaN(instant) || new Date(instant).toISOString().slice(0, 10) !== text) {
    throw new RangeError(`isoDate: "${text}" is not a calendar day written YYYY-MM-DD`);
  }
  return text as IsoDate;
}

/** Degrees to radians. */
export function radians(degrees: number): Radians {
  return ((degrees * Math.PI) / 180) as Radians;
}

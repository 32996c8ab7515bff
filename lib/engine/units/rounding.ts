/**
 * Rounds for people: half away from zero on the shortest decimal string of the number, so that 188.85 becomes 188.9
 * although its binary value lies below. Never used for money (see pricing) nor inside a computation.
 *
 * @param value    finite number
 * @param decimals 0–12
 */
export function roundForPeople(value: number, decimals = 0): number {
  if (!Number.isFinite(value)) throw new RangeError(`roundForPeople: ${value} is not finite`);
  if (!Number.isInteger(decimals) || decimals < 0 || decimals > 12) {
    throw new RangeError(`roundForPeople: decimals ${decimals} is not a whole number from 0 to 12`);
  }
  const text = String(Math.abs(value));
  if (text.includes("e")) return Number(value.toFixed(decimals));
  const [whole = "0", fraction = ""] = text.split(".");
  if (fraction.length <= decimals) return value;
  const kept = BigInt(whole + fraction.slice(0, decimals));
  const up = Number(fraction[decimals]) >= 5 ? 1n : 0n;
  const digits = (kept + up).toString().padStart(decimals + 1, "0");
  const split = digits.length - decimals;
  const magnitude = Number(`${digits.slice(0, split)}.${digits.slice(split)}`);
  return value < 0 ? -magnitude : magnitude;
}

/** As {@link roundForPeople}, written with exactly `decimals` digits. */
export function textForPeople(value: number, decimals = 0): string {
  return roundForPeople(value, decimals).toFixed(decimals);
}

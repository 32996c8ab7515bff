/**
 * Serials: pair number, ski, check digit, as TY-0417-L-7. The check is Luhn's (ISO/IEC 7812-1 Annex B) over the pair's
 * digits followed by 0 for the left and 1 for the right ski, so a swapped side is caught as surely as a swapped digit. A ski
 * built again carries its build, as TY-0417-L2-3: each build takes the next two of those last digits.
 */
export type Side = "L" | "R";

const leastDigits = 4;
const sideDigit: Readonly<Record<Side, number>> = { L: 0, R: 1 };

/** TY-0417. @throws RangeError when the number is not a whole number of at least 1 */
export function pairSerial(prefix: string, number: number): string {
  return `${prefix}-${digitsOf(number)}`;
}

/** TY-0417-L-7, or TY-0417-L2-3 for its second build. */
export function skiSerial(prefix: string, number: number, side: Side, build = 1): string {
  const check = checkDigit(`${digitsOf(number)}${sideDigit[side] + 2 * (build - 1)}`);
  return `${pairSerial(prefix, number)}-${side}${build === 1 ? "" : build}-${check}`;
}

export type ReadSerial =
  | { readonly kind: "pair"; readonly number: number }
  | { readonly kind: "ski"; readonly number: number; readonly side: Side; readonly build: number }
  | { readonly kind: "wrong-check"; readonly number: number; readonly side: Side; readonly expected: string }
  | { readonly kind: "none" };

/** Reads what was scanned or typed; spaces, case and leading zeros do not matter. */
export function readSerial(prefix: string, text: string): ReadSerial {
  const pattern = new RegExp(`^${prefix}[-\\s]*0*(\\d{1,9})(?:[-\\s]*([LR])(?:([2-9])[-\\s]+)?[-\\s]*(\\d))?$`, "i");
  const match = pattern.exec(text.trim());
  if (match?.[1] === undefined || Number(match[1]) < 1) return { kind: "none" };
  const number = Number(match[1]);
  if (match[2] === undefined) return { kind: "pair", number };
  const side: Side = match[2].toUpperCase() === "L" ? "L" : "R";
  const build = Number(match[3] ?? 1);
  const expected = skiSerial(prefix, number, side, build);
  return expected.endsWith(`-${match[4]}`)
    ? { kind: "ski", number, side, build }
    : { kind: "wrong-check", number, side, expected };
}

function digitsOf(number: number): string {
  if (!Number.isSafeInteger(number) || number < 1)
    throw new RangeError(`pairSerial: number ${number} is not 1 or more`);
  return String(number).padStart(leastDigits, "0");
}

/** Luhn: from the right, every second digit doubled (its digits added), the check brings the sum to a multiple of ten. */
function checkDigit(digits: string): number {
  const sum = [...digits].reverse().reduce((total, digit, index) => {
    const value = index % 2 === 0 ? Number(digit) * 2 : Number(digit);
    return total + (value > 9 ? value - 9 : value);
  }, 0);
  return (10 - (sum % 10)) % 10;
}

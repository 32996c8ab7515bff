/**
 * Reads a height or a mass as people write it, whatever box it stands in: "178 cm", "1,78 m", 5'10", "12 st 3". The box's unit
 * counts for a bare number alone. What could mean two things, or nothing, is not guessed: it stays as typed, to be asked about.
 * Factors are exact: 1 in = 25.4 mm, 1 lb = 0.45359237 kg (international yard and pound, 1959; NIST SP 811, appendix B.8),
 * 1 st = 14 lb.
 */
import { heightCm, heightLimitsCm, massKg, massLimitsKg, type TypedHeight, type TypedMass } from "./body";

export type Reading<Typed> =
  | { readonly kind: "empty" }
  | { readonly kind: "read"; readonly value: Typed }
  /** Not a measure, or one that could mean two. */
  | { readonly kind: "unclear" }
  /** A measure, and no person's. */
  | { readonly kind: "outside" };

const INCHES_PER_FOOT = 12;
const POUNDS_PER_STONE = 14;

const units = {
  m: ["m", "metre", "metres", "meter", "meters"],
  cm: ["cm", "cms", "centimetre", "centimetres", "centimeter", "centimeters"],
  mm: ["mm", "millimetre", "millimetres", "millimeter", "millimeters"],
  ft: ["ft", "foot", "feet", "'"],
  in: ["in", "ins", "inch", "inches", '"'],
  kg: ["kg", "kgs", "kilo", "kilos", "kilogram", "kilograms", "kilogramme", "kilogrammes"],
  lb: ["lb", "lbs", "pound", "pounds"],
  st: ["st", "stone", "stones"],
} as const;

type Unit = keyof typeof units;

const unitOf = new Map<string, Unit>(
  Object.entries(units).flatMap(([unit, words]) => words.map((word) => [word, unit as Unit] as const)),
);

/** One amount with the unit behind it. */
interface Part {
  readonly amount: number;
  /** Written with a point: 5.10 feet could be five ten or five and a tenth. */
  readonly hasPoint: boolean;
  readonly unit: Unit | null;
}

const vulgar: Readonly<Record<string, string>> = { "½": "1/2", "¼": "1/4", "¾": "3/4", "⅓": "1/3", "⅔": "2/3" };

function plainSigns(text: string): string {
  return text
    .toLowerCase()
    .replace(/[½¼¾⅓⅔]/g, (sign) => ` ${vulgar[sign]}`)
    .replace(/[\u2018\u2019\u2032\u00b4`]/g, "'")
    .replace(/[\u201c\u201d\u2033]|''/g, '"')
    .replace(/(\d),(?=\d)/g, "$1.")
    .replace(/(?<!\d)\.(?=\d)/g, "0.")
    .replace(/([a-z])\./g, "$1")
    .replace(/\s+/g, " ")
    .trim();
}

const part = /^(\d+(?:\.\d+)?)?(?:(?:^| )(\d{1,2})\/(\d{1,2}))? ?([a-z]+|['"])?[ ,]*/;

/** The text as amounts with units, or null when something in it is neither. */
function partsOf(text: string): readonly Part[] | null {
  const parts: Part[] = [];
  let rest = plainSigns(text);
  while (rest !== "") {
    const [all = "", whole, over, under, word] = part.exec(rest) ?? [];
    if (whole === undefined && over === undefined) return null;
    const unit = word === undefined ? null : unitOf.get(word);
    if (unit === undefined || under === "0") return null;
    const fraction = over === undefined ? 0 : Number(over) / Number(under);
    parts.push({ amount: Number(whole ?? 0) + fraction, hasPoint: whole?.includes(".") ?? false, unit });
    rest = rest.slice(all.length);
  }
  return parts;
}

const within = (value: number, { min, max }: { readonly min: number; readonly max: number }) =>
  value >= min && value <= max;

/** No digits that only the binary sum has made. */
const tidy = (amount: number): number => Number(amount.toFixed(6));

const inCm = (cm: number): TypedHeight => ({ unit: "cm", cm: tidy(cm) });

function inFeet(feet: number, inches: number): TypedHeight {
  const all = tidy(feet * INCHES_PER_FOOT + inches);
  const whole = Math.floor(all / INCHES_PER_FOOT);
  return { unit: "ft-in", feet: whole, inches: tidy(all - whole * INCHES_PER_FOOT) };
}

/** What a number without a unit can mean as a height; null when nothing or too much. */
function bareHeight({ amount, hasPoint }: Part, box: TypedHeight["unit"]): TypedHeight | null {
  // A whole 1 or 2 is how 178 begins while it is typed.
  if (hasPoint && within(amount * 100, heightLimitsCm)) return inCm(amount * 100);
  if (box === "cm") return within(amount / 10, heightLimitsCm) ? inCm(amount / 10) : inCm(amount);
  if (amount < INCHES_PER_FOOT) return hasPoint ? null : inFeet(amount, 0);
  return within(amount * 2.54, heightLimitsCm) && amount < 100 ? inFeet(0, amount) : inCm(amount);
}

function heightOf(parts: readonly Part[], box: TypedHeight["unit"]): TypedHeight | null {
  const [first, second, ...more] = parts;
  if (first === undefined || more.length > 0) return null;
  if (second === undefined) {
    switch (first.unit) {
      case null:
        return bareHeight(first, box);
      case "m":
        return inCm(first.amount * 100);
      case "cm":
        return inCm(first.amount);
      case "mm":
        return inCm(first.amount / 10);
      case "ft":
        return first.hasPoint ? null : inFeet(first.amount, 0);
      case "in":
        return inFeet(0, first.amount);
      default:
        return null;
    }
  }
  const isWhole = Number.isInteger(first.amount) && !first.hasPoint;
  if (!isWhole) return null;
  if (first.unit === "m" && (second.unit === "cm" || second.unit === null)) {
    return second.amount < 100 ? inCm(first.amount * 100 + second.amount) : null;
  }
  const isFeet = first.unit === "ft" || (first.unit === null && first.amount < INCHES_PER_FOOT);
  const isInches = (second.unit === "in" || second.unit === null) && second.amount < INCHES_PER_FOOT;
  return isFeet && isInches ? inFeet(first.amount, second.amount) : null;
}

function massOf(parts: readonly Part[], box: TypedMass["unit"]): TypedMass | null {
  const [first, second, ...more] = parts;
  if (first === undefined || more.length > 0) return null;
  const pounds = (lb: number): TypedMass => ({ unit: "lb", lb: tidy(lb) });
  if (second === undefined) {
    switch (first.unit ?? box) {
      case "kg":
        return { unit: "kg", kg: tidy(first.amount) };
      case "lb":
        return pounds(first.amount);
      case "st":
        return pounds(first.amount * POUNDS_PER_STONE);
      default:
        return null;
    }
  }
  const isStone = first.unit === "st" && Number.isInteger(first.amount);
  const isPounds = (second.unit === "lb" || second.unit === null) && second.amount < POUNDS_PER_STONE;
  return isStone && isPounds ? pounds(first.amount * POUNDS_PER_STONE + second.amount) : null;
}

function read<Typed>(
  text: string,
  meaning: (parts: readonly Part[]) => Typed | null,
  isPossible: (value: Typed) => boolean,
): Reading<Typed> {
  if (text.trim() === "") return { kind: "empty" };
  const parts = partsOf(text);
  const value = parts === null ? null : meaning(parts);
  if (value === null) return { kind: "unclear" };
  return isPossible(value) ? { kind: "read", value } : { kind: "outside" };
}

/**
 * A height as it was written.
 * @param box the unit of a bare number; one that cannot be a height in it is read as metres, millimetres, inches or centimetres
 *   where exactly that makes sense, and 70 in a box of centimetres is asked about: it could be a weight in the wrong box
 */
export function readHeight(text: string, box: TypedHeight["unit"]): Reading<TypedHeight> {
  return read(
    text,
    (parts) => heightOf(parts, box),
    (height) => within(tidy(heightCm(height)), heightLimitsCm),
  );
}

/** A mass as it was written. Stone and pounds are kept as pounds. @param box the unit of a bare number */
export function readMass(text: string, box: TypedMass["unit"]): Reading<TypedMass> {
  return read(
    text,
    (parts) => massOf(parts, box),
    (mass) => within(massKg(mass), massLimitsKg),
  );
}
